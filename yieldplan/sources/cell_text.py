"""What stands in a spreadsheet's cell, as text: numbers as they are shown, dates with what they may have been."""

from __future__ import annotations

import re
from datetime import date, datetime, time, timedelta
from decimal import Decimal

_MONTHS = ("January", "February", "March", "April", "May", "June", "July", "August",
           "September", "October", "November", "December")  # fmt: skip
_TAPE = (2, 4, 8, 16, 32, 64)


class CellError(ValueError):
    """A cell that cannot be taken as it stands."""

    def __init__(self, said: str, wrong: str, remedy: str) -> None:
        self.said = said
        self.wrong = wrong
        self.remedy = remedy
        super().__init__(f"{said}: {wrong}. {remedy}.")


def cell_text(value: object, column: str) -> str:
    """The text of a cell's value.

    A number is its shortest decimal: what was typed, not the binary number next to it.

    Parameters
    ----------
    column
        Name of the column, to guess what a date was before.

    Raises
    ------
    CellError
        When it holds a date, a time or an error.
    """
    if value is None:
        return ""
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, int):
        return str(value) if abs(value) < 10**15 else f"{Decimal(value):.6e}"
    if isinstance(value, float):
        return _number(value)
    if isinstance(value, datetime | date):
        raise _date(value, column)
    if isinstance(value, time | timedelta):
        raise CellError(
            str(value)[:80],
            "the spreadsheet took this for a time of day",
            "Format the cell as text, then type it again",
        )
    text = str(value).replace("\u00a0", " ").strip()
    if re.fullmatch(r"#[A-Z/0]+[!?]?", text):
        wrong = "the spreadsheet shows an error here"
        raise CellError(text, wrong, "Put the formula right, or type the value")
    # People type '5/4 so that it stays text; some programs keep the mark.
    return re.sub(r"^'(?=\d)", "", text)


def _number(value: float) -> str:
    if value != value or value in (float("inf"), float("-inf")):
        wrong = "this is not a number"
        raise CellError(repr(value), wrong, "Put the formula right, or type the value")
    if value.is_integer() and abs(value) < 10**15:
        return str(int(value))
    return format(Decimal(repr(value)), "f")[:80]


def _date(day: date, column: str) -> CellError:
    shown = f"{day.day} {_MONTHS[day.month - 1]} {day.year}"
    said = _said_before(day, column)
    became = f"{day.day} {_MONTHS[day.month - 1]}"
    if said:
        wrong = f"the spreadsheet turned {said} into {became}"
        return CellError(shown, wrong, f"Write it as text, with a mark before: '{said}")
    wrong = f"the spreadsheet turned something like 5/4 into {became}"
    return CellError(shown, wrong, "Write it as text, with a mark before: '5/4")


def _said_before(day: date, column: str) -> str:
    """What was most likely typed: a thickness in quarters, or a fraction on a tape."""
    either = ((day.month, day.day), (day.day, day.month))
    for top, bottom in either:
        if column == "thickness" and bottom == 4 and top >= 4:
            return f"{top}/4"
    for top, bottom in either:
        if column not in ("thickness", "") and bottom in _TAPE and top < bottom:
            return f"{top}/{bottom}"
    return ""
