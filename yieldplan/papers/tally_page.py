"""A blank tally page to print: what to write down at the pile, board by board, and how to measure it."""

from __future__ import annotations

from pathlib import Path

from yieldplan.papers.workbook.book import Book
from yieldplan.papers.workbook.cells import Put, Rule
from yieldplan.papers.workbook.sheet import Sheet

_LINES = 30
_ROW = 18.2  # a quarter of an inch: room for a pencil
_HOW_IN = (
    "ft, in: length down to the whole inch, from the end you write the number on.",
    "wide: the narrowest place, down to the quarter inch, bark and wane left out.",
    "thick: as it is sold, 4/4, 5/4, 8/4; a planed board as measured, 13/16 surfaced.",
    "marks: kind, face, from and to along the board, from and to across it, from the"
    " edge nearest you.  knot A 31-1/2 to 32-1/2 x 2 to 3-1/2 | split 0 to 7",
)
_HOW_MM = (
    "long: in mm, down to the centimetre, from the end you write the number on.",
    "wide: in mm, the narrowest place, bark and wane left out.",
    "thick: as it is sold, 27 mm rough; a planed board as measured, 20 mm surfaced.",
    "marks: kind, face, from and to along the board, from and to across it, from the"
    " edge nearest you.  knot A 800 to 825 x 50 to 90 | split 0 to 180",
)
_MARKS = (
    'Face A is up, B below; no face: through the board. No width: the full width. "to"'
    " between two figures, never a dash. Kinds: knot, split, check, shake, wane, sap,"
    " pith, stain, worm, hole."
)
_NOT_STRAIGHT = (
    "not straight: crook (an edge) or bow (a face) off a string from end to end, twist,"
    " width at the far end; with the marks.  crook 3/8 | far width 7-1/4"
)
_COLUMNS_IN = (28, 82, 40, 34, 34, 44, 62, 216)
_COLUMNS_MM = (28, 82, 62, 52, 44, 62, 210)
_HEAD_IN = (
    "no.",
    "wood",
    "thick",
    "ft",
    "in",
    "wide",
    "grade, lot",
    "marks, from the numbered end",
)
_HEAD_MM = ("no.", "wood", "thick", "long", "wide", "grade, lot", "marks, from the numbered end")  # fmt: skip


def write_tally_page(path: Path, unit: str) -> None:
    """Write a page to print, take to the yard and copy into the tally.

    No money stands on it: the seller looks on.

    Parameters
    ----------
    unit
        "in" or "mm".
    """
    is_metric = unit == "mm"
    book = Book(job="", remark="job and date:" + " " * 60, incomplete="")
    book.foot = "Copy into the tally file: feet and inches as 9' 4\", or all in inches."
    if is_metric:
        book.foot = "Copy into the tally file."
    sheet = book.sheet("Tally", _COLUMNS_MM if is_metric else _COLUMNS_IN)
    for line in _HOW_MM if is_metric else _HOW_IN:
        sheet.across(Put(value=f"–  {line}", size=9))
    sheet.across(Put(value=f"–  {_NOT_STRAIGHT}", size=9))
    sheet.across(Put(value=f"–  {_MARKS}", size=9))
    sheet.gap(6)
    sheet.row(
        *(
            Put(value=word, size=9, bold=True, rule="box", align="center")
            for word in (_HEAD_MM if is_metric else _HEAD_IN)
        )
    )
    for number in range(1, _LINES + 1):
        _line(sheet, number)
    book.save(path)


def _line(sheet: Sheet, number: int) -> None:
    # Every fifth rule is heavier, so that the eye keeps its line.
    rule: Rule = "fifth box" if number % 5 == 0 else "box"
    sheet.row(
        Put(value=number, size=9, align="center", rule=rule),
        *(Put(value="", rule=rule) for _ in sheet.columns[1:]),
        least=_ROW,
    )
