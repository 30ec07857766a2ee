"""The parts of a door: stiles, rails and panels of every leaf, how they meet, what to mind."""

from __future__ import annotations

import dataclasses
from collections.abc import Iterator, Sequence
from fractions import Fraction
from typing import TYPE_CHECKING

from yieldplan.assemblies.door import checks, members, panel
from yieldplan.assemblies.door.cautions import cautions
from yieldplan.assemblies.door.frame import Frame, Middle
from yieldplan.assemblies.door.leaf import edges, leaf_height, leaf_width
from yieldplan.assemblies.door.members import Member
from yieldplan.assemblies.meet import meet
from yieldplan.faults import Faults
from yieldplan.joints.groove import Groove
from yieldplan.joints.stub_tenon import StubTenon
from yieldplan.model.job import Job
from yieldplan.model.parts import Built, Meeting, Part
from yieldplan.model.sums import Sum
from yieldplan.units import tape

if TYPE_CHECKING:
    from yieldplan.assemblies.door import Door


def built(door: Door, job: Job, found: Faults) -> Built:
    """Everything the door is made of; what it has no room for goes to `found`."""
    frame = frame_of(door, job)
    checks.check_frame(door, frame, job, found)
    if len(found):
        return Built(parts=())
    parts = (*_frame_parts(door, frame, job), *_panels(door, frame, job, found))
    checks.check_sizes(door, parts, job.unit, found)
    if len(found):
        return Built(parts=())
    return Built(
        parts=parts,
        meetings=tuple(_meetings(door, frame, parts, job)),
        cautions=tuple(cautions(door, frame, parts, job)),
    )


def frame_of(door: Door, job: Job) -> Frame:
    """The frame of one leaf, every figure that was left out filled in."""
    deep = door.panel.groove_depth
    joint = door.joint
    if isinstance(joint, StubTenon):
        # A stub tenon lies in the panel's groove: whichever says its depth says both.
        if joint.deep is None:
            joint = dataclasses.replace(joint, deep=deep)
        joint = joint.settled(job.shop)
        deep = joint.deep
    rail = members.rail(door)
    # From the top down, as one reads a door.
    middles = sorted(door.middle_rails, key=lambda each: -(each.up or 0))
    return Frame(
        width=leaf_width(door, job.shop),
        height=leaf_height(door, job.shop),
        stile=door.stile.width,
        thickness=door.stile.thickness,
        horns=door.stile.horns,
        joint=joint.settled(job.shop),
        groove=job.shop.panel_groove if deep is None else deep,
        top=rail.width,
        bottom=members.bottom_rail(door).width,
        middles=tuple(
            Middle(
                name="middle rail" if len(middles) == 1 else f"middle rail {number}",
                width=rail.width if each.width is None else each.width,
                up=each.up,
            )
            for number, each in enumerate(middles, start=1)
        ),
    )


def _frame_parts(door: Door, frame: Frame, job: Job) -> Iterator[Part]:
    leaves = door.leaves
    groove = _groove_in_words(door, frame, job)
    at = edges(door, job.shop)
    planed = door.opening is not None and not (at.side or at.above or at.below)
    notes = [groove]
    if frame.horns:
        notes.append("trim the horns when the door is glued up")
    if planed:
        notes.append("plane the door to its opening")
    stile, rail = members.stile(door), members.rail(door)
    upright = _part(
        door, "stile", stile, frame.stile_length, 2 * leaves, "; ".join(notes)
    )
    if frame.joint.depth(mate=frame.stile).value:
        # The rails enter a stile beside its ends, as far in as they are wide.
        joined = frame.horns + max(frame.top, frame.bottom)
        upright = dataclasses.replace(upright, joint_depth=joined)
    yield upright
    long = frame.rail_length
    yield _part(door, "top rail", rail, long, leaves, groove)
    for middle in frame.middles:
        own = dataclasses.replace(rail, width=middle.width)
        both = f"in both edges {groove}"
        yield _part(door, middle.name, own, long, leaves, both)
    bottom = members.bottom_rail(door)
    yield _part(door, "bottom rail", bottom, long, leaves, groove)


def _groove_in_words(door: Door, frame: Frame, job: Job) -> str:
    """How the groove is cut: by the panel it is to hold, where that has its thickness."""
    deep, own = tape(frame.groove, job.unit), door.panel
    if own.sheet is not None:
        return f"groove as wide as the sheet, {deep} deep"
    wide = tape(checks.groove_width(door, job), job.unit)
    return f"groove {wide} wide, {deep} deep"


def _part(
    door: Door, what: str, of: Member, length: Sum, quantity: int, note: str
) -> Part:
    return Part(
        id=f"{door.name}/{what}",
        quantity=quantity,
        wood=of.wood,
        length=length,
        width=Sum.of(("width", of.width)),
        thickness=Sum.of(("thickness", of.thickness)),
        show_face=of.show_face,
        back_face=of.back_face,
        note=note,
        where=door.where,
    )


def _panels(door: Door, frame: Frame, job: Job, found: Faults) -> Iterator[Part]:
    own = door.panel
    note = "grain upright" if own.grain == "upright" else "grain across"
    thickness = Sum.of(("thickness", own.thickness or Fraction(0)))
    if own.sheet is not None:
        thickness = Sum.of(("sheet", job.sheets[own.sheet].thickness))
    elif own.raised:
        wide = tape(checks.groove_width(door, job), job.unit)
        note += f"; raised to {wide} at its edges"
    for leaf in ("left ", "right ") if door.leaves == 2 else ("",):
        for row in frame.rows():
            size = panel.size(own, frame.wide, row.high, job, door.where, found)
            yield Part(
                id=f"{door.name}/{leaf}{row.name}",
                quantity=1,
                wood=own.sheet or own.wood or "",
                is_sheet=own.sheet is not None,
                length=size.length,
                width=size.width,
                thickness=thickness,
                show_face=own.show_face,
                back_face=own.back_face,
                strips=own.strips,
                note=note,
                where=door.where,
            )


def _meetings(
    door: Door, frame: Frame, parts: Sequence[Part], job: Job
) -> Iterator[Meeting]:
    stile = f"{door.name}/stile"
    names = ("top rail", *(middle.name for middle in frame.middles), "bottom rail")
    for name in names:
        yield meet(
            frame.joint,
            job,
            housed=f"{door.name}/{name}",
            housing=stile,
            mate=frame.stile,
        )
    groove = Groove(deep=frame.groove)
    panels = parts[len(names) + 1 :]
    rows = len(frame.middles) + 1
    for number, part in enumerate(panels):
        row = number % rows
        for housing in ("stile", names[row], names[row + 1]):
            yield Meeting(
                joint=groove.name,
                housed=part.id,
                housing=f"{door.name}/{housing}",
                depth=groove.depth(mate=frame.stile),
                # The groove is tried on the pieces its frame is set up on, and no
                # wood as wide as a panel is spent on that.
                needs_set_up=False,
            )
