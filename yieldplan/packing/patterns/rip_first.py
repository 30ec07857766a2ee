"""Best rip-first pattern of every board at given prices: strips the full length, crosscut around marks.

A strip's value depends on its width and on which marks it crosses. Where all items shun
those marks the strip is a row of clear runs, each worth what the shared strip table says,
and the runs are indexed once. Where items differ (a knot on face A that some may bear),
the strip is worked out along its length by `faced_strips`.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from yieldplan.packing.grid.crossings import Crossings, Ints, free_runs
from yieldplan.packing.grid.offcuts import best_end
from yieldplan.packing.grid.pattern import (
    Breakdown,
    Cut,
    Pattern,
    Section,
    Strip,
    end_to_end,
)
from yieldplan.packing.patterns.bin_faces import BinFaces
from yieldplan.packing.patterns.densest import Luck, densest
from yieldplan.packing.patterns.faced_strips import FacedStrip, FacedStrips
from yieldplan.packing.patterns.group import Group
from yieldplan.packing.patterns.runs import Runs
from yieldplan.packing.patterns.strip_table import StripTable
from yieldplan.packing.patterns.values import ShapeValues, Sums

_OTHERS = 20
"""Patterns of one stick beside its best, at most."""


@dataclass(frozen=True)
class _Index:
    """Where one bin's strips stand in the group's lists."""

    faces: BinFaces
    across: Crossings
    base: int
    runs: dict[int, list[tuple[int, int]]]
    faced: dict[int, int]


class RipFirst:
    """Prices the bins of one group, rip first.

    Parameters
    ----------
    table
        Of strips, where the other saw of the group has one: its first face rule is that
        of all items.
    """

    breakdown: Breakdown = "R"

    def __init__(self, group: Group, table: StripTable | None = None) -> None:
        self.group = group
        if table is None:
            lengths = Sums.of([shape.length for shape in group.shapes], group.longest)
            table = StripTable(group, lengths, [group.all_rules])
        self._table = table
        lengths = table.lengths
        self._strips: Ints = np.zeros((0, 0), np.int64)
        self._index: list[_Index] = []
        self._faced = FacedStrips(group)
        self._place_of = {faces.bin: place for place, faces in enumerate(group.bins)}
        runs: dict[int, list[tuple[int, int]]] = {}
        place_of_row: list[int] = []
        for place, board in enumerate(group.bins):
            faces = board.in_room(board.rooms.whole())
            index = self._of(faces, len(place_of_row))
            self._index.append(index)
            place_of_row += [place] * (index.across.rows * index.across.columns)
            for number, of_row in index.runs.items():
                runs[index.base + number] = of_row
        self._board_of = np.array(place_of_row, np.int64)
        self._runs = Runs(runs, lengths.floor)
        self._across = np.array([i.faces.grid.across for i in self._index], np.int64)
        size = group.widest + 1
        # The strip that starts at u and ends at v: row _from[u] + _to[v].
        self._from = np.zeros((len(group.bins), size), np.int64)
        self._to = np.zeros((len(group.bins), size), np.int64)
        for place, index in enumerate(self._index):
            across = index.across
            cells = slice(0, across.size + 1)
            self._from[place, cells] = index.base + across.ended * across.columns
            self._to[place, cells] = across.begun

    def _of(self, faces: BinFaces, base: int) -> _Index:
        grid = faces.grid
        inside = [at for at, b in enumerate(faces.blocks) if b.u0 < b.u1]
        across = Crossings.of(
            grid.across, [(faces.blocks[at].u0, faces.blocks[at].u1) for at in inside]
        )
        runs: dict[int, list[tuple[int, int]]] = {}
        faced: dict[int, int] = {}
        for ended, begun, number in across.each():
            crossed = across.met(ended, begun)
            met = sum(1 << at for bit, at in enumerate(inside) if crossed >> bit & 1)
            if across.longest(ended, begun) < self.group.widths[0]:
                continue
            if faces.is_alike(met, anywhere=False):
                blocks = [
                    (block.i0, block.i1)
                    for place, block in enumerate(faces.blocks)
                    if met >> place & 1
                ]
                runs[number] = free_runs(grid.along, blocks)
            else:
                faced[number] = self._faced.add(
                    FacedStrip(faces, met, across.longest(ended, begun))
                )
        return _Index(faces, across, base, runs, faced)

    def work(self, num_bins: int) -> int:
        """Units of work one round over so many bins takes."""
        return (
            300
            + self._table.work
            + self._faced.work(num_bins)
            + self.group.widest * (15 + num_bins * len(self.group.widths) // 40)
        )

    def reprice(
        self, values: ShapeValues, bins: Sequence[int], item_value: Sequence[int]
    ) -> Ints:
        """Best value of each of the bins at new prices; no set is cut in steps here."""
        table = self._table
        table.reprice(values)
        places = [self._place_of[number] for number in bins]
        strips = np.zeros((len(self._board_of), len(self.group.widths)), np.int64)
        is_asked = np.zeros(len(self.group.bins), np.bool_)
        is_asked[places] = True
        self._runs.sum(table.value[0].T, is_asked[self._board_of], strips)
        wanted = [
            (self._index[place].base + number, strip)
            for place in places
            for number, strip in self._index[place].faced.items()
        ]
        if wanted:
            found = self._faced.reprice(values, [strip for _, strip in wanted])
            strips[[row for row, _ in wanted]] = found
        self._strips = strips
        self._column = {number: column for column, number in enumerate(bins)}
        self._best = self._along_the_width(np.array(places, np.int64))
        # A crooked board is narrower when it is ripped first, and its offcut worth nothing.
        worths = [
            self.group.bins[place].offcuts.across[: int(self._across[place]) + 1]
            for place in places
        ]
        self._end = [
            best_end(self._best[:, column], worths[column])
            for column in range(len(places))
        ]
        worth = [int(w[end]) for w, end in zip(worths, self._end, strict=True)]
        return self._best[self._end, np.arange(len(places))] + worth

    def _along_the_width(self, places: Ints) -> Ints:
        widths = self.group.widths
        from_, to = self._from[places], self._to[places]
        flat = self._strips.ravel()
        widest = self.group.widest
        best = np.zeros((widest + 1, len(places)), np.int64)
        which = np.arange(len(widths))
        least = int(widths[0]) if len(widths) else widest + 1
        for first in range(least, widest + 1, least):
            # No strip that ends here begins here: all at once.
            ends = np.arange(first, min(first + least, widest + 1))
            starts = ends[:, None] - widths[None, :]
            fits = starts >= 0
            starts = np.maximum(starts, 0)
            row = from_[:, starts] + to[:, ends, None]
            found = flat[row * len(widths) + which] + best[starts].transpose(2, 0, 1)
            here = np.where(fits, found, 0).max(axis=2)
            here[:, 0] = np.maximum(here[:, 0], best[first - 1])
            best[ends] = np.maximum.accumulate(here, axis=1).T
        return best

    def pattern(self, number: int) -> Pattern:
        """A best pattern of a bin that was priced last."""
        index = self._index[self._place_of[number]]
        best = self._best[:, self._column[number]]
        grid, across = index.faces.grid, index.across
        strips: list[Strip] = []
        v = self._end[self._column[number]]
        while best[v] > 0:
            if best[v] == best[v - 1]:
                v -= 1
                continue
            for width_index, width in enumerate(self.group.widths.tolist()):
                u = v - width
                if u < 0:
                    continue
                row = int(across.ended[u]) * across.columns + int(across.begun[v])
                value = self._strips[index.base + row, width_index]
                if value > 0 and best[u] + value == best[v]:
                    cuts = self._cuts(index, row, width_index)
                    strips.append(Strip(u, v, tuple(cuts)))
                    v = u
                    break
            else:
                raise ValueError("a board's value has no strips behind it")
        section = Section(0, grid.along, tuple(reversed(strips)))
        return Pattern(number, "R", (section,))

    def across(self, number: int) -> int:
        """How far across a bin may be ripped. [cells]"""
        return int(self._across[self._place_of[number]])

    def densest(
        self, number: int, free: Sequence[tuple[int, int]], luck: Luck
    ) -> Strip | None:
        """The strip worth most for its width in stretches across that are free. [cells]"""
        place, widths = self._place_of[number], self.group.widths
        index = self._index[place]

        def rows(starts: Ints) -> Ints:
            ends = starts + widths[: len(starts)]
            return np.asarray(self._from[place, starts] + self._to[place, ends])

        found = densest(
            free,
            [(block.u0, block.u1) for block in index.faces.blocks],
            widths,
            lambda starts: self._strips[rows(starts), np.arange(len(starts))],
            luck,
        )
        if found is None:
            return None
        u, at = found
        row = int(rows(np.full(at + 1, u))[at]) - index.base
        return Strip(u, u + int(widths[at]), tuple(self._cuts(index, row, at)))

    def others(self, number: int) -> list[Pattern]:
        """Of a bin as wide as one strip and without marks, the best pattern with each item in it.

        The dearest come first; none for any other bin.
        """
        index = self._index[self._place_of[number]]
        grid, table, widths = index.faces.grid, self._table, self.group.widths
        if grid.blocks or grid.across >= 2 * int(widths[0]):
            return []
        width = int(np.searchsorted(widths, grid.across, side="right")) - 1
        if width < 0:
            return []
        place = int(table.lengths.floor[grid.along])
        found = []
        for filling in table.with_each(0, width, place, _OTHERS):
            strip = Strip(0, int(widths[width]), tuple(end_to_end(0, filling)))
            found.append(Pattern(number, "R", (Section(0, grid.along, (strip,)),)))
        return found

    def _cuts(self, index: _Index, row: int, width_index: int) -> list[Cut]:
        if row in index.faced:
            return self._faced.trace(index.faced[row], width_index)
        cuts: list[Cut] = []
        lengths = self._table.lengths
        for start, end in index.runs[row]:
            place = int(lengths.floor[end - start])
            cuts += end_to_end(start, self._table.trace(0, width_index, place))
        return cuts
