"""How two parts meet, and what their joint has to say of both."""

from __future__ import annotations

import dataclasses
from collections.abc import Iterable, Mapping

from yieldplan.joints.joint import Joint
from yieldplan.model.job import Job
from yieldplan.model.parts import Meeting, Part
from yieldplan.units import Inches


def meet(
    joint: Joint, job: Job, *, housed: str, mate: Inches, housing: str = ""
) -> Meeting:
    """The meeting of two parts in a joint that is settled.

    Parameters
    ----------
    housed, housing
        Ids of the parts; no id for a mate that is not part of the job.
    mate
        What the mate measures in the direction of the joint. [in]
    """
    return Meeting(
        joint=joint.name,
        housed=housed,
        housing=housing,
        depth=joint.depth(mate=mate),
        needs_set_up=joint.needs_set_up,
        note=joint.note(job.unit),
    )


def with_joint_notes(
    parts: Mapping[str, Part], meetings: Iterable[Meeting]
) -> dict[str, Part]:
    """The parts, each with what its joints say of it behind its own note."""
    notes = {name: [part.note] if part.note else [] for name, part in parts.items()}
    for meeting in meetings:
        for name in (meeting.housed, meeting.housing):
            said = notes.get(name)
            if meeting.note and said is not None and meeting.note not in said:
                said.append(meeting.note)
    return {
        name: dataclasses.replace(part, note="; ".join(notes[name]))
        for name, part in parts.items()
    }
