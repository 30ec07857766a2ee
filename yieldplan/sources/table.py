"""A table of boards, one a row, from whatever file it came: its header, then every row as a board."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from yieldplan.faults import Faults, Where, did_you_mean
from yieldplan.model.job import Job
from yieldplan.model.pieces import Piece
from yieldplan.sources.board_rows import MOST_BOARDS
from yieldplan.sources.boards import boards
from yieldplan.sources.columns import ALIASES, COLUMNS, NEEDED, Row

MOST_COLUMNS = 200


@dataclass(frozen=True, kw_only=True)
class Cells:
    """A table as text.

    Parameters
    ----------
    rows
        Row number as the spreadsheet counts it, and its cells, as wide as the widest row.
    decimal_comma
        Whether 17,5 is seventeen and a half: only where semicolons separate.
    """

    file: str
    rows: Sequence[tuple[int, Sequence[str]]]
    decimal_comma: bool = False


def plain(header: str) -> str:
    """A column's name without what people write differently: capitals, spaces, hyphens."""
    return "_".join(header.lower().replace("-", " ").replace("_", " ").split())


def column_meant(header: str) -> str:
    """The column that a word above one means, or the plain word where none is known."""
    name = plain(header)
    return ALIASES.get(name, name)


def boards_of(cells: Cells, job: Job, faults: Faults) -> tuple[Piece, ...]:
    """The boards of a table, its first row the header; only length and width are needed.

    What else is left out is taken where it is clear: the job's one wood, the one
    thickness its price list knows, ids B1, B2 and so on by row.
    """
    found = Faults()
    pieces = _pieces(cells, job, found, is_list_whole=is_list_whole(faults))
    faults.extend(found.told_once())
    return pieces


def is_list_whole(faults: Faults) -> bool:
    """Whether the job's price list was read without a mistake."""
    return not any(fault.where.key.partition(".")[0] == "price" for fault in faults)


def _pieces(
    cells: Cells, job: Job, faults: Faults, *, is_list_whole: bool
) -> tuple[Piece, ...]:
    columns = _header(cells, faults)
    if columns is None:
        return ()
    whole = Where(file=cells.file)
    if len(cells.rows) - 1 > MOST_BOARDS:
        faults.add(whole, "", f"over {MOST_BOARDS:,} boards", "Offer fewer")
        return ()
    if len(cells.rows) == 1:
        faults.add(whole, "", "it lists no board", "Write one row a board")
    too_long = [row for row in cells.rows[1:] if any(row[1][_width(cells) :])]
    most = len(too_long) > 1 and 2 * len(too_long) > len(cells.rows) - 1
    if most or (too_long and len(faults)):
        # Then it is the header that lacks a name, and no column stands where it should.
        faults.add(
            Where(file=cells.file, row=cells.rows[0][0]),
            "",
            "rows have more cells than the header",
            "Give every column a name, or drop the separators at the rows' ends",
        )
        return ()
    rows = [
        Row(
            file=cells.file,
            number=number,
            cells={columns[at]: cell for at, cell in enumerate(row) if at in columns},
            unit=job.unit,
            decimal_comma=cells.decimal_comma,
            faults=faults,
        )
        for number, row in cells.rows[1:]
        if _fits(cells.file, number, row, _width(cells), faults)
    ]
    return boards(rows, job, is_list_whole=is_list_whole) if rows else ()


def _width(cells: Cells) -> int:
    """Number of columns that have a name, counted to the last of them."""
    return max(at for at, cell in enumerate(cells.rows[0][1]) if cell) + 1


def _header(cells: Cells, faults: Faults) -> dict[int, str] | None:
    """Position of each column to its name; None when the table cannot be read by it.

    A column under a wrong spelling is noted, then read as what was most likely meant:
    one slip in the header is one mistake, not one a row.
    """
    number, header = cells.rows[0]
    columns: dict[int, str] = {}
    for at, cell in enumerate(header):
        name = column_meant(cell)
        where = Where(file=cells.file, row=number, key=f"column {at + 1}")
        if name and name not in COLUMNS:
            remedy = did_you_mean(name, COLUMNS)
            faults.add(where, cell[:80], "a tally has no such column", remedy)
            name = next((known for known in COLUMNS if f'"{known}"' in remedy), "")
        if not name:
            continue
        if name in columns.values():
            faults.add(where, cell[:80], "this column is there twice", "Keep one")
            continue
        columns[at] = name
    missing = [name for name in NEEDED if name not in columns.values()]
    for name in missing:
        faults.add(
            Where(file=cells.file, row=number),
            "",
            f"there is no column {name}",
            "The first row names the columns; only length and width are needed",
        )
    return None if missing else columns


def _fits(
    file: str, number: int, row: Sequence[str], columns: int, faults: Faults
) -> bool:
    """Whether the row has no more cells than the header; if it has, that is noted."""
    beyond = [cell for cell in row[columns:] if cell]
    if not beyond:
        return True
    faults.add(
        Where(file=file, row=number),
        beyond[0][:80],
        "this row has more cells than the header",
        "Put a cell with a separator in it in quotes (14,60 is two cells), or drop the separator",
    )
    return False
