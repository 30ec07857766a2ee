"""Sizes of a drawer's parts, worked from its box; every one a sum a maker would write."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from yieldplan.assemblies.drawer.box import Box, Groove
from yieldplan.assemblies.drawer.keys import Front
from yieldplan.assemblies.ends import folded, from_inside, from_outside
from yieldplan.joints.joint import Role
from yieldplan.model.sums import Sum
from yieldplan.units import Inches


@dataclass(frozen=True, kw_only=True)
class Size:
    """Length and width of a part."""

    length: Sum
    width: Sum


def joined_front(box: Box) -> Size:
    """A front the sides are joined to: the box's width, and what its joints add.

    Its height is what the opening leaves; a template never changes it. Behind an
    applied front it is as high as the sides.
    """
    end = from_outside(
        box.front_joint, Role.HOUSING, own=box.front, mate=box.side, mate_words="side"
    )
    return Size(
        length=folded(box.width + end.times(2)), width=box.height(box.front_growth)
    )


def applied_front(front: Front, box: Box) -> Size:
    """A front on slides: over the case by its overlay, or a gap short of the opening."""
    wide = Sum.of(("opening width", box.opening.width))
    high = Sum.of(("opening height", box.opening.height))
    if not is_overlaid(front):
        gap = box.shop.front_gap if front.gap is None else front.gap
        less = Sum.of(("gap", -gap, 2)) if gap else Sum(())
        return Size(length=wide + less, width=high + less)
    around = front.overlay or Fraction(0)
    top = around if front.overlay_top is None else front.overlay_top
    bottom = around if front.overlay_bottom is None else front.overlay_bottom
    return Size(
        length=folded(wide + Sum.of(("overlay", around, 2))),
        width=folded(high + Sum.of(("overlay", top), ("overlay", bottom))),
    )


def is_overlaid(front: Front) -> bool:
    """Whether the front covers the case around its opening."""
    return not (front.overlay is front.overlay_top is front.overlay_bottom is None)


def side(box: Box) -> Size:
    """A side."""
    return Size(length=box.side_length, width=box.side_width)


def back(box: Box, groove: Groove, bottom: Inches) -> Size:
    """The back: between the sides and into them, or as wide as the box.

    Parameters
    ----------
    bottom
        Thickness of the bottom. [in]
    """
    joint, thickness = box.back_joint, box.back.thickness
    if joint.has_tails:
        end = from_outside(
            joint, Role.HOUSING, own=thickness, mate=box.side, mate_words="side"
        )
        length = box.width + end.times(2)
    else:
        inside = Sum.of(("side", -box.side, 2))
        end = from_inside(joint, own=thickness, mate=box.side, mate_words="side")
        length = box.width + inside + end.times(2)
    width = box.side_width
    if box.back.sits == "on the bottom":
        width += Sum.of(("below the groove", -groove.up), ("bottom", -bottom))
    return Size(length=folded(length), width=width)


def bottom(box: Box, groove: Groove, play: Inches) -> Size:
    """The bottom: its grain runs side to side, from groove to groove.

    Under a back that sits on it, it ends flush with the back's outside, free to move;
    else it enters a groove there too.

    Parameters
    ----------
    play
        What is taken off each way for a sheet; 0 for solid wood, which is long in the
        direction it does not move in and free at the back. [in]
    """
    less = Sum.of(("play", -play)) if play else Sum(())
    length = (
        box.width
        + Sum.of(("side", -box.side, 2))
        + Sum.of(("groove", groove.depth, 2))
        + less
    )
    width = box.depth
    if box.back_set_in:
        width += Sum.of(("behind the back", -box.back_set_in))
    width += Sum.of(("front", -box.front), ("groove", groove.depth))
    if box.back.sits == "full height":
        width += Sum.of(("back", -box.back.thickness), ("groove", groove.depth))
    return Size(length=folded(length), width=folded(width + less))
