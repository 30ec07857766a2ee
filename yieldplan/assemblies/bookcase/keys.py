"""The tables inside a bookcase's table in a job file: side, top, bottom, shelf, loose shelves, toe kick, back."""

from __future__ import annotations

from dataclasses import dataclass, field
from fractions import Fraction
from typing import Literal

from yieldplan.joints.butt import Butt
from yieldplan.joints.dado import Dado
from yieldplan.joints.joint import Joint
from yieldplan.joints.rabbet import Rabbet
from yieldplan.model.faces import FaceWord
from yieldplan.units import Inches

Rabbeted = Literal["sides", "sides and top"]


@dataclass(frozen=True, kw_only=True)
class Board:
    """What a part of the case is made of; what is left out is as with the sides."""

    wood: str | None = field(
        default=None,
        metadata={"words": "its wood; wood and sheet left out: as the sides"},
    )
    sheet: str | None = field(
        default=None, metadata={"words": "its sheet product, instead of a wood"}
    )
    thickness: Inches | None = field(
        default=None,
        metadata={
            "words": "its finished thickness; left out: as the sides; a sheet brings its own"
        },
    )
    strips: int | None = field(
        default=None,
        metadata={
            "words": "equal strips it is glued up from; left out: as the sides, which are of one board"
        },
    )
    show_face: FaceWord = field(
        default="sound", metadata={"words": "what its show face must be free of"}
    )
    back_face: FaceWord = field(
        default="sound", metadata={"words": "what its other face must be free of"}
    )


@dataclass(frozen=True, kw_only=True)
class Side(Board):
    """Both sides, their grain upright."""

    show_face: FaceWord = field(
        default="clear", metadata={"words": "what the outside must be free of"}
    )


@dataclass(frozen=True, kw_only=True)
class End(Board):
    """The top or the bottom of the case, from side to side."""

    joint: Joint | None = field(
        default=None,
        metadata={
            "words": "how it meets the sides; left out: rabbet, and dado where the sides run past it"
        },
    )
    set_in: Inches | None = field(
        default=None,
        metadata={
            "words": "how far the sides run past it; left out: nothing, past a dado as much as it is thick"
        },
    )


@dataclass(frozen=True, kw_only=True)
class Shelf(Board):
    """The fixed shelves, all alike."""

    joint: Joint = field(
        default=Dado(), metadata={"words": "how a fixed shelf meets the sides"}
    )
    set_back: Inches = field(
        default=Fraction(0),
        metadata={"words": "how far it stands back from the sides' front edges"},
    )


@dataclass(frozen=True, kw_only=True)
class Loose(Board):
    """The loose shelves, on pins or strips."""

    quantity: int = field(metadata={"words": "how many"})
    clearance: Inches | None = field(
        default=None,
        metadata={"words": "left free at each end; left out: the shop's"},
    )
    set_back: Inches = field(
        default=Fraction(0),
        metadata={"words": "how far they stand back from the sides' front edges"},
    )


@dataclass(frozen=True, kw_only=True)
class ToeKick(Board):
    """The board between the sides under the bottom, from the floor up to it."""

    height: Inches = field(metadata={"words": "from the floor to the bottom"})
    set_back: Inches = field(
        default=Fraction(0),
        metadata={"words": "how far it stands back from the sides' front edges"},
    )
    joint: Joint = field(
        default=Butt(), metadata={"words": "how its ends meet the sides"}
    )
    strips: int | None = field(
        default=1, metadata={"words": "equal strips it is glued up from"}
    )
    show_face: FaceWord = field(
        default="clear", metadata={"words": "what its face must be free of"}
    )


@dataclass(frozen=True, kw_only=True)
class Back:
    """The back in a rabbet, a sheet or upright boards tongued and grooved."""

    sheet: str | None = field(
        default=None, metadata={"words": "sheet product of the back"}
    )
    wood: str | None = field(
        default=None, metadata={"words": "wood of the upright boards, instead"}
    )
    thickness: Inches | None = field(
        default=None, metadata={"words": "finished thickness of the boards"}
    )
    boards: int | None = field(
        default=None, metadata={"words": "how many boards stand side by side"}
    )
    tongue: Inches | None = field(
        default=None,
        metadata={
            "words": "length of a board's tongue; left out: the shop's groove_depth"
        },
    )
    gap: Inches | None = field(
        default=None,
        metadata={
            "words": "left open at each tongue for the boards to swell into; left out: the shop's board_gap"
        },
    )
    rabbeted: Rabbeted = field(
        default="sides",
        metadata={
            "words": "what has the rabbet; it covers the rear edge of what has none"
        },
    )
    joint: Rabbet = field(default=Rabbet(), metadata={"words": "the rabbet's depth"})
    show_face: FaceWord = field(
        default="sound", metadata={"words": "what the inside must be free of"}
    )
    back_face: FaceWord = field(
        default="sound", metadata={"words": "what the outside must be free of"}
    )
