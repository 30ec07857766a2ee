"""The sheet Must find: the pieces that are hard to find, to be looked for first at the yard."""

from __future__ import annotations

from yieldplan.model.bid import Bid
from yieldplan.papers.workbook.book import Book
from yieldplan.papers.workbook.cells import Put
from yieldplan.papers.workbook.words import UNIT_IN_WORDS
from yieldplan.units import feet_and_inches, tape

_COLUMNS = (20, 8, 40, 110, 64, 78, 80, 140)
_HEAD = ("", "", "how many", "stock", "wide", "long", "show face", "what for")


def fill(book: Book, bid: Bid) -> None:
    """Write the sheet."""
    note = (
        f"Hardest first. Width in {UNIT_IN_WORDS[bid.job.unit]} and length are the least"
        " that will do, end trims and rough edges included."
    )
    sheet = book.sheet("Must find", _COLUMNS, note=note)
    unit = bid.job.unit
    sheet.gap(4)
    sheet.row(
        *(
            Put(value=word, size=9, rule="head", align="right" if n in (2, 4, 5) else "left",
                indent=1 if n in (3, 6) else 0)
            for n, word in enumerate(_HEAD)
        )
    )  # fmt: skip
    for each in bid.must_find:
        sheet.row(
            Put(value="", rule="box"),
            Put(value=""),
            Put(value=each.count, size=13, bold=True, align="right", rule="thin"),
            Put(value=each.line, size=12, indent=1, rule="thin"),
            Put(value=tape(each.width, unit), size=13, bold=True, align="right", rule="thin"),
            Put(value=feet_and_inches(each.length, unit), size=12, align="right", rule="thin"),
            Put(value=each.face, indent=1, rule="thin"),
            Put(value=each.what_for, rule="thin"),
            least=24,
        )  # fmt: skip
