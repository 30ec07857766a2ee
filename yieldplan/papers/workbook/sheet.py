"""A sheet filled from the top, whose pages break between the things that belong together."""

from __future__ import annotations

import io
from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from dataclasses import replace
from typing import TYPE_CHECKING, Any, cast

from openpyxl.drawing.image import Image
from openpyxl.drawing.spreadsheet_drawing import AnchorMarker, OneCellAnchor
from openpyxl.drawing.xdr import XDRPositiveSize2D
from openpyxl.utils import get_column_letter
from openpyxl.worksheet.pagebreak import Break, RowBreak
from openpyxl.worksheet.properties import PageSetupProperties
from openpyxl.worksheet.worksheet import Worksheet

from yieldplan.drawing import png
from yieldplan.drawing.fonts import wrap
from yieldplan.drawing.scene import Scene
from yieldplan.papers.workbook.cells import FONT, Put, dress, fill, printable
from yieldplan.papers.workbook.stored import Value

if TYPE_CHECKING:
    from openpyxl.cell.cell import Cell

PORTRAIT, LANDSCAPE = 540.0, 700.0
"""Width that letter and A4 both have room for, margins of 0.38 in taken off. [pt]"""
_PAGE = {False: 726.0, True: 530.0}  # height, foot line taken off, on the shorter paper
_TALLEST_ROW = 400.0
_PADDING = 7.0
_EMU = 12_700  # to the point


class Sheet:
    """One sheet of the workbook.

    Parameters
    ----------
    columns
        Their widths. [pt]
    values
        Where the value of every formula cell is noted.
    """

    def __init__(
        self,
        sheet: Worksheet,
        columns: Sequence[float],
        values: dict[str, Value],
        *,
        landscape: bool = False,
    ) -> None:
        self.sheet = sheet
        self.columns = tuple(columns)
        self.landscape = landscape
        self.next_row = 1
        self._values = values
        self._heights: dict[int, float] = {}
        self._block_starts: list[int] = []
        self._in_block = False
        self._glued = False
        self._head_rows = 0
        for number, points in enumerate(columns, start=1):
            # A width is counted in digits of the standard font: 7 dots of 1/96 in.
            letters = points * 96 / 72 / 7
            sheet.column_dimensions[get_column_letter(number)].width = round(letters, 2)
        self._set_up_page()

    def row(self, *puts: Put, least: float = 0.0) -> int:
        """Add a row of cells from the left; returns its number."""
        number = self.next_row
        self._begin_block()
        high = least
        column = 1
        for put in puts:
            high = max(high, self._height(put, column))
            self._put(number, column, put)
            column += put.span
        self._set_height(number, max(high, 4.0))
        self.next_row += 1
        return number

    def gap(self, points: float = 8.0) -> None:
        """Leave some room."""
        self.row(least=points)

    def across(self, put: Put) -> int:
        """Add a row that is one cell over the whole width."""
        return self.row(replace(put, span=len(self.columns)))

    def head_ends(self) -> None:
        """What stands above is printed again at the head of every page."""
        self._head_rows = self.next_row - 1
        self.sheet.print_title_rows = f"1:{self._head_rows}"
        self.sheet.freeze_panes = f"A{self.next_row}"

    @contextmanager
    def together(self) -> Iterator[None]:
        """Rows added inside are kept on one page, if one page holds them."""
        self._begin_block()
        outer, self._in_block = self._in_block, True
        yield
        self._in_block = outer

    def keep_with_next(self) -> None:
        """What was added last stays on one page with what is added next."""
        self._glued = True

    def columns_for(self, points: float) -> int:
        """How many columns from the left give so much room; one is left at the right."""
        room, count = 0.0, 0
        while room < points and count < len(self.columns) - 1:
            room += self.columns[count]
            count += 1
        return max(count, 1)

    def picture(self, scene: Scene, *, indent: float = 0.0) -> None:
        """Put a picture into rows of its own height."""
        image = Image(io.BytesIO(png.paint(scene)))
        size = XDRPositiveSize2D(round(scene.width * _EMU), round(scene.height * _EMU))
        corner = AnchorMarker(
            col=0,
            row=self.next_row - 1,
            colOff=round(indent * _EMU),
            rowOff=0,
        )
        image.anchor = OneCellAnchor(_from=corner, ext=size)
        self.sheet.add_image(image)
        left = scene.height
        with self.together():
            while left > 0:
                self.row(least=min(left, _TALLEST_ROW))
                left -= _TALLEST_ROW

    def finish(self, foot: str) -> None:
        """Set the page breaks and the line at the foot."""
        footer: Any = self.sheet.oddFooter  # the library's types leave its parts open
        footer.left.text = printable(foot).replace("&", "&&")[:200]
        footer.right.text = "page &P of &N"
        for part in (footer.left, footer.right):
            part.size, part.font = 8, FONT
        self.sheet.row_breaks = RowBreak()
        head = sum(self._heights[row] for row in range(1, self._head_rows + 1))
        starts = [row for row in self._block_starts if row > self._head_rows]
        ends = [*starts[1:], self.next_row] if starts else []
        used = head
        for start, end in zip(starts, ends, strict=True):
            high = sum(self._heights[row] for row in range(start, end))
            if used + high > _PAGE[self.landscape] and used > head:
                self.sheet.row_breaks.append(Break(id=start - 1))
                used = head
            used += high
        last = get_column_letter(len(self.columns))
        self.sheet.print_area = f"A1:{last}{self.next_row - 1}"

    def cell(self, column: int, row: int) -> str:
        """The name of a cell of this sheet in a formula on it."""
        return f"{get_column_letter(column)}{row}"

    def cell_from_elsewhere(self, column: int, row: int) -> str:
        """The name of a cell of this sheet in a formula on another one."""
        return f"'{self.sheet.title}'!{self.cell(column, row)}"

    def _begin_block(self) -> None:
        if not self._in_block and not self._glued:
            self._block_starts.append(self.next_row)
        self._glued = False

    def _put(self, row: int, column: int, put: Put) -> None:
        cell = cast("Cell", self.sheet.cell(row, column))
        fill(cell, put)
        if put.formula:
            if put.value is None:
                raise ValueError(f"the formula in {cell.coordinate} has no value")
            self._values[cell.coordinate] = put.value
        if put.span > 1:
            last = column + put.span - 1
            for other in range(column + 1, last + 1):
                dress(cast("Cell", self.sheet.cell(row, other)), put)
            self.sheet.merge_cells(
                start_row=row, end_row=row, start_column=column, end_column=last
            )

    def _height(self, put: Put, column: int) -> float:
        if put.value is None:
            return put.size * 1.35 + 3
        if not isinstance(put.value, str) or not put.wrap:
            return put.size * 1.35 + 3
        room = sum(self.columns[column - 1 : column - 1 + put.span])
        lines = wrap(
            put.value, room - _PADDING - 7 * put.indent, put.size, bold=put.bold
        )
        return len(lines) * put.size * 1.2 + 3.5

    def _set_height(self, row: int, points: float) -> None:
        points = round(min(points, 409.0), 1)
        self._heights[row] = points
        self.sheet.row_dimensions[row].height = points

    def _set_up_page(self) -> None:
        sheet = self.sheet
        sheet.sheet_view.showGridLines = False
        sheet.sheet_properties.pageSetUpPr = PageSetupProperties(fitToPage=True)
        sheet.page_setup.orientation = "landscape" if self.landscape else "portrait"
        sheet.page_setup.fitToWidth = 1
        sheet.page_setup.fitToHeight = 0
        sheet.page_setup.blackAndWhite = True
        margins = sheet.page_margins
        margins.left = margins.right = 0.38
        margins.top, margins.bottom = 0.35, 0.5
        margins.header, margins.footer = 0.2, 0.25
        sheet.print_options.horizontalCentered = True
