"""For each board of a yard, all it can make that matters: its layouts walked, crosscut first, ripped first or both."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from yieldplan.packing.grid.crossings import Ints
from yieldplan.packing.grid.pattern import Pattern
from yieldplan.packing.listing.allowance import Allowance
from yieldplan.packing.listing.counts import Counts
from yieldplan.packing.listing.near_best import NearBest
from yieldplan.packing.listing.near_crosscut import CrosscutLayout
from yieldplan.packing.listing.near_layout import Layout
from yieldplan.packing.listing.near_rip import RipLayout
from yieldplan.packing.listing.near_strips import Pieces
from yieldplan.packing.listing.weeding import undominated
from yieldplan.packing.patterns.group import Group, groups_of
from yieldplan.packing.problem import Problem


class Ways:
    """What one bin can make.

    Attributes
    ----------
    made
        Packed; where nothing matters, one row of nothing.
    most
        What its best pattern is worth at each row of prices. [money/10,000]
    """

    def __init__(
        self, counts: Counts, found: Sequence[NearBest], rows: int, allowance: Allowance
    ) -> None:
        self._found = list(found)
        self.most: Ints = np.zeros(rows, np.int64)
        for each in found:
            self.most = np.maximum(self.most, each.most)
        source = [
            (number, place)
            for number, each in enumerate(found)
            for place in range(len(each.made))
        ]
        made = np.concatenate(
            [np.zeros((1, counts.words), np.int64), *(each.made for each in found)]
        )
        self._source = [(-1, 0), *source]
        # Rip first may make the very same as crosscut first does: one of them will do.
        _, first = np.unique(made, axis=0, return_index=True)
        first = np.sort(first)
        kept = first[undominated(counts, made[first], first * 0, allowance)]
        self.made = made[kept]
        self._source = [self._source[place] for place in kept.tolist()]

    def pattern(self, place: int) -> Pattern | None:
        """The pattern behind a row of `made`; None for nothing."""
        number, at = self._source[place]
        return self._found[number].pattern(at) if number >= 0 else None


class WaysOf:
    """The layouts of every bin of a problem, made when they are asked for."""

    def __init__(self, problem: Problem, need: Sequence[int]) -> None:
        self.problem = problem
        self.counts = Counts(need)
        self._place: dict[int, tuple[Group, int, Pieces]] = {}
        for group in groups_of(problem):
            pieces = Pieces.of(group, problem, self.counts)
            for place, faces in enumerate(group.bins):
                self._place[faces.bin] = (group, place, pieces)

    def _layouts(self, number: int) -> list[Layout]:
        if number not in self._place:
            return []
        group, place, pieces = self._place[number]
        found: list[Layout] = []
        if self.problem.family in ("C", "E") and (pieces.items or group.sets):
            piece = self.problem.bins[number]
            found.append(CrosscutLayout(pieces, group, place, piece, self.counts))
        if self.problem.family in ("R", "E") and pieces.items:
            found.append(RipLayout(pieces, group, place, self.counts))
        return found

    def ways(
        self, number: int, prices: Ints, least: Ints, allowance: Allowance
    ) -> Ways:
        """What a bin can make that is worth enough at every row.

        Raises
        ------
        TooMany
            When the allowance is used up.
        """
        found = [
            NearBest(layout, prices, least, allowance)
            for layout in self._layouts(number)
        ]
        return Ways(self.counts, found, len(prices), allowance)
