"""One cell as a sheet asks for it: words, a figure or a formula, and how it looks in black and white."""

from __future__ import annotations

import re
from dataclasses import dataclass
from decimal import Decimal
from functools import lru_cache
from typing import Any, Literal

from openpyxl.cell.cell import ILLEGAL_CHARACTERS_RE, Cell
from openpyxl.styles import Alignment, Border, Font, PatternFill, Side

from yieldplan.papers.workbook.stored import Value

FONT = "Arial"
"""On every Windows and Mac machine; where it lacks, office programs have a font of its measures.

Room for words is counted in DejaVu Sans, which is wider, so that it is enough either way.
"""

MONEY = "#,##0.00"
EACH = '#,##0.00" ea."'
FEET = "#,##0.00"
PERCENT = '0.0" %"'

Rule = Literal["none", "thin", "thick", "head", "box", "fifth box", "heavy box"]


@dataclass(frozen=True, kw_only=True)
class Put:
    """What goes into one cell.

    Parameters
    ----------
    value
        Words are always text, whatever sign they begin with; figures are numbers.
    formula
        What the cell calculates, without its equals sign; `value` is what it comes to.
    span
        How many columns it covers.
    size
        [pt]
    indent
        From the left, in steps of a letter or two.
    """

    value: Value | None = None
    formula: str = ""
    span: int = 1
    size: float = 10.0
    bold: bool = False
    align: Literal["left", "center", "right"] = "left"
    level: Literal["top", "center", "bottom"] = "center"
    number_format: str = "General"
    rule: Rule = "none"
    indent: int = 0
    wrap: bool = True


_THIN, _MEDIUM, _THICK = Side("thin"), Side("medium"), Side("thick")


@lru_cache
def _border(rule: Rule) -> Border:
    match rule:
        case "thin":
            return Border(bottom=Side("hair"))
        case "head":
            return Border(bottom=_THIN)
        case "thick":
            return Border(bottom=_MEDIUM)
        case "box":
            return Border(left=_THIN, right=_THIN, top=_THIN, bottom=_THIN)
        case "fifth box":
            return Border(left=_THIN, right=_THIN, top=_THIN, bottom=_MEDIUM)
        case "heavy box":
            return Border(left=_THICK, right=_THICK, top=_THICK, bottom=_THICK)
        case "none":
            return Border()


@lru_cache
def _font(size: float, bold: bool) -> Font:
    return Font(name=FONT, size=size, bold=bold)


@lru_cache
def _alignment(align: str, level: str, wrap: bool, indent: int) -> Alignment:
    return Alignment(horizontal=align, vertical=level, wrap_text=wrap, indent=indent)


def dress(cell: Cell, put: Put) -> None:
    """Give a cell its look."""
    cell.font = _font(put.size, put.bold)
    cell.border = _border(put.rule)
    cell.alignment = _alignment(put.align, put.level, put.wrap, put.indent)
    cell.number_format = put.number_format
    if put.rule == "heavy box":
        cell.fill = PatternFill("solid", fgColor="FFFFFF")


def fill(cell: Cell, put: Put) -> None:
    """Put words, a figure or a formula into a cell."""
    dress(cell, put)
    if put.formula:
        cell.value = f"={put.formula}"
    elif isinstance(put.value, str):
        write_text(cell, put.value)
    elif put.value is not None:
        cell.value = put.value


def write_text(cell: Cell, words: str) -> None:
    """Words as text and nothing else: what a person typed never becomes a formula."""
    plain = printable(words)
    # A workbook reads _x0041_ as a letter; the underscore is spelled out instead.
    cell.value = re.sub(r"_(?=x[0-9A-Fa-f]{4}_)", "_x005F_", plain)
    cell.data_type = "s"
    if plain[:1] in ("=", "+", "-", "@", "'"):
        looks: Any = cell  # the attribute is missing from the library's type stubs
        looks.quotePrefix = True  # stays text when somebody edits it


def printable(words: str) -> str:
    """The words with a placeholder for every character a file like this cannot hold."""
    return ILLEGAL_CHARACTERS_RE.sub("�", words)


def money(amount: int) -> Decimal:
    """An amount for a cell, in the currency. [money/10,000] in."""
    return Decimal(amount).scaleb(-4)
