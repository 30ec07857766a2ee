"""How many of each part a pattern makes, as one number or a few: fast to add, to compare and to weed out.

Every demand has a few bits, one more than its need takes. That highest bit stays free, so
that many vectors of counts are added, capped and compared at once without a borrow or a
carry running into the next demand.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence

import numpy as np

from yieldplan.packing.grid.crossings import Bools, Ints

_BITS = 62


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
        return self.covers_each(one[:, None], others[None])

    def covers_each(self, one: Ints, others: Ints) -> Bools:
        """Whether one makes at least what the other does, for vectors side by side."""
        found: Bools | None = None
        for word in range(self.words):
            guard = self.guard[word]
            left = (one[..., word] | guard) - others[..., word]
            left &= guard
            is_so: Bools = left == guard
            found = is_so if found is None else found & is_so
        if found is None:
            return np.ones(np.broadcast_shapes(one.shape, others.shape)[:-1], np.bool_)
        return found

    def total(self, packed: Ints) -> Ints:
        """How many parts each row makes."""
        total = np.zeros(len(packed), np.int64)
        for place, word in enumerate(self._word):
            total += packed[:, word] >> self._shift[place] & self._masks[place]
        return total


def first_of_each(packed: Ints, labels: Ints) -> Ints:
    """Places of one row for each vector: that with the least label, in a fixed order."""
    order = np.lexsort((labels, *packed.T))
    ordered = packed[order]
    is_new = np.ones(len(order), np.bool_)
    is_new[1:] = (ordered[1:] != ordered[:-1]).any(axis=1)
    return order[is_new]
