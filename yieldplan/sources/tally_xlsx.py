"""A yard's tally as a spreadsheet file: one row a board, on the sheet called tally or on the first."""

from __future__ import annotations

import re
import warnings
import zipfile
from collections.abc import Iterator, Sequence
from pathlib import Path
from typing import ClassVar
from xml.etree.ElementTree import ParseError

from yieldplan.faults import Faults, Where
from yieldplan.model.job import Job
from yieldplan.model.pieces import Piece
from yieldplan.sources.cell_text import CellError, cell_text
from yieldplan.sources.sheet_layout import MOST_ROWS, Layout, layout_of
from yieldplan.sources.source import Source
from yieldplan.sources.table import MOST_COLUMNS, Cells, boards_of, column_meant
from yieldplan.sources.zip_limits import BROKEN, open_within_limits

_NOT_A_SHEET = (*BROKEN, ParseError, LookupError, TypeError, AttributeError)
"""What openpyxl says to a file that is zipped as a spreadsheet and is none."""

_Values = list[tuple[int, list[object]]]


class TallyXlsx(Source):
    """A tally as a spreadsheet (.xlsx); the sheet called tally, or the first one."""

    words: ClassVar[str] = "tally (XLSX)"
    suffixes: ClassVar[tuple[str, ...]] = (".xlsx",)

    def pieces(self, file: Path, job: Job, faults: Faults) -> tuple[Piece, ...]:
        """The boards of the sheet; the columns are those of a CSV tally."""
        zipped = open_within_limits(file, faults)
        if zipped is None:
            return ()
        found = Faults()
        cells = _cells(zipped, file.name, found)
        faults.extend(found.told_once())
        # A cell that could not be taken would be told again as a cell that is missing.
        return boards_of(cells, job, faults) if cells is not None else ()


def _cells(zipped: zipfile.ZipFile, file: str, faults: Faults) -> Cells | None:
    whole = Where(file=file)
    try:
        layout, values = _sheet(zipped)
    except _NOT_A_SHEET:
        wrong = "this is not a whole spreadsheet file"
        faults.add(whole, "", wrong, "Open it and save it again as .xlsx")
        return None
    if layout.last_row > MOST_ROWS:
        faults.add(whole, "", f"over {MOST_ROWS:,} rows", "Offer fewer boards")
        return None
    if not values:
        faults.add(whole, "", "its first sheet is empty", "Write a row a board")
        return None
    names = [_name(value) for value in values[0][1]]
    _tell_layout(layout, file, names, values[0][0], faults)
    rows = [
        (number, [_text(file, number, names, at, cell, faults) for at, cell in enumerate(row)])
        for number, row in values
    ]  # fmt: skip
    return None if len(faults) else Cells(file=file, rows=rows)


def _name(value: object) -> str:
    return column_meant(str(value or ""))


def _text(
    file: str, number: int, names: Sequence[str], at: int, value: object, faults: Faults
) -> str:
    name = names[at] if at < len(names) else ""
    if name == "note":
        return ""
    try:
        return cell_text(value, name)
    except CellError as error:
        where = Where(file=file, row=number, key=name)
        faults.add(where, error.said, error.wrong, error.remedy)
        return ""


def _sheet(zipped: zipfile.ZipFile) -> tuple[Layout, _Values]:
    """The layout of the tally's sheet, and its rows that are not empty."""
    from openpyxl.reader.excel import (
        ExcelReader,
    )  # heavy, and only this source needs it

    with warnings.catch_warnings():
        # It warns of what it will not keep on saving; nothing is saved here.
        warnings.simplefilter("ignore")
        if zipped.fp is None:
            raise ValueError("the file is closed")
        reader = ExcelReader(
            zipped.fp, read_only=True, data_only=True, keep_links=False
        )
        reader.read()
        paths = {sheet.name: rel.target for sheet, rel in reader.parser.find_sheets()}
        names = [sheet.title for sheet in reader.wb.worksheets]
        title = next((n for n in names if n.strip().lower() == "tally"), names[0])
        with zipped.open(paths[title]) as opened:
            layout = layout_of(opened)
        if layout.last_row > MOST_ROWS:
            return layout, []
        rows = reader.wb[title].iter_rows(
            max_row=max(layout.last_row, 1), max_col=MOST_COLUMNS, values_only=True
        )
        return layout, list(_rows_with_something(rows))


def _rows_with_something(
    rows: Iterator[Sequence[object]],
) -> Iterator[tuple[int, list[object]]]:
    for number, row in enumerate(rows, start=1):
        cells = list(row)
        while cells and (cells[-1] is None or not str(cells[-1]).strip()):
            cells.pop()
        if cells:
            yield number, cells


def _tell_layout(
    layout: Layout, file: str, names: Sequence[str], header: int, faults: Faults
) -> None:
    for row in layout.hidden:
        faults.add(
            Where(file=file, row=row),
            "",
            "this row is hidden, so nobody can say whether its board is offered",
            "Show the row, or delete it",
        )
    for said in layout.merged:
        first, last = _rows_of(said)
        if last > max(header, first):
            faults.add(
                Where(file=file, row=first),
                said,
                "these cells are merged, so only the first row has the value",
                "Part them, and write the value in each row",
            )
    for said in layout.not_worked_out:
        row, column = _place(said)
        name = names[column] if column < len(names) else ""
        if name != "note":
            faults.add(
                Where(file=file, row=row, key=name),
                said,
                "this formula has not been worked out",
                "Open the file in a spreadsheet and save it, or type the value",
            )


def _rows_of(said: str) -> tuple[int, int]:
    rows = [int(number[:7]) for number in re.findall(r"\d+", said)]
    return (rows[0], rows[-1]) if rows else (0, 0)


def _place(said: str) -> tuple[int, int]:
    """Row and column (from 0) of a cell such as `B7`."""
    match = re.search(r"([A-Z]{0,3})(\d{1,7})$", said)
    if match is None:
        return 1, MOST_COLUMNS
    column = 0
    for letter in match[1]:
        column = 26 * column + ord(letter) - 64
    return int(match[2]), column - 1 if column else MOST_COLUMNS
