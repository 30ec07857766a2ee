"""What in a bookcase's table cannot be built, and what would help."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import TYPE_CHECKING

from yieldplan.assemblies.bookcase.case import Across, Case
from yieldplan.faults import Faults
from yieldplan.joints import joints_that
from yieldplan.joints.joint import say
from yieldplan.model.parts import Part
from yieldplan.units import UnitName

if TYPE_CHECKING:
    from yieldplan.assemblies.bookcase import Bookcase

Said = tuple[str, str, str]
"""The user's text, what is wrong, what to do."""


def check_keys(bookcase: Bookcase, faults: Faults) -> None:
    """Notes keys that contradict each other or are missing."""
    for found in (_ends(bookcase), _shelves(bookcase), _back(bookcase)):
        for said, wrong, remedy in found:
            faults.add(bookcase.where, said, wrong, remedy)


def check_case(bookcase: Bookcase, case: Case, unit: UnitName, faults: Faults) -> None:
    """Notes joints the sides have no room for, and openings that do not fill the height."""
    joints = [case.top, case.bottom]
    joints += [case.shelf] if case.num_shelves else []
    if case.toe_kick is not None:
        kick = case.kick_thickness
        joints += [Across(words="toe kick", thickness=kick, joint=case.kick_joint)]
    for end in joints:
        if why := end.joint.impossible(mate=case.side, unit=unit):
            wrong = f"the joint of {end.words} and side cannot be cut: {why}"
            remedy = "Change the joint's figures or the sides' thickness"
            faults.add(bookcase.where, end.joint.name, wrong, remedy)
    if case.back is not None:
        rabbeted = {"side": case.side}
        if case.top_is_rabbeted:
            rabbeted["top"] = case.top.thickness
        for what, mate in rabbeted.items():
            if why := case.back.joint.impossible(mate=mate, unit=unit):
                wrong = f"the back's rabbet in the {what} cannot be cut: {why}"
                faults.add(bookcase.where, "", wrong, "Write a depth for the rabbet")
        if case.back.boards is not None and case.gap >= case.tongue:
            faults.add(
                bookcase.where,
                say(case.gap, unit),
                f"with this gap a tongue of {say(case.tongue, unit)} does not reach "
                "into its groove",
                "Make the gap less than the tongue",
            )
    _check_openings(bookcase, case, unit, faults)


def check_sizes(
    bookcase: Bookcase, parts: Sequence[Part], unit: UnitName, faults: Faults
) -> None:
    """Notes parts of which the case leaves nothing."""
    for part in parts:
        for what, size in (("long", part.length), ("wide", part.width)):
            if size.value <= 0:
                faults.add(
                    bookcase.where,
                    "",
                    f"nothing is left of {part.id}, "
                    f"{say(size.value, unit)} {what}: {size.say(unit)}",
                    "Check the case's sizes and the thicknesses",
                )


def _check_openings(
    bookcase: Bookcase, case: Case, unit: UnitName, faults: Faults
) -> None:
    inside, filled = case.inside_height, case.filled
    if bookcase.openings and min(case.openings) <= 0:
        wrong = "an opening of 0 holds nothing"
        faults.add(bookcase.where, "0", wrong, "Write its clear height")
    elif min(case.openings) <= 0:
        faults.add(
            bookcase.where,
            "",
            f"the shelves leave no openings: inside it is {inside.say(unit)} high",
            "Take fewer shelves, thinner ones, or a higher case",
        )
    elif filled.value != inside.value:
        lowest = case.openings[-1] + inside.value - filled.value
        remedy = (
            f"Make the lowest {say(lowest, unit)}, or leave openings out and write "
            "fixed_shelves for equal ones"
        )
        if lowest <= 0:
            remedy = "Take fewer or lower openings, or a higher case"
        faults.add(
            bookcase.where,
            "",
            f"the openings do not fill the height: {filled.say(unit)}, and inside it "
            f"is {inside.say(unit)}",
            remedy,
        )


def _ends(bookcase: Bookcase) -> Iterator[Said]:
    for what, end in (("top", bookcase.top), ("bottom", bookcase.bottom)):
        joint = bookcase.joint_of(what)
        run_past = bookcase.run_past(what)
        if not joint.makes_box_corner and not joint.lets_run_past:
            yield (
                joint.name,
                f"a {joint.name} does not join the {what} to the sides",
                f"Write {joints_that(lambda kind: kind.makes_box_corner or kind.lets_run_past)}",
            )
        elif run_past and not joint.lets_run_past:
            why = f"a {joint.name} joins the ends of two boards"
            over = "the toe kick" if what == "bottom" else "its set_in"
            remedy = joints_that(lambda kind: kind.lets_run_past)
            if bookcase.toe_kick is None or what == "top":
                over, remedy = "set_in", f"{remedy}, or leave set_in out"
            yield (
                joint.name,
                f"{why}, and with {over} the sides run past the {what}",
                f"Write {remedy}",
            )
        if what == "bottom" and bookcase.toe_kick and end.set_in is not None:
            yield (
                "",
                "a toe kick says how high the bottom lies, and so does its set_in",
                "Keep one of the two",
            )


def _shelves(bookcase: Bookcase) -> Iterator[Said]:
    joint, openings = bookcase.shelf.joint, bookcase.openings
    if not joint.lets_run_past:
        yield (
            joint.name,
            f"a {joint.name} does not join a shelf to the face of a side",
            f"Write {joints_that(lambda kind: kind.lets_run_past)}",
        )
    given = bookcase.fixed_shelves
    if openings and given is not None and given != len(openings) - 1:
        yield (
            str(given),
            f"with {len(openings)} openings fixed_shelves is {len(openings) - 1}",
            "Leave fixed_shelves out where openings are given, or correct one of them",
        )


def _back(bookcase: Bookcase) -> Iterator[Said]:
    back = bookcase.back
    if back is None:
        return
    if (back.wood is None) == (back.sheet is None):
        yield (
            back.wood or "",
            "a back is of a sheet or of boards, one of the two",
            "Write back = { sheet = ... } or { wood = ..., thickness = ..., boards = ... }",
        )
    if back.sheet is not None and back.boards is not None:
        yield str(back.boards), "a sheet is one board across", "Leave boards out"
    if back.wood is not None and back.thickness is None:
        yield back.wood, "how thick the back's boards are is missing", "Write thickness"
    if back.wood is not None and (back.boards or 1) < 2:
        yield (
            "" if back.boards is None else str(back.boards),
            "a back of solid wood in one piece would split, or push the sides apart",
            "Write how many boards = ... stand side by side, two or more",
        )
