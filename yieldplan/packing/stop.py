"""When the search for a cheaper plan ends, and what it says while it runs."""

from __future__ import annotations

import threading
import time
from collections.abc import Callable
from dataclasses import dataclass, field
from fractions import Fraction
from typing import Literal

NO_LIMIT = 1 << 62
"""More than any work or money there is."""

Ended = Literal["proved", "gap", "work", "clock", "asked", "searched"]

IN_WORDS: dict[Ended, str] = {
    "proved": "no plan of this kind costs less",
    "gap": "close enough to the floor",
    "work": "the work allowed for the search was done",
    "clock": "stopped by the clock",
    "asked": "stopped on request",
    "searched": "the search found nothing more",
}
"""Why a search ended, as it is printed."""

_GAP = Fraction(1, 200)


@dataclass(frozen=True, kw_only=True)
class Stop:
    """When to stop looking for a cheaper plan.

    The work is counted, not timed, so that the same input gives the same plan. A limit
    in seconds is opt-in, and the plan says so.

    Parameters
    ----------
    gap
        Largest share of the cost by which the floor may lie below it; None for half a
        percent, and for a proof where boards are few.
    work
        Units of work, each about a microsecond of one core; None: by size of the job.
    seconds
        Time for one wood, instead of a counted amount of work; None to count. The search
        then goes on until it is up, or the gap is reached. [s]
    share
        Of the work a job of its size is allowed, only this part: 3 is a third.
    asked
        Set it (Ctrl-C) to stop with the best plan so far.
    """

    gap: Fraction | None = None
    work: int | None = None
    seconds: float | None = None
    share: int = 1
    asked: threading.Event = field(default_factory=threading.Event)

    @property
    def near(self) -> Fraction:
        """The gap that is small enough, unless boards are few."""
        return _GAP if self.gap is None else self.gap


@dataclass(frozen=True, kw_only=True)
class Progress:
    """How far the search has come.

    Parameters
    ----------
    cost, bound
        Of the best plan so far and what is certified. [money/10,000]
    work
        Units of work done.
    """

    wood: str
    stage: str
    cost: int
    bound: int
    work: int


class Budget:
    """Counts the work of one search and knows when it is used up."""

    def __init__(self, stop: Stop, allowed: int) -> None:
        self.done = 0
        self.ended: Ended | None = None
        self.gap = stop.near
        self._stop = stop
        # By the clock alone: then there is time for as many tries as it takes.
        self._by_clock = stop.seconds is not None and stop.work is None
        self._allowed = (
            stop.work if stop.work is not None else max(1, allowed // stop.share)
        )
        self._began = time.monotonic() if stop.seconds is not None else 0.0
        self._is_stretched = False

    def stretch(self) -> bool:
        """Allow twice the work where it was used up; whether it may be.

        It is done once, and what the stop says of work is kept to.
        """
        is_said = self._stop.work is not None or self._stop.share > 1
        if self.ended != "work" or is_said or self._is_stretched:
            return False
        self._is_stretched = True
        self._allowed *= 2
        self.ended = None
        return True

    @property
    def stop(self) -> Stop:
        """What ends a task of this search early: the clock, or being asked."""
        return Stop(seconds=self.seconds_left, asked=self._stop.asked)

    @property
    def seconds_left(self) -> float | None:
        """Until the clock ends the search; None where it does not. [s]"""
        if self._stop.seconds is None:
            return None
        return max(0.0, self._stop.seconds - (time.monotonic() - self._began))

    def work_for(self, tasks: int, least: int, most: int) -> int:
        """Work for each of so many tasks, so that there are rounds enough of them."""
        if self._by_clock:
            return most
        return max(least, min(most, self._allowed // (8 * tasks)))

    @property
    def goes_on(self) -> bool:
        """Whether to keep trying after many tries in vain: the clock ends the search."""
        return self._by_clock

    @property
    def used(self) -> Fraction:
        """Share of the work or of the time that is used up."""
        by_work = Fraction(self.done, max(1, self._allowed))
        if self._stop.seconds is None:
            return by_work
        ran = time.monotonic() - self._began
        by_clock = Fraction(ran / self._stop.seconds) if self._stop.seconds else None
        if by_clock is None:
            return Fraction(1)
        return by_clock if self._by_clock else max(by_work, by_clock)

    def work_left(self, share: Fraction) -> int:
        """Work until so much of the allowed work is used up; the clock is not asked."""
        if self._by_clock:
            return NO_LIMIT
        return max(0, int(share * self._allowed) - self.done)

    def seconds_of(self, share: Fraction) -> float | None:
        """So much of all the time; None where the clock does not end the search. [s]"""
        return None if self._stop.seconds is None else float(share) * self._stop.seconds

    def spend(self, work: int) -> None:
        """Count work as done."""
        self.done += work

    def is_over(self, share: Fraction = Fraction(1)) -> bool:
        """Whether to stop now.

        Parameters
        ----------
        share
            Part of the allowed work that may be used by this stage.
        """
        used = self.used
        if self._stop.asked.is_set():
            self.ended = "asked"
        elif used >= 1:
            was_counted = not self._by_clock and self.done >= self._allowed
            self.ended = "work" if was_counted else "clock"
        return self.ended is not None or used >= share

    def is_close(self, cost: int, bound: int) -> bool:
        """Whether the floor is near enough to the cost."""
        return cost - bound <= self.gap * cost


Hear = Callable[[Progress], None]
