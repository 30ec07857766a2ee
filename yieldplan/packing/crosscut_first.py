"""Best crosscut-first pattern of every board at given prices: sections, ripped into strips, cut into blanks.

What a section is worth depends on its length and on which marks it meets, so all sections
of a board are a small table: marks met by length. Where all items shun the marks met, the
section is a stack of clear runs across, each worth what the shared stack table says.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from yieldplan.packing.crossings import Crossings, Ints, free_runs
from yieldplan.packing.faced_sections import FacedSection, FacedSections
from yieldplan.packing.group import BinFaces, Group
from yieldplan.packing.pattern import Cut, Pattern, Section, Strip
from yieldplan.packing.tables import ShapeValues, StackTable, StripTable, Sums


@dataclass(frozen=True)
class _Index:
    """Where one bin's sections stand in the group's lists."""

    faces: BinFaces
    along: Crossings
    base: int
    runs: dict[int, list[tuple[int, int]]]
    faced: frozenset[int]


class CrosscutFirst:
    """Prices the bins of one group, crosscut first."""

    def __init__(self, group: Group) -> None:
        self.group = group
        self._lengths = Sums.of([shape.length for shape in group.shapes], group.longest)
        heights = Sums.of(group.widths.tolist(), group.widest)
        self._masks = [group.all_rules, 0]
        self._faced = FacedSections(group)
        self._place_of = {faces.bin: place for place, faces in enumerate(group.bins)}
        self._index: list[_Index] = []
        run_rows: list[int] = []
        run_places: list[int] = []
        num_rows = 0
        for place, faces in enumerate(group.bins):
            index = self._of(faces, place, num_rows)
            self._index.append(index)
            num_rows += index.along.rows * index.along.columns
            for number, runs in sorted(index.runs.items()):
                for start, end in runs:
                    run_rows.append(index.base + number)
                    run_places.append(int(heights.floor[end - start]))
        self._heights = heights
        self._num_rows = num_rows
        self._table = StripTable(group, self._lengths, self._masks)
        self._stack = StackTable(group, heights, len(self._lengths.totals))
        self._runs = np.array(run_places, np.int64)
        rows = np.array(run_rows, np.int64)
        self._starts = np.flatnonzero(np.diff(rows, prepend=-1)) if len(rows) else rows
        self._rows = rows[self._starts] if len(rows) else rows
        self._along = np.array([f.grid.along for f in group.bins], np.int64)
        size = group.longest + 1
        # The section that starts at i and ends at j: row _from[i] + _to[j].
        self._from = np.zeros((len(group.bins), size), np.int64)
        self._to = np.zeros((len(group.bins), size), np.int64)
        for place, index in enumerate(self._index):
            cells = slice(0, index.along.size + 1)
            self._from[place, cells] = index.base + (
                index.along.ended * index.along.columns
            )
            self._to[place, cells] = index.along.begun

    def _of(self, faces: BinFaces, place: int, base: int) -> _Index:
        grid = faces.grid
        along = Crossings.of(grid.along, [(b.i0, b.i1) for b in faces.blocks])
        runs: dict[int, list[tuple[int, int]]] = {}
        faced: set[int] = set()
        shortest_item = int(self._lengths.totals[1])
        for ended, begun, number in along.each():
            longest = along.longest(ended, begun)
            if longest < shortest_item:
                continue
            met = along.met(ended, begun)
            if faces.is_alike(met):
                blocks = [
                    (block.u0, block.u1)
                    for at, block in enumerate(faces.blocks)
                    if met >> at & 1
                ]
                runs[number] = free_runs(grid.across, blocks)
                continue
            faced.add(number)
            shortest = along.shortest(ended, begun)
            self._faced.add(
                FacedSection(
                    place,
                    *self._masks_across(faces, met),
                    first=max(0, int(self._lengths.floor[shortest])),
                    last=int(self._lengths.floor[longest]),
                ),
                base + number,
            )
        return _Index(faces, along, base, runs, frozenset(faced))

    def _masks_across(self, faces: BinFaces, met: int) -> tuple[Crossings, Ints]:
        """The strips of a section: crossings of its marks, and who may lie in each."""
        places = [at for at in range(len(faces.blocks)) if met >> at & 1]
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

    def work(self, num_bins: int) -> int:
        """Units of work one round over so many bins takes."""
        num_lengths = len(self._lengths.totals)
        sections = len(self._runs) * num_bins // len(self.group.bins)
        return (
            300
            + self._table.work
            + self._stack.work
            + sections * num_lengths // 300
            + self._faced.work(num_bins)
            + self.group.longest * (12 + num_bins * num_lengths // 300)
        )

    def reprice(self, values: ShapeValues, bins: Sequence[int]) -> Ints:
        """Best value of each of the bins at new prices."""
        self._table.reprice(values)
        self._stack.reprice(self._table.value[0])
        self._bins = list(bins)
        self._column = {number: column for column, number in enumerate(bins)}
        places = [self._place_of[number] for number in bins]
        self._sections = self._section_values(places)
        self._best = self._along_the_length(np.array(places, np.int64))
        return self._best[self._along[places], np.arange(len(places))]

    def _section_values(self, places: Sequence[int]) -> Ints:
        """Row by length; rows of bins not asked for are left at 0."""
        values = np.zeros((self._num_rows, len(self._lengths.totals)), np.int64)
        wanted = np.zeros(self._num_rows, dtype=bool)
        for place in places:
            index = self._index[place]
            wanted[index.base : index.base + index.along.rows * index.along.columns] = 1
        ends = np.append(self._starts[1:], len(self._runs))
        chosen = np.flatnonzero(wanted[self._rows]) if len(self._rows) else self._rows
        if len(chosen):
            counts = (ends - self._starts)[chosen]
            starts = np.cumsum(counts) - counts
            at = np.arange(int(counts.sum())) + np.repeat(
                self._starts[chosen] - starts, counts
            )
            stacks = self._stack.value[self._runs[at]]
            values[self._rows[chosen]] = np.add.reduceat(stacks, starts, axis=0)
        if len(self._faced):
            self._faced.reprice(self._table, set(places), values)
        return values

    def _along_the_length(self, places: Ints) -> Ints:
        totals = self._lengths.totals
        num_lengths = len(totals)
        from_ = self._from[places] * num_lengths
        to = self._to[places] * num_lengths
        flat = self._sections.ravel()
        size = int(self._along[places].max())
        best = np.zeros((self.group.longest + 1, len(places)), np.int64)
        columns = np.arange(num_lengths)
        for j in range(1, size + 1):
            num = int(self._lengths.floor[j]) + 1
            np.copyto(best[j], best[j - 1])
            if num == 1:
                continue
            starts = j - totals[1:num]
            at = from_[:, starts]
            at += to[:, j, None] + columns[1:num]
            found = flat[at]
            found += best[starts].T
            np.maximum(best[j], found.max(axis=1), out=best[j])
        return best

    def pattern(self, number: int) -> Pattern:
        """A best pattern of a bin that was priced last."""
        index = self._index[self._place_of[number]]
        best = self._best[:, self._column[number]]
        along = index.along
        sections: list[Section] = []
        j = index.faces.grid.along
        while best[j] > 0:
            if best[j] == best[j - 1]:
                j -= 1
                continue
            num = int(self._lengths.floor[j]) + 1
            starts = j - self._lengths.totals[1:num]
            rows = along.ended[starts] * along.columns + int(along.begun[j])
            values = self._sections[index.base + rows, np.arange(1, num)]
            hits = np.flatnonzero((best[starts] + values == best[j]) & (values > 0))
            length = int(hits[0]) + 1
            i = int(starts[hits[0]])
            strips = self._strips(index, int(rows[hits[0]]), length, i)
            sections.append(Section(i, j, tuple(strips)))
            j = i
        return Pattern(number, "C", tuple(reversed(sections)))

    def _strips(self, index: _Index, row: int, length: int, i: int) -> list[Strip]:
        widths = self.group.widths.tolist()
        stacked: list[tuple[int, int, int]] = []
        if row in index.faced:
            stacked = self._faced.trace(index.base + row, self._table, length)
        else:
            for start, end in index.runs[row]:
                u = start
                height = int(self._heights.floor[end - start])
                for width_index in self._stack.trace(height, length):
                    stacked.append((u, width_index, 0))
                    u += widths[width_index]
        strips = []
        for u, width_index, mask in stacked:
            cuts = []
            at = i
            for size, item in self._table.trace(mask, width_index, length):
                cuts.append(Cut(at, at + size, item))
                at += size
            strips.append(Strip(u, u + widths[width_index], tuple(cuts)))
        return strips
