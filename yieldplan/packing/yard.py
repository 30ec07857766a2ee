"""A problem with everything about its bins and items worked out once: grids, sizes, who fits where."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from yieldplan.packing.cells import (
    Grid,
    Size,
    blocks_met,
    grid_of,
    is_forbidden,
    size_of,
)
from yieldplan.packing.pattern import Pattern, makes_of
from yieldplan.packing.pricing import Pricing
from yieldplan.packing.problem import Problem


@dataclass(frozen=True)
class Column:
    """A bin with one of its patterns, and what that makes of each demand."""

    bin: int
    pattern: Pattern
    makes: tuple[int, ...]


class Yard:
    """What the stages of the search share."""

    def __init__(self, problem: Problem) -> None:
        self.problem = problem
        self.grids: tuple[Grid, ...] = tuple(grid_of(p, problem) for p in problem.bins)
        self.sizes: tuple[Size, ...] = tuple(size_of(i, problem) for i in problem.items)
        self.pricing = Pricing(problem)
        self.price = tuple(piece.price for piece in problem.bins)

    def column(self, pattern: Pattern) -> Column:
        """The pattern as a column."""
        return Column(pattern.bin, pattern, tuple(makes_of(pattern, self.problem)))

    def may_lie(self, item: int, bin_: int, i: int, j: int, u: int, v: int) -> bool:
        """Whether a rectangle of cells is clear enough for an item."""
        met = blocks_met(self.grids[bin_], i, j, u, v)
        return not met or not is_forbidden(self.problem.items[item], met)

    def can_hold(self, item: int, bin_: int) -> bool:
        """Whether a bin has a place for an item at all."""
        if item not in self.problem.bins[bin_].holds:
            return False
        grid, size = self.grids[bin_], self.sizes[item]
        # Pushed toward the zero corner, it lies at the corner or against marks.
        ends = sorted({0, *(block.i1 for block in grid.blocks)})
        tops = sorted({0, *(block.u1 for block in grid.blocks)})
        return any(
            i + size.along <= grid.along
            and u + size.across <= grid.across
            and self.may_lie(item, bin_, i, i + size.along, u, u + size.across)
            for i in ends
            for u in tops
        )

    def can_make(self, demand: int) -> bool:
        """Whether any bin has a place for any item that makes the demand."""
        return any(
            demand in item.makes and self.can_hold(number, bin_)
            for number, item in enumerate(self.problem.items)
            for bin_ in self.pricing.bins
        )

    def area_prices(self, left: Sequence[int]) -> list[int]:
        """A first guess: each part at the average price of its area."""
        area = sum(piece.length * piece.width for piece in self.problem.bins)
        total = sum(self.price)
        return [
            -(-demand.area * total // area) if open_ else 0
            for demand, open_ in zip(self.problem.demands, left, strict=True)
        ]
