"""Parts of a search handed out: done here one after the other, or side by side in other processes.

Answers come back in the order in which the tasks were handed out, and no task knows of
another, so the plan is the same however many hands there are.
"""

from __future__ import annotations

import pickle
import threading
import time
from collections.abc import Callable, Iterator, Sequence
from concurrent.futures import Executor
from functools import lru_cache
from itertools import count
from os import getpid
from typing import Any, Protocol, TypeVar

from yieldplan.packing.filling.yard import Yard
from yieldplan.packing.problem import Problem
from yieldplan.packing.searching.hands import Hands, in_order
from yieldplan.packing.stop import Stop

Answer = TypeVar("Answer", covariant=True)
Shared = TypeVar("Shared", contravariant=True)
_numbers = count()


class Task(Protocol[Shared, Answer]):
    """A part of a search. It is sent to another process as it stands."""

    def do(self, yard: Yard, shared: Shared, stop: Stop) -> Answer:
        """Do it.

        Parameters
        ----------
        shared
            What all tasks handed out together have in common.
        stop
            Ends it early, on request or by the clock.
        """


def hands(number: int) -> Hands | None:
    """So many processes to hand tasks to; none where one hand is enough.

    They are begun when a search has gone on for a while, and end with the `with` block
    they are used in.
    """
    return Hands(number) if number > 1 else None


class Crew:
    """Those who do the tasks of one search.

    Parameters
    ----------
    executor
        Where tasks may be done side by side; None does them here.
    """

    def __init__(self, yard: Yard, stop: Stop, executor: Executor | None) -> None:
        self.yard = yard
        self._stop = stop
        self._executor = executor
        self._problem = b""
        self._key = f"{getpid()}.{next(_numbers)}"

    def run(
        self,
        shared: Shared,
        tasks: Sequence[Task[Shared, Answer]],
        seconds: float | None,
        is_enough: Callable[[Any], bool] = lambda _: False,
    ) -> list[Answer]:
        """All answers, as they come `one_by_one`."""
        return list(self.one_by_one(shared, tasks, seconds, is_enough))

    def one_by_one(
        self,
        shared: Shared,
        tasks: Sequence[Task[Shared, Answer]],
        seconds: float | None,
        is_enough: Callable[[Any], bool] = lambda _: False,
    ) -> Iterator[Answer]:
        """The answers, in order and as soon as they are there; fewer when it was asked to stop.

        Parameters
        ----------
        seconds
            Until a clock stops them all; None where none does. [s]
        is_enough
            Whether the answers after this one are of no use: they are left out, also
            where they are there already.
        """
        for answer in self._answers(shared, tasks, seconds):
            is_last = is_enough(answer)
            yield answer
            if is_last:
                break

    def _answers(
        self,
        shared: Shared,
        tasks: Sequence[Task[Shared, Answer]],
        seconds: float | None,
    ) -> Iterator[Answer]:
        end = None if seconds is None else time.monotonic() + seconds
        for done, task in enumerate(tasks):
            if self._stop.asked.is_set():
                return
            left = tasks[done:]
            if len(left) > 1 and self._may_hand_out():
                yield from self._hand_out(shared, left, end)
                return
            yield task.do(self.yard, shared, _until(end, self._stop.asked))

    def get_ready(self) -> None:
        """Begin the processes, where it has taken long already: they will be needed."""
        self._may_hand_out()

    def _may_hand_out(self) -> bool:
        executor = self._executor
        if isinstance(executor, Hands):
            # Until they are ready the time is better used here.
            return executor.are_ready()
        return executor is not None

    def _hand_out(
        self,
        shared: Shared,
        tasks: Sequence[Task[Shared, Answer]],
        end: float | None,
    ) -> Iterator[Any]:
        assert self._executor is not None
        if not self._problem:
            self._problem = pickle.dumps(self.yard.problem)
        common = pickle.dumps(shared)
        futures = [
            self._executor.submit(
                _do, self._key, self._problem, common, pickle.dumps(task), end
            )
            for task in tasks
        ]
        return in_order(futures, self._stop.asked)


def _until(end: float | None, asked: threading.Event) -> Stop:
    """A stop for one task, when the clock ends all of them at this time."""
    # A clock the system keeps for all processes together.
    left = None if end is None else max(0.0, end - time.monotonic())
    return Stop(seconds=left, asked=asked)


@lru_cache(maxsize=8)
def _yard_of(key: str, problem: bytes) -> Yard:
    known: Problem = pickle.loads(problem)
    return Yard(known)


@lru_cache(maxsize=2)
def _shared_by(tasks: bytes) -> object:
    """What tasks handed out together have in common, taken apart once for all of them."""
    return pickle.loads(tasks)


def _do(
    key: str, problem: bytes, shared: bytes, task: bytes, end: float | None
) -> object:
    """One task in another process; its yard is kept there for the next one."""
    todo: Task[object, object] = pickle.loads(task)
    stop = _until(end, threading.Event())
    return todo.do(_yard_of(key, problem), _shared_by(shared), stop)
