"""Rows that are worth the sum of their clear runs: sections between marks, strips across them."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

import numpy as np

from yieldplan.packing.grid.crossings import Bools, Ints

_CELLS_AT_ONCE = 1 << 18


class Runs:
    """The clear runs of some rows, and where each stands in a table of values.

    Parameters
    ----------
    runs
        By row, its runs as (start, end). [cells]
    floor
        The place of a run in the table, by how long it is.
    """

    def __init__(
        self, runs: Mapping[int, Sequence[tuple[int, int]]], floor: Ints
    ) -> None:
        rows: list[int] = []
        places: list[int] = []
        for row, of_row in sorted(runs.items()):
            for start, end in of_row:
                rows.append(row)
                places.append(int(floor[end - start]))
        self._places = np.array(places, np.int64)
        all_rows = np.array(rows, np.int64)
        self._starts = np.flatnonzero(np.diff(all_rows, prepend=-1))
        self._rows = all_rows[self._starts]

    def __len__(self) -> int:
        return len(self._places)

    def sum(self, table: Ints, wanted: Bools, into: Ints) -> None:
        """Write what the wanted rows are worth.

        Parameters
        ----------
        table
            By place, what a run is worth; a row of values.
        wanted
            By row; only these are written.
        into
            By row.
        """
        chosen = np.flatnonzero(wanted[self._rows])
        ends = np.append(self._starts[1:], len(self._places))
        # Of thousands of boards a few rows at a time, or what is added up takes more
        # memory than the sums.
        rows_at_once = max(1, _CELLS_AT_ONCE // max(1, table.shape[1]))
        for first in range(0, len(chosen), rows_at_once):
            some = chosen[first : first + rows_at_once]
            counts = (ends - self._starts)[some]
            starts = np.cumsum(counts) - counts
            at = np.arange(int(counts.sum())) + np.repeat(
                self._starts[some] - starts, counts
            )
            values = table[self._places[at]]
            into[self._rows[some]] = np.add.reduceat(values, starts, axis=0)
