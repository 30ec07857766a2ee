"""How drawers stand over each other in a case: what lies between them, and what is left to share."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from yieldplan.model.sums import Sum
from yieldplan.units import Inches


@dataclass(frozen=True, kw_only=True)
class Stack:
    """Drawers one above the other, filling the height of a case exactly.

    What is shared out are the heights of the fronts where fronts are applied, else
    those of the openings.

    Parameters
    ----------
    height
        Of the hole in the case. [in]
    rail
        What a rail between two drawers takes up; None where nothing stands there. [in]
    is_applied
        Whether the fronts are applied to their boxes.
    overlays
        How far an applied front covers the case above and below; None where it sits
        inside. [in]
    gap
        Left free at each edge of an applied front inside its opening. [in]
    between
        Left free between two applied fronts that no rail keeps apart. [in]
    """

    height: Inches
    drawers: int
    rail: Inches | None
    is_applied: bool
    overlays: tuple[Inches, Inches] | None
    gap: Inches
    between: Inches

    @property
    def what(self) -> str:
        """What is shared out: `front` or `opening`."""
        return "front" if self.is_applied else "opening"

    def overlays_of(self, number: int) -> tuple[Inches, Inches]:
        """How far front `number`, counted from 0 at the top, lies over its opening.

        Where no rail stands between two fronts they have nothing to lie on there.
        """
        if self.overlays is None:
            return Fraction(0), Fraction(0)
        above, below = self.overlays
        if self.rail is not None:
            return above, below
        last = number == self.drawers - 1
        return above if number == 0 else Fraction(0), below if last else Fraction(0)

    @property
    def to_share(self) -> Sum:
        """What the heights must come to."""
        total = Sum.of(("opening height", self.height))
        apart = self.drawers - 1
        if self.rail is not None:
            total += _some("rail", -self.rail, apart)
        elif self.is_applied:
            total += _some("between fronts", -self.between, apart)
        if not self.is_applied:
            return total
        if self.overlays is None:
            edges = 2 * self.drawers if self.rail is not None else 2
            return total + _some("gap", -self.gap, edges)
        for words, lying in zip(
            ("overlay above", "overlay below"), self.overlays, strict=True
        ):
            total += _some(words, lying, self.drawers if self.rail is not None else 1)
        return total

    def opening(self, number: int, height: Sum) -> Sum:
        """The opening of a drawer as it is to be made for, from its share of the height.

        Fronts without rails share the gap between them, so that their openings overlap.
        """
        if not self.is_applied:
            return height
        if self.overlays is None:
            return height + _some("gap", self.gap, 2)
        above, below = self.overlays_of(number)
        return height + _some("overlay", -above, 1) + _some("overlay", -below, 1)

    @property
    def gap_on_rail(self) -> Inches:
        """What stays free between two fronts that lie over the rail between them. [in]"""
        over = sum(self.overlays, Fraction(0)) if self.overlays else Fraction(0)
        return (self.rail or Fraction(0)) - over


def _some(words: str, inches: Inches, times: int) -> Sum:
    return Sum.of((words, inches, times)) if inches and times else Sum(())
