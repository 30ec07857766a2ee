"""Groove: a channel along the grain, in an edge or a face, that holds the edge of a panel."""

from __future__ import annotations

from dataclasses import dataclass

from yieldplan.joints.along_the_grain import AlongTheGrain
from yieldplan.model.shop import Shop
from yieldplan.units import Inches


@dataclass(frozen=True, kw_only=True)
class Groove(AlongTheGrain):
    """A groove along a part's edge or face, as deep as is said.

    A panel that fills its grooves gains the depth at each edge. What it must leave
    free (play for a sheet, room to move for solid wood) is the panel's own affair.
    """

    @property
    def cautions(self) -> tuple[str, ...]:
        return (
            "Grooves: hold narrow work down and against the fence with feather boards, "
            "push it through with a stick, never with a hand behind the cutter.",
        )

    def _shops_depth(self, shop: Shop) -> Inches:
        return shop.panel_groove
