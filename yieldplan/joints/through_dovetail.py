"""Through dovetail: tails and pins that run through both boards, so that the end grain of both shows."""

from __future__ import annotations

from dataclasses import dataclass, field
from fractions import Fraction
from typing import ClassVar

from yieldplan.joints.joint import MATE, Base, Joint, Role, say
from yieldplan.model.sums import Sum
from yieldplan.units import Inches, UnitName

MOST_PROUD = Fraction(1, 8)
"""More is tiresome to plane off end grain; common practice, no source. [in]"""


@dataclass(frozen=True, kw_only=True)
class ThroughDovetail(Joint):
    """Dovetails through the whole thickness of both boards.

    Each board is as long as the outside of the work; the baseline stands the mate's
    thickness from the end. Left a little proud, the ends are planed flush after
    glue-up (1/32 in an end is usual: W. Noyes, Handwork in Wood, 1910).

    Parameters
    ----------
    proud
        How far each end stands out before it is planed flush. [in]
    """

    base: ClassVar[Base] = "outside"
    makes_box_corner: ClassVar[bool] = True
    has_tails: ClassVar[bool] = True

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
        return Sum.nothing("through dovetail, the outside is its full length")

    def limits(
        self, *, own: Inches, mate: Inches, unit: UnitName = "in"
    ) -> tuple[str, ...]:
        if self.proud > MOST_PROUD:
            return (
                f"ends left {say(self.proud, unit)} proud are a lot of end grain to plane flush",
            )
        return ()

    @property
    def cautions(self) -> tuple[str, ...]:
        return (
            "Dovetails on a router: clamp the work and the template, let the bit come to "
            "full speed clear of the wood, feed against its turn.",
        )
