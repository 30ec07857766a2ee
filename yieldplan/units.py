"""Reads what people type off a tape, exactly, and writes sizes as a tape shows them.

Our own grammar reads the number (pint would read "19 5/8 in" as 11.875 in without a word);
pint resolves the unit word. Inside, a length is a `Fraction` of an inch.
"""

from __future__ import annotations

import re
from fractions import Fraction
from functools import lru_cache
from math import ceil, floor
from typing import Literal

Inches = Fraction
UnitName = Literal["in", "mm"]

TICKS_PER_INCH = 8128
"""1/64 in is 127 ticks, 0.1 mm is 32: both exact."""

_VULGAR = {
    "¼": "1/4", "½": "1/2", "¾": "3/4", "⅛": "1/8", "⅜": "3/8", "⅝": "5/8", "⅞": "7/8",
    "⅓": "1/3", "⅔": "2/3", "⅙": "1/6", "⅚": "5/6", "⅕": "1/5", "⅖": "2/5", "⅗": "3/5",
    "⅘": "4/5", "⅐": "1/7", "⅑": "1/9", "⅒": "1/10",
}  # fmt: skip
_FEET = {"'", "’", "′", "ft", "foot", "feet"}
_UNIT_WORDS = {
    '"': "inch", "”": "inch", "″": "inch", "''": "inch", "in": "inch", "inch": "inch",
    "inches": "inch", "mm": "millimeter", "cm": "centimeter", "m": "meter",
    "ft": "foot", "foot": "foot", "feet": "foot", "'": "foot", "’": "foot", "′": "foot",
}  # fmt: skip

_NUMBER = r"(?:\d+(?:\.\d+)?|\.\d+)"
_MIXED = rf"(?:\d+[ -]\d+/\d+|\d+/\d+|{_NUMBER})"
_UNITS = r"(?:''|\"|”|″|'|’|′|inches|inch|in|feet|foot|ft|mm|cm|m)"
_ONE = re.compile(rf"(?P<number>{_MIXED})\s*(?P<unit>{_UNITS})?\.?", re.ASCII)
_FEET_INCHES = re.compile(
    rf"(?P<feet>\d+)\s*(?:'|’|′|ft\.?|foot|feet)\s*"
    rf"(?P<inches>{_MIXED})\s*(?:''|\"|”|″|inches|inch|in\.?)?",
    re.ASCII,
)

# A unit ends where its word ends; the x of "2x board" may follow a figure at once.
_FIGURES = tuple(
    re.compile(rf"(?:{each.pattern})(?:(?!\w)|(?=x\b))", re.ASCII)
    for each in (_FEET_INCHES, _ONE)
)
UNIT_WORDS = frozenset(word for word in _UNIT_WORDS if word.isalpha())
"""The words a size may end with."""


class TapeError(ValueError):
    """A size that cannot be read; says what is wrong and what to write instead."""

    def __init__(self, wrong: str, remedy: str) -> None:
        self.wrong = wrong
        self.remedy = remedy
        super().__init__(f"{wrong}. {remedy}.")


@lru_cache
def _inches_per(unit_word: str) -> Fraction:
    if _UNIT_WORDS[unit_word] == "inch":
        return Fraction(1)
    import pint  # heavy; most jobs in inches never need it

    registry: pint.UnitRegistry[Fraction] = pint.UnitRegistry(non_int_type=Fraction)
    size = registry.Quantity(Fraction(1), _UNIT_WORDS[unit_word])
    return Fraction(size.to("inch").magnitude)


@lru_cache
def cubic_metres_per_board_foot() -> Fraction:
    """Volume of a board foot (144 cubic inches). [m^3]"""
    import pint

    registry: pint.UnitRegistry[Fraction] = pint.UnitRegistry(non_int_type=Fraction)
    volume = registry.Quantity(Fraction(144), "inch ** 3")
    return Fraction(volume.to("meter ** 3").magnitude)


def _number(text: str) -> Fraction:
    whole, _, fraction = text.replace("-", " ").rpartition(" ")
    if "/" in fraction:
        top, bottom = (int(part) for part in fraction.split("/"))
        if bottom == 0:
            raise TapeError("a fraction cannot have 0 below its line", "Correct it")
        if not whole and top >= bottom:
            raise TapeError(
                f"{top}/{bottom} is the name of a thickness, not a length",
                f'Write "{_mixed(Fraction(top, bottom), "-")}" for the length',
            )
        if whole and top >= bottom:
            raise TapeError(
                f"the fraction {top}/{bottom} is not less than one", "Correct it"
            )
        return Fraction(whole or 0) + Fraction(top, bottom)
    return Fraction(text)


def parse_length(
    text: str, unit: UnitName = "in", *, decimal_comma: bool = False
) -> Inches:
    """Read a length as a person writes it, exactly.

    Parameters
    ----------
    text
        `17 3/8`, `17-3/8"`, `1' 5-3/8"`, `17.375`, `441 mm`, `44.1 cm`, `17⅜`.
    unit
        The unit of a bare number.
    decimal_comma
        Whether `17,5` is seventeen and a half; only semicolon-separated files say so.

    Raises
    ------
    TapeError
        When the text is no length, or could mean two.
    """
    clean = spelled_out(text.strip())
    if decimal_comma:
        clean = re.sub(r"(?<=\d),(?=\d)", ".", clean)
    if not clean:
        raise TapeError("a length is missing", 'Write one, such as 17-3/8 or "441 mm"')
    if re.fullmatch(r"\d+-\d+", clean, re.ASCII):
        left, right = clean.split("-")
        raise TapeError(
            f"{clean} could be feet and inches, or a fraction without its line",
            f"Write {left}' {right}\" for {left} ft {right} in, or {left}.{right} or a fraction such as {left}-1/2",
        )
    if "," in clean:
        raise TapeError(
            "a comma cannot stand in a length here", "Write the decimal with a point"
        )
    both = _FEET_INCHES.fullmatch(clean)
    if both is not None:
        rest = _number(both["inches"])
        if rest >= 12:
            raise TapeError(
                f"{both['inches']} in beside feet is more than a foot", "Correct it"
            )
        return 12 * Fraction(both["feet"]) + rest
    one = _ONE.fullmatch(clean)
    if one is None:
        raise TapeError(
            "this is not a length", "Write it like 17-3/8, 17.375, 1' 5-3/8\" or 441 mm"
        )
    word = one["unit"] or unit
    if word in ("mm", "cm", "m") and "/" in one["number"]:
        raise TapeError(
            f"a fraction of {word} is not on any tape", "Write it as a decimal"
        )
    return _number(one["number"]) * _inches_per(word)


def spelled_out(text: str) -> str:
    """A text with its one-letter fractions written as figures: `17⅜` is `17 3/8`."""
    for mark, written in _VULGAR.items():
        text = re.sub(rf"(?<=\d)\s?{mark}", f" {written}", text).replace(mark, written)
    return text.replace("⁄", "/")


def figure_at(text: str, at: int) -> str:
    """The longest size or number that begins at a place of a text; empty for none.

    What it says is for `parse_length` to read. `2 inside` begins with 2, not with 2 in.
    """
    for written in _FIGURES:
        found = written.match(text, at)
        if found is not None:
            return found.group()
    return ""


def nearest_tick(inches: Inches) -> int:
    """A length as the nearest whole number of ticks, for what is measured anyway."""
    return round(inches * TICKS_PER_INCH)


def to_ticks_up(inches: Inches) -> int:
    """The length in whole ticks, rounded up (what a part needs)."""
    return ceil(inches * TICKS_PER_INCH)


def to_ticks_down(inches: Inches) -> int:
    """The length in whole ticks, rounded down (what stock offers)."""
    return floor(inches * TICKS_PER_INCH)


def from_ticks(ticks: int) -> Inches:
    """A length kept in ticks, in inches."""
    return Fraction(ticks, TICKS_PER_INCH)


def _mixed(value: Fraction, join: str) -> str:
    whole, part = divmod(value, 1)
    if not part:
        return str(whole)
    fraction = f"{part.numerator}/{part.denominator}"
    return f"{whole}{join}{fraction}" if whole else fraction


def tape(
    inches: Inches, unit: UnitName = "in", *, join: str = " ", grid: int = 32
) -> str:
    """A length as a tape shows it: `19 5/8`, or `498.5` in millimetres.

    Off the grid (1/`grid` in, 0.1 mm) the nearest mark is given with "about".

    Parameters
    ----------
    join
        What stands between inches and fraction: a space on paper, a hyphen to type.
    """
    sign = "−" if inches < 0 else ""
    size = abs(inches)
    if unit == "mm":
        tenths = size * Fraction(254, 10) * 10
        shown = _round_half_up(tenths)
        text = str(shown // 10) + (f".{shown % 10}" if shown % 10 else "")
        return ("" if tenths == shown else "about ") + sign + text
    marks = size * grid
    shown = _round_half_up(marks)
    about = "" if marks == shown else "about "
    return about + sign + _mixed(Fraction(shown, grid), join)


def feet_and_inches(inches: Inches, unit: UnitName = "in") -> str:
    """The length of a board as a yard says it: `9 ft 4 in`; millimetres stay millimetres."""
    if unit == "mm":
        return tape(inches, "mm")
    feet, rest = divmod(inches, 12)
    if not feet:
        return f"{tape(rest)} in"
    return f"{feet} ft {tape(rest)} in" if rest else f"{feet} ft"


def _round_half_up(value: Fraction) -> int:
    return floor(value + Fraction(1, 2))
