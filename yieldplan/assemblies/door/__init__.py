"""Door: a frame of stiles and rails around panels, one leaf or a pair, made to its opening."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from yieldplan.assemblies.assembly import Assembly, Fit
from yieldplan.assemblies.door import checks
from yieldplan.assemblies.door.build import built, frame_of
from yieldplan.assemblies.door.fits import fits
from yieldplan.assemblies.door.keys import (
    Leaf,
    MiddleRail,
    Opening,
    Panel,
    Rail,
    Stile,
)
from yieldplan.faults import Faults
from yieldplan.joints.joint import Joint
from yieldplan.joints.stub_tenon import StubTenon
from yieldplan.model.job import Job
from yieldplan.model.parts import Built, Part
from yieldplan.units import Inches


@dataclass(frozen=True, kw_only=True)
class Door(Assembly):
    """A frame-and-panel door, or a pair: stiles, rails and panels.

    It sits in its opening with gaps around it, or lies over the case by its
    overlay; or the leaf's own size is given. The stiles run the full height, the
    rails between them. A sheet panel fills its grooves less its play; a solid one
    is given room to move by its species, its cut and the wettest season. In a pair
    the panels are called left and right (`pair/left panel`).
    """

    opening: Opening | None = field(
        default=None, metadata={"words": "the hole it closes"}
    )
    leaf: Leaf | None = field(
        default=None, metadata={"words": "size of one leaf, instead of the opening"}
    )
    leaves: int = field(
        default=1, metadata={"words": "1, or 2 for a pair in one opening"}
    )
    gap: Inches | None = field(
        default=None,
        metadata={
            "words": "left free at each edge in its opening; left out: the shop's; 0: planed to fit"
        },
    )
    gap_top: Inches | None = field(
        default=None, metadata={"words": "gap at the upper edge, where it differs"}
    )
    gap_bottom: Inches | None = field(
        default=None, metadata={"words": "gap at the lower edge, where it differs"}
    )
    gap_between: Inches | None = field(
        default=None,
        metadata={"words": "gap between the leaves of a pair; left out: as the gap"},
    )
    overlay: Inches | None = field(
        default=None,
        metadata={"words": "how far it covers the case at each edge, instead of a gap"},
    )
    overlay_top: Inches | None = field(
        default=None, metadata={"words": "overlay of the upper edge, where it differs"}
    )
    overlay_bottom: Inches | None = field(
        default=None, metadata={"words": "overlay of the lower edge, where it differs"}
    )
    joint: Joint = field(
        default=StubTenon(), metadata={"words": "how the rails meet the stiles"}
    )
    stile: Stile = field(metadata={"words": "the uprights"})
    rail: Rail = field(
        default=Rail(),
        metadata={"words": "the rails, where they differ from the stiles"},
    )
    bottom_rail: Rail = field(
        default=Rail(),
        metadata={"words": "the bottom rail, where it differs from the rails"},
    )
    middle_rails: tuple[MiddleRail, ...] = field(
        default=(),
        metadata={"words": "rails between, each with one more row of panels"},
    )
    panel: Panel = field(metadata={"words": "the panels, sheet or solid"})

    @property
    def is_overlaid(self) -> bool:
        """Whether it lies over the case around its opening."""
        return not (self.overlay is self.overlay_top is self.overlay_bottom is None)

    def build(self, job: Job, faults: Faults) -> Built:
        found = Faults()
        checks.check_materials(self, job, found)
        checks.check_keys(self, job.unit, found)
        made = Built(parts=()) if len(found) else built(self, job, found)
        faults.extend(found)
        return Built(parts=()) if len(found) else made

    def put_together(self, parts: Mapping[str, Part], job: Job) -> tuple[Fit, ...]:
        own = {
            part.id.removeprefix(f"{self.name}/"): part
            for part in parts.values()
            if part.id.startswith(f"{self.name}/")
        }
        return tuple(fits(self, frame_of(self, job), own, job))
