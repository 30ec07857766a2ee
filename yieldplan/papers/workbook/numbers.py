"""Figures for cells, rounded half up to so many decimals, without floating point."""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction

from yieldplan.papers.workbook.words import half_up


def decimal(value: Fraction | int, places: int) -> Decimal:
    """The figure with exactly so many decimals."""
    rounded = half_up(Fraction(value), places) * 10**places
    return Decimal(rounded.numerator).scaleb(-places)
