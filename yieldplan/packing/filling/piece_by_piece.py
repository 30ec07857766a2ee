"""One board, filled section by section (or strip by strip), each with what is left to make by then.

A best pattern is made at one asking of prices, and its sections know nothing of each other:
where every part is asked for once, most of them hold the same dearest parts. Taken one
after the other, the densest first, they share them out.
"""

from __future__ import annotations

from collections.abc import Sequence

from yieldplan.packing.filling.refill import refill
from yieldplan.packing.filling.yard import Yard
from yieldplan.packing.grid.pattern import (
    Breakdown,
    Pattern,
    Section,
    Strip,
    cut_to_demand,
)
from yieldplan.packing.patterns.crosscut_first import CrosscutFirst
from yieldplan.packing.patterns.densest import Luck
from yieldplan.packing.patterns.rip_first import RipFirst

Stretch = tuple[int, int]
"""From cell to cell."""


def piece_by_piece(
    yard: Yard,
    number: int,
    left: Sequence[int],
    prices: Sequence[int],
    luck: Luck,
    breakdown: Breakdown | None = None,
) -> tuple[Pattern, list[int]]:
    """A pattern of a bin that makes no more than is left, and what is left after it.

    Sets in steps are not looked for.

    Parameters
    ----------
    number
        Of the bin.
    left, prices
        Of each demand.
    breakdown
        How to begin; as the whole board is worth more, without.
    """
    filling = _Filling(yard, number, left, prices, luck)
    return refill(filling.run(breakdown), filling.left, prices, yard)


class _Filling:
    def __init__(
        self,
        yard: Yard,
        number: int,
        left: Sequence[int],
        prices: Sequence[int],
        luck: Luck,
    ) -> None:
        self.yard = yard
        self.number = number
        self.left = list(left)
        self.prices = prices
        self.luck = luck
        self.along = yard.grids[number].along

    def run(self, breakdown: Breakdown | None) -> Pattern:
        saw = self._saw(breakdown)
        if isinstance(saw, RipFirst):
            strips = self._strips(saw)
            return Pattern(self.number, "R", (Section(0, self.along, strips),))
        return Pattern(self.number, "C", self._sections(saw))

    def _saw(self, breakdown: Breakdown | None) -> RipFirst | CrosscutFirst:
        now = [
            price if count else 0
            for price, count in zip(self.prices, self.left, strict=True)
        ]
        return self.yard.pricing.saw_at(self.number, now, self.left, breakdown)

    def _sections(self, saw: CrosscutFirst) -> tuple[Section, ...]:
        free, found = [(0, self.along)], list[Section]()
        while any(self.left):
            densest = saw.densest(self.number, free, self.luck)
            section = densest and self._cut(densest, "C")
            if not section:
                break
            found.append(section)
            free = _without(free, section.i, section.j)
            self._saw("C")
        return tuple(sorted(found, key=lambda section: section.i))

    def _strips(self, saw: RipFirst) -> tuple[Strip, ...]:
        free, found = [(0, saw.across(self.number))], list[Strip]()
        while any(self.left):
            densest = saw.densest(self.number, free, self.luck)
            section = densest and self._cut(Section(0, self.along, (densest,)), "R")
            if not section:
                break
            (strip,) = section.strips
            found.append(strip)
            free = _without(free, strip.u, strip.v)
            self._saw("R")
        return tuple(sorted(found, key=lambda strip: strip.u))

    def _cut(self, section: Section, breakdown: Breakdown) -> Section | None:
        """What is needed of the section; None where nothing is."""
        whole = Pattern(self.number, breakdown, (section,))
        cut, after = cut_to_demand(whole, self.left, self.yard.problem)
        if after == self.left:
            return None
        self.left = after
        return cut.sections[0]


def _without(free: Sequence[Stretch], start: int, end: int) -> list[Stretch]:
    """What is free of the stretches beside this one."""
    rest = []
    for low, high in free:
        if low <= start and end <= high:
            rest += [each for each in ((low, start), (end, high)) if each[0] < each[1]]
        else:
            rest.append((low, high))
    return rest
