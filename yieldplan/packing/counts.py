"""How many of each part a pattern makes, as one number or a few: fast to add, to compare and to weed out.

Every demand has a few bits, one more than its need takes. That highest bit stays free, so
that many vectors of counts are added, capped and compared at once without a borrow or a
carry running into the next demand.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

import numpy as np

from yieldplan.packing.crossings import Bools, Ints

_BITS = 62
_ONES, _BY = 128, 512
"""Vectors compared in one go: so many that a core keeps them at hand."""
_HIGHEST = np.iinfo(np.int64).max


class Counts:
    """Vectors of counts, none above what is needed; one row a vector, a column a word."""

    def __init__(self, need: Sequence[int]) -> None:
        self.need = np.array(need, np.int64)
        self._word: list[int] = []
        self._shift: list[int] = []
        word, used = 0, 0
        bits = [int(count).bit_length() + 1 for count in need]
        for wide in bits:
            if used + wide > _BITS:
                word, used = word + 1, 0
            self._word.append(word)
            self._shift.append(used)
            used += wide
        self.words = word + 1
        self.guard = np.zeros(self.words, np.int64)
        # Added to a sum, it sets the free bit of each demand that is above its need.
        self._to_guard = np.zeros(self.words, np.int64)
        self._masks = [(1 << wide) - 1 for wide in bits]
        for place, wide in enumerate(bits):
            word, shift = self._word[place], self._shift[place]
            self.guard[word] |= 1 << shift + wide - 1
            room = (1 << wide - 1) - 1 - int(self.need[place])
            self._to_guard[word] += room << shift

    def pack(self, rows: Ints) -> Ints:
        """Counts by demand, capped at the need, as words."""
        capped = np.minimum(rows, self.need)
        packed = np.zeros((len(rows), self.words), np.int64)
        for place, word in enumerate(self._word):
            packed[:, word] |= capped[:, place] << self._shift[place]
        return packed

    def of(self, makes: Mapping[int, int]) -> Ints:
        """What one item makes, as one row."""
        row = np.zeros((1, len(self.need)), np.int64)
        for demand, count in makes.items():
            row[0, demand] = count
        return self.pack(row)

    def unpack(self, packed: Ints) -> Ints:
        """Words as counts by demand."""
        rows = np.zeros((len(packed), len(self._word)), np.int64)
        for place, word in enumerate(self._word):
            rows[:, place] = packed[:, word] >> self._shift[place] & self._masks[place]
        return rows

    def add(self, ones: Ints, others: Ints) -> tuple[Ints, Ints]:
        """Sums capped at the need, row by row, and which rows had to be capped."""
        total = ones + others
        over = np.flatnonzero(((total + self._to_guard) & self.guard).any(axis=1))
        if len(over):
            total[over] = self.pack(self.unpack(total[over]))
        return total, over

    def covers(self, one: Ints, others: Ints) -> Bools:
        """Whether each of `one` (rows) makes at least what each of `others` (columns) does."""
        found = np.ones((len(one), len(others)), np.bool_)
        for word in range(self.words):
            guard = self.guard[word]
            left = (one[:, word] | guard)[:, None] - others[None, :, word]
            left &= guard
            found &= left == guard
        return found

    def total(self, packed: Ints) -> Ints:
        """How many parts each row makes."""
        total = np.zeros(len(packed), np.int64)
        for place, word in enumerate(self._word):
            total += packed[:, word] >> self._shift[place] & self._masks[place]
        return total

    def is_covered(self, ones: Ranked, by: Ranked) -> Bools:
        """Which of `ones` some row of `by` makes at least, with a label not above theirs."""
        found = np.zeros(len(ones.made), np.bool_)
        # What covers another one does not rank below it: the best are asked first.
        order = np.argsort(-by.rank, kind="stable")
        by = by.at(order)
        left = np.argsort(ones.rank, kind="stable")[::-1]
        for start in range(0, len(left), _ONES):
            part = left[start : start + _ONES]
            least = ones.rank[part].min(initial=_HIGHEST)
            end = int(np.searchsorted(-by.rank, -least, side="right"))
            for first in range(0, end, _BY):
                some = slice(first, min(end, first + _BY))
                covers = self.covers(by.made[some], ones.made[part])
                covers &= by.label[some, None] <= ones.label[None, part]
                is_found = covers.any(axis=0)
                found[part[is_found]] = True
                part = part[~is_found]
                if not len(part):
                    break
        return found

    def undominated(self, made: Ints, label: Ints) -> Ints:
        """Places of those that no other one makes at least, with a label not above theirs.

        No two rows may be alike.
        """
        # What covers another one makes more parts in all: only what was kept before can.
        total = self.total(made)
        order = np.argsort(-total, kind="stable")
        kept: Ints = order[:0]
        for start in range(0, len(order), _ONES):
            part = order[start : start + _ONES]
            for first in range(0, len(kept), _BY):
                by = kept[first : first + _BY]
                covers = self.covers(made[by], made[part])
                covers &= label[by, None] <= label[None, part]
                part = part[~covers.any(axis=0)]
            covers = self.covers(made[part], made[part])
            covers &= label[part, None] <= label[None, part]
            np.fill_diagonal(covers, val=False)
            kept = np.concatenate([kept, part[~covers.any(axis=0)]])
        return np.sort(kept)


@dataclass(frozen=True)
class Ranked:
    """Vectors of counts with a rank each: what makes at least what another does, ranks no lower.

    Parameters
    ----------
    made
        Packed.
    label
        The smaller the better.
    rank
        What the counts are worth at any prices will do.
    """

    made: Ints
    label: Ints
    rank: Ints

    def at(self, places: Ints) -> Ranked:
        """Some of them."""
        return Ranked(self.made[places], self.label[places], self.rank[places])


def first_of_each(packed: Ints, labels: Ints) -> Ints:
    """Places of one row for each vector: that with the least label, in a fixed order."""
    order = np.lexsort((labels, *packed.T))
    ordered = packed[order]
    is_new = np.ones(len(order), np.bool_)
    is_new[1:] = (ordered[1:] != ordered[:-1]).any(axis=1)
    return order[is_new]
