"""A drawer put together again from its finished parts, to see that it fills its opening less the clearances."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from yieldplan.assemblies.assembly import Fit
from yieldplan.assemblies.drawer.box import Box, Groove
from yieldplan.joints.joint import Edge, Joint, Role
from yieldplan.model.parts import Part
from yieldplan.units import Inches


def fits(
    box: Box, groove: Groove, play: Inches, parts: Mapping[str, Part]
) -> Iterator[Fit]:
    """Sizes of the finished box beside those its opening allows.

    Parameters
    ----------
    play
        Room a sheet bottom has in its grooves. [in]
    parts
        By what they are in the drawer: `box front` where the front is applied.
    """
    front = parts.get("box front", parts["front"])
    side, back, bottom = parts["side"], parts["back"], parts["bottom"]
    # Where the sides enter the front, the front runs over them; ends left proud are
    # planed off.
    over_front = front.length.value - 2 * _proud(box.front_joint, front, side)
    yield Fit(words="width over the front", got=over_front, asked=box.width.value)

    depth = side.length.value + _left(box.front_joint, front.thickness.value)
    if box.back_joint.has_tails:
        depth += _left(box.back_joint, back.thickness.value)
        over_back = back.length.value - 2 * _proud(box.back_joint, back, side)
    else:
        over_back = back.length.value + 2 * _left(box.back_joint, box.side)
    yield Fit(words="width over the back", got=over_back, asked=box.width.value)
    yield Fit(words="depth of the box", got=depth, asked=box.depth.value)

    inside = over_back - 2 * side.thickness.value
    yield Fit(
        words="bottom, side to side",
        got=bottom.length.value + play,
        asked=inside + 2 * groove.depth,
    )
    room = depth - box.back_set_in - front.thickness.value + groove.depth
    if box.back.sits == "on the bottom":
        height = groove.up + bottom.thickness.value + back.width.value
        yield Fit(words="height at the back", got=height, asked=side.width.value)
    else:
        room += groove.depth - back.thickness.value
        yield Fit(
            words="height at the back", got=back.width.value, asked=side.width.value
        )
    yield Fit(words="bottom, front to back", got=bottom.width.value + play, asked=room)


def _left(joint: Joint, mate: Inches) -> Inches:
    """What stays of the mate beyond the end of the part that enters it. [in]"""
    return mate - joint.depth(mate=mate).value


def _proud(joint: Joint, part: Part, mate: Part) -> Inches:
    """What the joint adds to an end of the part that receives its mate. [in]"""
    return joint.allowance(
        role=Role.HOUSING,
        edge=Edge.END,
        own=part.thickness.value,
        mate=mate.thickness.value,
    ).value
