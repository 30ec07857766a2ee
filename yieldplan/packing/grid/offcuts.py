"""What the far end of a board counts for when the shop keeps it: part of its share of the price.

The rules are those of `plan_format.md` under "Offcuts with a worth": only on straight
boards, only the whole end (or, ripped first, the whole far edge), clear of every mark, of a
size worth keeping and at least 30 in a hundred of the board.
"""

from __future__ import annotations

import numpy as np

from yieldplan.packing.grid.cells import Grid
from yieldplan.packing.grid.crossings import Ints
from yieldplan.packing.grid.pattern import Pattern
from yieldplan.packing.problem import Bin, Problem

_LEAST_SHARE = (3, 10)
"""A board left under this share counts as used up."""


_NOUGHT = np.zeros((), np.int64)


class Offcuts:
    """The worth of what each pattern of one piece leaves at its far side.

    Parameters
    ----------
    along
        For each mark, the worth of what lies beyond it. [money/10,000]
    across
        For each cell across, the worth of what lies beyond it when the board is ripped
        first. [money/10,000]
    """

    def __init__(self, piece: Bin, grid: Grid, problem: Problem) -> None:
        self._piece = piece
        self._grid = grid
        self._problem = problem
        if not problem.offcut_percent or not piece.is_straight or not grid.is_usable:
            # One nought for all of it: there are thousands of boards.
            self.along = np.broadcast_to(_NOUGHT, grid.along + 1)
            self.across = np.broadcast_to(_NOUGHT, grid.across + 1)
            return
        self.along = np.zeros(grid.along + 1, np.int64)
        self.across = np.zeros(grid.across + 1, np.int64)
        kerf = problem.kerf
        wide = piece.width - sum(piece.edges)
        step = problem.step_along
        last = max((block.i1 for block in grid.found), default=0)
        for j in range(max(0, last), grid.along):
            self.along[j] = self._worth((grid.along - j) * step - kerf, wide)
        top = max((block.u1 for block in grid.found), default=0)
        for v in range(max(0, top), grid.across):
            self.across[v] = self._worth(
                grid.along * step - kerf, (grid.across - v) * problem.step_across - kerf
            )

    def _worth(self, length: int, width: int) -> int:
        piece, problem = self._piece, self._problem
        area, whole = length * width, piece.length * piece.width
        least, of = _LEAST_SHARE
        is_large = of * area >= least * whole and any(
            length >= long and width >= wide for long, wide in problem.offcut_sizes
        )
        if length <= 0 or width <= 0 or not is_large:
            return 0
        return piece.price * problem.offcut_percent * area // (100 * whole)

    def of(self, pattern: Pattern) -> int:
        """What the pattern leaves counts for. [money/10,000]"""
        piece, problem = self._piece, self._problem
        x0, y0 = piece.trims[0], piece.edges[0]
        if pattern.breakdown == "R":
            tops = [
                strip.v for s in pattern.sections for strip in s.strips if strip.cuts
            ]
            worth = int(self.across[max(tops)]) if tops else 0
            y0 += max(tops, default=0) * problem.step_across
        else:
            ends = [section.j for section in pattern.sections if any(section.cuts())]
            worth = int(self.along[max(ends)]) if ends else 0
            x0 = self._grid.zero + max(ends, default=0) * problem.step_along
            x0 += problem.kerf
        # A mark past the last cell stands in no cell, yet it stands in the wood.
        x1, y1 = piece.length - piece.trims[1], piece.width - piece.edges[1]
        is_clear = not any(
            box[0] < x1 and box[2] > x0 and box[1] < y1 and box[3] > y0
            for box in piece.found
        )
        return worth if is_clear else 0


def best_end(values: Ints, worths: Ints) -> int:
    """Where to stop cutting: the end with the greatest value and worth, the far one first."""
    total = values[: len(worths)] + worths
    return len(worths) - 1 - int(np.argmax(total[::-1]))
