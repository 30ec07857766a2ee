"""Which section of a length, or strip of a width, is worth most for its size in what is free of a board."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence

import numpy as np

from yieldplan.packing.grid.crossings import Floats, Ints

Luck = Callable[[int], Floats]
"""So many factors near 1, by which each is taken for more or less than it is worth."""


def densest(
    free: Sequence[tuple[int, int]],
    marks: Iterable[tuple[int, int]],
    sizes: Ints,
    worth: Callable[[Ints], Ints],
    luck: Luck,
) -> tuple[int, int] | None:
    """Where the densest one begins and the place of its size; it lies at an end of what is free or at a mark.

    Parameters
    ----------
    free
        Stretches, from cell to cell.
    marks
        Begin and end of each mark. [cells]
    sizes
        In rising order. [cells]
    worth
        Of one of each size, the smallest first, that begin where it is told.
    """
    best, found = 0.0, None
    places = list(marks)
    for low, high in free:
        here = sizes[: int(np.searchsorted(sizes, high - low, side="right"))]
        begins = {low, *(end for _, end in places if low < end < high)}
        ends = {high, *(begin for begin, _ in places if low < begin < high)}
        for starts in (
            *(np.full(len(here), begin) for begin in sorted(begins)),
            *(end - here for end in sorted(ends)),
        ):
            fits = (starts >= low) & (starts + here <= high)
            start = np.where(fits, starts, low)
            dense = fits * worth(start) / here * luck(len(here))
            at = int(np.argmax(dense)) if len(here) else 0
            if len(here) and dense[at] > best:
                best, found = float(dense[at]), (int(start[at]), at)
    return found
