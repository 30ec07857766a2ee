"""One allowance of work or time, handed out to many short searches."""

from __future__ import annotations

import time
from dataclasses import replace
from fractions import Fraction

from yieldplan.packing.stop import Ended, Stop

_FIRST = 3
"""The first search takes this part of the allowance."""
_LEAST_WORK = 4_000_000


class Clock:
    """Stops for searches one after the other, where the clock ends them all."""

    def __init__(self, stop: Stop) -> None:
        self._stop = stop
        self._began = time.monotonic()

    def part(self, parts: int) -> Stop:
        """For a search of this part of the time left; unchanged where none is set."""
        if self._stop.seconds is None:
            return self._stop
        left = self._stop.seconds - (time.monotonic() - self._began)
        return replace(self._stop, seconds=max(0.01, left / parts))


class Portions:
    """Stops for the searches within a search, and what they have used so far.

    Parameters
    ----------
    stop
        For all of them together.
    """

    def __init__(self, stop: Stop) -> None:
        self.stop = stop
        self.work = 0
        self.allowed = stop.work or 0
        self._began = time.monotonic() if stop.seconds is not None else 0.0

    def first(self) -> Stop:
        """For the first search, which says how large the job is."""
        stop = self.stop
        if stop.work is not None:
            return replace(stop, work=max(1, stop.work // _FIRST))
        if stop.seconds is not None:
            return replace(stop, seconds=stop.seconds / _FIRST)
        return replace(stop, share=stop.share * _FIRST)

    def took(self, work: int) -> None:
        """Count work of a search; that of the first one also says how much more there is."""
        self.work += work
        if not self.allowed:
            self.allowed = max(_FIRST * work, _LEAST_WORK // self.stop.share)

    def part(self, parts: int) -> Stop:
        """For a search of this part of the allowance, within what is left of it."""
        work = max(1, min(self.allowed // parts, self.allowed - self.work))
        if self.stop.seconds is None:
            return replace(self.stop, work=work)
        if self.stop.work is None:
            # By the clock alone there is time for as many tries as it takes.
            work = max(1, self.allowed // parts)
        left = self.stop.seconds - self._ran
        return replace(self.stop, work=work, seconds=max(0.01, left))

    def rest(self, gap: Fraction) -> Stop:
        """For the last search: all that is left of work or time that was said, or what a search is allowed where none was."""
        stop = replace(self.stop, gap=gap)
        if stop.work is not None:
            stop = replace(stop, work=max(1, stop.work - self.work))
        if stop.seconds is not None:
            stop = replace(stop, seconds=max(0.01, stop.seconds - self._ran))
        return stop

    def is_over(self, share: Fraction) -> bool:
        """Whether so much of the work or the time is used up."""
        return self._by_clock(share) or self._by_work(share)

    @property
    def ended(self) -> Ended | None:
        """Why no further search may begin; None while one may."""
        if self.stop.asked.is_set():
            return "asked"
        if self._by_clock(Fraction(1)):
            return "clock"
        return "work" if self._by_work(Fraction(1)) else None

    def _by_clock(self, share: Fraction) -> bool:
        seconds = self.stop.seconds
        return seconds is not None and self._ran >= share * Fraction(seconds)

    def _by_work(self, share: Fraction) -> bool:
        # By the clock alone work is not counted.
        is_counted = self.stop.seconds is None or self.stop.work is not None
        return is_counted and self.work >= share * self.allowed

    @property
    def _ran(self) -> float:
        return time.monotonic() - self._began
