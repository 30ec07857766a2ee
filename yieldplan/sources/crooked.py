"""Reads how far a board is off straight: crook, bow, twist, and another width at its far end."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from yieldplan.measure.board_feet import counted_width
from yieldplan.model.job import BoardMeasure
from yieldplan.model.pieces import SOME_TWIST
from yieldplan.sources.columns import Row
from yieldplan.units import Inches, TapeError, parse_length

YES, NO = frozenset({"yes", "y", "x"}), frozenset({"no", "n", "none"})
STEEPEST = Fraction(1, 10)
"""A bow of more than this share of the length is a slip of the pen."""


@dataclass(frozen=True, kw_only=True)
class OffStraight:
    """What keeps a board from being straight, parallel and flat. [in]

    Parameters
    ----------
    width_far
        Width at the far end; None when the board is as wide there.
    """

    width_far: Inches | None = None
    crook: Inches = Fraction(0)
    bow: Inches = Fraction(0)
    twist: Inches = Fraction(0)


def off_straight(row: Row, length: Inches | None, width: Inches | None) -> OffStraight:
    """What a row says of it; a cell that cannot be so is a fault.

    Parameters
    ----------
    length, width
        Of the board; None where they could not be read. [in]
    """
    far = row.length("width_far")
    crook, bow = _amount(row, "crook"), _amount(row, "bow")
    twist = _amount(row, "twist")
    narrow = min((w for w in (width, far) if w is not None), default=None)
    for column, size in (("crook", crook), ("twist", twist)):
        if narrow is not None and size > narrow:
            row.wrong(column, "this is more than the board is wide", "Correct it")
    if length is not None and bow > length * STEEPEST:
        row.wrong(
            "bow", "this is more than a tenth of the board's length", "Correct it"
        )
    return OffStraight(
        width_far=None if far == width else far, crook=crook, bow=bow, twist=twist
    )


def width_to_measure(width: Inches, off: OffStraight, rule: BoardMeasure) -> Inches:
    """The width a board is tallied by where the yard says none of its own. [in]"""
    far = width if off.width_far is None else off.width_far
    return counted_width(width, far, rule)


def _amount(row: Row, column: str) -> Inches:
    """How far off, 0 where the cell is empty or says no."""
    said = row.cell(column)
    if not said or said.lower() in NO:
        return Fraction(0)
    if said.lower() in YES:
        if column == "twist":
            return SOME_TWIST
        row.wrong(column, "how much it is must be known", "Hold a string along it")
        return Fraction(0)
    if row.is_date(column):
        return Fraction(0)
    try:
        return parse_length(said[:80], row.unit, decimal_comma=row.decimal_comma)
    except TapeError as error:
        remedy = error.remedy
        if column == "twist":
            remedy = f'{remedy}; or "yes" where you saw some and did not measure'
        row.wrong(column, error.wrong, remedy)
        return Fraction(0)
