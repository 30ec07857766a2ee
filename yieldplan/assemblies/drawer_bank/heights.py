"""Shares a height out among drawers, equally or graduated, so that nothing of it is left over."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from math import floor

from yieldplan.assemblies.drawer_bank.keys import Graduated
from yieldplan.model.sums import Sum
from yieldplan.units import Inches, UnitName, tape

STEP: dict[UnitName, Inches] = {"in": Fraction(1, 16), "mm": Fraction(10, 254)}
"""Heights come out on this step unless the job says another. [in]"""


@dataclass(frozen=True, kw_only=True)
class Shared:
    """A height to share, and how.

    All but the lowest come down to the step; the lowest takes what is left, so that
    together they are the height to the last fraction.

    Parameters
    ----------
    total
        What there is to share.
    drawers
        Among how many, from the top down.
    step
        What heights are brought down to. [in]
    what
        What is high: `front` or `opening`.
    """

    total: Sum
    drawers: int
    graduated: Graduated | None
    step: Inches
    what: str
    unit: UnitName

    def heights(self) -> tuple[Sum, ...]:
        """The heights from the top down."""
        upper = [self._by_rule(number) for number in range(self.drawers - 1)]
        above = sum((each.value for each in upper), Fraction(0))
        lowest = self._by_rule(self.drawers - 1)
        if above + lowest.value != self.total.value:
            taken = Sum.of((f"{self.what}s above", -above)) if upper else Sum(())
            lowest = self.total + taken
        return (*upper, lowest)

    def _by_rule(self, number: int) -> Sum:
        """The height of one of them, counted from 0 at the top."""
        count, grows = self.drawers, self.graduated
        if grows is not None and grows.step is not None:
            rises = Fraction(count * (count - 1), 2) * grows.step
            top = self._down((self.total.value - rises) / count)
            added = Sum.of(("step", grows.step, number)) if number else Sum(())
            return Sum.of((f"top {self.what}", top)) + added
        if grows is not None and grows.ratio is not None:
            shares = [grows.ratio**power for power in range(count)]
            share = self.total.value * shares[number] / sum(shares)
            words = (
                f"{self.what} {number + 1}, {_number(grows.ratio)} times the one above"
            )
            if not number:
                words = f"top {self.what}"
            return Sum.of((words, self._down(share)))
        words = (
            f"{self.what}, {count} share {tape(self.total.value, self.unit, join='-')}"
        )
        return Sum.of((words, self._down(self.total.value / count)))

    def _down(self, height: Inches) -> Inches:
        return floor(height / self.step) * self.step


def _number(ratio: Fraction) -> str:
    decimal = f"{float(ratio):g}"
    return decimal if Fraction(decimal) == ratio else str(ratio)
