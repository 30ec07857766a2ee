"""Tongue and groove: a tongue along the edge or end of one board that enters a groove in the next."""

from __future__ import annotations

from dataclasses import dataclass

from yieldplan.joints.along_the_grain import AlongTheGrain
from yieldplan.model.shop import Shop
from yieldplan.units import Inches


@dataclass(frozen=True, kw_only=True)
class TongueAndGroove(AlongTheGrain):
    """A tongue worked on one board, a groove for it in its neighbour.

    The board with the tongue gains its length, counted from the shoulders; the
    grooved board gains nothing. What the boards must leave free to move stands
    between the shoulders and is no part of the joint.
    """

    @property
    def cautions(self) -> tuple[str, ...]:
        return (
            "Tongues and grooves: cut both with the same face against the fence; hold "
            "narrow boards with feather boards and push them with a stick.",
        )

    def _shops_depth(self, shop: Shop) -> Inches:
        return shop.tongue_length
