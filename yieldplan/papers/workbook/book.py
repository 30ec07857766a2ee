"""The workbook as a whole: its sheets, its named prices, and how it is saved."""

from __future__ import annotations

import io
import re
from collections.abc import Sequence
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

from openpyxl import Workbook as Spreadsheet
from openpyxl.styles import Font
from openpyxl.workbook.defined_name import DefinedName

from yieldplan.drawing.fonts import width
from yieldplan.papers.workbook.cells import FONT, Put, printable
from yieldplan.papers.workbook.sheet import Sheet
from yieldplan.papers.workbook.stored import Value, with_values


@dataclass
class Book:
    """A workbook being filled.

    Parameters
    ----------
    job
        The job's title, for the head of every sheet.
    remark
        What stands beside it: the plan's mark, the currency.
    incomplete
        What is missing, in words; nothing when all is there.
    """

    job: str
    remark: str
    incomplete: str
    foot: str = ""
    spreadsheet: Spreadsheet = field(default_factory=Spreadsheet)
    _sheets: list[Sheet] = field(default_factory=list)
    _values: list[dict[str, Value]] = field(default_factory=list)
    _names: set[str] = field(default_factory=set)

    def __post_init__(self) -> None:
        active = self.spreadsheet.active
        if active is not None:
            self.spreadsheet.remove(active)
        inner: Any = self.spreadsheet  # column widths are counted in its first font
        inner._fonts[0] = Font(name=FONT, size=10)
        self.spreadsheet.properties.creator = "yieldplan"
        self.spreadsheet.properties.title = printable(self.job)

    def sheet(
        self,
        title: str,
        columns: Sequence[float],
        *,
        note: str = "",
        landscape: bool = False,
    ) -> Sheet:
        """Begin a sheet, with the head every sheet has.

        Parameters
        ----------
        note
            How to read the sheet; printed at the head of every page.
        """
        values: dict[str, Value] = {}
        made = Sheet(
            self.spreadsheet.create_sheet(title), columns, values, landscape=landscape
        )
        self._values.append(values)
        self._sheets.append(made)
        left = made.columns_for(width(title, 16, bold=True) + 16)
        right = Put(
            value=f"{self.job}   {self.remark}", size=9, align="right", level="bottom",
            span=len(columns) - left, rule="thick",
        )  # fmt: skip
        head = Put(value=title, size=16, bold=True, span=left, rule="thick")
        made.row(head, right, least=26)
        if self.incomplete:
            made.across(
                Put(value=self.incomplete, size=10.5, bold=True, rule="heavy box")
            )
        if note:
            made.across(Put(value=note, size=9))
        made.gap(4)
        made.head_ends()
        return made

    def name(self, wish: str, cell: str) -> str:
        """Name a cell, given as a formula on another sheet names it; returns the name."""
        plain = re.sub(r"\W+", "_", wish).strip("_")[:200]
        name, number = plain, 1
        while name.casefold() in self._names:
            number += 1
            name = f"{plain}_{number}"
        self._names.add(name.casefold())
        title, _, corner = cell.rpartition("!")
        column = corner.rstrip("0123456789")
        fixed = f"{title}!${column}${corner[len(column) :]}"
        self.spreadsheet.defined_names[name] = DefinedName(name, attr_text=fixed)
        return name

    def save(self, path: Path) -> Path:
        """Write the file, every formula with its value."""
        for sheet in self._sheets:
            sheet.finish(self.foot)
        file = io.BytesIO()
        self.spreadsheet.save(file)
        members = {
            f"xl/worksheets/sheet{number}.xml": values
            for number, values in enumerate(self._values, start=1)
        }
        path.write_bytes(with_values(file.getvalue(), members))
        return path
