"""A problem with everything about its bins and items worked out once: grids, sizes, who fits where."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from yieldplan.packing.grid.cells import (
    Grid,
    Size,
    blocks_met,
    faces_up,
    grid_of,
    is_forbidden,
    is_in_a_zone,
    size_of,
    zones_of,
)
from yieldplan.packing.grid.crossings import Bools, Ints
from yieldplan.packing.grid.offcuts import Offcuts
from yieldplan.packing.grid.pattern import (
    Breakdown,
    Cut,
    Pattern,
    Section,
    Strip,
    makes_of,
)
from yieldplan.packing.grid.rooms import Room, Rooms
from yieldplan.packing.patterns.pricing import Pricing
from yieldplan.packing.problem import Problem


@dataclass(frozen=True)
class Column:
    """A bin with one of its patterns, and what that makes of each demand."""

    bin: int
    pattern: Pattern
    makes: tuple[int, ...]
    cost: int
    """The bin's price less what the pattern leaves of it counts for. [money/10,000]"""


class Yard:
    """What the stages of the search share."""

    def __init__(self, problem: Problem) -> None:
        self.problem = problem
        self.grids: tuple[Grid, ...] = tuple(grid_of(p, problem) for p in problem.bins)
        self.sizes: tuple[Size, ...] = tuple(size_of(i, problem) for i in problem.items)
        self._along = np.array([size.along for size in self.sizes], np.int64)
        self._across = np.array([size.across for size in self.sizes], np.int64)
        self.zones = tuple(zones_of(i, problem) for i in problem.items)
        self.in_sets = problem.in_sets()
        # Of each item the demands it serves and how often; filled up with 0 of the first.
        most = max((len(item.makes) for item in problem.items), default=0)
        self._makes = np.zeros((len(problem.items), most), np.int64)
        self._count = np.zeros((len(problem.items), most), np.int64)
        makers: list[set[int]] = [set() for _ in problem.demands]
        for number, item in enumerate(problem.items):
            for place, (demand, count) in enumerate(item.makes.items()):
                self._makes[number, place] = demand
                self._count[number, place] = count
                makers[demand].add(number)
        self.rivals = tuple(
            frozenset().union(*(makers[demand] for demand in item.makes))
            for item in problem.items
        )
        """Of each item, those that make something it makes too."""
        self._may_spare = np.array([item.may_spare for item in problem.items], bool)
        self._held: dict[frozenset[int], Ints] = {}
        self._rooms = tuple(
            Rooms(piece, grid, problem)
            for piece, grid in zip(problem.bins, self.grids, strict=True)
        )
        self.pricing = Pricing(problem)
        self.price = tuple(piece.price for piece in problem.bins)
        self._offcuts = tuple(
            Offcuts(piece, grid, problem)
            for piece, grid in zip(problem.bins, self.grids, strict=True)
        )

    @property
    def may_rip_only(self) -> bool:
        """Whether the shop saws either way, and nothing (a set in steps) must be crosscut first."""
        return self.problem.family[0] == "E" and not self.in_sets

    def wanted(
        self, bin_: int, left: Sequence[int], prices: Sequence[int]
    ) -> list[int]:
        """Items for the bin that serve what is left, the dearest first; none of a set, none too large."""
        holds = self.problem.bins[bin_].holds
        if holds not in self._held:
            self._held[holds] = np.array(sorted(holds - self.in_sets), np.int64)
        items = self._held[holds]
        makes, count = self._makes[items], self._count[items]
        open_ = np.array(left, np.int64)[makes]
        is_wanted: Bools = np.all(count <= open_, axis=1)
        if self._may_spare.any():
            spares = self._may_spare[items]
            is_wanted[spares] = ((count[spares] > 0) & (open_[spares] > 0)).any(axis=1)
        grid = self.grids[bin_]
        is_wanted &= self._along[items] <= grid.along
        is_wanted &= self._across[items] <= grid.across
        items, makes, count = items[is_wanted], makes[is_wanted], count[is_wanted]
        worth = (np.array(prices, np.int64)[makes] * count).sum(axis=1)
        order: list[int] = items[np.lexsort((items, -worth))].tolist()
        return order

    def worth(self, pattern: Pattern) -> int:
        """What the pattern leaves of its bin counts for. [money/10,000]"""
        if not self.problem.offcut_percent:
            return 0
        return self._offcuts[pattern.bin].of(pattern)

    def cost(self, pattern: Pattern) -> int:
        """The bin's price less that. [money/10,000]"""
        return self.price[pattern.bin] - self.worth(pattern)

    def column(self, pattern: Pattern) -> Column:
        """The pattern as a column."""
        makes = tuple(makes_of(pattern, self.problem))
        return Column(pattern.bin, pattern, makes, self.cost(pattern))

    def room(self, bin_: int, breakdown: Breakdown, i: int, j: int) -> Room:
        """How wide a section is, or the whole board when it is ripped first."""
        rooms = self._rooms[bin_]
        return rooms.whole() if breakdown == "R" else rooms.section(i, j)

    def may_lie(
        self,
        item: int,
        bin_: int,
        i: int,
        j: int,
        u: int,
        v: int,
        breakdown: Breakdown = "C",
        room: Room | None = None,
    ) -> bool:
        """Whether a rectangle of cells is clear enough for an item.

        Parameters
        ----------
        i, j
            Rip first the item's own stretch; crosscut first the section it lies in.
        room
            Of the section, or of the board.
        """
        grid, down = self.grids[bin_], room.down if room else 0
        met = blocks_met(grid, i, j, u, v, down)
        asked = self.problem.items[item]
        if not met:
            return True
        if is_forbidden(asked, met):
            return False
        near, far = self.zones[item]
        if breakdown == "C":
            return not (near or far) or not is_in_a_zone(asked, met)
        at_ends = [
            *(blocks_met(grid, i, i + near, u, v, down) if near else ()),
            *(blocks_met(grid, j - far, j, u, v, down) if far else ()),
        ]
        return not is_in_a_zone(asked, at_ends)

    def cut_may_lie(
        self, cut: Cut, bin_: int, section: Section, strip: Strip, breakdown: Breakdown
    ) -> bool:
        """Whether the cells that an item takes up where it is cut are clear enough for it."""
        room = self.room(bin_, breakdown, section.i, section.j)
        if cut.across is not None:
            # It has cells to itself: rip first or not, only these must be clear.
            return self.may_lie(
                cut.item, bin_, cut.i, cut.j, *cut.across, breakdown="R", room=room
            )
        i, j = (cut.i, cut.j) if breakdown == "R" else (section.i, section.j)
        return self.may_lie(cut.item, bin_, i, j, strip.u, strip.v, breakdown, room)

    def faces_up(self, item: int, bin_: int, i: int, j: int, u: int, v: int) -> str:
        """The faces of the board that may show of an item here: "AB", "A", "B" or none."""
        met = blocks_met(self.grids[bin_], i, j, u, v)
        return faces_up(self.problem.items[item], met)

    def can_hold(self, item: int, bin_: int) -> bool:
        """Whether a bin has a place for an item at all."""
        if item not in self.problem.bins[bin_].holds:
            return False
        family = self.problem.family
        ways: dict[str, tuple[Breakdown, ...]] = {
            "E": ("C", "R"),
            "C": ("C",),
            "R": ("R",),
        }
        may = ways[family[0]]
        if family == "C+" and self.problem.bins[bin_].is_straight:
            # Its zones must be clear where they lie, as if the board were ripped first.
            may = ("C", "R")
        return any(self._can_hold(item, bin_, way) for way in may)

    def _can_hold(self, item: int, bin_: int, way: Breakdown) -> bool:
        grid, size = self.grids[bin_], self.sizes[item]
        # Pushed toward the zero corner, it lies at the corner or against marks, or a
        # mark lies just before its far joint. Up a tapered board it may lie anywhere.
        far = self.zones[item][1]
        ends = {block.i1 for block in grid.blocks}
        starts = {0, *ends, *(end - size.along + far for end in ends)}
        if self.problem.bins[bin_].widths is not None:
            starts |= set(range(grid.along - size.along + 1))
        for i in sorted(starts):
            j = i + size.along
            if i < 0 or j > grid.along:
                continue
            room = self.room(bin_, way, i, j)
            tops = {0, *(block.u1 for block in grid.blocks)}
            for u in sorted(tops):
                v = u + size.across
                if v <= room.across and self.may_lie(item, bin_, i, j, u, v, way, room):
                    return True
        return False

    def can_make(self, demand: int) -> bool:
        """Whether any bin has a place for any item that makes the demand."""
        makers = (
            n for n, item in enumerate(self.problem.items) if demand in item.makes
        )
        bins = self.pricing.bins
        return any(self.can_hold(number, bin_) for number in makers for bin_ in bins)

    def area_prices(self, left: Sequence[int]) -> list[int]:
        """A first guess: each part at the average price of its area."""
        area = sum(piece.length * piece.width for piece in self.problem.bins)
        total = sum(self.price)
        return [
            -(-demand.area * total // area) if open_ and area else 0
            for demand, open_ in zip(self.problem.demands, left, strict=True)
        ]
