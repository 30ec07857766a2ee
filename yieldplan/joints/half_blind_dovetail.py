"""Half-blind dovetail: a drawer side's tails stop short of the front's face, so that no end grain shows."""

from __future__ import annotations

import dataclasses
from dataclasses import dataclass, field
from fractions import Fraction
from typing import ClassVar, Self

from yieldplan.joints.joint import MATE, Joint, Role, say, settled_figure
from yieldplan.model.shop import Shop
from yieldplan.model.sums import Sum
from yieldplan.units import Inches, UnitName

THINNEST_LAP = Fraction(3, 32)
"""Laps of 3/32 to 1/4 in are in print: W. Fairham, Woodwork Joints (1/4), newer books (3/32). [in]"""


@dataclass(frozen=True, kw_only=True)
class HalfBlindDovetail(Joint):
    """Dovetails whose sockets stop at a lap behind the mate's face.

    The tails reach in by the mate's thickness less the lap; the mate keeps its full
    length. A side is therefore the drawer's depth less the lap.

    Parameters
    ----------
    lap
        Wood left between the ends of the tails and the face; left out: the shop's lap,
        or its template's. [in]
    """

    words: ClassVar[str] = "half-blind dovetail"
    makes_box_corner: ClassVar[bool] = True
    has_tails: ClassVar[bool] = True

    lap: Inches | None = field(
        default=None,
        metadata={"words": "wood left between the tails' ends and the face"},
    )

    def settled(self, shop: Shop, *, on_template: bool = False) -> Self:
        if self.lap is not None:
            return self
        lap = shop.template_lap if on_template else shop.lap
        return dataclasses.replace(self, lap=lap)

    def depth(self, *, mate: Inches) -> Sum:
        return Sum.of((MATE, mate), ("lap", -self._lap))

    def allowance(self, *, role: Role, own: Inches, mate: Inches) -> Sum:
        if role is Role.HOUSING:
            return Sum.nothing("the sockets are cut into this part")
        return self.depth(mate=mate)

    def impossible(self, *, mate: Inches, unit: UnitName = "in") -> str:
        if self._lap < mate:
            return ""
        return f"a lap of {say(self._lap, unit)} leaves no socket in a part {say(mate, unit)} thick"

    def limits(
        self, *, own: Inches, mate: Inches, unit: UnitName = "in"
    ) -> tuple[str, ...]:
        found = []
        if self._lap < THINNEST_LAP:
            found.append(
                f"a lap of {say(self._lap, unit)} may break out; {say(THINNEST_LAP, unit)} is the least in print"
            )
        if mate - self._lap < own / 2:
            # Common practice, no source.
            found.append(
                f"sockets {say(mate - self._lap, unit)} deep hold little of a side {say(own, unit)} thick"
            )
        return tuple(found)

    @property
    def cautions(self) -> tuple[str, ...]:
        return (
            "Dovetails on a router: clamp the work and the template, let the bit come to "
            "full speed clear of the wood, feed against its turn.",
        )

    @property
    def _lap(self) -> Inches:
        return settled_figure(self.lap, "half-blind dovetail")
