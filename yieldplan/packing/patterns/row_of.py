"""Which row of the table of sections a section has, by the marks it begins and ends at."""

from __future__ import annotations

import numpy as np

from yieldplan.packing.grid.crossings import Ints
from yieldplan.packing.grid.rooms import Room
from yieldplan.packing.patterns.group import Group
from yieldplan.packing.patterns.sections import Sections


class RowOf:
    """Rows of all bins of a group.

    A section of a bin, by its place in the group, that begins at i and ends at j has row
    `begun[place, i] + ended[place, j]`. On a board that is not straight `bases[place]` is
    added, by the place of the length and by i; where that is 0 there is no room.
    """

    def __init__(self, group: Group, rows: Sections) -> None:
        self._group = group
        self._rows = rows
        size = group.longest + 1
        self.begun = np.zeros((len(group.bins), size), np.int64)
        self.ended = np.zeros((len(group.bins), size), np.int64)
        self.may_begin = np.zeros((len(group.bins), size), dtype=bool)
        """Where a mark ends: elsewhere only where another section does."""
        for place, faces in enumerate(group.bins):
            self.may_begin[place, [block.i1 for block in faces.blocks]] = True
        self.bases: dict[int, Ints] = {}
        for place, faces in enumerate(group.bins):
            base = 0
            if faces.is_straight:
                base = rows.base(place, Room(faces.grid.across))
            else:
                self.bases[place] = self._bases_of(place)
            if base or not faces.is_straight:
                along = rows.along[place]
                cells = slice(0, along.size + 1)
                self.begun[place, cells] = base + along.ended * along.columns
                self.ended[place, cells] = along.begun

    def _bases_of(self, place: int) -> Ints:
        """First row of every section of a crooked board, by length and start."""
        lengths, size = self._rows.lengths.totals, self._group.longest + 1
        faces = self._group.bins[place]
        across, down = faces.rooms.table(lengths)
        bases = np.zeros((len(lengths), size), np.int64)
        for number, lowered in enumerate(down.tolist()):
            for wide in np.unique(across[number]).tolist():
                base = self._rows.base(place, Room(wide, lowered)) if wide > 0 else 0
                here = across[number] == wide
                bases[number, : len(here)][here] = base
        return bases

    def each(self, place: int, starts: Ints, ends: Ints) -> Ints:
        """Rows of sections of one bin, one of every length, the shortest first; 0 where there is no room."""
        rows = self.begun[place, starts] + self.ended[place, ends]
        if place in self.bases:
            base = self.bases[place][np.arange(1, len(starts) + 1), starts]
            rows = np.where(base > 0, rows + base, 0)
        return np.asarray(rows, np.int64)
