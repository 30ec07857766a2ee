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
    """What to buy of one wood and quarter, of one sheet product or of one stick.

    Parameters
    ----------
    net, rough
        Board feet of the finished parts and of the blanks, at nominal thickness
        (sheets, sticks: None). [bf]
    add_percent
        What the shop adds for waste, in parts of a hundred.
    waste_percent
        The share of what is bought that this comes to: 100 add / (100 + add). [%]
    buy
        Board feet to buy, or number of whole sheets or sticks. [bf, sheets or sticks]
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
    is_stick: bool = False

    @property
    def sold_by(self) -> str:
        """What its price is for: a foot, a sheet or a stick."""
        return "sheet" if self.is_sheet else "stick" if self.is_stick else "foot"

    @property
    def amount(self) -> str:
        """How much to buy, in words: `12 board feet`, `1 sheet`."""
        one = "board foot" if self.sold_by == "foot" else self.sold_by
        many = "board feet" if self.sold_by == "foot" else f"{self.sold_by}s"
        return f"{self.buy} {one if self.buy == 1 else many}"


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
    """The purchase list of a job whose boards are not known yet.

    Parameters
    ----------
    blanks
        Those that are counted on, and the set-up pieces.
    """

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
