"""A board ripped first, as stretches: strips of the full length that meet the same marks, rows of blanks.

See `near_best`. The rules are those of `rip_first` and `faced_strips`; here it is not the
best filling that is looked for but every good one. The label of a strip is the place of its
width among the widths there are.
"""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from yieldplan.packing.grid.crossings import Bools, Crossings, Ints
from yieldplan.packing.grid.pattern import Cut, Pattern, Section, Strip
from yieldplan.packing.listing.allowance import Allowance
from yieldplan.packing.listing.counts import Counts
from yieldplan.packing.listing.near_layout import Layout, Priced, Stretch
from yieldplan.packing.listing.near_strips import Pieces
from yieldplan.packing.listing.walk import Fillings, Walk
from yieldplan.packing.patterns.bin_faces import BinFaces
from yieldplan.packing.patterns.group import Group
from yieldplan.packing.patterns.values import LOW


class RipLayout(Layout):
    """The strips of one board."""

    def __init__(
        self, pieces: Pieces, group: Group, place: int, counts: Counts
    ) -> None:
        self.counts = counts
        self.pieces = pieces
        board = group.bins[place]
        faces = board.in_room(board.rooms.whole())
        self.bin = faces.bin
        self.size = size = faces.grid.across
        self.along = faces.grid.along
        self.sizes = pieces.widths.copy()
        inside = [at for at, block in enumerate(faces.blocks) if block.u0 < block.u1]
        across = Crossings.of(
            size, [(faces.blocks[at].u0, faces.blocks[at].u1) for at in inside]
        )
        ends = np.arange(size + 1)[:, None] + self.sizes[None, :]
        begun = across.begun[np.minimum(ends, size)]
        raw = across.ended[:, None] * across.columns + begun
        number_of = np.full(across.rows * across.columns, -1, np.int64)
        may: list[Bools] = []
        for ended, has_begun, number in across.each():
            crossed = across.met(ended, has_begun)
            met = sum(1 << at for bit, at in enumerate(inside) if crossed >> bit & 1)
            here = self._may_begin(faces, met)
            if here.any():
                number_of[number] = len(may)
                may.append(here)
        self.may = np.array(may).reshape(len(may), len(pieces.items), self.along + 1)
        self.num_kinds = len(may)
        self.kind = np.where(ends <= size, number_of[raw], -1)
        self.is_fresh = np.ones(size + 1, np.bool_)
        self.is_fresh[1:] = across.ended[1:] != across.ended[:-1]

    def _may_begin(self, faces: BinFaces, met: int) -> Bools:
        """By piece and mark, whether the piece may begin there in a strip with these marks."""
        pieces, size = self.pieces, self.along
        marks = np.arange(size + 1)
        may = np.zeros((len(pieces.items), size + 1), np.bool_)
        for place, shape in enumerate(pieces.shapes):
            rule, ends = shape.face_class, marks + shape.length
            reach = np.maximum(
                *(self._reach(faces, met & up) for up in faces.forbidden[rule])
            )
            here = reach >= ends
            in_zones = self._reach(faces, met & faces.in_zones[rule])
            near, far = shape.zones
            if near:
                here &= in_zones >= marks + near
            if far:
                begins = np.minimum(ends - far, size)
                here &= in_zones[begins] >= ends
            may[place] = here & (ends <= size)
        return may

    def _reach(self, faces: BinFaces, shunned: int) -> Ints:
        """For each mark, how far a stretch from there may go."""
        size = self.along
        reach = np.full(size + 1, size, np.int64)
        for place, block in enumerate(faces.blocks):
            if shunned >> place & 1:
                reach[: block.i1] = np.minimum(reach[: block.i1], block.i0)
        return reach

    def price(self, prices: Ints) -> _PricedStrips:
        """The strips at some rows of prices."""
        return _PricedStrips(self, prices)


class _PricedStrips(Priced):
    def __init__(self, layout: RipLayout, prices: Ints) -> None:
        self._layout = layout
        self._prices = prices
        pieces, along = layout.pieces, layout.along
        self._worth = layout.counts.unpack(pieces.made) @ prices.T
        widths = np.arange(len(pieces.widths))
        gain = np.where(
            widths[None, None, :] < pieces.width[:, None, None],
            LOW,
            self._worth[:, :, None],
        )
        shape = (layout.num_kinds, len(prices), len(widths))
        # What the blanks from each mark on are worth at best, in a strip of each width.
        self._after = np.zeros((along + 1, *shape), np.int64)
        for at in range(along - 1, -1, -1):
            best = self._after[at + 1].copy()
            for place in np.flatnonzero(layout.may[:, :, at].any(axis=0)).tolist():
                found = self._after[at + int(pieces.length[place])] + gain[place]
                found[~layout.may[:, place, at]] = LOW
                np.maximum(best, found, out=best)
            self._after[at] = best
        self.at_best = self._after[0].transpose(1, 0, 2)

    def begin(self, slack: Ints, longest: int, allowance: Allowance) -> None:
        """Nothing is worked out beforehand."""

    def fill(self, kind: int, least: Ints, allowance: Allowance) -> Walk:
        """The fillings of a kind worth at least so much, by row and place of width."""
        layout, pieces = self._layout, self._layout.pieces
        after = self._after[:, kind]
        least_at = least[:, None, :] - after.transpose(1, 0, 2)
        least_at = np.minimum.accumulate(least_at[:, :, ::-1], axis=2)[:, :, ::-1]
        may = layout.may[kind]
        fresh = may.copy()
        fresh[:, 1:] &= ~may[:, :-1]
        return Walk(
            layout.counts,
            self._prices,
            layout.along,
            Fillings(pieces.made, pieces.length, pieces.width, self._worth),
            lambda at: (may[:, at], fresh[:, at]),
            lambda ends, labels: least_at[:, ends, labels],
            allowance,
        )

    def pattern(self, stretches: Sequence[Stretch]) -> Pattern:
        """The pattern of some strips."""
        pieces = self._layout.pieces
        strips = []
        for stretch in stretches:
            assert stretch.walk is not None
            cuts = [
                Cut(i, i + int(pieces.length[content]), pieces.items[content])
                for content, i in stretch.walk.way_to(stretch.state)
            ]
            strips.append(
                Strip(stretch.begin, stretch.begin + stretch.size, tuple(cuts))
            )
        section = Section(0, self._layout.along, tuple(strips))
        return Pattern(self._layout.bin, "R", (section,))
