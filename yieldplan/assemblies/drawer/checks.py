"""What in a drawer's table cannot be built, told before any size is worked out."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import TYPE_CHECKING

from yieldplan.assemblies.drawer.box import Box, Groove
from yieldplan.assemblies.material import known_sheet, known_wood
from yieldplan.faults import Faults
from yieldplan.joints import joints_that
from yieldplan.joints.joint import say
from yieldplan.model.job import Job
from yieldplan.model.parts import Part
from yieldplan.units import UnitName

if TYPE_CHECKING:
    from yieldplan.assemblies.drawer import Drawer

Said = tuple[str, str, str]
"""The user's text, what is wrong, what to do."""


def check_materials(drawer: Drawer, job: Job, faults: Faults) -> None:
    """Notes every wood and sheet the job does not have."""
    solid = {"the front": drawer.front.wood, "the side": drawer.side.wood}
    solid["the back"] = drawer.back.wood
    if drawer.box_front is not None:
        solid["the box front"] = drawer.box_front.wood
    if drawer.bottom.wood is not None:
        solid["the bottom"] = drawer.bottom.wood
    for what, wood in solid.items():
        known_wood(wood, what, job, drawer.where, faults)
    if drawer.bottom.sheet is not None:
        known_sheet(drawer.bottom.sheet, "the bottom", job, drawer.where, faults)


def check_keys(drawer: Drawer, faults: Faults) -> None:
    """Notes keys that contradict each other or are missing."""
    for found in (_runs(drawer), _front(drawer), _back(drawer), _bottom(drawer)):
        for said, wrong, remedy in found:
            faults.add(drawer.where, said, wrong, remedy)


def check_box(
    drawer: Drawer, box: Box, groove: Groove, unit: UnitName, faults: Faults
) -> None:
    """Notes joints, grooves and slides this box has no room for."""
    into = box.back.thickness if box.back_joint.has_tails else box.side
    for end, joint, mate in (
        ("front", box.front_joint, box.front),
        ("back", box.back_joint, into),
    ):
        why = joint.impossible(mate=mate, unit=unit)
        if why:
            wrong = f"the joint at the {end} cannot be cut: {why}"
            remedy = "Change the joint's figures or the thickness"
            faults.add(drawer.where, joint.name, wrong, remedy)
    if groove.depth >= min(box.side, box.front):
        wrong = f"a groove {say(groove.depth, unit)} deep goes through the side or the front"
        remedy = "Make groove_depth less, or the part thicker"
        faults.add(drawer.where, "", wrong, remedy)
    if box.fingers < 1:
        wrong = "the side is lower than one finger of the template"
        remedy = "Leave jig out and cut these dovetails by hand"
        faults.add(drawer.where, "", wrong, remedy)
    if box.slide_length is not None:
        depth = box.depth.value + box.inset_front
        if depth > box.opening.depth:
            wrong = (
                f"with these slides the drawer is {say(depth, unit)} deep, "
                f"its opening {say(box.opening.depth, unit)}"
            )
            said = say(box.slide_length, unit)
            faults.add(drawer.where, said, wrong, "Take shorter slides")


def check_sizes(
    drawer: Drawer, parts: Sequence[Part], unit: UnitName, faults: Faults
) -> None:
    """Notes parts of which the opening leaves nothing."""
    for part in parts:
        for what, size in (("long", part.length), ("wide", part.width)):
            if size.value <= 0:
                what_is_left = f"{say(size.value, unit)} {what}: {size.say(unit)}"
                faults.add(
                    drawer.where,
                    "",
                    f"nothing is left of {part.id}, {what_is_left}",
                    "Check the opening and the thicknesses",
                )


def _runs(drawer: Drawer) -> Iterator[Said]:
    if drawer.on_slides and drawer.fit == "plane to fit":
        yield (
            drawer.fit,
            f"a drawer on {drawer.runs} cannot be planed to fit its opening",
            'Leave fit out, or write fit = "net"',
        )
    if drawer.on_slides and drawer.slide_length is None:
        yield (
            drawer.runs,
            "how long the slides are is missing",
            "Write slide_length, as on the slide's sheet",
        )
    if not drawer.on_slides and drawer.slide_length is not None:
        yield (
            drawer.runs,
            "a drawer on wooden runners has no slides, yet slide_length is given",
            'Leave it out, or write runs = "side-mounted slides"',
        )


def _front(drawer: Drawer) -> Iterator[Said]:
    front, joint = drawer.front, drawer.front_joint
    if not joint.makes_box_corner:
        yield (
            joint.name,
            f"a {joint.name} does not join a drawer's sides to its front",
            f"Write {joints_that(lambda kind: kind.makes_box_corner)}",
        )
    if front.overlay is not None and front.gap is not None:
        yield (
            "",
            "a front cannot both cover the case (overlay) and sit in the opening (gap)",
            "Keep one of the two",
        )
    if not drawer.is_applied and front.gap is not None:
        yield (
            "",
            "gap belongs to an applied front; this one is joined to the sides",
            'Leave gap out, or write fit = "net" for clearance all round',
        )
    if not drawer.is_applied and drawer.box_front is not None:
        yield (
            drawer.box_front.wood,
            "a box front stands behind an applied front, and this front is joined to the sides",
            "Leave box_front out, or give the front an overlay",
        )


def _back(drawer: Drawer) -> Iterator[Said]:
    joint = drawer.back.joint
    if not joint.makes_box_corner and not joint.lets_run_past:
        yield (
            joint.name,
            f"a {joint.name} does not join a drawer's back to its sides",
            f"Write {joints_that(lambda kind: kind.makes_box_corner or kind.lets_run_past)}",
        )
    if drawer.back.set_in and not joint.lets_run_past:
        yield (
            joint.name,
            f"a back in a {joint.name} stands at the sides' ends; it cannot be set in",
            "Leave set_in out, or write a dado",
        )


def _bottom(drawer: Drawer) -> Iterator[Said]:
    bottom = drawer.bottom
    if (bottom.sheet is None) == (bottom.wood is None):
        yield (
            bottom.sheet or "",
            "a bottom is of a sheet or of a wood, one of the two",
            "Write bottom = { sheet = ... } or bottom = { wood = ..., thickness = ... }",
        )
        return
    if bottom.wood is not None and bottom.thickness is None:
        yield (
            bottom.wood,
            "how thick the solid bottom is is missing",
            "Write its thickness, as it enters the groove",
        )
    if bottom.wood is not None and drawer.back.sits == "full height":
        yield (
            bottom.wood,
            "a solid bottom must be free at the back, or it splits as it shrinks",
            'Let the back sit "on the bottom", or take a sheet',
        )
    if bottom.sheet is not None and bottom.strips > 1:
        yield (
            bottom.sheet,
            "a sheet is not glued up from strips",
            "Leave strips out",
        )
    if bottom.sheet is not None and bottom.thickness is not None:
        yield (
            bottom.sheet,
            "a sheet brings its thickness along",
            "Leave the bottom's thickness out",
        )
