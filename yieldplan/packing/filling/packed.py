"""A plan in cells: the patterns chosen, what they cost, and what they leave unmade."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from yieldplan.packing.filling.yard import Yard
from yieldplan.packing.grid.pattern import Pattern, cut_to_demand, tidy


@dataclass(frozen=True)
class Packed:
    """Patterns that together make what is needed, each cut to what is needed.

    Parameters
    ----------
    cost
        In the search's own prices (areas, where all wood is free).
    short
        How many of each demand it leaves unmade.
    missing
        Area left unmade, show parts first, then the others. [ticks^2]
    """

    patterns: tuple[Pattern, ...]
    cost: int
    short: tuple[int, ...]
    missing: tuple[int, int]
    settings: int

    @property
    def key(self) -> tuple[tuple[int, int], int, int, int]:
        """Less is better: missing area, money, boards, settings of the saw."""
        return (self.missing, self.cost, len(self.patterns), self.settings)

    @property
    def is_whole(self) -> bool:
        """Whether nothing is left unmade."""
        return not any(self.short)


def packed(patterns: Sequence[Pattern], need: Sequence[int], yard: Yard) -> Packed:
    """The patterns cut to what is needed; those that make nothing then are left out.

    Cheap boards keep their parts; what is too much is taken from the dearest board, so
    that it may drop out altogether.
    """
    problem = yard.problem
    sizes = [(size.along, size.across) for size in yard.sizes]
    left = list(need)
    kept = []
    for pattern in sorted(patterns, key=lambda p: (yard.price[p.bin], p.bin)):
        cut, left = cut_to_demand(pattern, left, problem)
        cut = tidy(cut, sizes)
        if cut.sections:
            kept.append(cut)
    kept.sort(key=lambda pattern: pattern.bin)
    missing = [0, 0]
    for count, demand in zip(left, problem.demands, strict=True):
        missing[min(demand.rank, 1)] += count * demand.area
    return Packed(
        tuple(kept),
        sum(yard.cost(pattern) for pattern in kept),
        tuple(left),
        (missing[0], missing[1]),
        sum(
            len(section.strips) + sum(len(strip.cuts) for strip in section.strips) + 1
            for pattern in kept
            for section in pattern.sections
        ),
    )
