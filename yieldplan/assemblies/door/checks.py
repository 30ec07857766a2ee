"""What in a door's table cannot be built, told before its parts are made."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction
from typing import TYPE_CHECKING

from yieldplan.assemblies.door import members
from yieldplan.assemblies.door.frame import Frame
from yieldplan.assemblies.material import known_sheet, known_wood
from yieldplan.faults import Faults
from yieldplan.joints import joints_that
from yieldplan.joints.joint import say
from yieldplan.joints.stub_tenon import StubTenon
from yieldplan.model.job import Job
from yieldplan.model.parts import Part
from yieldplan.units import Inches, UnitName

if TYPE_CHECKING:
    from yieldplan.assemblies.door import Door

Said = tuple[str, str, str]
"""The user's text, what is wrong, what to do."""


def check_materials(door: Door, job: Job, faults: Faults) -> None:
    """Notes every wood and sheet the job does not have."""
    known_wood(door.stile.wood, "the stile", job, door.where, faults)
    if door.rail.wood is not None:
        known_wood(door.rail.wood, "the rail", job, door.where, faults)
    if door.bottom_rail.wood is not None:
        known_wood(door.bottom_rail.wood, "the bottom rail", job, door.where, faults)
    if door.panel.wood is not None:
        known_wood(door.panel.wood, "the panel", job, door.where, faults)
    if door.panel.sheet is not None:
        known_sheet(door.panel.sheet, "the panel", job, door.where, faults)


def check_keys(door: Door, unit: UnitName, faults: Faults) -> None:
    """Notes keys that contradict each other or are missing."""
    for found in (_size(door), _edges(door), _joint(door, unit), _panel(door)):
        for said, wrong, remedy in found:
            faults.add(door.where, said, wrong, remedy)
    ups = [middle.up for middle in door.middle_rails]
    if None in ups and any(up is not None for up in ups):
        faults.add(
            door.where,
            "",
            "some middle rails say how far up they sit, others do not",
            "Write up for all of them, or for none and have panels of equal height",
        )


def groove_width(door: Door, job: Job) -> Inches:
    """How wide the frame's groove is. [in]"""
    panel = door.panel
    if panel.groove_width is not None:
        return panel.groove_width
    if panel.sheet is not None:
        return job.sheets[panel.sheet].thickness
    if panel.raised or panel.thickness is None:
        return job.shop.panel_groove_width
    return panel.thickness


def check_frame(door: Door, frame: Frame, job: Job, faults: Faults) -> None:
    """Notes joints and grooves this frame has no room for."""
    for found in (_cut(frame, job.unit), _groove(door, frame, job)):
        for said, wrong, remedy in found:
            faults.add(door.where, said, wrong, remedy)


def check_sizes(
    door: Door, parts: Sequence[Part], unit: UnitName, faults: Faults
) -> None:
    """Notes parts of which the door leaves nothing."""
    for part in parts:
        if part.id.startswith(f"{door.name}/right "):
            continue  # as its left twin
        for what, size in (("long", part.length), ("wide", part.width)):
            if size.value <= 0:
                faults.add(
                    door.where,
                    "",
                    f"nothing is left of {part.id}, {say(size.value, unit)} {what}: {size.say(unit)}",
                    "Check the door's size and the widths of its stiles and rails",
                )


def _size(door: Door) -> Iterator[Said]:
    if (door.opening is None) == (door.leaf is None):
        yield (
            "",
            "a door is made to its opening or to a leaf's size, one of the two",
            "Write opening = { width = ..., height = ... } or leaf = { ... }",
        )
    if door.leaves > 2:
        yield (
            str(door.leaves),
            "one opening has one leaf or a pair",
            "Write leaves = 2, and another door for the rest",
        )


def _edges(door: Door) -> Iterator[Said]:
    gaps = (door.gap, door.gap_top, door.gap_bottom)
    if door.opening is None:
        said = (*gaps, door.gap_between, door.overlay, door.overlay_top)
        if any(each is not None for each in (*said, door.overlay_bottom)):
            yield (
                "",
                "gaps and overlays belong to an opening, and this door says its leaf's size",
                "Leave them out, or write the opening",
            )
        return
    # The gap of an overlaid pair is the one between its leaves.
    inset = gaps[1:] if door.leaves == 2 else gaps
    if door.is_overlaid and any(each is not None for each in inset):
        yield (
            "",
            "a door cannot both cover the case (overlay) and sit in the opening (gap)",
            "Keep one of the two",
        )
    if door.leaves == 1 and door.gap_between is not None:
        yield (
            "",
            "one leaf has no gap between leaves",
            "Leave gap_between out, or write leaves = 2",
        )


def _joint(door: Door, unit: UnitName) -> Iterator[Said]:
    joint = door.joint
    if not joint.makes_frame_corner:
        yield (
            joint.name,
            f"a {joint.name} does not join a rail to a stile",
            f"Write {joints_that(lambda kind: kind.makes_frame_corner)}",
        )
    deep = door.panel.groove_depth
    if not isinstance(joint, StubTenon) or None in (deep, joint.deep):
        return
    if deep != joint.deep:
        yield (
            joint.name,
            f"a stub tenon {say(joint.deep or Fraction(0), unit)} deep does not fit the panel's groove of {say(deep or Fraction(0), unit)}",
            "It is as long as the groove is deep: write one of the two, or a mortise and tenon",
        )


def _panel(door: Door) -> Iterator[Said]:
    panel = door.panel
    if (panel.sheet is None) == (panel.wood is None):
        yield (
            panel.sheet or "",
            "a panel is of a sheet or of a wood, one of the two",
            "Write panel = { sheet = ... } or panel = { wood = ..., thickness = ... }",
        )
        return
    if panel.wood is not None:
        if panel.thickness is None:
            yield (
                panel.wood,
                "how thick the solid panel is is missing",
                "Write its finished thickness",
            )
        return
    sheet = panel.sheet or ""
    if panel.strips > 1:
        yield sheet, "a sheet is not glued up from strips", "Leave strips out"
    if panel.thickness is not None:
        wrong = "a sheet brings its thickness along"
        yield sheet, wrong, "Leave the panel's thickness out"
    if panel.raised:
        wrong = "a sheet is not raised: its core would show"
        yield sheet, wrong, "Leave raised out, or write a wood"
    if panel.room_to_move is not None:
        wrong = "a sheet needs no room to move, only play"
        yield sheet, wrong, "Write play, or a wood"


def _cut(frame: Frame, unit: UnitName) -> Iterator[Said]:
    if frame.sight <= 0:
        yield (
            say(frame.stile, unit),
            f"two stiles of {say(frame.stile, unit)} leave nothing of a door {say(frame.width.value, unit)} wide",
            "Make the stiles narrower or the door wider",
        )
    if why := frame.joint.impossible(mate=frame.stile, unit=unit):
        yield (
            frame.joint.name,
            f"the joint at the stiles cannot be cut: {why}",
            "Change the joint's figures or widen the stiles",
        )
    reach = frame.joint.depth(mate=frame.stile).value
    if 0 < reach < frame.groove:
        yield (
            frame.joint.name,
            f"it ends at {say(reach, unit)}, in the panel's groove, which is {say(frame.groove, unit)} deep",
            "Make the tenon longer or the groove shallower, or write a stub tenon",
        )


def _groove(door: Door, frame: Frame, job: Job) -> Iterator[Said]:
    unit, deep, wide = job.unit, frame.groove, groove_width(door, job)
    remedy = "Make the groove shallower or the frame wider"
    if deep <= 0:
        yield "", "a groove without depth holds no panel", "Write its groove_depth"
    around = {
        "the stile": frame.stile,
        "the top rail": frame.top,
        "the bottom rail": frame.bottom,
    }
    what, width = min(around.items(), key=lambda each: each[1])
    if 2 * deep > width:
        yield (
            say(deep, unit),
            f"a groove {say(deep, unit)} deep takes more than half of {what}, {say(width, unit)} wide",
            remedy,
        )
    for middle in frame.middles:
        if 2 * deep >= middle.width:
            yield (
                say(deep, unit),
                f"two grooves {say(deep, unit)} deep leave nothing of the {middle.name}, {say(middle.width, unit)} wide",
                remedy,
            )
    thin = min(
        frame.thickness,
        members.rail(door).thickness,
        members.bottom_rail(door).thickness,
    )
    if wide >= thin:
        yield (
            say(wide, unit),
            f"a groove {say(wide, unit)} wide takes all of a frame {say(thin, unit)} thick",
            "Write groove_width, or make the panel thinner or the frame thicker",
        )
    thick = door.panel.thickness
    if door.panel.sheet is not None:
        thick = job.sheets[door.panel.sheet].thickness
    if thick is not None and wide > thick:
        yield (
            say(wide, unit),
            f"a panel {say(thick, unit)} thick rattles in a groove {say(wide, unit)} wide",
            "Leave groove_width out, or make the panel thicker",
        )
    if door.panel.sheet is not None and thick is not None and wide < thick:
        yield (
            say(wide, unit),
            f"a sheet {say(thick, unit)} thick does not enter a groove {say(wide, unit)} wide",
            "Leave groove_width out: the groove is as wide as the sheet",
        )
