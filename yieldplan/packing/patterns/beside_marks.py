"""Best pattern of every board when narrow parts may lie beside its marks: families C+ and R+.

What is asked is what `plan_format.md` says under "Families"; the work is done by the
compiled `beside_marks_kernel`. A board that is not straight, and what lies beside the steps
of a set, are cut as in the plain family; their worth in the floor is that of more wood.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np

from yieldplan.packing.grid.cells import blocks_met
from yieldplan.packing.grid.crossings import Ints
from yieldplan.packing.grid.offcuts import best_end
from yieldplan.packing.grid.pattern import Breakdown, Cut, Pattern, Section, Strip
from yieldplan.packing.patterns.beside_marks_items import Marks, items_of, marks_of
from yieldplan.packing.patterns.beside_marks_kernel import (
    best_sections,
    fill_section,
    fill_strip,
)
from yieldplan.packing.patterns.beside_marks_tables import clear_stacks, clear_strips
from yieldplan.packing.patterns.bin_faces import BinFaces
from yieldplan.packing.patterns.crosscut_first import CrosscutFirst
from yieldplan.packing.patterns.group import Group
from yieldplan.packing.patterns.values import ShapeValues

_NONE = -1
"""No section ends at this mark."""
_PLAIN = -(10**6)
"""The best sections up to this mark are those of family C."""


@dataclass(frozen=True)
class _Priced:
    """A board's best pattern: its worth, where it ends, and what stands behind each place."""

    way: Breakdown
    worth: int
    end: int
    behind: Ints


class BesideMarks:
    """Prices the bins of one group: each strip's blanks need be clear on their own cells only.

    Parameters
    ----------
    ways
        "C" for C+, "R" for R+, both for E+.
    plain
        The same group crosscut first, whose sets in steps stand in C+ too.
    """

    def __init__(
        self, group: Group, ways: str, plain: CrosscutFirst | None = None
    ) -> None:
        self.group = group
        self._ways = ways
        self._plain = plain
        self._place_of = {faces.bin: place for place, faces in enumerate(group.bins)}
        self._work_of_round = sum(
            faces.grid.along * faces.grid.across**2 // 80 for faces in group.bins
        )
        self._rooms = {
            place: faces.rooms.table(np.arange(faces.grid.along + 1))[0]
            for place, faces in enumerate(group.bins)
            if not faces.is_straight and "C" in ways
        }

    def work(self, num_bins: int) -> int:
        """Units of work one round over so many bins takes, about."""
        return 500 + self._work_of_round * num_bins // len(self.group.bins)

    def reprice(
        self, values: ShapeValues, bins: Sequence[int], item_value: Sequence[int]
    ) -> tuple[Ints, Ints]:
        """Best value of each of the bins at new prices, and what it is at most.

        The first is 0 for a board that is not straight: it is cut the plain way.
        """
        group = self.group
        self._items = items = items_of(group, values)
        self._strips = clear_strips(
            items.lengths, items.widths, items.values, group.widest, group.longest
        )
        self._stacks = clear_stacks(self._strips, items.is_width)
        self._best: dict[int, _Priced] = {}
        places = [self._place_of[number] for number in bins]
        sets = self._sets(item_value, places)
        real = np.zeros(len(bins), np.int64)
        most = np.zeros(len(bins), np.int64)
        for column, place in enumerate(places):
            faces = group.bins[place]
            marks = marks_of(faces, self._items)
            lengths, found, bound = (each[column] for each in sets)
            if "C" in self._ways:
                priced = self._crosscut(faces, marks, lengths, found)
                most[column] = priced.worth
                if len(lengths):
                    most[column] = self._crosscut(faces, marks, lengths, bound).worth
                if faces.is_straight:
                    real[column] = priced.worth
                    self._best[bins[column]] = priced
            if "R" in self._ways and (
                "C" not in self._ways or faces.offcuts.across.any()
            ):
                priced = self._rip(faces, marks)
                most[column] = max(most[column], priced.worth)
                if faces.is_straight and priced.worth > real[column]:
                    real[column] = priced.worth
                    self._best[bins[column]] = priced
        return real, most

    def _sets(
        self, item_value: Sequence[int], places: Sequence[int]
    ) -> tuple[list[Ints], list[Ints], list[Ints]]:
        """For each board: cells along of its sets, their worth by mark, and at most."""
        if self._plain is None or not self.group.sets:
            none = np.zeros((0, 0), np.int64)
            empty = np.zeros(0, np.int64)
            return (
                [empty] * len(places),
                [none] * len(places),
                [none] * len(places),
            )
        steps = self._plain.in_steps
        lengths = np.array([long for long, _ in steps.best], np.int64)
        found = np.stack([value for _, value in steps.best])
        bound = np.stack(steps.at_most(item_value, self._stacks, places))
        columns = range(len(places))
        return (
            [lengths] * len(places),
            [np.ascontiguousarray(found[:, :, column]) for column in columns],
            [np.ascontiguousarray(bound[:, :, column]) for column in columns],
        )

    def _crosscut(
        self, faces: BinFaces, marks: Marks, lengths: Ints, sets: Ints
    ) -> _Priced:
        grid, items = faces.grid, self._items
        best = np.zeros(grid.along + 1, np.int64)
        if self._plain is not None:
            # What is known already need not be found again.
            best[:] = self._plain.worths(faces.bin)[: grid.along + 1]
        begins = np.where(np.diff(best, prepend=0) > 0, _PLAIN, _NONE)
        rooms = self._rooms.get(self._place_of[faces.bin], np.zeros((0, 0), np.int64))
        best_sections(
            items.lengths,
            items.values,
            items.is_width,
            marks.tops,
            marks.is_new,
            marks.blocks,
            self._strips,
            self._stacks,
            rooms,
            lengths,
            sets,
            best,
            begins,
            np.zeros((grid.across + 1, grid.along + 1), np.int64),
        )
        end = best_end(best, faces.offcuts.along)
        worth = int(best[end] + faces.offcuts.along[end])
        return _Priced("C", worth, end, begins)

    def _rip(self, faces: BinFaces, marks: Marks) -> _Priced:
        stack = self._stacked(faces, marks, 0, faces.grid.along)
        whole = stack[:, -1]
        if not faces.is_straight:
            room = faces.rooms.whole().across
            worth = min(int(whole[-1]), int(self._stacks[room, faces.grid.along]))
            return _Priced("R", worth, room, whole)
        end = best_end(whole, faces.offcuts.across)
        worth = int(whole[end] + faces.offcuts.across[end])
        return _Priced("R", worth, end, whole)

    def _stacked(self, faces: BinFaces, marks: Marks, i: int, j: int) -> Ints:
        """Worth of every stack of strips of the section from i to j."""
        items, across = self._items, faces.grid.across
        stack = np.zeros((across + 1, j + 1), np.int64)
        fill_section(
            i,
            across,
            np.full(j + 1, -1, np.int64),
            items.lengths,
            items.values,
            items.is_width,
            marks.tops,
            marks.is_new,
            marks.blocks,
            self._strips,
            self._stacks,
            stack,
        )
        return stack

    def pattern(self, number: int) -> Pattern:
        """A best pattern of a bin that was priced last."""
        place, priced = self._place_of[number], self._best[number]
        faces = self.group.bins[place]
        marks = marks_of(faces, self._items)
        if priced.way == "R":
            strips = self._section(faces, marks, 0, faces.grid.along, priced.end)
            section = Section(0, faces.grid.along, tuple(strips))
            return Pattern(number, "R", (section,))
        sections: list[Section] = []
        j = priced.end
        while j > 0:
            i = int(priced.behind[j])
            if i == _PLAIN:
                assert self._plain is not None
                sections = [*self._plain.sections(number, j), *sections]
                break
            if i == _NONE:
                j -= 1
            elif i >= 0:
                strips = self._section(faces, marks, i, j, faces.grid.across)
                sections.insert(0, Section(i, j, tuple(strips)))
                j = i
            else:
                assert self._plain is not None
                steps = self._plain.in_steps
                j -= steps.best[-2 - i][0]
                sections = [*steps.trace(-2 - i, place, j), *sections]
        return Pattern(number, "C", tuple(sections))

    def _section(
        self, faces: BinFaces, marks: Marks, i: int, j: int, v: int
    ) -> list[Strip]:
        """A best stack of strips up to a height."""
        stack = self._stacked(faces, marks, i, j)[:, j]
        strips: list[Strip] = []
        while stack[v] > 0:
            if stack[v] == stack[v - 1]:
                v -= 1
                continue
            for u in range(v):
                row = self._row(marks, i, j, u, v)
                if stack[u] + row[j] == stack[v]:
                    cuts = self._cuts(marks, row, u, v)
                    if not blocks_met(faces.grid, i, j, u, v):
                        cuts = [replace(cut, across=None) for cut in cuts]
                    strips.insert(0, Strip(u, v, tuple(cuts)))
                    v = u
                    break
            else:
                raise ValueError("a section's value has no strips behind it")
        return strips

    def _row(self, marks: Marks, i: int, j: int, u: int, v: int) -> Ints:
        row = np.zeros(j + 1, np.int64)
        items = self._items
        fill_strip(
            i, v, items.lengths, items.values, marks.tops[u], marks.is_new[u], row
        )
        return row

    def _cuts(self, marks: Marks, row: Ints, u: int, v: int) -> list[Cut]:
        """The blanks behind a strip's worth, each as low as it may lie."""
        items = self._items
        cuts: list[Cut] = []
        j = len(row) - 1
        while row[j] > 0:
            if row[j] == row[j - 1]:
                j -= 1
                continue
            for number, item in enumerate(items.item):
                i = j - int(items.lengths[number])
                if (
                    i >= 0
                    and marks.tops[u, i, number] <= v
                    and row[i] + items.values[number] == row[j]
                ):
                    top = int(marks.tops[u, i, number])
                    low = top - int(items.widths[number])
                    cuts.insert(0, Cut(i, j, item, (low, top)))
                    j = i
                    break
            else:
                raise ValueError("a strip's value has no filling behind it")
        return cuts
