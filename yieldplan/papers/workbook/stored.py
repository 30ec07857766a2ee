"""Writes the program's own value beside every formula, and the same bytes for the same plan.

openpyxl leaves a formula without its value, so a viewer that does not calculate shows
nothing. One pass over the saved file puts the values in.
"""

from __future__ import annotations

import io
import re
import zipfile
from collections.abc import Mapping
from decimal import Decimal
from xml.sax.saxutils import escape

Value = Decimal | int | str

_FORMULA = re.compile(
    rb'<c r="(?P<at>[A-Z]+[0-9]+)"(?P<more>[^>]*)>(?P<formula><f[^>]*>.*?</f>)<v\s*(?:/>|></v>)</c>'
)
_TYPE = re.compile(rb' t="[^"]*"')
_STAMP = re.compile(
    rb"<dcterms:(created|modified)[^>]*>.*?</dcterms:\1>|<dcterms:(?:created|modified)[^>]*/>"
)
_EARLIEST = (1980, 1, 1, 0, 0, 0)  # a zip file knows no earlier date


def with_values(saved: bytes, values: Mapping[str, Mapping[str, Value]]) -> bytes:
    """The saved workbook with a value in every formula cell, and without any date.

    Parameters
    ----------
    values
        Member of the zip file (`xl/worksheets/sheet1.xml`) to cell to value.

    Raises
    ------
    ValueError
        When a formula cell has no value.
    """
    source = zipfile.ZipFile(io.BytesIO(saved))
    file = io.BytesIO()
    with zipfile.ZipFile(file, "w", zipfile.ZIP_DEFLATED) as target:
        for member in source.infolist():
            content = source.read(member)
            if member.filename.startswith("xl/worksheets/sheet"):
                content = _filled(content, values.get(member.filename, {}))
            elif member.filename == "docProps/core.xml":
                content = _STAMP.sub(b"", content)
            target.writestr(_undated(member.filename), content)
    return file.getvalue()


def _undated(name: str) -> zipfile.ZipInfo:
    entry = zipfile.ZipInfo(name, date_time=_EARLIEST)
    entry.compress_type = zipfile.ZIP_DEFLATED
    entry.create_system = 3  # the same on every system
    entry.external_attr = 0o644 << 16
    return entry


def _filled(sheet: bytes, values: Mapping[str, Value]) -> bytes:
    def fill(cell: re.Match[bytes]) -> bytes:
        at = cell["at"].decode()
        if at not in values:
            raise ValueError(f"the formula in {at} has no value")
        value = values[at]
        more = _TYPE.sub(b"", cell["more"])
        kind = b' t="str"' if isinstance(value, str) else b""
        text = escape(value if isinstance(value, str) else format(value, "f")).encode()
        return (
            b'<c r="' + at.encode() + b'"' + more + kind + b">"
            + cell["formula"] + b"<v>" + text + b"</v></c>"
        )  # fmt: skip

    return _FORMULA.sub(fill, sheet)
