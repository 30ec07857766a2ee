"""Writes small spreadsheets for tests, and changes what is packed in them."""

from __future__ import annotations

import io
import zipfile
from collections.abc import Callable, Mapping, Sequence

from openpyxl import Workbook

SHEET = "xl/worksheets/sheet1.xml"


def book(
    *rows: Sequence[object], name: str = "Sheet", change: Callable[[Workbook], None] = lambda _: None
) -> bytes:  # fmt: skip
    """A spreadsheet of one sheet with these rows."""
    made = Workbook()
    sheet = made.worksheets[0]
    sheet.title = name
    for row in rows:
        sheet.append(list(row))
    change(made)
    raw = io.BytesIO()
    made.save(raw)
    return raw.getvalue()


def members(raw: bytes) -> dict[str, bytes]:
    """What is packed in a zipped file."""
    with zipfile.ZipFile(io.BytesIO(raw)) as zipped:
        return {name: zipped.read(name) for name in zipped.namelist()}


def packed(files: Mapping[str, bytes]) -> bytes:
    """The files packed as a spreadsheet is."""
    raw = io.BytesIO()
    with zipfile.ZipFile(raw, "w", zipfile.ZIP_DEFLATED) as zipped:
        for name, content in files.items():
            zipped.writestr(name, content)
    return raw.getvalue()
