"""Dado: a square channel across the grain that houses the end of another part."""

from __future__ import annotations

from dataclasses import dataclass, field
from fractions import Fraction
from typing import ClassVar

from yieldplan.joints.joint import Edge, Joint, Role, say
from yieldplan.model.sums import Sum
from yieldplan.units import Inches, UnitName


@dataclass(frozen=True, kw_only=True)
class Dado(Joint):
    """A dado cut to a share of the housing part's thickness.

    The housed part gains the depth at each end it is housed; the part with the dado
    runs on past it and keeps its length.

    Parameters
    ----------
    depth_share
        Depth as a share of the housing part's thickness. [-]
    deep
        Depth itself, where it is given. [in]
    """

    lets_run_past: ClassVar[bool] = True

    depth_share: Fraction = field(
        default=Fraction(1, 3),
        metadata={"words": "depth as a share of the housing part's thickness"},
    )
    deep: Inches | None = field(
        default=None,
        metadata={"key": "depth", "words": "depth of the dado, instead of a share"},
    )

    def depth(self, *, mate: Inches) -> Sum:
        deep = self.depth_share * mate if self.deep is None else self.deep
        return Sum.of(("dado", deep))

    def allowance(self, *, role: Role, edge: Edge, own: Inches, mate: Inches) -> Sum:
        if role is Role.HOUSING:
            return Sum.nothing("the dado is cut into this part")
        return self.depth(mate=mate)

    @property
    def needs_mate(self) -> bool:
        return self.deep is None

    def impossible(self, *, mate: Inches, unit: UnitName = "in") -> str:
        deep = self.depth(mate=mate).value
        if deep <= 0:
            return "a dado without depth holds nothing"
        if deep < mate:
            return ""
        return (
            f"a dado {say(deep, unit)} deep goes through a part {say(mate, unit)} thick"
        )

    def limits(
        self, *, own: Inches, mate: Inches, unit: UnitName = "in"
    ) -> tuple[str, ...]:
        deep = self.depth(mate=mate).value
        # Common practice, no source: a third to half of the housing part.
        if deep > mate / 2:
            return (
                f"a dado {say(deep, unit)} deep leaves less than half of a part {say(mate, unit)} thick",
            )
        return ()

    @property
    def cautions(self) -> tuple[str, ...]:
        return (
            "Dados with a wide blade or a router: never freehand; use the miter gauge or a "
            "clamped fence, in passes.",
        )
