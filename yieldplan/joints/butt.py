"""Butt: the end of one part against the face of another, held by glue, screws or nails."""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar

from yieldplan.joints.joint import Joint, Role
from yieldplan.model.sums import Sum
from yieldplan.units import Inches


@dataclass(frozen=True, kw_only=True)
class Butt(Joint):
    """An end that meets a face without entering it: nothing is added to either part.

    Dowels, biscuits and loose tenons are separate parts, so they add nothing either.
    """

    makes_box_corner: ClassVar[bool] = True
    makes_frame_corner: ClassVar[bool] = True
    lets_run_past: ClassVar[bool] = True

    def depth(self, *, mate: Inches) -> Sum:
        return Sum.nothing("butt")

    def allowance(self, *, role: Role, own: Inches, mate: Inches) -> Sum:
        if role is Role.HOUSING:
            return Sum.nothing("its mate butts against this part")
        return Sum.nothing("this part butts against its mate")

    @property
    def needs_mate(self) -> bool:
        return False

    @property
    def needs_set_up(self) -> bool:
        return False
