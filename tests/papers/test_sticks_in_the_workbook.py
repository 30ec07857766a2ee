"""What the workbook says of sticks and of sheets in several sizes, read back with openpyxl."""

from __future__ import annotations

import pytest
from openpyxl import load_workbook
from openpyxl.workbook import Workbook

from tests.papers.test_workbook import words
from yieldplan import packing
from yieldplan.desk.hand_over import hand_over
from yieldplan.desk.plan_job import plan_job

JOB = """
title = "Edged shelves"
unit = "in"
currency = "USD"
[stick.edging]
product = "maple edging"
width = "3/4"
thickness = "1/8"
lengths = [{ length = "8'", price = "6.40" }, { length = "10' 6", price = "9.10" }]
[sheet.ply]
product = "birch plywood"
thickness = "3/4"
grain = false
sizes = [{ size = ["48", "96"], price = "68.00" }, { size = ["60", "60"], price = "55.00" }]
[[part]]
name = "edge"
stick = "edging"
length = "60"
quantity = 3
[[part]]
name = "top"
sheet = "ply"
length = "47"
width = "30"
quantity = 3
"""


@pytest.fixture(scope="module")
def book(tmp_path_factory: pytest.TempPathFactory) -> Workbook:
    folder = tmp_path_factory.mktemp("sticks")
    job = folder / "job.toml"
    job.write_text(JOB, encoding="utf-8")
    outcome = plan_job(job, [], stop=packing.Stop(), hear=lambda _: None)
    hand_over(outcome, folder / "plan", ["workbook"])
    return load_workbook(folder / "plan" / "workbook.xlsx", data_only=True)


def row_of(book: Workbook, sheet: str, text: str) -> list[object]:
    """The first row that holds a text."""
    for row in book[sheet].iter_rows(values_only=True):
        if text in row:
            return list(row)
    raise AssertionError(f"{text} is not on {sheet}: {words(book[sheet])}")


def test_sticks_are_bought_by_the_piece_and_have_no_board_feet(book: Workbook) -> None:
    # 10' 6" less the trims is 125: two edges and a kerf are 120-1/8. Three edges: one of
    # 10' 6" and one of 8', 15.50; three of 8' would be 19.20.
    assert row_of(book, "Purchase list", "stick 8 ft") == [
        "edging (maple edging)", "stick 8 ft", None, 1, None, None, None, None, 6.40, 6.40,
    ]  # fmt: skip
    assert "stick 10 ft 6 in" in words(book["Purchase list"])
    together = row_of(book, "Purchase list", "together")
    assert together[4:7] == [None, None, None]
    said = " ".join(words(book["Purchase list"]))
    # 8 + 10-1/2
    assert "Sticks: edging (maple edging) 18.5 running feet." in said


def test_sizes_of_a_sheet_stand_in_its_stock(book: Workbook) -> None:
    row = row_of(book, "Purchase list", "3/4 in sheet 48 × 96")
    assert (row[0], row[3]) == ("ply (birch plywood)", 1)


def test_the_first_sheet_counts_sticks_and_sheets_as_such(book: Workbook) -> None:
    said = " ".join(words(book["Cost"]))
    assert "2 sticks of maple edging and 1 sheet of birch plywood" in said
    assert "crosscut to length" in said


def test_a_stick_to_pull_is_as_long_as_a_yard_says_it(book: Workbook) -> None:
    row = row_of(book, "Boards to pull", "10 ft 6 in")
    assert "1/8 in stick" in row
    # A stick has no marks: nobody is told that none were noted.
    assert not any("marks noted" in word for word in words(book["Boards to pull"]))


def test_the_cuts_of_a_stick_are_crosscuts_and_nothing_else(book: Workbook) -> None:
    said = words(book["Cut diagrams"])
    (title,) = (word for word in said if "1/8 × 3/4 × 10 ft 6 in" in word)
    assert "CROSSCUT TO LENGTH" in title
    start = said.index(title)
    steps = [word for word in said[start:] if word[:2] in ("1.", "2.")][:2]
    # 1/2 off, then 60 and its kerf: the second mark is at 60 + 1/8 + 60.
    assert steps[0] == (
        "1. Square the zero end, 1/2 off. Crosscut at 60, 120 1/8 from the fresh end,"
        " blade right of every mark. 120 1/8 to the end is burn."
    )
    assert not any("rip" in step.lower() for step in steps)


def test_a_part_says_that_it_is_cut_to_length_or_turned(book: Workbook) -> None:
    said = words(book["Parts"])
    assert "cut to length from the stick" in said
    assert "sawn to size from the sheet, turned across it" in said
    assert not any(word.startswith("rough") for word in said)
