"""The blank page for the yard: one page, room for a pencil, no money on it."""

from __future__ import annotations

from pathlib import Path

import pytest
from openpyxl import load_workbook

from yieldplan.papers.tally_page import write_tally_page


@pytest.mark.parametrize("unit", ["in", "mm"])
def test_the_page_is_one_page_with_30_lines_a_quarter_inch_high(
    unit: str, tmp_path: Path
) -> None:
    path = tmp_path / "tally_page.xlsx"
    write_tally_page(path, unit)
    sheet = load_workbook(path).active
    assert sheet is not None
    numbers = [row for row in range(1, sheet.max_row + 1) if sheet.cell(row, 1).value in range(1, 31)]  # fmt: skip
    assert len(numbers) == 30
    assert all(sheet.row_dimensions[row].height >= 18 for row in numbers)
    assert not sheet.row_breaks.brk
    high = sum(sheet.row_dimensions[row].height for row in range(1, sheet.max_row + 1))
    assert high <= (11 - 0.85) * 72  # letter, the shorter of the two papers


def test_feet_and_inches_are_two_columns_and_nothing_is_priced(tmp_path: Path) -> None:
    path = tmp_path / "tally_page.xlsx"
    write_tally_page(path, "in")
    sheet = load_workbook(path).active
    assert sheet is not None
    said = [
        c.value for row in sheet.iter_rows() for c in row if isinstance(c.value, str)
    ]
    assert "ft" in said
    assert "in" in said
    assert not any("price" in word or "cost" in word for word in said)


def test_the_same_page_has_the_same_bytes(tmp_path: Path) -> None:
    for name in ("a.xlsx", "b.xlsx"):
        write_tally_page(tmp_path / name, "mm")
    assert (tmp_path / "a.xlsx").read_bytes() == (tmp_path / "b.xlsx").read_bytes()
