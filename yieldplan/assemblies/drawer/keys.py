"""The tables inside a drawer's table in a job file: opening, front, side, back, bottom and so on."""

from __future__ import annotations

from dataclasses import dataclass, field
from fractions import Fraction
from typing import Literal

from yieldplan.assemblies.assembly import Assembly
from yieldplan.joints.joint import Joint
from yieldplan.joints.rabbet import Rabbet
from yieldplan.model.faces import FaceWord
from yieldplan.units import Inches

Runs = Literal["on wooden runners", "side-mounted slides", "under-mounted slides"]
Fit = Literal["plane to fit", "net"]
Sits = Literal["on the bottom", "full height"]


@dataclass(frozen=True, kw_only=True)
class Opening:
    """The hole the drawer goes into, as it measures. [in]"""

    width: Inches = field(metadata={"words": "clear width of the opening"})
    height: Inches = field(metadata={"words": "clear height of the opening"})
    depth: Inches = field(
        metadata={"words": "clear depth, from the face of the case to its back"}
    )


@dataclass(frozen=True, kw_only=True)
class Front:
    """The front that shows; applied to a box front where the drawer runs on slides."""

    wood: str = field(metadata={"words": "wood of the front"})
    thickness: Inches = field(metadata={"words": "its finished thickness"})
    joint: Joint | None = field(
        default=None,
        metadata={
            "words": "how the sides meet the front (the box front, where this one is applied); left out: half-blind dovetail, through dovetail behind an applied front"
        },
    )
    overlay: Inches | None = field(
        default=None,
        metadata={"words": "how far an applied front covers the case at each edge"},
    )
    overlay_top: Inches | None = field(
        default=None, metadata={"words": "overlay of the upper edge, where it differs"}
    )
    overlay_bottom: Inches | None = field(
        default=None, metadata={"words": "overlay of the lower edge, where it differs"}
    )
    gap: Inches | None = field(
        default=None,
        metadata={
            "words": "left free at each edge of an applied front that sits in its opening"
        },
    )
    show_face: FaceWord = field(
        default="clear", metadata={"words": "what its face must be free of"}
    )
    back_face: FaceWord = field(
        default="sound", metadata={"words": "what its back must be free of"}
    )


@dataclass(frozen=True, kw_only=True)
class BoxFront:
    """The front of the box behind an applied front; left out: as the sides."""

    wood: str = field(metadata={"words": "wood of the box front"})
    thickness: Inches = field(metadata={"words": "its finished thickness"})
    show_face: FaceWord = field(
        default="sound", metadata={"words": "what its face must be free of"}
    )
    back_face: FaceWord = field(
        default="sound", metadata={"words": "what its back must be free of"}
    )


@dataclass(frozen=True, kw_only=True)
class Side:
    """Both sides."""

    wood: str = field(metadata={"words": "wood of the sides"})
    thickness: Inches = field(metadata={"words": "their finished thickness"})
    show_face: FaceWord = field(
        default="sound", metadata={"words": "what the outside must be free of"}
    )
    back_face: FaceWord = field(
        default="sound", metadata={"words": "what the inside must be free of"}
    )


@dataclass(frozen=True, kw_only=True)
class Back:
    """The back."""

    wood: str = field(metadata={"words": "wood of the back"})
    thickness: Inches = field(metadata={"words": "its finished thickness"})
    joint: Joint = field(
        default=Rabbet(),
        metadata={"words": "how the back meets the sides"},
    )
    sits: Sits = field(
        default="on the bottom",
        metadata={"words": "whether the bottom runs out under the back"},
    )
    set_in: Inches | None = field(
        default=None,
        metadata={
            "words": "how far a back in dados stands in from the sides' ends; left out: as much as it is thick"
        },
    )
    show_face: FaceWord = field(
        default="sound", metadata={"words": "what the inside must be free of"}
    )
    back_face: FaceWord = field(
        default="sound", metadata={"words": "what the outside must be free of"}
    )


@dataclass(frozen=True, kw_only=True)
class Bottom:
    """The bottom, a sheet or solid wood, in a groove round the box."""

    sheet: str | None = field(
        default=None, metadata={"words": "sheet product of the bottom"}
    )
    wood: str | None = field(
        default=None,
        metadata={"words": "wood of a solid bottom, its grain side to side"},
    )
    thickness: Inches | None = field(
        default=None,
        metadata={"words": "thickness of a solid bottom where it meets the groove"},
    )
    strips: int = field(
        default=1, metadata={"words": "strips a solid bottom is glued up from"}
    )
    in_: Literal["groove"] = field(
        default="groove", metadata={"words": "what holds the bottom"}
    )
    groove_depth: Inches | None = field(
        default=None, metadata={"words": "depth of the groove; left out: the shop's"}
    )
    groove_up: Inches | None = field(
        default=None,
        metadata={
            "words": "lower edge of the side to the groove; left out: the shop's"
        },
    )
    show_face: FaceWord = field(
        default="sound", metadata={"words": "what the inside must be free of"}
    )
    back_face: FaceWord = field(
        default="sound", metadata={"words": "what the underside must be free of"}
    )


@dataclass(frozen=True, kw_only=True)
class Jig:
    """A dovetail template: sides come out at so many spacings and a remainder."""

    spacing: Inches = field(metadata={"words": "distance of the template's fingers"})
    remainder: Inches = field(
        default=Fraction(0), metadata={"words": "what is left beside whole fingers"}
    )


@dataclass(frozen=True, kw_only=True)
class Clearance:
    """Clearances of this drawer, where they differ from the shop's or the slide's sheet."""

    width: Inches | None = field(
        default=None,
        metadata={
            "words": "box less than its opening in width, both sides together (under-mounted slides: the inside of the box)"
        },
    )
    height: Inches | None = field(
        default=None,
        metadata={"words": "box less than its opening in height, movement and all"},
    )
    rear: Inches | None = field(
        default=None, metadata={"words": "left free behind the drawer"}
    )


@dataclass(frozen=True, kw_only=True)
class DrawerKeys(Assembly):
    """What is said of a drawer, and once for all drawers of a bank."""

    opening: Opening = field(metadata={"words": "the hole it goes into"})
    front: Front = field(metadata={"words": "the front that shows"})
    side: Side = field(metadata={"words": "both sides"})
    back: Back = field(metadata={"words": "the back"})
    bottom: Bottom = field(metadata={"words": "the bottom, sheet or solid"})
    box_front: BoxFront | None = field(
        default=None,
        metadata={"words": "front of the box behind an applied front"},
    )
    runs: Runs = field(
        default="on wooden runners", metadata={"words": "what it runs on"}
    )
    slide_length: Inches | None = field(
        default=None,
        metadata={
            "words": "length of the slides: of the sides when side-mounted, of the whole box when under-mounted"
        },
    )
    fit: Fit | None = field(
        default=None,
        metadata={
            "words": "made as large as its opening and planed to fit, or net of clearances; left out: runners are planed to fit, slides are net"
        },
    )
    clearance: Clearance = field(
        default=Clearance(),
        metadata={"words": "clearances, where they differ from the shop's"},
    )
    jig: Jig | None = field(
        default=None,
        metadata={"words": "a dovetail template the sides' width is brought down to"},
    )
