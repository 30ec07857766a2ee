"""What a strip of a given width and length can hold at given prices, and a stack of such strips.

`StripTable` is the knapsack every strip of every board shares; it is made once a round of
prices, for lengths that some sum of items reaches (any other length counts as the next
shorter one).
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction

import numpy as np

from yieldplan.packing.grid.crossings import Ints
from yieldplan.packing.patterns.group import Group

LOW = -(1 << 60)
"""Less than anything: marks what is not allowed."""
_NEARLY = Fraction(995, 1000)
"""Of the dearest filling, what others must be worth at the least."""


@dataclass(frozen=True)
class Sums:
    """Every total the given sizes can make, up to a limit, from 0 on.

    Parameters
    ----------
    totals
        In rising order. [cells]
    floor
        For each number of cells, the place of the greatest total not above it.
    """

    totals: Ints
    floor: Ints

    @staticmethod
    def of(sizes: Sequence[int], limit: int) -> Sums:
        """Sums of any number of the sizes."""
        can = np.zeros(limit + 1, dtype=bool)
        can[0] = True
        for total in range(1, limit + 1):
            can[total] = any(size <= total and can[total - size] for size in sizes)
        return Sums(
            np.flatnonzero(can).astype(np.int64), np.cumsum(can, dtype=np.int64) - 1
        )


@dataclass(frozen=True)
class ShapeValues:
    """What each shape is worth at given prices, and the item that makes it so."""

    value: Ints
    item: tuple[int, ...]


def shape_values(group: Group, item_value: Sequence[int]) -> ShapeValues:
    """The dearest item of each shape."""
    best = [
        max(shape.items, key=lambda number: (item_value[number], -number), default=-1)
        for shape in group.shapes
    ]
    return ShapeValues(
        np.array(
            [item_value[number] if number >= 0 else 0 for number in best], np.int64
        ),
        tuple(best),
    )


class StripTable:
    """Best value of a strip, for every width of the group and every length that is a sum.

    Parameters
    ----------
    masks
        Bit sets of face rules; there is one table for each.
    """

    def __init__(self, group: Group, lengths: Sums, masks: Sequence[int]) -> None:
        self.group = group
        self.lengths = lengths
        self.masks = tuple(masks)
        shapes = group.shapes
        sizes = np.array([shape.length for shape in shapes], np.int64)
        before = lengths.totals[:, None] - sizes[None, :]
        # A place of its own, filled with LOW, stands for "does not fit".
        self._before = np.where(
            before >= 0, lengths.floor[np.maximum(before, 0)], len(lengths.totals)
        )
        self._shut = np.array(
            [
                [
                    [
                        LOW
                        if shape.width_index > width or not mask >> shape.face_class & 1
                        else 0
                        for width in range(len(group.widths))
                    ]
                    for mask in self.masks
                ]
                for shape in shapes
            ],
            np.int64,
        ).reshape(len(shapes), len(self.masks), len(group.widths))
        self.work = len(lengths.totals) * (8 + self._shut.size // 400)
        self.value: Ints = np.zeros((0, 0, 0), np.int64)
        self._values: ShapeValues | None = None
        self._traced: dict[tuple[int, int, int], list[tuple[int, int]]] = {}

    def reprice(self, values: ShapeValues) -> None:
        """Work the table out for new prices.

        `value[mask, width, length]` is in the unit of the prices.
        """
        if values is self._values:
            # Two saws share the table; its work is counted for both.
            return
        worth = np.flatnonzero(values.value > 0)
        gain = self._shut[worth] + values.value[worth, None, None]
        num = len(self.lengths.totals)
        best = np.full(
            (num + 1, len(self.masks), len(self.group.widths)), LOW, np.int64
        )
        best[0] = 0
        before = self._before[:, worth]
        if len(worth):
            totals = self.lengths.totals
            least = int(min(self.group.shapes[int(k)].length for k in worth))
            place = 1
            while place < num:
                # No filling of these lengths holds another of them: all at once.
                end = int(np.searchsorted(totals, totals[place] + least))
                found = (best[before[place:end]] + gain).max(axis=1)
                np.maximum(found[0], best[place - 1], out=found[0])
                np.maximum.accumulate(found, axis=0, out=best[place:end])
                place = end
        else:
            best[:num] = 0
        self.value = np.ascontiguousarray(best[:num].transpose(1, 2, 0))
        self._values = values
        self._traced = {}

    def trace(self, mask: int, width: int, place: int) -> list[tuple[int, int]]:
        """A best filling, as (length in cells, item) from the start of the strip.

        Parameters
        ----------
        mask, width, place
            Places in the table.
        """
        key = (mask, width, place)
        if key not in self._traced:
            self._traced[key] = self._trace(*key)
        return self._traced[key]

    def with_each(
        self, mask: int, width: int, place: int, most: int
    ) -> list[list[tuple[int, int]]]:
        """Of the best fillings with each item in them, so many of the dearest; those worth much less are left out."""
        assert self._values is not None
        row, values = self.value[mask, width], self._values.value
        serves = np.flatnonzero(
            (self._shut[:, mask, width] == 0)
            & (values > 0)
            & (self._before[place] < len(row))
        )
        worth = values[serves] + row[self._before[place, serves]]
        found = []
        items = np.array(self._values.item, np.int64)[serves]
        for at in np.lexsort((items, -worth))[:most].tolist():
            if worth[at] < _NEARLY * int(worth.max()):
                break
            number = int(serves[at])
            shape, item = self.group.shapes[number], self._values.item[number]
            rest = self.trace(mask, width, int(self._before[place, number]))
            found.append(_longest_first([(shape.length, item), *rest]))
        return found

    def _trace(self, mask: int, width: int, place: int) -> list[tuple[int, int]]:
        assert self._values is not None
        row = self.value[mask, width]
        found: list[tuple[int, int]] = []
        worth = self._values.value
        serves = np.flatnonzero((self._shut[:, mask, width] == 0) & (worth > 0))
        gain = worth[serves]
        # Behind the last place stands one that nothing reaches.
        reached = np.append(row, LOW)
        while row[place] > 0:
            if row[place] == row[place - 1]:
                place -= 1
                continue
            before = self._before[place, serves]
            hits = np.flatnonzero(reached[before] + gain == row[place])
            if not len(hits):
                raise ValueError("a strip's value has no filling behind it")
            number = int(serves[hits[0]])
            found.append((self.group.shapes[number].length, self._values.item[number]))
            place = int(before[hits[0]])
        return _longest_first(found)


def _longest_first(cuts: list[tuple[int, int]]) -> list[tuple[int, int]]:
    """So that what is left over lies together at the far end."""
    return sorted(cuts, key=lambda cut: (-cut[0], cut[1]))


class StackTable:
    """Best stack of strips in a clear height, for every section length that is a sum."""

    def __init__(self, group: Group, heights: Sums, num_lengths: int) -> None:
        self.group = group
        self.heights = heights
        before = heights.totals[:, None] - group.widths[None, :]
        self._before = np.where(
            before >= 0, heights.floor[np.maximum(before, 0)], len(heights.totals)
        )
        self.work = len(heights.totals) * (6 + len(group.widths) * num_lengths // 400)
        self.value: Ints = np.zeros((0, 0), np.int64)

    def reprice(self, strips: Ints) -> None:
        """Work the table out again.

        Parameters
        ----------
        strips
            Value by width and length, of `StripTable`.
        """
        # A strip no dearer than a narrower or shorter one need not be looked at.
        widths = np.flatnonzero((np.diff(strips, axis=0, prepend=0) > 0).any(axis=1))
        lengths = (np.diff(strips, axis=1, prepend=0) > 0).any(axis=0)
        worth = np.ascontiguousarray(strips[np.ix_(widths, np.flatnonzero(lengths))])
        before = self._before[:, widths]
        num = len(self.heights.totals)
        value = np.full((num + 1, worth.shape[1]), LOW, np.int64)
        value[0] = 0
        for place in range(1, num):
            fit = before[place] < num
            found = value[before[place][fit]] + worth[fit]
            found.max(axis=0, initial=LOW, out=value[place])
            np.maximum(value[place - 1], value[place], out=value[place])
        # Any other length is worth what the next shorter one is, the first ones nothing.
        filled = np.zeros((num, 1 + worth.shape[1]), np.int64)
        filled[:, 1:] = value[:num]
        self.value = filled[:, np.cumsum(lengths)]
        self._strips = strips

    def trace(self, height: int, length: int) -> list[int]:
        """A best stack, as places of its widths, for places of height and length."""
        column = self.value[:, length]
        found: list[int] = []
        while column[height] > 0:
            if column[height] == column[height - 1]:
                height -= 1
                continue
            for width in range(len(self.group.widths)):
                before = int(self._before[height, width])
                if before < len(column) and (
                    column[before] + self._strips[width, length] == column[height]
                ):
                    found.append(width)
                    height = before
                    break
            else:
                raise ValueError("a stack's value has no strips behind it")
        return sorted(found, reverse=True)
