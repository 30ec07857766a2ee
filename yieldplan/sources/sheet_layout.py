"""What a spreadsheet's cells do not tell: rows that are hidden, cells that are merged, formulas nobody worked out."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field
from typing import IO
from xml.etree.ElementTree import Element, iterparse

_MAIN = (
    "{http://schemas.openxmlformats.org/spreadsheetml/2006/main}",
    "{http://purl.oclc.org/ooxml/spreadsheetml/main}",
)
MOST_ROWS = 10_000


class BrokenSheetError(ValueError):
    """A sheet whose rows do not stand in order, which no spreadsheet program writes."""


@dataclass(kw_only=True)
class Layout:
    """What was found, by row and cell as the sheet counts them.

    Parameters
    ----------
    rows
        Number of rows that hold a cell, and the number of the last.
    merged
        Ranges such as `B2:B9`.
    not_worked_out
        Cells with a formula and no value.
    """

    last_row: int = 0
    hidden: list[int] = field(default_factory=list)
    merged: list[str] = field(default_factory=list)
    not_worked_out: list[str] = field(default_factory=list)


def layout_of(sheet: IO[bytes]) -> Layout:
    """The layout of one sheet's XML, read row by row.

    Raises
    ------
    BrokenSheetError
        When its rows are out of order.
    """
    found = Layout()
    number = 0
    for _, element in iterparse(sheet):
        name = _name(element)
        if name == "mergeCell":
            found.merged.append(element.get("ref", ""))
        if name != "row":
            continue
        said = element.get("r", str(number + 1))
        if not (said.isascii() and said.isdecimal() and int(said[:9]) > number):
            raise BrokenSheetError(said)
        number = int(said[:9])
        cells = list(_cells(element))
        if any(_value(cell) for cell in cells):
            found.last_row = number
            if element.get("hidden") in ("1", "true"):
                found.hidden.append(number)
        found.not_worked_out += [
            cell.get("r", f"row {number}")
            for cell in cells
            if _has(cell, "f") and not _value(cell)
        ]
        element.clear()
        if number > MOST_ROWS:
            break
    return found


def _name(element: Element) -> str:
    for space in _MAIN:
        if element.tag.startswith(space):
            return element.tag.removeprefix(space)
    return ""


def _cells(row: Element) -> Iterator[Element]:
    return (child for child in row if _name(child) == "c")


def _has(cell: Element, name: str) -> bool:
    return any(_name(child) == name for child in cell)


def _value(cell: Element) -> bool:
    """Whether something stands in a cell."""
    if cell.get("t") == "inlineStr":
        return any("".join(child.itertext()).strip() for child in cell)
    return any(_name(child) == "v" and child.text for child in cell)
