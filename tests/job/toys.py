"""A small assembly and two joints of the tests' own, so that reading is tested apart from drawers."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from fractions import Fraction
from pathlib import Path
from typing import Literal

from yieldplan.assemblies.assembly import Assembly, Fit
from yieldplan.faults import Fault, Faults
from yieldplan.job.reading import read_job
from yieldplan.joints.joint import Joint, Role
from yieldplan.model.job import Job
from yieldplan.model.parts import Built, Part
from yieldplan.model.sums import Sum
from yieldplan.units import Inches


@dataclass(frozen=True, kw_only=True)
class Slot(Joint):
    """A joint with a share."""

    depth_share: Fraction = Fraction(1, 3)

    def depth(self, *, mate: Inches) -> Sum:
        return Sum.of(("slot", self.depth_share * mate))

    def allowance(self, *, role: Role, own: Inches, mate: Inches) -> Sum:
        return self.depth(mate=mate)


@dataclass(frozen=True, kw_only=True)
class Hook(Joint):
    """A joint with a length, under a key that is not its field's name."""

    how_far: Inches | None = field(default=None, metadata={"key": "reach"})

    def depth(self, *, mate: Inches) -> Sum:
        return Sum.of(("hook", self.how_far or Fraction(0)))

    def allowance(self, *, role: Role, own: Inches, mate: Inches) -> Sum:
        return self.depth(mate=mate)


@dataclass(frozen=True, kw_only=True)
class Board:
    """A member of the frame."""

    wood: str
    thickness: Inches
    joint: Joint | None = None
    show_face: Literal["clear", "sound"] = "sound"


@dataclass(frozen=True, kw_only=True)
class Frame(Assembly):
    """Something with every kind of key a job file knows."""

    opening: tuple[Inches, Inches]
    rail: Board
    stile: Board
    in_: Literal["groove", "rabbet"] = "groove"
    joints: tuple[Joint, ...] = ()
    only: Hook | None = None
    play: Inches = Fraction(1, 16)
    quantity: int = 1
    is_flat: bool = False

    def __post_init__(self) -> None:
        if self.is_flat and self.play:
            raise ValueError("a flat frame has no play")

    def build(self, job: Job, faults: Faults) -> Built:
        return Built(parts=())

    def put_together(self, parts: Mapping[str, Part], job: Job) -> tuple[Fit, ...]:
        return ()


KINDS: dict[str, type[Assembly]] = {"picture frame": Frame}
JOINTS: dict[str, type[Joint]] = {"slot": Slot, "half-blind hook": Hook}

HEAD = 'title = "Frames"\nunit = "in"\ncurrency = "USD"\n'
WALNUT = '[wood.walnut]\nspecies = "black walnut"\n'
FRAME = """[[picture_frame]]
name = "large"
opening = ["22", "6"]
rail = { wood = "walnut", thickness = "3/4", joint = "slot" }
stile = { wood = "walnut", thickness = "7/8" }
"""


def read_text(folder: Path, text: str) -> tuple[Job | None, list[Fault]]:
    """The job a text makes, and what is wrong with it."""
    file = folder / "frames.toml"
    file.write_text(text, encoding="utf-8")
    faults = Faults()
    job = read_job(file, faults, kinds=KINDS, joints=JOINTS)
    return job, list(faults)


def frames_of(job: Job | None) -> list[Frame]:
    """The frames of a job that was read."""
    assert job is not None
    return [each for each in job.assemblies if isinstance(each, Frame)]
