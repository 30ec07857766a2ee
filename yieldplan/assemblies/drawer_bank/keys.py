"""The tables inside a drawer bank's table in a job file: how its heights grow, and what stands between drawers."""

from __future__ import annotations

from dataclasses import dataclass, field
from fractions import Fraction

from yieldplan.joints.dado import Dado
from yieldplan.joints.joint import Joint
from yieldplan.joints.mortise_and_tenon import MortiseAndTenon
from yieldplan.model.faces import FaceWord
from yieldplan.units import Inches


@dataclass(frozen=True, kw_only=True)
class Graduated:
    """How the heights grow from the top down: by a step, or in a ratio."""

    step: Inches | None = field(
        default=None,
        metadata={"words": "each is so much higher than the one above it"},
    )
    ratio: Fraction | None = field(
        default=None,
        metadata={"words": "each is so many times as high as the one above it"},
    )


@dataclass(frozen=True, kw_only=True)
class Rail:
    """A rail between two drawers, across the front of the case."""

    wood: str = field(metadata={"words": "wood of the rails"})
    thickness: Inches = field(
        metadata={"words": "finished thickness, which is the height it takes up"}
    )
    width: Inches = field(metadata={"words": "finished width, from front to back"})
    case_side: Inches = field(
        metadata={"words": "how thick the sides of the case are that it is let into"}
    )
    joint: Joint = field(
        default=Dado(), metadata={"words": "how its ends meet the case's sides"}
    )
    show_face: FaceWord = field(
        default="clear", metadata={"words": "what its face must be free of"}
    )
    back_face: FaceWord = field(
        default="sound", metadata={"words": "what its other face must be free of"}
    )


@dataclass(frozen=True, kw_only=True)
class Frame:
    """What makes a web frame of a rail: a rail behind and two runners between."""

    wood: str = field(metadata={"words": "wood of the runners and the rail behind"})
    width: Inches = field(metadata={"words": "finished width of each of them"})
    joint: Joint = field(
        default=MortiseAndTenon(),
        metadata={"words": "how the runners' ends meet the rails' edges"},
    )
    behind: Inches | None = field(
        default=None,
        metadata={
            "words": "left free behind the frame; left out: the shop's rear_clearance"
        },
    )
