"""The rails between the drawers of a bank, or the web frames that carry them."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import TYPE_CHECKING

from yieldplan.assemblies.assembly import Fit
from yieldplan.assemblies.drawer_bank.keys import Frame, Rail
from yieldplan.assemblies.ends import folded, from_inside
from yieldplan.assemblies.meet import meet
from yieldplan.faults import Faults
from yieldplan.joints.joint import Joint, say
from yieldplan.model.job import Job
from yieldplan.model.parts import Meeting, Part
from yieldplan.model.sums import Sum
from yieldplan.units import Inches

if TYPE_CHECKING:
    from yieldplan.assemblies.drawer_bank import DrawerBank


def rail_parts(bank: DrawerBank, rail: Rail, job: Job) -> Iterator[Part]:
    """Every rail and runner of the bank."""
    count = bank.num_drawers - 1
    ends = from_inside(
        rail.joint.settled(job.shop),
        own=rail.thickness,
        mate=rail.case_side,
        mate_words="case side",
    )
    across = folded(Sum.of(("opening width", bank.opening.width)) + ends.times(2))
    thickness = Sum.of(("thickness", rail.thickness))
    yield Part(
        id=f"{bank.name}/rail",
        quantity=count,
        wood=rail.wood,
        length=across,
        width=Sum.of(("width", rail.width)),
        thickness=thickness,
        show_face=rail.show_face,
        back_face=rail.back_face,
        where=bank.where,
    )
    frame = bank.frame
    if frame is None:
        return
    width = Sum.of(("width", frame.width))
    lengths = {"back rail": across, "runner": _runner(bank, rail, frame, job)}
    for what, length in lengths.items():
        yield Part(
            id=f"{bank.name}/{what}",
            quantity=count * (2 if what == "runner" else 1),
            wood=frame.wood,
            length=length,
            width=width,
            thickness=thickness,
            note=_NOTES[what],
            where=bank.where,
        )


_NOTES = {
    "back rail": "no glue at its ends, so that a solid side can move",
    "runner": "front to back, between the rails",
}


def rail_meetings(bank: DrawerBank, rail: Rail, job: Job) -> Iterator[Meeting]:
    """How rails meet the case, which is not part of the bank, and runners the rails."""
    name, joint = bank.name, rail.joint.settled(job.shop)
    for what in ("rail", "back rail") if bank.frame is not None else ("rail",):
        yield meet(joint, job, housed=f"{name}/{what}", mate=rail.case_side)
    if bank.frame is not None:
        for mate, into, wide in _runner_ends(bank.frame, rail, job):
            yield meet(
                into,
                job,
                housed=f"{name}/runner",
                housing=f"{name}/{mate}",
                mate=wide,
            )


def check_rails(bank: DrawerBank, rail: Rail, job: Job, faults: Faults) -> None:
    """Notes joints that cannot be cut, and frames that leave nothing of a runner."""
    ends = [("rail", rail.joint.settled(job.shop), rail.case_side)]
    if bank.frame is not None:
        ends += [
            (f"runner in the {what}", joint, wide)
            for what, joint, wide in _runner_ends(bank.frame, rail, job)
        ]
    for what, joint, mate in ends:
        if why := joint.impossible(mate=mate, unit=job.unit):
            wrong = f"the joint of the {what} cannot be cut: {why}"
            remedy = "Change the joint's figures or what it is let into"
            faults.add(bank.where, joint.name, wrong, remedy)
    if not rail.joint.lets_run_past:
        wrong = f"a {rail.joint.name} does not join a rail to the face of a case's side"
        faults.add(bank.where, rail.joint.name, wrong, 'Write "dado" or "butt"')
    if bank.frame is not None:
        clear = bank.opening.depth - rail.width - bank.frame.width
        clear -= _behind(bank.frame, job)
        if clear <= 0:
            wrong = f"between the rails of the frame {say(clear, job.unit)} is left for the runners"
            faults.add(bank.where, "", wrong, "Make the rails narrower")
    elif rail.width > bank.opening.depth:
        wrong = f"the opening is {say(bank.opening.depth, job.unit)} deep"
        remedy = "Make the rail narrower"
        faults.add(bank.where, say(rail.width, job.unit), wrong, remedy)


def rail_cautions(bank: DrawerBank, rail: Rail, job: Job) -> Iterator[str]:
    """What to mind about the rails' joints."""
    joint = rail.joint.settled(job.shop)
    ends = [(joint, rail.case_side)]
    if bank.frame is not None:
        ends += [(into, w) for _, into, w in _runner_ends(bank.frame, rail, job)]
    for each, mate in dict.fromkeys(ends):
        for warning in each.limits(own=rail.thickness, mate=mate, unit=job.unit):
            yield f"{bank.name}/rail: {warning}."
        yield from each.cautions


def rail_fits(
    bank: DrawerBank, rail: Rail, parts: Mapping[str, Part], job: Job
) -> Iterator[Fit]:
    """The rails measured between the case's sides, and the frames from front to back."""
    joint = rail.joint.settled(job.shop)
    into = 2 * joint.depth(mate=rail.case_side).value
    front = parts[f"{bank.name}/rail"]
    got = front.length.value - into
    yield Fit(words="rail, between the sides", got=got, asked=bank.opening.width)
    yield Fit(words="rail, front to back", got=front.width.value, asked=rail.width)
    frame = bank.frame
    if frame is None:
        return
    back, runner = parts[f"{bank.name}/back rail"], parts[f"{bank.name}/runner"]
    got = back.length.value - into
    yield Fit(words="back rail, between", got=got, asked=bank.opening.width)
    deep = front.width.value + back.width.value + runner.length.value
    for part in (front, back):
        settled = frame.joint.settled(job.shop)
        deep -= settled.depth(mate=part.width.value).value
    deep += _behind(frame, job)
    yield Fit(words="frame, front to back", got=deep, asked=bank.opening.depth)
    yield Fit(words="runner", got=runner.width.value, asked=frame.width)


def _runner(bank: DrawerBank, rail: Rail, frame: Frame, job: Job) -> Sum:
    total = Sum.of(("opening depth", bank.opening.depth))
    if behind := _behind(frame, job):
        total += Sum.of(("behind the frame", -behind))
    total += Sum.of(("rail", -rail.width), ("back rail", -frame.width))
    for what, joint, wide in _runner_ends(frame, rail, job):
        total += from_inside(joint, own=rail.thickness, mate=wide, mate_words=what)
    return folded(total)


def _runner_ends(
    frame: Frame, rail: Rail, job: Job
) -> Iterator[tuple[str, Joint, Inches]]:
    """Mate, joint, and what the mate measures in the runner's direction."""
    joint = frame.joint.settled(job.shop)
    yield "rail", joint, rail.width
    yield "back rail", joint, frame.width


def _behind(frame: Frame, job: Job) -> Inches:
    return job.shop.rear_clearance if frame.behind is None else frame.behind
