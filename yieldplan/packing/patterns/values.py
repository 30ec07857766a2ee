"""What shapes are worth at given prices, and the sums their sizes can make."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field

import numpy as np

from yieldplan.packing.grid.crossings import Bools, Ints
from yieldplan.packing.patterns.group import Group

LOW = -(1 << 60)
"""Less than anything: marks what is not allowed."""


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
    _under: dict[int, tuple[int, Ints]] = field(default_factory=dict, compare=False)

    @staticmethod
    def of(sizes: Sequence[int], limit: int) -> Sums:
        """Sums of any number of the sizes."""
        return Sums.of_more_and_more(sizes, limit)[-1]

    @staticmethod
    def of_more_and_more(sizes: Sequence[int], limit: int) -> tuple[Sums, ...]:
        """Sums of none of the sizes, of the first, of the first two and so on."""
        can = np.zeros(limit + 1, dtype=bool)
        can[0] = True
        found = [_sums_where(can)]
        for size in sizes:
            for total in range(size, limit + 1, size):
                end = min(total + size, limit + 1)
                can[total:end] |= can[total - size : end - size]
            found.append(_sums_where(can))
        return tuple(found)

    def under(self, high: int) -> tuple[int, Ints]:
        """The place of the first total that holds this one, and from there on the places of what is left under it."""
        if high not in self._under:
            start = int(np.searchsorted(self.totals, high))
            self._under[high] = start, self.floor[self.totals[start:] - high]
        return self._under[high]


def _sums_where(can: Bools) -> Sums:
    """The totals that can be made."""
    return Sums(
        np.flatnonzero(can).astype(np.int64), np.cumsum(can, dtype=np.int64) - 1
    )


@dataclass(frozen=True)
class ShapeValues:
    """What each shape is worth at given prices, and the item that makes it so.

    Parameters
    ----------
    of_item, at_most
        Of every item, what it is worth and how often clear wood is said to hold it.
    """

    value: Ints
    item: tuple[int, ...]
    of_item: tuple[int, ...]
    at_most: tuple[int, ...]


def shape_values(
    group: Group, item_value: Sequence[int], at_most: Sequence[int]
) -> ShapeValues:
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
        tuple(item_value),
        tuple(at_most),
    )


def at_a_time(copies: int) -> list[int]:
    """Numbers such that any number of copies up to this one is the sum of some of them."""
    found = []
    take = 1
    while copies > 0:
        found.append(min(take, copies))
        copies -= take
        take *= 2
    return found
