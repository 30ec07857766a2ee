"""Finger joint: straight fingers of one width at the corner of a box, each between two of the other board's."""

from __future__ import annotations

from dataclasses import dataclass, field
from fractions import Fraction
from typing import ClassVar

from yieldplan.joints.joint import MATE, Base, Joint, Role, say
from yieldplan.model.sums import Sum
from yieldplan.units import Inches, UnitName

THINNEST_FINGER = Fraction(1, 8)
"""One pass of a saw blade; thinner ones snap off. Common practice, no source. [in]"""
MOST_WIDTHS = 2
"""A finger wider than so many thicknesses of its board leaves little long grain to glue.
Common practice, no source. [-]"""


@dataclass(frozen=True, kw_only=True)
class FingerJoint(Joint):
    """Fingers through the whole thickness of both boards.

    Each board is as long as the outside of the work, and so much longer as its ends are
    left proud. The fingers' width changes no length; it is what the jig is set to.

    Parameters
    ----------
    finger
        Width of a finger; left out: whatever the jig is set to. [in]
    proud
        How far each end stands out before it is planed flush. [in]
    """

    base: ClassVar[Base] = "outside"
    makes_box_corner: ClassVar[bool] = True

    finger: Inches | None = field(
        default=None,
        metadata={"words": "width of a finger; left out: what the jig is set to"},
    )
    proud: Inches = field(
        default=Fraction(0),
        metadata={"words": "how far each end stands out until it is planed flush"},
    )

    def depth(self, *, mate: Inches) -> Sum:
        through = Sum.of((MATE, mate))
        return through + Sum.of(("left proud", self.proud)) if self.proud else through

    def allowance(self, *, role: Role, own: Inches, mate: Inches) -> Sum:
        if self.proud:
            return Sum.of(("left proud", self.proud))
        return Sum.nothing("finger joint, the outside is its full length")

    def impossible(self, *, mate: Inches, unit: UnitName = "in") -> str:
        if self.finger is None or self.finger > 0:
            return ""
        return "a finger joint whose fingers have no width holds nothing"

    def limits(
        self, *, own: Inches, mate: Inches, unit: UnitName = "in"
    ) -> tuple[str, ...]:
        if self.finger is None:
            return ()
        found = []
        if self.finger < THINNEST_FINGER:
            found.append(
                f"fingers {say(self.finger, unit)} wide snap off; {say(THINNEST_FINGER, unit)} is one pass of a blade"
            )
        if self.finger > MOST_WIDTHS * min(own, mate):
            found.append(
                f"fingers {say(self.finger, unit)} wide leave little to glue in a board {say(min(own, mate), unit)} thick"
            )
        return tuple(found)

    def note(self, unit: UnitName) -> str:
        return f"fingers {say(self.finger, unit)} wide" if self.finger else ""

    @property
    def cautions(self) -> tuple[str, ...]:
        return (
            "Finger joints on the table saw: the board stands on end, so hold it to a tall "
            "fence on the crosscut sled, and keep both hands clear of where the blade "
            "comes out behind the fence.",
        )
