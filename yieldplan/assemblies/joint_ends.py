"""How far joints reach in from the ends of parts: what must be clear of knots there."""

from __future__ import annotations

import dataclasses
from collections.abc import Iterable, Iterator, Mapping
from fractions import Fraction

import yieldplan.joints
from yieldplan.joints.joint import Joint
from yieldplan.model.parts import Meeting, Part
from yieldplan.registry import find
from yieldplan.units import Inches


def with_joint_depths(
    parts: Mapping[str, Part], meetings: Iterable[Meeting]
) -> dict[str, Part]:
    """The parts, each with the depth of the deepest joint at its ends.

    A part that is housed enters by the joint's depth. At a box corner the other part
    gives up its own end as well, as far as its mate is thick. A part that houses its
    mate somewhere along its length (a side with a shelf's dado) has no joint at its
    ends by that.
    """
    makes_corner = {
        name: joint.makes_box_corner
        for name, joint in find(yieldplan.joints, Joint).items()  # type: ignore[type-abstract]
    }
    deepest = {name: part.joint_depth for name, part in parts.items()}
    for meeting in meetings:
        for name, depth in _at_ends(
            meeting, parts, is_corner=makes_corner.get(meeting.joint, False)
        ):
            deepest[name] = max(depth, deepest.get(name, Fraction(0)))
    return {
        name: dataclasses.replace(part, joint_depth=deepest[name])
        if deepest.get(name) and not part.is_sawn_to_size
        else part
        for name, part in parts.items()
    }


def _at_ends(
    meeting: Meeting, parts: Mapping[str, Part], *, is_corner: bool
) -> Iterator[tuple[str, Inches]]:
    depth = meeting.depth.value
    if depth <= 0:
        # A butted end meets its mate and is not cut for it.
        return
    yield meeting.housed, depth
    mate = parts.get(meeting.housed)
    if is_corner and meeting.housing and mate is not None:
        yield meeting.housing, mate.thickness.value
