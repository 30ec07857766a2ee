"""What in a drawer bank's table cannot be built, and what would help."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from typing import TYPE_CHECKING

from yieldplan.assemblies.drawer_bank.stack import Stack
from yieldplan.assemblies.material import known_wood
from yieldplan.faults import Faults
from yieldplan.joints.joint import say
from yieldplan.model.job import Job
from yieldplan.model.sums import Sum
from yieldplan.units import UnitName

if TYPE_CHECKING:
    from yieldplan.assemblies.drawer_bank import DrawerBank

Said = tuple[str, str, str]
"""The user's text, what is wrong, what to do."""


def check_keys(bank: DrawerBank, job: Job, faults: Faults) -> None:
    """Notes keys that contradict each other or are missing, and woods the job lacks."""
    for said, wrong, remedy in (*_heights(bank), *_between(bank)):
        faults.add(bank.where, said, wrong, remedy)
    if bank.rail is not None:
        known_wood(bank.rail.wood, "the rail", job, bank.where, faults)
    if bank.frame is not None:
        known_wood(bank.frame.wood, "the frame", job, bank.where, faults)


def check_heights(
    bank: DrawerBank,
    stack: Stack,
    heights: tuple[Sum, ...],
    unit: UnitName,
    faults: Faults,
) -> None:
    """Notes heights that do not fill their opening, or of which nothing is left."""
    room = stack.to_share
    total = sum((each.value for each in heights), Fraction(0))
    what = stack.what
    if stack.rail is not None and stack.gap_on_rail < 0:
        faults.add(
            bank.where,
            "",
            f"two fronts would meet on the rail between them: {say(stack.rail, unit)} "
            f"rail, {say(stack.rail - stack.gap_on_rail, unit)} of overlay",
            "Make the overlays less or the rail thicker",
        )
    if total != room.value:
        lowest = heights[-1].value + room.value - total
        remedy = f"Make the lowest {say(lowest, unit)}, or leave heights out"
        if lowest <= 0:
            remedy = "Make them lower, or the opening higher"
        listed = Sum(tuple(t for each in heights for t in each))
        faults.add(
            bank.where,
            "",
            f"the heights do not fill the opening: {_added(listed, what, unit)}, and "
            f"there is {room.say(unit)}",
            remedy,
        )
    elif min(each.value for each in heights) <= 0:
        faults.add(
            bank.where,
            "",
            f"of {room.say(unit)} nothing is left for the smallest {what}",
            "Take fewer drawers, a smaller step or ratio, or a higher opening",
        )


def _added(listed: Sum, what: str, unit: UnitName) -> str:
    return Sum.of(*((what, term.inches) for term in listed)).folded().say(unit)


def _heights(bank: DrawerBank) -> Iterator[Said]:
    grows = bank.graduated
    if bank.drawers is None and not bank.heights:
        yield "", "how many drawers there are is missing", "Write drawers, or heights"
    if bank.heights and bank.drawers not in (None, len(bank.heights)):
        yield (
            str(bank.drawers),
            f"heights are given for {len(bank.heights)} drawers",
            "Leave drawers out, or correct one of them",
        )
    if bank.heights and grows is not None:
        yield (
            "",
            "heights are given, and graduated would work them out",
            "Keep one of the two",
        )
    if grows is not None and (grows.step is None) == (grows.ratio is None):
        yield (
            "",
            "heights grow by a step or in a ratio, one of the two",
            'Write graduated = { step = "1" } or { ratio = "1.2" }',
        )
    if grows is not None and grows.ratio == 0:
        yield "0", "in this ratio nothing is left of the second", 'Write one like "1.2"'
    if bank.rounded_to is not None and bank.rounded_to <= 0:
        yield "0", "a step of 0 has no marks", "Write the step, such as 1/16"


def _between(bank: DrawerBank) -> Iterator[Said]:
    if bank.frame is not None and bank.rail is None:
        yield (
            bank.frame.wood,
            "a web frame has a rail in front, and rail is missing",
            "Write rail = { wood = ..., thickness = ..., width = ..., case_side = ... }",
        )
    if bank.gap_between is None:
        return
    if bank.rail is not None:
        yield (
            "",
            "gap_between is for fronts that no rail keeps apart",
            "Leave gap_between out",
        )
    elif not bank.is_applied:
        yield (
            "",
            "gap_between is for applied fronts; these are joined to their sides",
            'Leave gap_between out, or write fit = "net" for clearance all round',
        )
