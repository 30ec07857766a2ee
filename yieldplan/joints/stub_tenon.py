"""Stub tenon: a rail's tenon as long as the panel's groove is deep; with a moulded edge, cope and stick."""

from __future__ import annotations

from dataclasses import dataclass, field
from fractions import Fraction
from typing import ClassVar

from yieldplan.joints.along_the_grain import AlongTheGrain
from yieldplan.joints.joint import say
from yieldplan.model.shop import Shop
from yieldplan.model.sums import Sum
from yieldplan.units import Inches, UnitName

SHORTEST = Fraction(1, 4)
"""Shortest stub tenon with glue area worth the name; common practice, no source. [in]"""


@dataclass(frozen=True, kw_only=True)
class StubTenon(AlongTheGrain):
    """A short tenon in the groove that holds the panel, no mortise cut for it.

    The rail gains the groove's depth at each end. Where the stile's edge is moulded
    (the stick), the rail's end is cut to its counterpart (the cope) and reaches as
    far as the deeper of groove and moulding.

    Parameters
    ----------
    profile
        How far the moulding runs in from the stile's edge; 0 is a square edge. [in]
    """

    makes_frame_corner: ClassVar[bool] = True

    profile: Inches = field(
        default=Fraction(0),
        metadata={"words": "how far a moulding runs in from the stile's edge"},
    )

    def depth(self, *, mate: Inches) -> Sum:
        tenon = super().depth(mate=mate)
        beyond = self.profile - self._deep
        return tenon + Sum.of(("cope beyond it", beyond)) if beyond > 0 else tenon

    def limits(
        self, *, own: Inches, mate: Inches, unit: UnitName = "in"
    ) -> tuple[str, ...]:
        found = super().limits(own=own, mate=mate, unit=unit)
        if self._deep >= SHORTEST:
            return found
        return (*found, f"a stub tenon {say(self._deep, unit)} long holds little glue")

    @property
    def cautions(self) -> tuple[str, ...]:
        ends = (
            "Tenons and copes on narrow rail ends: never freehand; clamp the rail in a "
            "sled or against the miter gauge with a back-up block behind it, feed against "
            "the bit's turn. The manual of machine and bit comes first."
        )
        if not self.profile:
            return (ends,)
        return (
            ends,
            "Cope and stick: cope the ends first, then run the stick, which cleans up "
            "what the cope tore; both cutters must be of one set.",
        )

    def _shops_depth(self, shop: Shop) -> Inches:
        return shop.panel_groove
