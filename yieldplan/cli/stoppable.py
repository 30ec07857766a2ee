"""Lets a long search run, shows how it goes, and keeps its best plan on Ctrl-C."""

from __future__ import annotations

import os
import signal
import sys
import threading
import time
from collections.abc import Callable, Iterator
from concurrent.futures import Future, ThreadPoolExecutor, wait
from contextlib import contextmanager
from types import FrameType
from typing import TYPE_CHECKING, TypeVar

from yieldplan.cli import terminal
from yieldplan.cli.troubles import STOPPED
from yieldplan.measure.money import say_money

if TYPE_CHECKING:
    from yieldplan.packing import Progress

Answer = TypeVar("Answer")
Hear = Callable[["Progress"], None]
"""What a search reports its progress to."""

_LOOK = 0.1
"""How often to look up from waiting. [s]"""
_QUIET = 1.0
"""A search shorter than this shows nothing. [s]"""
_NO_PLAN = "Stopped before there was a plan; nothing is written."


class Watch:
    """What was heard of the search, and how often Ctrl-C was pressed."""

    def __init__(self) -> None:
        self.latest: Progress | None = None
        self.presses = 0

    def hear(self, progress: Progress) -> None:
        """Remember how far the search has come; called from its thread."""
        self.latest = progress

    def press(self, _signal: int, _frame: FrameType | None) -> None:
        """Count a Ctrl-C; the waiting loop acts on it."""
        self.presses += 1


def run(
    search: Callable[[Hear], Answer],
    asked: threading.Event,
    last_words: str = _NO_PLAN,
) -> Answer:
    """What the search gives, run in a thread of its own.

    The first Ctrl-C sets `asked`, so that the search ends with its best plan. Before
    there is any plan, or at the second, the program ends.

    Parameters
    ----------
    search
        Called with the function it is to report its progress to.
    last_words
        Said when the program ends like that.
    """
    watch = Watch()
    with ThreadPoolExecutor(1) as pool, _ctrl_c(watch):
        future = pool.submit(search, watch.hear)
        _wait(future, watch, asked, last_words)
        return future.result()


def _wait(
    future: Future[Answer], watch: Watch, asked: threading.Event, last_words: str
) -> None:
    began = time.monotonic()
    line = _Line()
    while not future.done():
        wait([future], timeout=_LOOK)
        if watch.presses and (watch.latest is None or watch.presses > 1):
            line.clear()
            _leave(last_words)
        if watch.presses and not asked.is_set():
            asked.set()
            line.clear()
            terminal.say("Stopping with the best plan so far.", to_errors=True)
        if watch.latest is not None and time.monotonic() - began > _QUIET:
            line.show(_said(watch.latest))
    line.clear()


def _leave(last_words: str) -> None:
    terminal.say(last_words, to_errors=True)
    sys.stderr.flush()
    # The search's thread is in the middle of something and has nothing to tidy up.
    os._exit(STOPPED)


def _said(progress: Progress) -> str:
    gap = ""
    if progress.cost:
        tenths = -(-1000 * (progress.cost - progress.bound) // progress.cost)
        gap = f", gap {tenths // 10}.{tenths % 10} %"
    return (
        f"{progress.wood}: {progress.stage}; cost {say_money(progress.cost)}, "
        f"floor {say_money(progress.bound)}{gap} (Ctrl-C keeps this plan)"
    )


class _Line:
    """One line of the error stream, written over and over."""

    def __init__(self) -> None:
        self._is_watched = terminal.is_watched(sys.stderr)
        self._shown = ""

    def show(self, text: str) -> None:
        text = text[: terminal.width() - 1]
        if self._is_watched and text != self._shown:
            blanks = " " * (len(self._shown) - len(text))
            sys.stderr.write(f"\r{text}{blanks}")
            sys.stderr.flush()
            self._shown = text

    def clear(self) -> None:
        if self._shown:
            sys.stderr.write("\r" + " " * len(self._shown) + "\r")
            sys.stderr.flush()
            self._shown = ""


@contextmanager
def _ctrl_c(watch: Watch) -> Iterator[None]:
    if threading.current_thread() is not threading.main_thread():
        # Only the main thread may say what Ctrl-C does.
        yield
        return
    before = signal.signal(signal.SIGINT, watch.press)
    try:
        yield
    finally:
        signal.signal(signal.SIGINT, before)
