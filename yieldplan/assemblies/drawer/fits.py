"""A drawer put together again from its finished parts, to see that it fills its opening less the clearances."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from fractions import Fraction

from yieldplan.assemblies.assembly import Fit
from yieldplan.assemblies.drawer.box import Box, Groove
from yieldplan.assemblies.drawer.keys import Front
from yieldplan.joints.joint import Joint, Role
from yieldplan.model.parts import Part
from yieldplan.units import Inches


def fits(
    box: Box, groove: Groove, play: Inches, shown: Front, parts: Mapping[str, Part]
) -> Iterator[Fit]:
    """Sizes of the finished drawer beside those its opening allows.

    Of `box` only what the job and the shop say is taken, never a size it works out: a
    wrong rule there would agree with itself.

    Parameters
    ----------
    play
        Room a sheet bottom has in its grooves. [in]
    shown
        The front that shows, as the job asks for it.
    parts
        By what they are in the drawer: `box front` where the front is applied.
    """
    front = parts.get("box front", parts["front"])
    side, back, bottom = parts["side"], parts["back"], parts["bottom"]
    # Where the sides enter the front, the front runs over them; ends left proud are
    # planed off.
    over_front = front.length.value - 2 * _proud(box.front_joint, front, side)
    depth = side.length.value + _left(box.front_joint, front.thickness.value)
    if box.back_joint.has_tails:
        depth += _left(box.back_joint, back.thickness.value)
        over_back = back.length.value - 2 * _proud(box.back_joint, back, side)
    else:
        over_back = back.length.value + 2 * _left(box.back_joint, side.thickness.value)
    yield Fit(words="width over the back", got=over_back, asked=over_front)
    yield from _in_opening(box, over_front, depth, side)
    yield from _fronts(box, shown, parts)

    inside = over_back - 2 * side.thickness.value
    yield Fit(
        words="bottom, side to side",
        got=bottom.length.value + play,
        asked=inside + 2 * groove.depth,
    )
    room = depth - _set_in(box, back) - front.thickness.value + groove.depth
    high = back.width.value
    if box.back.sits == "on the bottom":
        high += groove.up + bottom.thickness.value
    else:
        room += groove.depth - back.thickness.value
    yield Fit(words="height at the back", got=high, asked=side.width.value)
    yield Fit(words="bottom, front to back", got=bottom.width.value + play, asked=room)


def _in_opening(box: Box, wide: Inches, deep: Inches, side: Part) -> Iterator[Fit]:
    """The box, with all that must stay free around it, beside its opening."""
    opening = box.opening
    free = _free_beside(box, side)
    yield Fit(words="opening, across", got=wide + free, asked=opening.width)
    if box.slide_length is not None:
        # Side-mounted ones are screwed to the sides; under-mounted ones hold the box.
        is_under = box.runs == "under-mounted slides"
        long = deep if is_under else side.length.value
        yield Fit(words="slides", got=long, asked=box.slide_length)
    else:
        rear = box.clearance.rear
        behind = box.shop.rear_clearance if rear is None else rear
        got = deep + behind + box.inset_front
        yield Fit(words="opening, front to back", got=got, asked=opening.depth)
    high = opening.height - _free_above(box, box.side_growth)
    if box.jig is not None:
        # The greatest whole number of fingers that the height has room for.
        high -= (high - box.jig.remainder) % box.jig.spacing
    yield Fit(words="height of the sides", got=side.width.value, asked=high)


def _fronts(box: Box, shown: Front, parts: Mapping[str, Part]) -> Iterator[Fit]:
    front, opening = parts["front"], box.opening
    long, high = front.length.value, front.width.value
    if "box front" not in parts:
        high += _free_above(box, box.front_growth)
        yield Fit(words="front, high", got=high, asked=opening.height)
        return
    behind = parts["box front"].width.value
    yield Fit(words="box front, high", got=behind, asked=parts["side"].width.value)
    around = shown.overlay or Fraction(0)
    above = around if shown.overlay_top is None else shown.overlay_top
    below = around if shown.overlay_bottom is None else shown.overlay_bottom
    if box.inset_front:
        gap = box.shop.front_gap if shown.gap is None else shown.gap
        around = above = below = -gap
    got = long - 2 * around
    yield Fit(words="front over the opening, across", got=got, asked=opening.width)
    got = high - above - below
    yield Fit(words="front over the opening, high", got=got, asked=opening.height)


def _free_beside(box: Box, side: Part) -> Inches:
    """What the opening is wider than the box, both sides together. [in]"""
    said, shop = box.clearance.width, box.shop
    if box.runs == "side-mounted slides":
        return 2 * shop.slide_side_clearance if said is None else said
    if box.runs == "under-mounted slides":
        # Said from the inside of the box to the opening.
        inside = shop.undermount_width_less if said is None else said
        return inside - 2 * side.thickness.value
    if box.fit == "plane to fit":
        return Fraction(0)
    return shop.runner_side_clearance if said is None else said


def _free_above(box: Box, growth: Inches) -> Inches:
    """What the opening is higher than a part of the drawer that grows so much. [in]"""
    said, shop = box.clearance.height, box.shop
    if box.runs == "side-mounted slides":
        return shop.slide_height_clearance if said is None else said
    if box.runs == "under-mounted slides":
        return shop.undermount_height_clearance if said is None else said
    if box.fit == "plane to fit":
        return Fraction(0)
    return shop.runner_height_clearance + growth if said is None else said


def _set_in(box: Box, back: Part) -> Inches:
    """From the sides' rear ends to the back's outside. [in]"""
    if box.back.set_in is not None:
        return box.back.set_in
    return Fraction(0) if box.back_joint.makes_box_corner else back.thickness.value


def _left(joint: Joint, mate: Inches) -> Inches:
    """What stays of the mate beyond the end of the part that enters it. [in]"""
    return mate - joint.depth(mate=mate).value


def _proud(joint: Joint, part: Part, mate: Part) -> Inches:
    """What the joint adds to an end of the part that receives its mate. [in]"""
    return joint.allowance(
        role=Role.HOUSING,
        own=part.thickness.value,
        mate=mate.thickness.value,
    ).value
