"""Other processes that lend a hand: one thread of ours tends each, and they are begun only where a search is long."""

from __future__ import annotations

import os
import signal
import sys
import threading
import time
from collections.abc import Callable, Iterator, Sequence
from concurrent.futures import (
    CancelledError,
    Executor,
    Future,
    ThreadPoolExecutor,
    wait,
)
from multiprocessing import get_context, resource_tracker
from multiprocessing.connection import Connection
from multiprocessing.process import BaseProcess
from queue import SimpleQueue
from typing import Any, ParamSpec, TypeVar

_P = ParamSpec("_P")
_R = TypeVar("_R")
_WORTH_IT = 1.0
"""A process takes a second or two to begin: where all is done sooner, none is. [s]"""
_LOOK = 0.1
"""How often it is looked whether to stop. [s]"""
_GONE = (EOFError, OSError)
_STOP = "stop"


class Hands(Executor):
    """So many processes to hand work to.

    They end with the `with` block they are used in, whatever they are doing, and with
    the process they belong to. What a process failed to do is done here instead.
    """

    def __init__(self, number: int) -> None:
        self.number = number
        self._made = time.monotonic()
        self._threads = ThreadPoolExecutor(number, initializer=self._take_on)
        self._mine = threading.local()
        self._lock = threading.Lock()
        # What is done here shares a yard, which answers one at a time.
        self._here = threading.Lock()
        self._all: list[tuple[BaseProcess, Connection]] = []
        self._begun: list[Future[None]] = []
        self._is_over = False

    def are_ready(self) -> bool:
        """Whether the processes wait for work; begins them when there has been enough of it."""
        if not self._begun and time.monotonic() - self._made > _WORTH_IT:
            self.begin()
        return bool(self._begun) and all(each.done() for each in self._begun)

    def begin(self) -> None:
        """Begin the processes without waiting for them."""
        with self._lock:
            if not self._begun:
                self._begun = [
                    self._threads.submit(_nothing) for _ in range(self.number)
                ]

    def submit(
        self, fn: Callable[_P, _R], /, *args: _P.args, **kwargs: _P.kwargs
    ) -> Future[_R]:
        """Hand work to whoever is free next."""
        return self._threads.submit(self._hand_over, fn, args, kwargs)

    def submit_search(
        self,
        fn: Callable[..., _R],
        given: object,
        hear: Callable[[Any], None],
        asked: threading.Event,
    ) -> Future[_R]:
        """Hand over a search that is listened to and may be asked to stop.

        Parameters
        ----------
        fn
            Called with `given`, `hear` and `asked`, or what stands for them elsewhere.
        """
        return self._threads.submit(self._listen_to, fn, given, hear, asked)

    def shutdown(self, wait: bool = True, *, cancel_futures: bool = False) -> None:
        """End the processes; what they have not answered yet is given up."""
        with self._lock:
            self._is_over = True
            for process, _ in self._all:
                # They share nothing with us but a pipe, so nothing is left half done.
                process.terminate()
        self._threads.shutdown(wait, cancel_futures=True)
        for process, ours in self._all:
            process.join()
            ours.close()

    def _take_on(self) -> None:
        """Begin the process that this thread tends, and wait until it can work."""
        if sys.platform != "win32":
            # Ctrl-C reaches every process of a terminal; only the first one is to hear it.
            # The tracker, when it begins, would open this thread's ears again.
            resource_tracker.ensure_running()
            signal.pthread_sigmask(signal.SIG_BLOCK, {signal.SIGINT})
        context = get_context("spawn")
        ours, theirs = context.Pipe()
        process = context.Process(target=_work, args=(theirs,), daemon=True)
        with self._lock:
            if self._is_over:
                return
            process.start()
            self._all.append((process, ours))
        theirs.close()
        try:
            ours.recv()
        except _GONE:
            return
        self._mine.pipe = ours

    def _hand_over(self, fn: Callable[..., _R], args: Any, kwargs: Any) -> _R:
        pipe: Connection | None = getattr(self._mine, "pipe", None)
        if pipe is not None:
            try:
                pipe.send((fn, args, kwargs))
                answer: _R = pipe.recv()[1]
            except _GONE:
                self._mine.pipe = None
            else:
                return answer
        with self._here:
            self._go_on()
            return fn(*args, **kwargs)

    def _listen_to(
        self,
        fn: Callable[..., _R],
        given: object,
        hear: Callable[[Any], None],
        asked: threading.Event,
    ) -> _R:
        pipe: Connection | None = getattr(self._mine, "pipe", None)
        if pipe is not None:
            try:
                pipe.send((_speaking, (fn, given), {}))
                is_told = False
                while True:
                    if asked.is_set() and not is_told:
                        pipe.send(_STOP)
                        is_told = True
                    if pipe.poll(_LOOK):
                        is_answer, said = pipe.recv()
                        if is_answer:
                            answer: _R = said
                            return answer
                        hear(said)
            except _GONE:
                self._mine.pipe = None
        with self._here:
            self._go_on()
            return fn(given, hear, asked)

    def _go_on(self) -> None:
        if self._is_over:
            raise CancelledError


def side_by_side(
    calls: Sequence[tuple[Callable[..., _R], tuple[Any, ...]]],
    hands: Hands | None,
    asked: threading.Event,
) -> Iterator[_R]:
    """What each call answers, in order, until it is asked to stop.

    Until the hands are ready the calls are made here.
    """
    done = 0
    while done < len(calls) and (hands is None or not hands.are_ready()):
        if asked.is_set():
            return
        function, given = calls[done]
        yield function(*given)
        done += 1
    if hands is None:
        return
    yield from in_order(
        [hands.submit(function, *given) for function, given in calls[done:]], asked
    )


def in_order(futures: Sequence[Future[_R]], asked: threading.Event) -> Iterator[_R]:
    """The answers, in order; those that are not there when it is asked to stop are given up.

    So are those that are not asked for any more.
    """
    try:
        for future in futures:
            while not wait([future], timeout=_LOOK).done:
                if asked.is_set():
                    return
            if future.cancelled():
                return
            yield future.result()
    finally:
        for future in futures:
            future.cancel()


def _nothing() -> None:
    pass


# -- in the other process ------------------------------------------------------


class _Other:
    """What the other process knows of the one it works for."""

    def __init__(self, pipe: Connection) -> None:
        self.pipe = pipe
        self.todo: SimpleQueue[Any] = SimpleQueue()
        self.asked = threading.Event()

    def listen(self) -> None:
        """Take in what is sent, also in the middle of work; end with who sends it."""
        while True:
            try:
                said = self.pipe.recv()
            except _GONE:
                os._exit(1)
            if said == _STOP:
                self.asked.set()
            else:
                self.asked = threading.Event()
                self.todo.put(said)


_other: _Other | None = None


def _work(pipe: Connection) -> None:
    """What a process does: one piece of work after the other, until one fails."""
    global _other
    signal.signal(signal.SIGINT, signal.SIG_IGN)
    _other = _Other(pipe)
    threading.Thread(target=_other.listen, daemon=True).start()
    try:
        pipe.send((False, "ready"))
        while True:
            fn, args, kwargs = _other.todo.get()
            pipe.send((True, fn(*args, **kwargs)))
    except BrokenPipeError:
        # The first process is gone, and nobody waits for the rest.
        os._exit(1)


def _speaking(fn: Callable[..., _R], given: object) -> _R:
    """A search that tells the first process how far it is, and listens to it."""
    assert _other is not None
    pipe = _other.pipe
    return fn(given, lambda said: pipe.send((False, said)), _other.asked)
