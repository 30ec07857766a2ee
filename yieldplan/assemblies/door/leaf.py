"""What one leaf of a door measures outside: its opening less the gaps, or with the overlay."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from typing import TYPE_CHECKING

from yieldplan.model.shop import Shop
from yieldplan.model.sums import Sum
from yieldplan.units import Inches

if TYPE_CHECKING:
    from yieldplan.assemblies.door import Door


@dataclass(frozen=True, kw_only=True)
class Edges:
    """What a door leaves free at its edges (less than 0), or covers of the case.

    Parameters
    ----------
    word
        What it is called: `gap` or `overlay`.
    side, above, below
        At each upright edge of the opening, its upper and its lower edge. [in]
    between
        Left free between the two leaves of a pair. [in]
    """

    word: str
    side: Inches
    above: Inches
    below: Inches
    between: Inches


def edges(door: Door, shop: Shop) -> Edges:
    """Gaps or overlay, as the door says them or by the shop's custom."""
    gap = shop.door_gap if door.gap is None else door.gap
    between = gap if door.gap_between is None else door.gap_between
    if door.is_overlaid:
        around = door.overlay or Fraction(0)
        return Edges(
            word="overlay",
            side=around,
            above=around if door.overlay_top is None else door.overlay_top,
            below=around if door.overlay_bottom is None else door.overlay_bottom,
            between=between,
        )
    return Edges(
        word="gap",
        side=-gap,
        above=-(gap if door.gap_top is None else door.gap_top),
        below=-(gap if door.gap_bottom is None else door.gap_bottom),
        between=between,
    )


def leaf_width(door: Door, shop: Shop) -> Sum:
    """Over the stiles of one leaf."""
    if door.opening is None:
        return Sum.of(("door width", door.leaf.width if door.leaf else Fraction(0)))
    at = edges(door, shop)
    width = door.opening.width
    if door.leaves == 1:
        return _terms(("opening width", width, 1), (at.word, at.side, 2))
    return _terms(
        ("half the opening's width", width / 2, 1),
        (at.word, at.side, 1),
        ("half the gap between", -at.between / 2, 1),
    )


def leaf_height(door: Door, shop: Shop) -> Sum:
    """Over the rails."""
    if door.opening is None:
        return Sum.of(("door height", door.leaf.height if door.leaf else Fraction(0)))
    at = edges(door, shop)
    height = ("opening height", door.opening.height, 1)
    if at.above == at.below:
        return _terms(height, (at.word, at.above, 2))
    return _terms(
        height, (f"{at.word} above", at.above, 1), (f"{at.word} below", at.below, 1)
    )


def _terms(*terms: tuple[str, Inches, int]) -> Sum:
    """The sum without terms that are nothing: no gap is not worth a word."""
    return Sum.of(*(term for term in terms if term[1]))
