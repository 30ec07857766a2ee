"""Measures boards as the yard does: surface measure by the NHLA rule, or exact volume."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from math import floor

from yieldplan.measure.order import natural
from yieldplan.model.job import BoardMeasure
from yieldplan.units import Inches

HALF = Fraction(1, 2)


@dataclass(frozen=True, kw_only=True)
class Measured:
    """A board as it is held under the rule.

    Parameters
    ----------
    group
        Wood and thickness: boards that are tallied together.
    thickness
        Nominal, what a surfaced board was before surfacing. [in]
    length, width
        As tallied. [in]
    """

    group: str
    thickness: Inches
    length: Inches
    width: Inches


def surface_measure(*, length: Inches, width: Inches) -> Fraction:
    """Width in inches times whole feet of length over 12, before rounding. [ft^2]

    NHLA rule: a length falls back to whole feet (10 ft 9 in counts as 10).
    """
    return width * (length // 12) / 12


def counted_width(one: Inches, other: Inches, rule: BoardMeasure) -> Inches:
    """The width a board with two ends of different width is measured at. [in]

    Exact volume goes by the middle. A tapered board under the NHLA rule is measured a
    third of its length from the narrow end (from memory).
    """
    narrow, wide = sorted((one, other))
    share = HALF if rule == "exact" else Fraction(1, 3)
    return narrow + (wide - narrow) * share


def exact_feet(board: Measured) -> Fraction:
    """Length x width x nominal thickness over 144 cubic inches. [bf]

    Stock under 1 in counts as 1 in.
    """
    return board.length * board.width * counted_thickness(board.thickness) / 144


def counted_thickness(thickness: Inches) -> Inches:
    """The thickness board measure counts: never less than 1. [in]"""
    return max(thickness, Fraction(1))


def board_feet(
    boards: Mapping[str, Measured], rule: BoardMeasure
) -> Mapping[str, Fraction]:
    """Board feet of every board by its id, kept to 1/100. [bf]

    By the NHLA rule surface measure is rounded to a whole number for each board and then
    multiplied by nominal thickness, which is not rounded again. Exact halves alternate
    within a wood and thickness, in the natural order of the ids, the first one up.
    """
    feet: dict[str, Fraction] = {}
    ties: dict[str, int] = {}
    for name in sorted(boards, key=natural):
        board = boards[name]
        if rule == "exact":
            feet[name] = to_hundredths(exact_feet(board))
            continue
        surface = surface_measure(length=board.length, width=board.width)
        whole = floor(surface + HALF)
        if surface % 1 == HALF:
            ties[board.group] = ties.get(board.group, 0) + 1
            whole -= ties[board.group] % 2 == 0
        feet[name] = to_hundredths(whole * counted_thickness(board.thickness))
    return feet


def to_hundredths(feet: Fraction) -> Fraction:
    """Board feet rounded half up to 1/100. [bf]"""
    return Fraction(floor(feet * 100 + HALF), 100)
