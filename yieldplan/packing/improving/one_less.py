"""A board is left out of the plan, and others are cut anew until nothing is unmade.

Of boards that are alike every plan costs a whole number of them, so the money shows no way
down. What a cheaper plan leaves unmade does. Several such plans go on side by side.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace

from yieldplan.packing.filling.packed import Packed, packed
from yieldplan.packing.filling.yard import Column, Yard
from yieldplan.packing.grid.pattern import Pattern, left_after
from yieldplan.packing.improving.cut_anew import Asked, CutAnew, losses_of
from yieldplan.packing.improving.dives import AT_ONCE, Found
from yieldplan.packing.stop import NO_LIMIT, Budget, Stop

_FAR_BEHIND = 2
"""A line that leaves so many times as much unmade as the best one goes on from there."""
_LEAST_PRICE = 4
"""A part the floor's prices count for little costs this part of its area's price."""


@dataclass(frozen=True)
class Line:
    """A plan that leaves something unmade, and how much dearer each demand has become.

    Parameters
    ----------
    patterns
        Empty before its first tries.
    most
        What the plan may cost. [money/10,000]
    seed
        Of its next tries.
    work
        Of its next tries, at most.
    """

    patterns: tuple[Pattern, ...]
    dearer: tuple[float, ...]
    most: int
    seed: tuple[int, ...] = ()
    work: int = 0

    def do(self, yard: Yard, shared: Asked, stop: Stop) -> Reached:
        """Try, one time at least."""
        # What is begun is gone through, however long it takes.
        budget = Budget(stop, NO_LIMIT)
        tries = CutAnew(yard, shared, self.most, self.patterns, self.dearer, self.seed)
        tries.begin(budget)
        while any(tries.left) and tries.patterns:
            tries.one(budget)
            if budget.done >= self.work or budget.is_over():
                break
        plan = None
        if not any(tries.left):
            plan = packed(tries.patterns, shared.need, yard)
        return Reached(
            plan, tries.found, budget.done, tuple(tries.patterns), tries.dearer
        )


@dataclass(frozen=True)
class Reached(Found):
    """How far a line came; with a plan, where nothing is unmade any more."""

    patterns: tuple[Pattern, ...]
    dearer: tuple[float, ...]


class OneLess:
    """The lines of one search."""

    def __init__(self, yard: Yard, prices: Sequence[int], need: Sequence[int]) -> None:
        self._yard = yard
        self._need = tuple(need)
        self._prices = tuple(
            max(price, area // _LEAST_PRICE)
            for price, area in zip(prices, yard.area_prices(need), strict=True)
        )
        self._plan: Packed | None = None
        self._lines: list[Line] = []
        self.waves = 0
        """How often the lines went on."""

    def asked(self, copies: Mapping[int, int], columns: Sequence[Column]) -> Asked:
        """What is asked of the lines."""
        return Asked(self._need, copies, self._prices, tuple(columns))

    def lines(self, plan: Packed, floor: int, work: int) -> list[Line]:
        """The next tries, of so much work each: where the lines have come, or from a better plan.

        The first line looks for a plan a little cheaper, the others for more and more.
        """
        if plan is not self._plan:
            without_one = () if self._plan is None else self._without_one(plan)
            self._plan = plan
            self._lines = [
                Line(
                    () if place % 2 else without_one,
                    (1.0,) * len(self._prices),
                    plan.cost - 1 - place * (plan.cost - 1 - floor) // AT_ONCE,
                )
                for place in range(AT_ONCE)
            ]
        self.waves += 1
        return [
            replace(line, seed=(13, self.waves, place), work=work)
            for place, line in enumerate(self._lines)
        ]

    def go_on(self, answers: Sequence[Reached]) -> None:
        """Remember where the lines have come; one far behind goes on from the best one."""
        lines = [
            replace(line, patterns=answer.patterns, dearer=answer.dearer)
            for line, answer in zip(self._lines, answers, strict=False)
        ]
        self._lines[: len(lines)] = lines
        by_unmade = sorted(self._lines, key=self._unmade)
        best, worst = by_unmade[0], by_unmade[-1]
        if self._unmade(worst) > _FAR_BEHIND * self._unmade(best):
            place = self._lines.index(worst)
            self._lines[place] = replace(best, most=worst.most)

    def _unmade(self, line: Line) -> int:
        left = left_after(line.patterns, self._need, self._yard.problem)
        return sum(
            count * price for count, price in zip(left, self._prices, strict=True)
        )

    def _without_one(self, plan: Packed) -> tuple[Pattern, ...]:
        """The plan without the board that loses most."""
        losses = losses_of(plan.patterns, self._prices, self._yard)
        worst = losses.index(max(losses))
        return plan.patterns[:worst] + plan.patterns[worst + 1 :]
