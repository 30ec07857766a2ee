"""The back of a bookcase from upright boards: how wide each is when they are tongued and grooved."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from yieldplan.model.sums import Sum
from yieldplan.units import Inches, UnitName, tape

STEP: dict[UnitName, Inches] = {"in": Fraction(1, 16), "mm": Fraction(10, 254)}
"""Boards come out on this step, and the last one takes what is left. [in]"""


@dataclass(frozen=True, kw_only=True)
class BackBoards:
    """Boards side by side; each but the last has a tongue in its neighbour's groove.

    Parameters
    ----------
    across
        From rabbet to rabbet. [in]
    lap
        By how much a board reaches into its neighbour: its tongue less the gap. [in]
    """

    across: Inches
    boards: int
    lap: Inches
    unit: UnitName

    @property
    def width(self) -> Sum:
        """Width of every board but the last, tongue and all."""
        share = self._whole / self.boards
        words = f"board, {self.boards} share {tape(self.across, self.unit, join='-')} and their laps"
        total = Sum.of((words, share))
        over = share % STEP[self.unit]
        return total + Sum.of(("down to the step", -over)) if over else total

    @property
    def last(self) -> Sum:
        """Width of the last board: what is left."""
        others = self.boards - 1
        return Sum.of(
            ("across the back", self.across),
            ("board", -self.width.value, others),
            ("lap", self.lap, others),
        )

    @property
    def are_alike(self) -> bool:
        """Whether the last board is as wide as the others."""
        return self.last.value == self.width.value

    @property
    def _whole(self) -> Inches:
        return self.across + (self.boards - 1) * self.lap
