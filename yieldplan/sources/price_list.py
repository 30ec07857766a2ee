"""What a board costs: its own price, the price of its foot, or the job's price list."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction

from yieldplan.faults import did_you_mean
from yieldplan.measure.money import from_units
from yieldplan.model.job import Price


@dataclass(frozen=True, kw_only=True)
class Cost:
    """The price of one board. [money/10,000]"""

    per_foot: int | None
    price: int


def cost(
    *, for_piece: Decimal | None, per_foot: Decimal | None, board_feet: Fraction
) -> Cost | None:
    """The piece's price, else board feet times the price of a foot, else None.

    Board feet to 1/100 times cents is a whole 1/10,000: nothing is rounded here.
    """
    if for_piece is not None:
        return Cost(per_foot=None, price=from_units(for_piece))
    if per_foot is None:
        return None
    per = from_units(per_foot)
    total = per * board_feet
    if total.denominator != 1:
        raise ValueError(f"{board_feet} bf at {per_foot} is finer than 1/10,000")
    return Cost(per_foot=per, price=total.numerator)


def listed(
    prices: Sequence[Price], wood: str, thickness: str, grade: str
) -> Price | None:
    """The list's price for a board.

    A price without a grade holds for every grade that has none of its own. A board
    without a grade takes the only price there is for its wood and thickness.
    """
    here = [p for p in prices if (p.wood, p.thickness) == (wood, thickness)]
    for wanted in (grade, ""):
        for price in here:
            if price.grade == wanted:
                return price
    return here[0] if not grade and len(here) == 1 else None


def remedy(prices: Sequence[Price], wood: str, thickness: str, grade: str) -> str:
    """What to do about a board without a price."""
    line = f"{wood} {thickness}"
    grades = [p.grade for p in prices if (p.wood, p.thickness) == (wood, thickness)]
    if grades and grade:
        hint = did_you_mean(grade, grades)
        if hint.endswith("?"):
            return hint
        return f"The job prices {line} in {', '.join(sorted(grades))}; add a [[price]] for {grade}"
    if grades:
        return f"Write the grade: the job prices {line} in {', '.join(sorted(grades))}"
    what = f"{line} {grade}".strip()
    return f"Add a [[price]] for {what} to the job, or price_per_foot or price_for_piece here"
