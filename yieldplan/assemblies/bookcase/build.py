"""The parts of a bookcase, how they meet, and what a maker should mind about them."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import TYPE_CHECKING

from yieldplan.assemblies.bookcase.back_boards import BackBoards
from yieldplan.assemblies.bookcase.case import Case
from yieldplan.assemblies.bookcase.sag import sag_caution
from yieldplan.assemblies.bookcase.stuff import Stuff
from yieldplan.assemblies.meet import meet
from yieldplan.assemblies.movement import growth
from yieldplan.joints.joint import Joint, say
from yieldplan.model.job import Job
from yieldplan.model.parts import Built, Meeting, Part
from yieldplan.model.sums import Sum
from yieldplan.reference.tables import find_species
from yieldplan.units import Inches

if TYPE_CHECKING:
    from yieldplan.assemblies.bookcase import Bookcase


def built(
    bookcase: Bookcase, case: Case, stuff: Mapping[str, Stuff], job: Job
) -> Built:
    """Everything the bookcase turns into."""
    return Built(
        parts=tuple(_parts(bookcase, case, stuff, job)),
        meetings=tuple(_meetings(bookcase, case, job)),
        cautions=(
            *_joint_cautions(bookcase, case, job),
            *_sags(bookcase, case, stuff, job),
            *_swelling(bookcase, case, job),
        ),
    )


def boards_of(case: Case, job: Job) -> BackBoards | None:
    """The boards of a solid back; None where there are none."""
    back = case.back
    if back is None or back.boards is None:
        return None
    return BackBoards(
        across=case.back_width.value,
        boards=back.boards,
        lap=case.tongue - case.gap,
        unit=job.unit,
    )


def _parts(
    bookcase: Bookcase, case: Case, stuff: Mapping[str, Stuff], job: Job
) -> Iterator[Part]:
    def part(
        what: str, length: Sum, width: Sum, *, quantity: int = 1, note: str = ""
    ) -> Part:
        made_of = stuff[what if what in stuff else "back"]
        words = "sheet" if made_of.is_sheet else "thickness"
        return Part(
            id=f"{bookcase.name}/{what}",
            quantity=quantity,
            wood=made_of.of,
            is_sheet=made_of.is_sheet,
            length=length,
            width=width,
            thickness=Sum.of((words, made_of.thickness)),
            show_face=made_of.show_face,
            back_face=made_of.back_face,
            strips=made_of.strips,
            note=note,
            where=bookcase.where,
        )

    def across(end_joint: Joint, what: str) -> Sum:
        return case.across(end_joint, stuff[what].thickness)

    depth = Sum.of(("depth", case.depth))
    marks = case.setting_out(job.unit)
    yield part("side", case.side_length, depth, quantity=2, note=marks)
    yield part("top", across(case.top.joint, "top"), case.top_width)
    yield part("bottom", across(case.bottom.joint, "bottom"), case.front_to_back())
    if case.num_shelves:
        yield part(
            "shelf",
            across(case.shelf.joint, "shelf"),
            case.front_to_back(bookcase.shelf.set_back),
            quantity=case.num_shelves,
        )
    if bookcase.loose is not None:
        yield part(
            "loose shelf",
            case.loose_length,
            case.front_to_back(bookcase.loose.set_back),
            quantity=bookcase.loose.quantity,
        )
    if (kick := bookcase.toe_kick) is not None:
        back = f"set back {say(kick.set_back, job.unit)}" if kick.set_back else ""
        high = Sum.of(("toe kick", kick.height))
        yield part("toe kick", across(case.kick_joint, "toe kick"), high, note=back)
    boards = boards_of(case, job)
    if boards is not None:
        alike = boards.boards if boards.are_alike else boards.boards - 1
        note = "upright; tongue on one edge, groove in the other"
        high = case.back_height
        yield part("back board", high, boards.width, quantity=alike, note=note)
        if not boards.are_alike:
            note = "upright; groove only"
            yield part("last back board", high, boards.last, note=note)
    elif case.back is not None:
        note = "grain upright"
        yield part("back", case.back_height, case.back_width, note=note)


def _meetings(bookcase: Bookcase, case: Case, job: Job) -> Iterator[Meeting]:
    for what, joint, _ in _joints(case):
        yield meet(
            joint,
            job,
            housed=f"{bookcase.name}/{what}",
            housing=f"{bookcase.name}/side",
            mate=case.side,
        )


def _joints(case: Case) -> Iterator[tuple[str, Joint, Inches]]:
    """Part, joint to the sides, and thickness, of all that runs from side to side."""
    yield "top", case.top.joint, case.top.thickness
    yield "bottom", case.bottom.joint, case.bottom.thickness
    if case.num_shelves:
        yield "shelf", case.shelf.joint, case.shelf.thickness
    if case.toe_kick is not None:
        yield "toe kick", case.kick_joint, case.kick_thickness


def _joint_cautions(bookcase: Bookcase, case: Case, job: Job) -> Iterator[str]:
    joints = list(_joints(case))
    if case.back is not None:
        joints += [("back", case.back.joint, case.back_thickness)]
    for what, joint, own in joints:
        for warning in joint.limits(own=own, mate=case.side, unit=job.unit):
            yield f"{bookcase.name}/{what}: {warning}."
    for _, joint, _ in joints:
        yield from joint.cautions


def _sags(
    bookcase: Bookcase, case: Case, stuff: Mapping[str, Stuff], job: Job
) -> Iterator[str]:
    backs = {"shelf": bookcase.shelf.set_back}
    if bookcase.loose is not None:
        backs["loose shelf"] = bookcase.loose.set_back
    for what, set_back in backs.items():
        if what not in stuff:
            continue
        caution = sag_caution(
            f"{bookcase.name}/{what}",
            made_of=stuff[what].of,
            span=case.clear.value,
            width=case.front_to_back(set_back).value,
            thickness=stuff[what].thickness,
            load=bookcase.load,
            job=job,
        )
        if caution:
            yield caution


def _swelling(bookcase: Bookcase, case: Case, job: Job) -> Iterator[str]:
    """Boards of the back that will swell by more than the gap they are given."""
    boards, back = boards_of(case, job), case.back
    if boards is None or back is None or back.wood is None:
        return
    kind = find_species(job.woods[back.wood].species)
    if kind is None:
        return
    shop = job.shop
    gain = growth(
        boards.width.value,
        coefficient=kind.tangential,
        points=shop.moisture_wettest - shop.moisture_today,
        step=shop.movement_step,
    )
    if gain > case.gap:
        yield (
            f"{bookcase.name}/back board: in the wettest season a board gains "
            f"{say(gain, job.unit)}, and its gap is {say(case.gap, job.unit)}; take more, "
            "narrower boards or a wider gap."
        )
