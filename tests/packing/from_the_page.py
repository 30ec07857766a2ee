"""The greatest value of one piece by trying every pattern, written from `plan_format.md` alone."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from functools import lru_cache
from math import ceil, floor

from yieldplan.packing.problem import Bin, Problem


class Page:
    """One bin of a problem, as the page lays it out."""

    def __init__(self, problem: Problem, piece: Bin) -> None:
        self.problem, self.piece = problem, piece
        kerf, step = problem.kerf, problem.step_along
        trim, far = piece.trims
        if problem.marks_from == "zero end":
            self.first = ceil(Fraction(trim, step)) * step
        else:
            self.first = trim - kerf
        self.along = floor(Fraction(piece.length - far - self.first, step))
        self.across = floor(
            Fraction(piece.width - sum(piece.edges) + kerf, problem.step_across)
        )

    def takes(self, number: int) -> tuple[int, int]:
        """Cells of an item, along and across."""
        item, kerf = self.problem.items[number], self.problem.kerf
        return (
            ceil(Fraction(item.length + kerf, self.problem.step_along)),
            ceil(Fraction(item.width + kerf, self.problem.step_across)),
        )

    def meets(
        self, box: tuple[int, int, int, int], i: int, j: int, u: int, v: int
    ) -> bool:
        """Whether a rectangle of cells meets a mark."""
        x0, y0, x1, y1 = box
        step_x, step_y = self.problem.step_along, self.problem.step_across
        edge = self.piece.edges[0]
        low = floor(Fraction(y0 - edge + self.problem.kerf, step_y))
        high = ceil(Fraction(y1 - edge, step_y))
        return (
            i < ceil(Fraction(x1 - self.first, step_x))
            and j > floor(Fraction(x0 - self.first, step_x))
            and u < high
            and v > min(low, high - 1)
        )

    def may_lie(self, number: int, i: int, j: int, u: int, v: int) -> bool:
        """Whether the item may lie in a rectangle with face A up or with face B up."""
        met = [b for b in self.piece.blocks if self.meets(b.box, i, j, u, v)]
        return any(
            not any(b.on_a & side_a or b.on_b & side_b for b in met)
            for side_a, side_b in self.problem.items[number].layers
        )

    def greatest(self, prices: Sequence[int], family: str) -> int:
        """V of the page."""
        if self.along < 1 or self.across < 1:
            return 0
        if family == "E":
            return max(self.greatest(prices, "R"), self.greatest(prices, "C"))
        value = {
            number: sum(
                prices[demand] * count
                for demand, count in self.problem.items[number].makes.items()
            )
            for number in self.piece.holds
        }
        return self._rip(value) if family == "R" else self._crosscut(value)

    def _rip(self, value: dict[int, int]) -> int:
        @lru_cache(None)
        def strip(u: int, v: int, i: int) -> int:
            if i >= self.along:
                return 0
            best = strip(u, v, i + 1)
            for number, worth in value.items():
                long, wide = self.takes(number)
                if (
                    i + long <= self.along
                    and wide <= v - u
                    and self.may_lie(number, i, i + long, u, v)
                ):
                    best = max(best, worth + strip(u, v, i + long))
            return best

        @lru_cache(None)
        def board(u: int) -> int:
            return max(
                [0]
                + [strip(u, v, 0) + board(v) for v in range(u + 1, self.across + 1)]
                + ([board(u + 1)] if u < self.across else [])
            )

        return board(0)

    def _crosscut(self, value: dict[int, int]) -> int:
        @lru_cache(None)
        def strip(i: int, j: int, u: int, v: int, long_left: int) -> int:
            best = 0
            for number, worth in value.items():
                long, wide = self.takes(number)
                if (
                    long <= long_left
                    and wide <= v - u
                    and self.may_lie(number, i, j, u, v)
                ):
                    best = max(best, worth + strip(i, j, u, v, long_left - long))
            return best

        @lru_cache(None)
        def section(i: int, j: int, u: int) -> int:
            return max(
                [0]
                + [
                    strip(i, j, u, v, j - i) + section(i, j, v)
                    for v in range(u + 1, self.across + 1)
                ]
                + ([section(i, j, u + 1)] if u < self.across else [])
            )

        @lru_cache(None)
        def board(i: int) -> int:
            return max(
                [0]
                + [section(i, j, 0) + board(j) for j in range(i + 1, self.along + 1)]
                + ([board(i + 1)] if i < self.along else [])
            )

        return board(0)


def floor_of(problem: Problem, prices: Sequence[int], need: Sequence[int]) -> int:
    """`priced` of the page."""
    return sum(p * n for p, n in zip(prices, need, strict=True)) + sum(
        piece.copies
        * min(0, piece.price - Page(problem, piece).greatest(prices, problem.family))
        for piece in problem.bins
    )
