"""The floor of sets of boards as a task, so that it is worked out beside the first dives."""

from __future__ import annotations

from dataclasses import dataclass, replace
from fractions import Fraction

from yieldplan.packing.filling.yard import Column, Yard
from yieldplan.packing.floors.bound import Certificate
from yieldplan.packing.floors.set_floor import set_floor
from yieldplan.packing.improving.dives import Common, Found
from yieldplan.packing.stop import Budget, Stop


@dataclass(frozen=True)
class Lifted(Found):
    """No plan, but a floor."""

    floor: Certificate


@dataclass(frozen=True)
class SetFloorTask:
    """What sets of boards prove that one row of prices cannot.

    Parameters
    ----------
    known
        Patterns known already.
    met
        Price vectors met, the earliest first.
    work, seconds
        At most; seconds only where the clock ends the search. [units, s]
    """

    floor: Certificate
    known: tuple[Column, ...]
    met: tuple[tuple[int, ...], ...]
    limit: int
    work: int
    seconds: float | None

    def do(self, yard: Yard, shared: Common, stop: Stop) -> Lifted:
        """Work it out."""
        limits = [each for each in (self.seconds, stop.seconds) if each is not None]
        until = replace(stop, work=self.work, seconds=min(limits, default=None))
        budget = Budget(until, self.work)
        floor = set_floor(
            yard,
            shared.need,
            shared.short_price,
            self.floor,
            self.known,
            self.met,
            self.limit,
            budget,
            Fraction(1),
        )
        return Lifted(None, [], budget.done, floor)
