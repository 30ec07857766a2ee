"""What can be built: one assembly a file, and the parts of a whole job."""

from __future__ import annotations

import dataclasses

from yieldplan.assemblies.joint_ends import with_joint_depths
from yieldplan.assemblies.meet import with_joint_notes
from yieldplan.assemblies.set_up import set_up_pieces
from yieldplan.assemblies.too_large import too_large
from yieldplan.faults import Faults, Where, did_you_mean
from yieldplan.model.job import Job
from yieldplan.model.parts import MOST_PARTS, Built, Meeting, Part


def parts_of(job: Job, faults: Faults) -> Built:
    """Every part still to be made, every size a sum, with set-up pieces and cautions.

    A mistake many assemblies share (it was said once for all of them) is told once.
    """
    found = Faults()
    parts: dict[str, Part] = {}
    meetings: list[Meeting] = []
    cautions: list[str] = []
    for assembly in job.assemblies:
        own = Faults()
        built = assembly.build(job, own)
        for part in built.parts:
            if part.id in parts:
                own.add(
                    part.where,
                    part.id,
                    f"two parts have this name; the other is from {parts[part.id].where}",
                    "Give each its own name",
                )
            parts.setdefault(part.id, part)
        found.extend(own)
        meetings += built.meetings
        cautions += built.cautions
    faults.extend(found.told_once())

    total = sum(part.quantity for part in parts.values())
    if total > MOST_PARTS:
        faults.add(
            Where(file=job.file),
            f"{total:,} parts",
            f"a job has {MOST_PARTS:,} parts at the most",
            "Split the job",
        )
    parts = with_joint_notes(parts, meetings)
    if job.shop.joint_zones:
        parts = with_joint_depths(parts, meetings)
    left = _less_made(parts, job, faults)
    set_up = set_up_pieces(
        [each for each in meetings if _is_cut(each, left)], parts, job
    )
    return Built(
        parts=(*left.values(), *set_up),
        meetings=tuple(meetings),
        cautions=tuple(
            dict.fromkeys([*too_large(parts.values(), job.unit), *cautions])
        ),
    )


def _less_made(parts: dict[str, Part], job: Job, faults: Faults) -> dict[str, Part]:
    left = dict(parts)
    where = Where(file=job.file, key="made")
    # A thing that could not be built has had its own message; its parts need none.
    unbuilt = {str(getattr(each, "name", "")) for each in job.assemblies}
    unbuilt -= {name.partition("/")[0] for name in parts}
    for name, count in job.made.items():
        part = parts.get(name)
        if part is None and name.partition("/")[0] in unbuilt:
            continue
        if part is None:
            wrong = "no part of the job is called this"
            faults.add(where, name, wrong, did_you_mean(name, parts))
        elif count > part.quantity:
            wrong = f"{count} are made, and the job asks for {part.quantity}"
            faults.add(where, name, wrong, "Write how many of those asked for are made")
        elif count == part.quantity:
            del left[name]
        else:
            left[name] = dataclasses.replace(part, quantity=part.quantity - count)
    return left


def _is_cut(meeting: Meeting, left: dict[str, Part]) -> bool:
    """Whether any part of the joint is still to be made."""
    return meeting.housed in left or meeting.housing in left
