"""A quick bid: what to buy before any board is known, from net board feet and the shop's waste."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from yieldplan.model.blanks import Blank
from yieldplan.model.job import Job
from yieldplan.model.parts import Part
from yieldplan.units import Inches


@dataclass(frozen=True, kw_only=True)
class BidLine:
    """What to buy of one wood and quarter, or of one sheet product.

    Parameters
    ----------
    net, rough
        Board feet of the finished parts and of the blanks, at nominal thickness
        (sheets: None). [bf]
    add_percent
        What the shop adds for waste, in parts of a hundred.
    waste_percent
        The share of what is bought that this comes to: 100 add / (100 + add). [%]
    buy
        Board feet to buy, or number of whole sheets. [bf or sheets]
    per, total
        Price of one foot or sheet, and of the line; None when no price is known.
        [money/10,000]
    """

    wood: str
    line: str
    thickness: str
    grade: str
    is_sheet: bool
    net: Fraction | None
    rough: Fraction | None
    add_percent: int
    waste_percent: Fraction
    buy: Fraction
    per: int | None
    total: int | None
    price_note: str = ""


@dataclass(frozen=True, kw_only=True)
class MustFind:
    """A piece that is hard to find: look for it first.

    Parameters
    ----------
    width, length
        The least that will do, trims and edge passes included. [in]
    """

    count: int
    line: str
    width: Inches
    length: Inches
    face: str
    what_for: str


@dataclass(frozen=True, kw_only=True)
class Bid:
    """The purchase list of a job whose boards are not known yet."""

    job: Job
    parts: tuple[Part, ...]
    blanks: tuple[Blank, ...]
    lines: tuple[BidLine, ...]
    must_find: tuple[MustFind, ...]
    cautions: tuple[str, ...]

    @property
    def total(self) -> int | None:
        """What the priced lines add up to; None when a line has no price."""
        totals = [line.total for line in self.lines]
        if any(total is None for total in totals):
            return None
        return sum(total for total in totals if total is not None)
