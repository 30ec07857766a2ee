"""Best crosscut-first pattern of every board at given prices: sections, ripped into strips, cut into blanks.

One program along all boards at once chooses the sections, and the sets in steps that stand
in a row of them; what each is worth comes from `sections` and `in_steps`.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

import numpy as np

from yieldplan.packing.grid.crossings import Ints
from yieldplan.packing.grid.offcuts import best_end
from yieldplan.packing.grid.pattern import Breakdown, Pattern, Section
from yieldplan.packing.patterns.densest import Luck, densest
from yieldplan.packing.patterns.group import Group
from yieldplan.packing.patterns.in_steps import InSteps
from yieldplan.packing.patterns.row_of import RowOf
from yieldplan.packing.patterns.sections import Sections
from yieldplan.packing.patterns.strip_table import StripTable
from yieldplan.packing.patterns.values import ShapeValues

_AT_ONCE = 1 << 17
"""Sections looked at in one go: so many that a core keeps them at hand."""
_OTHERS = 12
"""Patterns of a sheet beside the best one, at most."""
_NEARLY = 0.995
"""Of the best one's value, what they must be worth at the least."""


_NONE: Ints = np.zeros((0, 0), np.int64)


@dataclass(frozen=True)
class _Begin:
    """Where sections begin, by column and mark, and the marks they may end at."""

    columns: Ints
    marks: Ints
    ends: Ints


class CrosscutFirst:
    """Prices the bins of one group, crosscut first."""

    breakdown: Breakdown = "C"

    def __init__(self, group: Group) -> None:
        self.group = group
        self._rows = Sections(group)
        self.in_steps = InSteps(group, self._rows)
        self._lengths = self._rows.lengths
        self._place_of = {faces.bin: place for place, faces in enumerate(group.bins)}
        self._along = np.array([f.grid.along for f in group.bins], np.int64)
        self._row_of = RowOf(group, self._rows)
        self._rows.close()

    @property
    def table(self) -> StripTable:
        """What strips are worth."""
        return self._rows.table

    def work(self, num_bins: int) -> int:
        """Units of work one round over so many bins takes."""
        num_lengths = len(self._lengths.totals)
        share = num_bins / len(self.group.bins)
        return (
            300
            + self._rows.work(num_bins)
            + int(share * self.in_steps.work)
            + self.group.longest * (12 + num_bins * num_lengths // 300)
        )

    def reprice(
        self, values: ShapeValues, bins: Sequence[int], item_value: Sequence[int]
    ) -> Ints:
        """Best value of each of the bins at new prices."""
        self._column = {number: column for column, number in enumerate(bins)}
        places = [self._place_of[number] for number in bins]
        # The old ones are let go first: of thousands of boards they are large.
        self._sections = _NONE
        self._sections = self._rows.reprice(values, places)
        self.in_steps.reprice(item_value, self._sections, places)
        self._best = self._along_the_length(np.array(places, np.int64))
        self._end = [
            best_end(self._best[:, column], self.group.bins[place].offcuts.along)
            for column, place in enumerate(places)
        ]
        worth = [
            int(self.group.bins[place].offcuts.along[end])
            for place, end in zip(places, self._end, strict=True)
        ]
        return self._best[self._end, np.arange(len(places))] + worth

    def _along_the_length(self, places: Ints) -> Ints:
        """Best value by mark and board: sections on from every mark where one may begin.

        Where a mark ends, or the value just rose: any other section can slide toward the
        zero end without loss. On a crooked board another start may have more room.
        """
        lengths = self._lengths.totals
        num_lengths = len(lengths)
        from_ = self._row_of.begun[places] * num_lengths
        to = self._row_of.ended[places] * num_lengths
        crooked = {
            column: self._row_of.bases[place]
            for column, place in enumerate(places.tolist())
            if place in self._row_of.bases
        }
        is_begin = self._row_of.may_begin[places].copy()
        is_begin[sorted(crooked)] = True
        size = int(self._along[places].max())
        best = np.zeros((len(places), self.group.longest + 1), np.int64)
        shortest = int(lengths[1]) if num_lengths > 1 else size + 1
        least = min([shortest, *(long for long, _ in self.in_steps.best)])
        for first in range(0, size + 1, least):
            # Nothing that begins among these marks ends among them: all at once.
            end = min(first + least, size + 1)
            here = best[:, max(0, first - 1) : end]
            np.maximum.accumulate(here, axis=1, out=here)
            is_active = is_begin[:, first:end].copy()
            if first:
                is_active |= here[:, 1:] > here[:, :-1]
            else:
                is_active[:, 0] = True
                is_active[:, 1:] |= here[:, 1:] > here[:, :-1]
            for long, value in self.in_steps.best:
                last = min(end, size + 1 - long)
                if first < last:
                    ends = best[:, first + long : last + long]
                    here = best[:, first:last]
                    np.maximum(ends, here + value[first:last].T, out=ends)
            after = first + shortest
            if after <= size and is_active.any():
                columns, marks = np.nonzero(is_active)
                begin = _Begin(columns, first + marks, np.arange(after, size + 1))
                self._go_on(best, begin, from_, to, crooked)
        np.maximum.accumulate(best, axis=1, out=best)
        return best.T

    def _go_on(
        self,
        best: Ints,
        begin: _Begin,
        from_: Ints,
        to: Ints,
        crooked: Mapping[int, Ints],
    ) -> None:
        """The sections that begin at some marks, of every length: raise what they end at."""
        floor, num_lengths = self._lengths.floor, len(self._lengths.totals)
        flat = self._sections.ravel()
        ends = slice(int(begin.ends[0]), int(begin.ends[-1]) + 1)
        to_ends = to[:, ends]
        first = int(begin.marks.min())
        marks = np.arange(first, int(begin.marks.max()) + 1)
        places = floor[begin.ends[None, :] - marks[:, None]]
        chunk = max(1, _AT_ONCE // len(begin.ends))
        for start in range(0, len(begin.columns), chunk):
            column = begin.columns[start : start + chunk]
            mark = begin.marks[start : start + chunk]
            # One that is no sum of lengths is worth what the next shorter sum is.
            place = places[mark - first]
            at = to_ends[column]
            at += from_[column, mark, None]
            at += place
            for row, number in enumerate(column.tolist() if crooked else ()):
                if number in crooked:
                    base = crooked[number][place[row], mark[row]]
                    # Row 0 is worth nothing, whatever marks are met.
                    at[row] = np.where(base > 0, at[row] + base * num_lengths, 0)
            found = flat.take(at)
            found += best[column, mark, None]
            firsts = np.flatnonzero(np.diff(column, prepend=-1))
            highest = np.maximum.reduceat(found, firsts, axis=0)
            which = column[firsts]
            best[which, ends] = np.maximum(best[which, ends], highest)

    def pattern(self, number: int) -> Pattern:
        """A best pattern of a bin that was priced last."""
        sections = self.sections(number, self._end[self._column[number]])
        return Pattern(number, "C", tuple(sections))

    def others(self, number: int) -> list[Pattern]:
        """Of a bin without marks, a best pattern with each length of section in it.

        The dearest come first; none for any other bin.
        """
        place, end = self._place_of[number], self._end[self._column[number]]
        if self.group.bins[place].blocks or place in self._row_of.bases:
            return []
        best = self._best[:, self._column[number]]
        num = int(self._lengths.floor[end]) + 1
        rests = end - self._lengths.totals[1:num]
        rows = self._row_of.each(place, rests, np.full(num - 1, end))
        worths = best[rests] + self._sections[rows, np.arange(1, num)]
        found: list[Pattern] = []
        seen: set[int] = set()
        made: set[tuple[int, ...]] = set()
        for at in np.argsort(-worths, kind="stable").tolist():
            if len(found) == _OTHERS or worths[at] < _NEARLY * best[end]:
                break
            i = int(rests[at])
            if end - i in seen:
                continue
            strips = self._rows.strips(int(rows[at]), at + 1, i)
            sections = [*self.sections(number, i), Section(i, end, tuple(strips))]
            seen |= {section.j - section.i for section in sections}
            pattern = Pattern(number, "C", tuple(sections))
            items = tuple(sorted(pattern.items()))
            if items not in made:
                made.add(items)
                found.append(pattern)
        return found

    def densest(
        self, number: int, free: Sequence[tuple[int, int]], luck: Luck
    ) -> Section | None:
        """The section worth most for its length in stretches that are free. [cells]"""
        place, lengths = self._place_of[number], self._lengths.totals[1:]

        def rows(starts: Ints) -> Ints:
            return self._row_of.each(place, starts, starts + lengths[: len(starts)])

        found = densest(
            free,
            [(block.i0, block.i1) for block in self.group.bins[place].blocks],
            lengths,
            lambda starts: self._sections[rows(starts), np.arange(1, 1 + len(starts))],
            luck,
        )
        if found is None:
            return None
        i, at = found
        row = int(rows(np.full(at + 1, i))[at])
        strips = self._rows.strips(row, at + 1, i)
        return Section(i, i + int(lengths[at]), tuple(strips))

    def worths(self, number: int) -> Ints:
        """The value of the best sections of a bin that end at each mark or before it."""
        return self._best[:, self._column[number]]

    def sections(self, number: int, j: int) -> list[Section]:
        """The best sections of a bin up to a mark, at the prices asked last."""
        place, column = self._place_of[number], self._column[number]
        best = self._best[:, column]
        sections: list[Section] = []
        while best[j] > 0:
            if best[j] == best[j - 1]:
                j -= 1
                continue
            found = self._one_section(place, best, j) or self._one_set(
                place, column, best, j
            )
            sections = [*found, *sections]
            j = found[0].i
        return sections

    def _one_section(self, place: int, best: Ints, j: int) -> list[Section]:
        """The last section of a best pattern that ends at j; none if a set does."""
        num = int(self._lengths.floor[j]) + 1
        starts = j - self._lengths.totals[1:num]
        rows = self._row_of.each(place, starts, np.full(num - 1, j))
        values = self._sections[rows, np.arange(1, num)]
        hits = np.flatnonzero((best[starts] + values == best[j]) & (values > 0))
        if not len(hits):
            return []
        i = int(starts[hits[0]])
        strips = self._rows.strips(int(rows[hits[0]]), int(hits[0]) + 1, i)
        return [Section(i, j, tuple(strips))]

    def _one_set(self, place: int, column: int, best: Ints, j: int) -> list[Section]:
        for number, (long, value) in enumerate(self.in_steps.best):
            i = j - long
            if (
                i >= 0
                and value[i, column] > 0
                and best[i] + value[i, column] == best[j]
            ):
                return self.in_steps.trace(number, place, i)
        raise ValueError("a board's value has no sections behind it")
