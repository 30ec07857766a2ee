"""What a shop adds to its blanks when boards are not known yet: for ends, knots and misfits."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction
from math import ceil

from yieldplan.measure.must_find import is_matched
from yieldplan.measure.takeoff import Taken
from yieldplan.model.blanks import Blank
from yieldplan.model.shop import Shop


@dataclass(frozen=True, kw_only=True)
class Add:
    """Parts of a hundred to add, and of what they are made where there are two."""

    percent: int
    words: str = ""


def add_for_boards(taken: Sequence[Taken], grade: str, shop: Shop) -> Add:
    """What to add to one purchase line of boards.

    Matched sets, and parts that must be clear on both faces (heartwood only), take the
    shop's larger figure, everything else the ordinary one or that of its grade. A line
    with both takes the mean of the two by rough face, up to the next whole per cent.
    """
    usual = shop.add_percent
    if grade == "No. 1 Common":
        usual = shop.add_percent_no_1_common
    choosy = max(usual, shop.add_percent_matched)
    hard = sum((t.rough_face for t in taken if _is_choosy(t.blank)), Fraction(0))
    total = sum((t.rough_face for t in taken), Fraction(0))
    percent = ceil(usual + (choosy - usual) * hard / total)
    if not hard or choosy == usual:
        return Add(percent=percent)
    what = "matched or clear on both faces"
    if hard == total:
        return Add(percent=percent, words=f"add {choosy} % as all of it is {what}")
    return Add(
        percent=percent,
        words=f"add {choosy} % for what is {what}, {usual} % for the rest",
    )


def waste_percent(add_percent: int) -> Fraction:
    """The share of what is bought that an addition comes to. [%]

    Adding 30 to 100 buys 130, of which 30 are waste: 23 %, not 30.
    """
    return Fraction(100 * add_percent, 100 + add_percent)


def _is_choosy(blank: Blank) -> bool:
    return is_matched(blank) or (
        blank.show_face == "clear" and blank.back_face == "clear"
    )
