"""What every section of every board of a group is worth, by the marks it meets and the room it has.

A section's worth depends on its length, on which marks it meets and on its room across, so
all sections of a board are a small table: a row for each room and set of marks, a column
for each length. Where all items shun the marks met, the section is a stack of clear runs
across, each worth what the shared stack table says.
"""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from yieldplan.packing.grid.crossings import Crossings, Ints, free_runs
from yieldplan.packing.grid.pattern import Strip, end_to_end
from yieldplan.packing.grid.rooms import Room
from yieldplan.packing.patterns.bin_faces import BinFaces
from yieldplan.packing.patterns.faced_sections import FacedSection, FacedSections
from yieldplan.packing.patterns.group import Group
from yieldplan.packing.patterns.runs import Runs
from yieldplan.packing.patterns.stack_table import StackTable
from yieldplan.packing.patterns.strip_table import StripTable
from yieldplan.packing.patterns.values import ShapeValues, Sums


class Sections:
    """The rows of one group; boards and rooms are added first, then priced."""

    def __init__(self, group: Group) -> None:
        self.group = group
        self.lengths = Sums.of([shape.length for shape in group.shapes], group.longest)
        self.along = tuple(
            Crossings.of(faces.grid.along, [(b.i0, b.i1) for b in faces.blocks])
            for faces in group.bins
        )
        self._masks = [group.all_rules, 0]
        self._faced = FacedSections(group)
        self._runs_of: dict[int, list[tuple[int, int]]] = {}
        self._faced_rows: set[int] = set()
        self._base: dict[tuple[int, Room], int] = {}
        self._place_of_row: list[int] = []
        # Row 0 is worth nothing: what may not be ripped.
        self.num_rows = 1
        self._place_of_row.append(-1)

    def base(self, place: int, room: Room) -> int:
        """The first row of a board's sections in a room; 0 where nothing fits in it.

        Parameters
        ----------
        place
            Of the board in the group.
        """
        if room.across - room.near < int(self.group.widths[0]):
            return 0
        if (place, room) not in self._base:
            self._base[place, room] = self.num_rows
            self._add(place, self.group.bins[place].in_room(room))
        return self._base[place, room]

    def _add(self, place: int, faces: BinFaces) -> None:
        along, base = self.along[place], self.num_rows
        self.num_rows += along.rows * along.columns
        self._place_of_row += [place] * (along.rows * along.columns)
        shortest_item = int(self.lengths.totals[1])
        for ended, begun, number in along.each():
            longest = along.longest(ended, begun)
            if longest < shortest_item:
                continue
            met = along.met(ended, begun)
            places = [
                at
                for at, block in enumerate(faces.blocks)
                if met >> at & 1 and block.u0 < block.u1
            ]
            here = sum(1 << at for at in places)
            if faces.is_alike(here):
                blocks = [(faces.blocks[at].u0, faces.blocks[at].u1) for at in places]
                self._runs_of[base + number] = free_runs(faces.grid.across, blocks)
                continue
            self._faced_rows.add(base + number)
            shortest = along.shortest(ended, begun)
            self._faced.add(
                FacedSection(
                    place,
                    *self._masks_across(faces, places),
                    first=max(0, int(self.lengths.floor[shortest])),
                    last=int(self.lengths.floor[longest]),
                ),
                base + number,
            )

    def _masks_across(
        self, faces: BinFaces, places: Sequence[int]
    ) -> tuple[Crossings, Ints]:
        """The strips of a section: crossings of its marks, and who may lie in each."""
        blocks = [(faces.blocks[at].u0, faces.blocks[at].u1) for at in places]
        across = Crossings.of(faces.grid.across, blocks)
        mask_of = np.ones(across.rows * across.columns, np.int64)
        for ended, begun, number in across.each():
            crossed = across.met(ended, begun)
            allowed = faces.allowed(
                sum(1 << at for bit, at in enumerate(places) if crossed >> bit & 1)
            )
            if allowed not in self._masks:
                self._masks.append(allowed)
            mask_of[number] = self._masks.index(allowed)
        return across, mask_of

    def close(self) -> None:
        """Make the tables, once every room is known."""
        self.table = StripTable(self.group, self.lengths, self._masks)
        self._stack = StackTable(self.group, len(self.lengths.totals))
        self._runs = Runs(self._runs_of, self._stack.heights.floor)
        self._board_of = np.array(self._place_of_row, np.int64)

    def work(self, num_bins: int) -> int:
        """Units of work that pricing the sections of so many bins takes."""
        sections = len(self._runs) * num_bins // len(self.group.bins)
        return (
            self.table.work
            + self._stack.work
            + sections * len(self.lengths.totals) // 300
            + self._faced.work(num_bins)
        )

    def reprice(self, values: ShapeValues, places: Sequence[int]) -> Ints:
        """Row by length at new prices; rows of boards not asked for are left at 0."""
        self.table.reprice(values)
        self._stack.reprice(self.table.led)
        found = np.zeros((self.num_rows, len(self.lengths.totals)), np.int64)
        is_asked = np.zeros(len(self.group.bins) + 1, dtype=bool)
        is_asked[list(places)] = True
        self._runs.sum(self._stack.value, is_asked[self._board_of], found)
        if len(self._faced):
            self._faced.reprice(self.table, set(places), found)
        return found

    def strips(self, row: int, length: int, i: int, near: int = 0) -> list[Strip]:
        """A best filling of a section that was priced last.

        Parameters
        ----------
        length
            Place of its length.
        i
            Mark it begins at.
        near
            Cells at the near edge before its room begins.
        """
        widths: list[int] = self.group.widths.tolist()
        strips = []

        def stand(u: int, width_index: int, filling: list[tuple[int, int]]) -> int:
            low, high = near + u, near + u + widths[width_index]
            strips.append(Strip(low, high, tuple(end_to_end(i, filling))))
            return u + widths[width_index]

        if row in self._faced_rows:
            for u, width_index, mask in self._faced.trace(row, self.table, length):
                stand(u, width_index, self.table.trace(mask, width_index, length))
            return strips
        for start, end in self._runs_of.get(row, ()):
            u = start
            height = int(self._stack.heights.floor[end - start])
            for good in self._stack.trace(height, length):
                filling = self.table.trace_led(good, length)
                u = stand(u, good.width_index, filling)
        return strips
