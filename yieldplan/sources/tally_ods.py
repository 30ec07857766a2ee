"""A yard's tally as an OpenDocument spreadsheet (.ods): one row a board, on the sheet called tally or on the first."""

from __future__ import annotations

import zipfile
from collections.abc import Iterator, Mapping, Sequence
from datetime import date, timedelta
from pathlib import Path
from typing import ClassVar
from xml.etree.ElementTree import Element, ParseError, fromstring

from yieldplan.faults import Faults, Where
from yieldplan.model.job import Job
from yieldplan.model.pieces import Piece
from yieldplan.sources.cell_text import CellError, cell_text
from yieldplan.sources.sheet_layout import MOST_ROWS
from yieldplan.sources.source import Source
from yieldplan.sources.table import MOST_COLUMNS, Cells, boards_of, column_meant
from yieldplan.sources.zip_limits import BROKEN, open_within_limits

# OASIS Open Document Format for Office Applications 1.2, part 1: names of its parts.
_SPACE = "{urn:oasis:names:tc:opendocument:xmlns:%s:1.0}"
_TABLE, _OFFICE, _TEXT = (_SPACE % name for name in ("table", "office", "text"))

Row = tuple[int, Sequence[Element | None]]


class TallyOds(Source):
    """A tally as an OpenDocument spreadsheet; the sheet called tally, or the first one."""

    words: ClassVar[str] = "tally (ODS)"
    suffixes: ClassVar[tuple[str, ...]] = (".ods",)

    def pieces(self, file: Path, job: Job, faults: Faults) -> tuple[Piece, ...]:
        """The boards of the sheet; the columns are those of a CSV tally."""
        zipped = open_within_limits(file, faults)
        if zipped is None:
            return ()
        found = Faults()
        cells = _cells(zipped, file.name, found)
        faults.extend(found.told_once())
        return boards_of(cells, job, faults) if cells is not None else ()


def _cells(zipped: zipfile.ZipFile, file: str, faults: Faults) -> Cells | None:
    whole = Where(file=file)
    try:
        sheet = _sheet(fromstring(zipped.read("content.xml")))
    except (*BROKEN, ParseError, LookupError):
        wrong = "this is not a whole spreadsheet file"
        faults.add(whole, "", wrong, "Open it and save it again as .ods")
        return None
    rows = list(_rows(sheet, file, faults))
    if rows and rows[-1][0] > MOST_ROWS:
        faults.add(whole, "", f"over {MOST_ROWS:,} rows", "Offer fewer boards")
        return None
    if not rows:
        faults.add(whole, "", "its sheet is empty", "Write a row a board")
        return None
    names = [
        column_meant(_typed(each)) if each is not None else "" for each in rows[0][1]
    ]
    read = [
        (row, [_text(each, file, row, names, at, faults) for at, each in enumerate(cells)])
        for row, cells in rows
    ]  # fmt: skip
    return None if len(faults) else Cells(file=file, rows=read)


def _sheet(document: Element) -> Element:
    for gap in ("s", "tab", "line-break"):
        for each in document.iter(f"{_TEXT}{gap}"):
            each.text = " "
    sheets = document.findall(f"./{_OFFICE}body/{_OFFICE}spreadsheet/{_TABLE}table")
    named = {(each.get(f"{_TABLE}name") or "").strip().lower(): each for each in sheets}
    return named.get("tally", sheets[0])


def _rows(sheet: Element, file: str, faults: Faults) -> Iterator[Row]:
    """Rows with something in them, by number, cells at their columns.

    A row or cell that is repeated stands in the file once, with how often it is there:
    a sheet's empty rest is one row a million times over.
    """
    number = 1
    for row in sheet.iter(f"{_TABLE}table-row"):
        cells = _placed(row)
        times = _count(row, "rows")
        if cells:
            if row.get(f"{_TABLE}visibility", "visible") != "visible":
                faults.add(
                    Where(file=file, row=number),
                    "",
                    "this row is hidden, so nobody can say whether its board is offered",
                    "Show the row, or delete it",
                )
            for n in range(number, number + min(times, MOST_ROWS + 1)):
                yield n, cells
        number += times
        if number > MOST_ROWS and cells:
            return


def _placed(row: Element) -> Sequence[Element | None]:
    cells: list[Element | None] = []
    for cell in row:
        is_covered = cell.tag == f"{_TABLE}covered-table-cell"
        if not is_covered and cell.tag != f"{_TABLE}table-cell":
            continue
        told = None if is_covered or not _says_something(cell) else cell
        room = MOST_COLUMNS - len(cells)
        cells += [told] * min(_count(cell, "columns"), room)
    while cells and cells[-1] is None:
        cells.pop()
    return cells


def _says_something(cell: Element) -> bool:
    return any(f"{_OFFICE}{key}" in cell.attrib for key in _VALUES) or bool(
        cell.get(f"{_TABLE}formula") or _typed(cell)
    )


def _count(element: Element, what: str, how: str = "repeated") -> int:
    said = element.get(f"{_TABLE}number-{what}-{how}", "1")
    return max(1, int(said[:9])) if said.isascii() and said.isdecimal() else 1


_VALUES = ("value", "boolean-value", "date-value", "time-value")


def _typed(cell: Element) -> str:
    """The words in a cell; a comment pinned to it is not one of them."""
    return " ".join("".join(p.itertext()) for p in cell.findall(f"{_TEXT}p")).strip()


def _text(
    cell: Element | None, file: str, row: int, names: Sequence[str], at: int, faults: Faults
) -> str:  # fmt: skip
    name = names[at] if at < len(names) else ""
    if cell is None or name == "note":
        return ""
    where = Where(file=file, row=row, key=name)
    if _count(cell, "rows", "spanned") > 1:
        wrong = "these cells are merged, so only the first row has the value"
        remedy = "Part them, and write the value in each row"
        faults.add(where, _typed(cell)[:80], wrong, remedy)
        return ""
    try:
        return cell_text(_value(cell), name)
    except CellError as error:
        faults.add(where, error.said, error.wrong, error.remedy)
        return ""


def _value(cell: Element) -> object:
    """What stands in the cell, as the program that wrote it meant it."""
    said: Mapping[str, str | None] = {
        key: cell.get(f"{_OFFICE}{key}") for key in _VALUES
    }
    shown = _typed(cell)
    if shown.startswith("#"):
        return shown  # an error is shown in words and stored as 0
    try:
        if (number := said["value"]) is not None:
            return float(number)
        if (day := said["date-value"]) is not None:
            return date.fromisoformat(day[:10])
    except ValueError as error:
        wrong, remedy = "this cell is damaged", "Type the value again"
        raise CellError(shown[:80], wrong, remedy) from error
    if said["time-value"] is not None:
        return timedelta(0)
    if (yes := said["boolean-value"]) is not None:
        return yes == "true"
    if not shown and cell.get(f"{_TABLE}formula"):
        wrong = "this formula has not been worked out"
        remedy = "Open the file in a spreadsheet and save it, or type the value"
        raise CellError("", wrong, remedy)
    return shown
