"""What a maker should mind about a door: its joints, its grooves, a panel that moves, the cutters."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import TYPE_CHECKING

from yieldplan.assemblies.door import checks, members, panel
from yieldplan.assemblies.door.frame import Frame
from yieldplan.joints.groove import Groove
from yieldplan.joints.joint import say
from yieldplan.joints.stub_tenon import StubTenon
from yieldplan.model.job import Job
from yieldplan.model.parts import Part

if TYPE_CHECKING:
    from yieldplan.assemblies.door import Door


def cautions(
    door: Door, frame: Frame, parts: Sequence[Part], job: Job
) -> Iterator[str]:
    """Sentences for the sheet of cautions, those of this door by its name."""
    for warning in dict.fromkeys(_of_this_door(door, frame, parts, job)):
        yield f"{door.name}: {warning}."
    yield from frame.joint.cautions
    if not isinstance(frame.joint, StubTenon):
        yield from Groove(deep=frame.groove).cautions
    if door.panel.raised:
        yield (
            "Raised panels: a wide panel bit turns slowly and takes its cut in several "
            "passes, ends of the panel before its edges; its guard stays on. The manual "
            "of machine and bit comes first."
        )
    if door.panel.wood is not None:
        yield (
            "Solid panels: no glue in their grooves, and finish them before the frame is "
            "glued, or a bare edge shows in the first dry winter."
        )


def _of_this_door(
    door: Door, frame: Frame, parts: Sequence[Part], job: Job
) -> Iterator[str]:
    unit = job.unit
    rail = members.rail(door)
    yield from frame.joint.limits(own=rail.thickness, mate=frame.stile, unit=unit)
    wide = checks.groove_width(door, job)
    # Common practice, no source: a third of the frame, half at the most.
    if wide > frame.thickness / 2:
        yield f"a groove {say(wide, unit)} wide leaves less than half of a frame {say(frame.thickness, unit)} thick"
    if not frame.joint.depth(mate=frame.stile).value:
        yield f"the {frame.joint.name} at its rails leaves no tenon in the groove: stop the groove short of the stiles' ends"
    own = door.panel
    if own.wood is None:
        return
    if own.thickness is not None and own.thickness > frame.thickness:
        yield f"its panel of {say(own.thickness, unit)} stands out beyond a frame {say(frame.thickness, unit)} thick"
    rows = list(frame.rows())
    made = parts[-len(rows) :]
    for row, part in zip(rows, made, strict=True):
        across = frame.wide if own.grain == "upright" else row.high
        for warning in panel.movement_cautions(
            own, across.value, part.width.value, frame.groove, job
        ):
            yield f"{row.name}: {warning}"
