"""Which marks a stretch crosses: along the piece for a section, across it for a strip.

A stretch from `a` to `b` meets the block from `lo` to `hi` when a < hi and b > lo. So the
marks it meets follow from two counts: how many blocks end at or before `a`, and how many
begin before `b`.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

Ints = npt.NDArray[np.int64]
Bools = npt.NDArray[np.bool_]
Floats = npt.NDArray[np.float64]


@dataclass(frozen=True)
class Crossings:
    """Blocks on one axis of a piece.

    Parameters
    ----------
    ended
        At each mark, how many blocks have ended there or before.
    begun
        At each mark, how many blocks have begun before it.
    size
        Number of cells.
    """

    size: int
    ended: Ints
    begun: Ints
    _ends: tuple[int, ...]
    _begins: tuple[int, ...]
    _met: tuple[tuple[int, ...], ...]

    @staticmethod
    def of(size: int, blocks: Sequence[tuple[int, int]]) -> Crossings:
        """Crossings of blocks given as (first cell, cell behind the last)."""
        ends = sorted({hi for _, hi in blocks})
        begins = sorted({lo for lo, _ in blocks})
        marks = np.arange(size + 1, dtype=np.int64)
        met = tuple(
            tuple(
                sum(
                    1 << number
                    for number, (lo, hi) in enumerate(blocks)
                    # Not among the ended ones, and among those begun.
                    if hi > (ends[past - 1] if past else -1)
                    and lo < (begins[begun] if begun < len(begins) else size + 1)
                )
                for begun in range(len(begins) + 1)
            )
            for past in range(len(ends) + 1)
        )
        return Crossings(
            size,
            np.searchsorted(np.array(ends, np.int64), marks, side="right").astype(
                np.int64
            ),
            np.searchsorted(np.array(begins, np.int64), marks, side="left").astype(
                np.int64
            ),
            tuple(ends),
            tuple(begins),
            met,
        )

    @property
    def columns(self) -> int:
        """How many counts of begun blocks there are."""
        return len(self._begins) + 1

    @property
    def rows(self) -> int:
        """How many counts of ended blocks there are."""
        return len(self._ends) + 1

    def met(self, ended: int, begun: int) -> int:
        """Bit set of the blocks met, by the two counts."""
        return self._met[ended][begun]

    def met_between(self, a: int, b: int) -> int:
        """Bit set of the blocks a stretch meets."""
        return self._met[int(self.ended[a])][int(self.begun[b])]

    def longest(self, ended: int, begun: int) -> int:
        """The longest stretch with these counts; 0 when there is none."""
        start = self._ends[ended - 1] if ended else 0
        end = self._begins[begun] if begun < len(self._begins) else self.size
        return max(0, end - start)

    def shortest(self, ended: int, begun: int) -> int:
        """The shortest stretch with these counts, at least one cell."""
        last_start = self._ends[ended] - 1 if ended < len(self._ends) else self.size
        first_end = self._begins[begun - 1] + 1 if begun else 0
        return max(1, first_end - last_start)

    def each(self) -> Iterator[tuple[int, int, int]]:
        """Every pair of counts some stretch has, with its number."""
        for ended in range(self.rows):
            for begun in range(self.columns):
                if self.longest(ended, begun) >= self.shortest(ended, begun):
                    yield ended, begun, ended * self.columns + begun


def free_runs(size: int, blocks: Sequence[tuple[int, int]]) -> list[tuple[int, int]]:
    """Stretches between the blocks."""
    runs = []
    start = 0
    for lo, hi in sorted(blocks):
        if lo > start:
            runs.append((start, lo))
        start = max(start, hi)
    if size > start:
        runs.append((start, size))
    return runs
