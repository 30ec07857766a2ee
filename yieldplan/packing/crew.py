"""Parts of a search handed out: done here one after the other, or side by side in other processes.

Answers come back in the order in which the tasks were handed out, and no task knows of
another, so the plan is the same however many hands there are.
"""

from __future__ import annotations

import pickle
import signal
import threading
from collections.abc import Sequence
from concurrent.futures import Executor, Future, ProcessPoolExecutor, wait
from functools import lru_cache
from itertools import count
from multiprocessing import get_context
from os import getpid
from typing import Any, Protocol, TypeVar

from yieldplan.packing.problem import Problem
from yieldplan.packing.stop import Stop
from yieldplan.packing.yard import Yard

Answer = TypeVar("Answer", covariant=True)
Shared = TypeVar("Shared", contravariant=True)
_LOOK = 0.1
"""How often it is looked whether to stop. [s]"""
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


def hands(number: int) -> Executor | None:
    """So many processes to hand tasks to; none where one hand is enough.

    They are begun when they are first needed, and end with the `with` block they are
    used in.
    """
    if number < 2:
        return None
    return ProcessPoolExecutor(number, get_context("spawn"), initializer=_begin)


def _begin() -> None:
    # Ctrl-C reaches every process of a terminal; the first one decides what it means.
    signal.signal(signal.SIGINT, signal.SIG_IGN)


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
    ) -> list[Answer]:
        """The answers, in order; fewer when it was asked to stop.

        Parameters
        ----------
        seconds
            Until a clock stops them all; None where none does. [s]
        """
        stop = Stop(seconds=seconds, asked=self._stop.asked)
        if self._executor is None or len(tasks) < 2:
            answers = []
            for task in tasks:
                if self._stop.asked.is_set():
                    break
                answers.append(task.do(self.yard, shared, stop))
            return answers
        if not self._problem:
            self._problem = pickle.dumps(self.yard.problem)
        common = pickle.dumps(shared)
        futures = [
            self._executor.submit(
                _do, self._key, self._problem, common, pickle.dumps(task), seconds
            )
            for task in tasks
        ]
        return self._wait_for(futures)

    def _wait_for(self, futures: Sequence[Future[object]]) -> list[Any]:
        left = set(futures)
        while left and not self._stop.asked.is_set():
            left = wait(left, timeout=_LOOK).not_done
        if self._stop.asked.is_set():
            for future in left:
                future.cancel()
        done: list[object] = []
        for future in futures:
            if not future.done() or future.cancelled():
                break
            done.append(future.result())
        return done


@lru_cache(maxsize=8)
def _yard_of(key: str, problem: bytes) -> Yard:
    known: Problem = pickle.loads(problem)
    return Yard(known)


def _do(
    key: str, problem: bytes, shared: bytes, task: bytes, seconds: float | None
) -> object:
    """One task in another process; its yard is kept there for the next one."""
    todo: Task[object, object] = pickle.loads(task)
    stop = Stop(seconds=seconds, asked=threading.Event())
    return todo.do(_yard_of(key, problem), pickle.loads(shared), stop)
