"""A yard's tally as a CSV file: one row a board."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path
from typing import ClassVar

from yieldplan.faults import Faults, Where, did_you_mean
from yieldplan.model.job import Job
from yieldplan.model.pieces import Piece
from yieldplan.sources.boards import MOST_BOARDS, boards
from yieldplan.sources.columns import COLUMNS, NEEDED, Row
from yieldplan.sources.csv_file import Cells, plain, read_cells
from yieldplan.sources.source import Source


class TallyCsv(Source):
    """A tally saved from a spreadsheet as CSV, or typed; one board a row."""

    words: ClassVar[str] = "tally (CSV)"
    suffixes: ClassVar[tuple[str, ...]] = (".csv", ".tsv", ".txt")

    def pieces(self, file: Path, job: Job, faults: Faults) -> tuple[Piece, ...]:
        """The boards of the file; only length and width are compulsory.

        What else is left out is taken where it is clear: the job's one wood, the one
        thickness its price list knows, ids B1, B2 and so on by row.
        """
        cells = read_cells(file, COLUMNS, faults)
        if cells is None:
            return ()
        columns = _header(cells, faults)
        if columns is None:
            return ()
        rows = [
            Row(
                file=cells.file,
                number=number,
                cells={
                    columns[at]: cell for at, cell in enumerate(row) if at in columns
                },
                unit=job.unit,
                decimal_comma=cells.decimal_comma,
                faults=faults,
            )
            for number, row in cells.rows[1:]
            if _fits(cells.file, number, row, columns, faults)
        ]
        whole = Where(file=cells.file)
        if len(rows) > MOST_BOARDS:
            faults.add(whole, "", f"over {MOST_BOARDS:,} boards", "Offer fewer")
            return ()
        if len(cells.rows) == 1:
            faults.add(whole, "", "it lists no board", "Write one row a board")
        return boards(rows, job, faults) if rows else ()


def _header(cells: Cells, faults: Faults) -> dict[int, str] | None:
    """Position of each column to its name; None when the table cannot be read by it."""
    number, header = cells.rows[0]
    columns: dict[int, str] = {}
    misspelt: set[str] = set()
    for at, cell in enumerate(header):
        name = plain(cell)
        where = Where(file=cells.file, row=number, key=f"column {at + 1}")
        if not name:
            continue
        if name not in COLUMNS:
            remedy = did_you_mean(name, COLUMNS)
            faults.add(where, cell[:80], "a tally has no such column", remedy)
            misspelt.update(known for known in COLUMNS if f'"{known}"' in remedy)
            continue
        if name in columns.values():
            faults.add(where, cell[:80], "this column is there twice", "Keep one")
            continue
        columns[at] = name
    missing = [name for name in NEEDED if name not in columns.values()]
    for name in missing:
        if name not in misspelt:
            faults.add(
                Where(file=cells.file, row=number),
                "",
                f"there is no column {name}",
                "The first row names the columns; only length and width are needed",
            )
    return None if missing else columns


def _fits(
    file: str, number: int, row: Sequence[str], columns: dict[int, str], faults: Faults
) -> bool:
    """Whether the row has no more cells than the header, which is noted."""
    last = max(columns)
    beyond = [cell for cell in row[last + 1 :] if cell]
    if not beyond:
        return True
    faults.add(
        Where(file=file, row=number),
        beyond[0][:80],
        "this row has more cells than the header",
        "Put a cell with a separator in it in quotes, or drop the comma",
    )
    return False
