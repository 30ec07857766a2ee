"""A board cut crosscut first, as stretches: sections of one room and the same marks, stacks of strips.

See `near_best`. The rules are those of `sections` and `in_steps`; here it is not the best
filling that is looked for but every good one.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from yieldplan.packing.grid.crossings import Bools, Crossings, Ints
from yieldplan.packing.grid.pattern import Cut, Pattern, Section, Strip
from yieldplan.packing.grid.rooms import Room
from yieldplan.packing.listing.allowance import Allowance
from yieldplan.packing.listing.counts import Counts
from yieldplan.packing.listing.near_layout import Joined, Layout, Priced, Stretch
from yieldplan.packing.listing.near_strips import NearStrips, Pieces
from yieldplan.packing.listing.walk import Fillings, Walk
from yieldplan.packing.patterns.bin_faces import BinFaces
from yieldplan.packing.patterns.group import Group, Steps
from yieldplan.packing.patterns.values import Sums
from yieldplan.packing.problem import Bin


@dataclass(frozen=True)
class _Kind:
    """Sections alike.

    Parameters
    ----------
    across
        Cells, less what a step of a set takes at the near edge.
    near
        What that is.
    step
        The step's item, -1 without.
    masks
        For each cell and width, the rules under which a strip there will do; 0 for none.
    """

    across: int
    near: int
    step: int
    masks: Ints


class CrosscutLayout(Layout):
    """The sections of one board."""

    def __init__(
        self, pieces: Pieces, group: Group, place: int, piece: Bin, counts: Counts
    ) -> None:
        self.counts = counts
        self.pieces = pieces
        self._faces = faces = group.bins[place]
        self.bin = faces.bin
        self.size = size = faces.grid.along
        self.along = Crossings.of(size, [(b.i0, b.i1) for b in faces.blocks])
        self.sizes = np.zeros(size + 1, np.int64)
        sums = Sums.of(sorted(set(pieces.length.tolist())), size).totals
        self.sizes[sums] = sums
        self.kinds: list[_Kind] = []
        self._number: dict[tuple[Room, int, int, int], int] = {}
        self.kind = self._kinds()
        ended = self.along.ended
        self.is_fresh = np.ones(size + 1, np.bool_)
        near, far = piece.widths or (0, 0)
        # Where a board grows wider every cell further may hold what did not fit before.
        if near >= far:
            self.is_fresh[1:] = ended[1:] != ended[:-1]
        self.joined = [
            joined
            for steps in group.sets
            if faces.is_straight and (joined := self._joined(steps)) is not None
        ]
        self.num_kinds = len(self.kinds)

    def _kinds(self) -> Ints:
        faces, size = self._faces, self.size
        labels = np.flatnonzero(self.sizes > 0)
        across = np.full((size + 1, len(labels)), faces.grid.across, np.int64)
        down = np.zeros(len(labels), np.int64)
        if not faces.is_straight:
            table, down = faces.rooms.table(labels)
            across = np.zeros((size + 1, len(labels)), np.int64)
            across[: table.shape[1]] = table.T
        ends = np.arange(size + 1)[:, None] + labels[None, :]
        begun = self.along.begun[np.minimum(ends, size)]
        keys = np.stack(
            [
                across,
                np.broadcast_to(down, across.shape),
                np.broadcast_to(self.along.ended[:, None], across.shape),
                begun,
            ],
            axis=-1,
        )
        may = (ends <= size) & (across >= int(self.pieces.widths[0]))
        found = np.full((size + 1, size + 1), -1, np.int64)
        if not may.any():
            return found
        unique, inverse = np.unique(keys[may], axis=0, return_inverse=True)
        numbers = [self._kind(Room(a, d), e, b, -1) for a, d, e, b in unique.tolist()]
        chosen = np.full(across.shape, -1, np.int64)
        chosen[may] = np.array(numbers, np.int64)[inverse.ravel()]
        found[:, labels] = chosen
        return found

    def _kind(self, room: Room, ended: int, begun: int, step: int) -> int:
        """The number of a kind; -1 where no strip fits in it."""
        key = (room, ended, begun, step)
        if key not in self._number:
            masks = self._masks(room, self.along.met(ended, begun))
            if not masks.any() and step < 0:
                self._number[key] = -1
            else:
                self._number[key] = len(self.kinds)
                size = max(0, room.across - room.near)
                self.kinds.append(_Kind(size, room.near, step, masks))
        return self._number[key]

    def _masks(self, room: Room, met: int) -> Ints:
        faces: BinFaces = self._faces.in_room(room)
        size, widths = faces.grid.across, self.pieces.widths
        masks = np.zeros((size + 1, len(widths)), np.int64)
        places = [
            at
            for at, block in enumerate(faces.blocks)
            if met >> at & 1 and block.u0 < block.u1
        ]
        across = Crossings.of(
            size, [(faces.blocks[at].u0, faces.blocks[at].u1) for at in places]
        )
        mask_of = np.zeros(across.rows * across.columns, np.int64)
        for ended, begun, number in across.each():
            crossed = across.met(ended, begun)
            mask_of[number] = faces.allowed(
                sum(1 << at for bit, at in enumerate(places) if crossed >> bit & 1)
            )
        for place, width in enumerate(widths.tolist()):
            starts = np.arange(size - width + 1)
            if len(starts):
                rows = across.ended[starts] * across.columns
                masks[starts, place] = mask_of[rows + across.begun[starts + width]]
        return masks

    def _joined(self, steps: Steps) -> Joined | None:
        grid = self._faces.grid
        total = sum(steps.lengths)
        if total > grid.along or max(steps.widths) > grid.across:
            return None
        ends = np.cumsum(steps.lengths)
        starts = ends - np.array(steps.lengths)
        is_clear = steps.begins(grid.along, self._faces.blocks)
        if not is_clear.any():
            return None
        kinds = np.full((self.size + 1, len(steps.items)), -1, np.int64)
        for at in np.flatnonzero(is_clear).tolist():
            for step, (item, width) in enumerate(
                zip(steps.items, steps.widths, strict=True)
            ):
                ended = int(self.along.ended[at + starts[step]])
                begun = int(self.along.begun[at + ends[step]])
                room = Room(grid.across, near=width)
                kinds[at, step] = self._kind(room, ended, begun, item)
        # A step may be longer than any sum of what lies beside it.
        self.sizes[list(steps.lengths)] = steps.lengths
        made = np.zeros((1, self.counts.words), np.int64)
        for item in steps.items:
            made, _ = self.counts.add(made, self.counts.of(self.pieces.makes[item]))
        if not made.any():
            return None
        return Joined(total, made, tuple(steps.lengths), kinds)

    def price(self, prices: Ints) -> _PricedSections:
        """The sections at some rows of prices."""
        return _PricedSections(self, prices)


class _PricedSections(Priced):
    def __init__(self, layout: CrosscutLayout, prices: Ints) -> None:
        self._layout = layout
        self._prices = prices
        masks = np.unique(
            np.concatenate([[0], *(kind.masks.ravel() for kind in layout.kinds)])
        )
        self._strips = NearStrips(
            layout.pieces, layout.counts, prices, layout.size, masks
        )
        widest = max((kind.across for kind in layout.kinds), default=0)
        shape = (len(layout.kinds), len(prices), layout.size + 1)
        # What the strips from each cell across on are worth at best.
        self._after = np.zeros((widest + 1, *shape), np.int64)
        masks = np.zeros(
            (len(layout.kinds), widest + 1, len(layout.pieces.widths)), np.int64
        )
        for number, kind in enumerate(layout.kinds):
            masks[number, : kind.across + 1] = self._strips.index_of(kind.masks)
        for u in range(widest - 1, -1, -1):
            best = self._after[u + 1].copy()
            for place, width in enumerate(layout.pieces.widths.tolist()):
                if u + width > widest:
                    break
                which = masks[:, u, place]
                some = np.flatnonzero(which)
                if len(some):
                    found = self._strips.value[which[some], :, place]
                    found = found + self._after[u + width, some]
                    best[some] = np.maximum(best[some], found)
            self._after[u] = best
        self.at_best = self._after[0].transpose(1, 0, 2)

    def begin(self, slack: Ints, longest: int, allowance: Allowance) -> None:
        """Say how much a pattern may lose at each row, and the longest section wanted."""
        self._strips.list(slack, longest, allowance)

    def fill(self, kind: int, least: Ints, allowance: Allowance) -> Walk:
        """The fillings of a kind worth at least so much, by row and length."""
        here = self._layout.kinds[kind]
        strips = self._strips
        # A state may still become part of any longer section.
        after = self._after[: here.across + 1, kind]
        least_at = least[:, None, :] - after.transpose(1, 0, 2)
        least_at = np.minimum.accumulate(least_at[:, :, ::-1], axis=2)[:, :, ::-1]
        longest = 0
        if len(self._prices):
            longest = int(np.flatnonzero((least < 1 << 59).any(axis=0)).max(initial=0))
        else:
            longest = self._layout.size
        places = np.flatnonzero(strips.length <= longest)
        width, rules = strips.width[places], strips.rules[places]
        contents = Fillings(
            strips.made[places],
            self._layout.pieces.widths[width],
            strips.length[places],
            strips.worth[places],
        )

        def may(at: int) -> Bools:
            fits: Bools = (here.masks[at, width] & rules) == rules
            return fits

        walk = Walk(
            self._layout.counts,
            self._prices,
            here.across,
            contents,
            lambda at: (may(at), may(at) & ~may(at - 1) if at else may(at)),
            lambda ends, labels: least_at[:, ends, labels],
            allowance,
        )
        walk.numbers = places
        return walk

    def pattern(self, stretches: Sequence[Stretch]) -> Pattern:
        """The pattern of some sections."""
        widths = self._layout.pieces.widths.tolist()
        sections = []
        for stretch in stretches:
            kind = self._layout.kinds[stretch.kind]
            strips = []
            i, j = stretch.begin, stretch.begin + stretch.size
            if kind.step >= 0:
                strips.append(Strip(0, kind.near, (Cut(i, j, kind.step),)))
            if stretch.walk is not None:
                for content, u in stretch.walk.way_to(stretch.state):
                    strip = int(stretch.walk.numbers[content])
                    cuts, at = [], i
                    for item in self._strips.items(strip):
                        end = at + int(self._layout.pieces.length_of[item])
                        cuts.append(Cut(at, end, item))
                        at = end
                    low = kind.near + u
                    high = low + widths[int(self._strips.width[strip])]
                    strips.append(Strip(low, high, tuple(cuts)))
            sections.append(Section(i, j, tuple(strips)))
        return Pattern(self._layout.bin, "C", tuple(sections))
