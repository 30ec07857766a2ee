"""Every formula carries the program's own value, and the file carries no date."""

from __future__ import annotations

import io
import zipfile
from decimal import Decimal

import pytest
from openpyxl import Workbook, load_workbook

from yieldplan.papers.workbook.stored import with_values

SHEET = "xl/worksheets/sheet1.xml"


def _saved(formula: str) -> bytes:
    book = Workbook()
    sheet = book.active
    assert sheet is not None
    sheet["A1"] = 7
    sheet["B2"] = formula
    file = io.BytesIO()
    book.save(file)
    return file.getvalue()


def _value(file: bytes, at: str) -> object:
    return load_workbook(io.BytesIO(file), data_only=True).worksheets[0][at].value


def test_a_viewer_that_does_not_calculate_sees_the_value() -> None:
    file = with_values(_saved("=A1*14.5"), {SHEET: {"B2": Decimal("101.50")}})
    assert _value(file, "B2") == 101.5
    formulas = load_workbook(io.BytesIO(file))
    assert formulas.worksheets[0]["B2"].value == "=A1*14.5"


def test_words_are_stored_as_words() -> None:
    file = with_values(
        _saved('=IF(A1>0,"no <price>",0)'), {SHEET: {"B2": "no <price>"}}
    )
    assert _value(file, "B2") == "no <price>"


def test_a_formula_without_a_value_is_a_mistake_of_ours() -> None:
    with pytest.raises(ValueError, match="B2 has no value"):
        with_values(_saved("=A1"), {SHEET: {}})


def test_no_date_is_left_in_the_file() -> None:
    file = with_values(_saved("=A1"), {SHEET: {"B2": 7}})
    archive = zipfile.ZipFile(io.BytesIO(file))
    assert {entry.date_time for entry in archive.infolist()} == {(1980, 1, 1, 0, 0, 0)}
    assert b"dcterms" not in archive.read("docProps/core.xml").replace(
        b"http://purl.org/dc/terms/", b""
    ).replace(b"xmlns:dcterms", b"")
