"""The columns of a tally, and reading one cell of each kind."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass, field
from decimal import Decimal
from fractions import Fraction

from yieldplan.faults import Faults, Where
from yieldplan.measure.amounts import AmountError, parse_amount
from yieldplan.measure.board_feet import to_hundredths
from yieldplan.units import Inches, TapeError, UnitName, parse_length

COLUMNS: Mapping[str, str] = {
    "id": "the number or letters chalked on the board",
    "wood": "its key in the job file; may be left out where the job has one wood",
    "thickness": "4/4, 5/4; or 13/16 surfaced, 27 mm rough",
    "kind": "kind of stock, such as rough board; left out, the thickness says it",
    "length": "whole length, needed",
    "width": "narrowest clear width, needed; of a tapered board the width at the numbered end",
    "width_far": "clear width at the far end, where the board is tapered",
    "grade": "FAS, No. 1 Common, or the yard's own word",
    "price_per_foot": "price of a board foot",
    "price_for_piece": "price of one board; goes before the price of a foot",
    "quantity": "so many alike: id-1, id-2 and so on",
    "board_feet": "of one board, where the yard says it",
    "tally_width": "the width the yard measures by, where it is not the narrowest",
    "lot": "delivery or tree",
    "pack": "boards with the same word here are sold only together, as a whole pack",
    "price_for_pack": "price of the whole pack, on any of its rows; goes before every other",
    "crook": "how far the hollow edge is off a string held from end to end",
    "bow": "how far the hollow face is off a string held from end to end",
    "twist": "how far a corner stands up when the other three lie; or yes",
    "marks": "knot A 31-1/2 to 32-1/2 x 2 to 3-1/2 | split 0 to 7",
    "clear": "clear runs instead of marks: 6 to 58 | 66 to 94",
    "note": "whatever you like; not read",
}
"""Every column by name, with its words."""

NEEDED = ("length", "width")

ALIASES: Mapping[str, str] = {
    "far_width": "width_far",
    "far_end_width": "width_far",
    "width_far_end": "width_far",
    "width_at_far_end": "width_far",
    "width_at_the_far_end": "width_far",
    "other_width": "width_far",
    "delivery": "lot",
    "bundle": "pack",
    "price_of_pack": "price_for_pack",
    "pack_price": "price_for_pack",
    "sweep": "crook",
    "crooked": "crook",
    "bowed": "bow",
    "twisted": "twist",
    "wind": "twist",
    "number": "id",
    "no.": "id",
    "notes": "note",
    "remarks": "note",
}
"""Other words people write above a column, and the column they mean."""

_MONTHS = (
    "jan|feb|mar|mär|apr|avr|may|mai|mag|jun|jui|giu|jul|lug|aug|aoû|ago|sep|set"
    "|oct|okt|ott|nov|dec|dez|dic|déc|ene|abr"
)
_DATE = re.compile(
    # The same mark twice: 7-1/16 is a size, 7/1/16 a day.
    r"\d{4}(?P<one>[-/.])\d{1,2}(?P=one)\d{1,2}.*"
    r"|\d{1,2}(?P<two>[-/.])\d{1,2}(?P=two)\d{2,4}"
    rf"|\d{{1,2}}[-./ ]*\s?(?:{_MONTHS})\w*\.?(?:[-/ .]+\d{{2,4}})?"
    rf"|(?:{_MONTHS})\w*\.?[-/ .]+\d{{1,4}}",
    re.IGNORECASE | re.ASCII,
)
_DAY_NUMBER = re.compile(r"[34]\d{4}", re.ASCII)
LONGEST = Fraction(1200)


def is_date(text: str) -> bool:
    """Whether a spreadsheet seems to have turned a cell into a date."""
    return _DATE.fullmatch(text.strip()) is not None


@dataclass(frozen=True, kw_only=True)
class Row:
    """One row of a tally, and how its figures are written."""

    file: str
    number: int
    cells: Mapping[str, str]
    unit: UnitName
    decimal_comma: bool
    faults: Faults
    places: Mapping[str, int] = field(default_factory=dict)
    """The row of a cell that was said once for many boards, in a heading above them."""

    def cell(self, column: str) -> str:
        """The cell's text, nothing when there is none."""
        return self.cells.get(column, "")

    def where(self, column: str = "") -> Where:
        """The place of a cell."""
        number = self.places.get(column, self.number)
        return Where(file=self.file, row=number, key=column)

    def wrong(
        self, column: str, wrong: str, remedy: str, said: str | None = None
    ) -> None:
        """Note what is wrong with a cell."""
        text = self.cell(column) if said is None else said
        self.faults.add(self.where(column), text[:80], wrong, remedy)

    def is_date(self, column: str) -> bool:
        """Whether the cell is a date, which is noted."""
        text = self.cell(column)
        is_number = column == "thickness" and _DAY_NUMBER.fullmatch(text)
        if not is_date(text) and not is_number:
            return False
        self.wrong(
            column,
            "this is a date: the spreadsheet turned something like 5/4 into 4 May",
            "Format the column as text, then type the size again",
        )
        return True

    def length(self, column: str) -> Inches | None:
        """A size above 0; None, with a fault unless the cell is empty, when there is none."""
        text = self.cell(column)
        if not text or self.is_date(column):
            return None
        try:
            size = parse_length(text[:80], self.unit, decimal_comma=self.decimal_comma)
        except TapeError as error:
            self.wrong(column, error.wrong, error.remedy)
            return None
        if not 0 < size <= LONGEST:
            what = "0" if size <= 0 else "over 100 ft"
            self.wrong(column, f"a board's {column} is not {what}", "Correct it")
            return None
        return size

    def amount(self, column: str) -> Decimal | None:
        """An amount of money; None when there is none."""
        text = self.cell(column)
        if not text:
            return None
        try:
            return parse_amount(text[:80], decimal_comma=self.decimal_comma)
        except AmountError as error:
            self.wrong(column, error.wrong, error.remedy)
            return None

    def count(self, column: str, most: int) -> int:
        """A whole number from 1; 1 when there is none."""
        text = self.cell(column)
        if not text:
            return 1
        if not re.fullmatch(r"\d{1,9}", text, re.ASCII) or not 1 <= int(text) <= most:
            self.wrong(
                column, f"this is not a whole number from 1 to {most:,}", "Correct it"
            )
            return 1
        return int(text)

    def feet(self, column: str) -> Fraction | None:
        """Board feet to 1/100; None when there are none."""
        text = self.cell(column)
        if not text or self.is_date(column):
            return None
        plain = text.replace(",", ".") if self.decimal_comma else text
        if not re.fullmatch(r"\d{1,6}(\.\d{1,6})?", plain, re.ASCII):
            self.wrong(
                column, "this is not a number of board feet", "Write it like 7.25"
            )
            return None
        feet = to_hundredths(Fraction(plain))
        if feet <= 0:
            self.wrong(
                column, "a board has some board feet", "Correct it, or leave it out"
            )
            return None
        return feet
