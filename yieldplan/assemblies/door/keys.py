"""The tables inside a door's table in a job file: opening, leaf, stile, rails and panel."""

from __future__ import annotations

from dataclasses import dataclass, field
from fractions import Fraction
from typing import Literal

from yieldplan.assemblies.movement import Cut
from yieldplan.model.faces import FaceWord
from yieldplan.units import Inches

Grain = Literal["upright", "across"]


@dataclass(frozen=True, kw_only=True)
class Opening:
    """The hole the door or the pair closes, as it measures. [in]"""

    width: Inches = field(metadata={"words": "clear width of the opening"})
    height: Inches = field(metadata={"words": "clear height of the opening"})


@dataclass(frozen=True, kw_only=True)
class Leaf:
    """One door leaf as it is to measure, gaps taken off. [in]"""

    width: Inches = field(metadata={"words": "over both stiles"})
    height: Inches = field(metadata={"words": "over both rails"})


@dataclass(frozen=True, kw_only=True)
class Stile:
    """The uprights; they run the full height of the door."""

    wood: str = field(metadata={"words": "wood of the stiles"})
    thickness: Inches = field(metadata={"words": "their finished thickness"})
    width: Inches = field(metadata={"words": "their finished width, moulding and all"})
    horns: Inches = field(
        default=Fraction(0),
        metadata={
            "words": "left long at each end until the door is glued up, then trimmed"
        },
    )
    show_face: FaceWord = field(
        default="clear", metadata={"words": "what their face must be free of"}
    )
    back_face: FaceWord = field(
        default="sound", metadata={"words": "what their back must be free of"}
    )


@dataclass(frozen=True, kw_only=True)
class Rail:
    """A rail; whatever is left out is as with the stiles (the bottom rail: the rails)."""

    width: Inches | None = field(
        default=None, metadata={"words": "finished width, moulding and all"}
    )
    wood: str | None = field(default=None, metadata={"words": "wood of the rail"})
    thickness: Inches | None = field(
        default=None, metadata={"words": "finished thickness"}
    )
    show_face: FaceWord | None = field(
        default=None, metadata={"words": "what its face must be free of"}
    )
    back_face: FaceWord | None = field(
        default=None, metadata={"words": "what its back must be free of"}
    )


@dataclass(frozen=True, kw_only=True)
class MiddleRail:
    """A rail between top and bottom rail, with panels above and below it."""

    width: Inches | None = field(
        default=None, metadata={"words": "finished width; left out: as the rails"}
    )
    up: Inches | None = field(
        default=None,
        metadata={
            "words": "lower edge of the door to lower edge of this rail; left out everywhere: panels of equal height"
        },
    )


@dataclass(frozen=True, kw_only=True)
class Panel:
    """The panel in the frame's grooves, or one of them in each row; sheet or solid."""

    sheet: str | None = field(
        default=None, metadata={"words": "sheet product of the panel"}
    )
    wood: str | None = field(default=None, metadata={"words": "wood of a solid panel"})
    thickness: Inches | None = field(
        default=None, metadata={"words": "finished thickness of a solid panel"}
    )
    strips: int = field(
        default=1, metadata={"words": "equal strips a solid panel is glued up from"}
    )
    raised: bool = field(
        default=False,
        metadata={
            "words": "whether a solid panel is thicker than its groove and raised to it at the edges"
        },
    )
    cut: Cut = field(
        default="flatsawn",
        metadata={
            "words": "how the boards of a solid panel were sawn, for how much it moves"
        },
    )
    grain: Grain = field(
        default="upright", metadata={"words": "which way the panel's grain runs"}
    )
    groove_depth: Inches | None = field(
        default=None,
        metadata={
            "words": "depth of the frame's groove; left out: the stub tenon's, or the shop's"
        },
    )
    groove_width: Inches | None = field(
        default=None,
        metadata={
            "words": "width of the groove; left out: as thick as the panel, for a raised one the shop's"
        },
    )
    play: Inches | None = field(
        default=None,
        metadata={
            "words": "panel less than its grooves, both together: a sheet each way, solid wood along its grain; left out: the shop's"
        },
    )
    room_to_move: Inches | None = field(
        default=None,
        metadata={
            "words": "solid panel less than its grooves across its grain; left out: worked from its species, the cut and the wettest season"
        },
    )
    show_face: FaceWord = field(
        default="clear", metadata={"words": "what its face must be free of"}
    )
    back_face: FaceWord = field(
        default="sound", metadata={"words": "what its back must be free of"}
    )
