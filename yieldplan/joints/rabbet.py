"""Rabbet: a step cut along the end or edge of one part, in which its mate sits."""

from __future__ import annotations

from dataclasses import dataclass, field
from fractions import Fraction
from typing import ClassVar

from yieldplan.joints.joint import Edge, Joint, Role, say
from yieldplan.model.sums import Sum
from yieldplan.units import Inches, UnitName


@dataclass(frozen=True, kw_only=True)
class Rabbet(Joint):
    """A rabbet in the end or edge of the housing part, as wide as its mate is thick.

    The housed part gains the rabbet's depth; the rabbeted part keeps its full length.

    Parameters
    ----------
    depth_share
        Depth as a share of the rabbeted part's thickness. [-]
    deep
        Depth itself, where it is given. [in]
    """

    makes_corner: ClassVar[bool] = True

    depth_share: Fraction = field(
        default=Fraction(1, 2),
        metadata={"words": "depth as a share of the rabbeted part's thickness"},
    )
    deep: Inches | None = field(
        default=None,
        metadata={"key": "depth", "words": "depth of the rabbet, instead of a share"},
    )

    def depth(self, *, mate: Inches) -> Sum:
        deep = self.depth_share * mate if self.deep is None else self.deep
        return Sum.of(("rabbet", deep))

    def allowance(self, *, role: Role, edge: Edge, own: Inches, mate: Inches) -> Sum:
        if role is Role.HOUSING:
            return Sum.nothing("the rabbet is cut into this part")
        return self.depth(mate=mate)

    @property
    def needs_mate(self) -> bool:
        return self.deep is None

    def impossible(self, *, mate: Inches, unit: UnitName = "in") -> str:
        deep = self.depth(mate=mate).value
        if deep <= 0:
            return "a rabbet without depth holds nothing"
        if deep < mate:
            return ""
        return f"a rabbet {say(deep, unit)} deep goes through a part {say(mate, unit)} thick"

    def limits(
        self, *, own: Inches, mate: Inches, unit: UnitName = "in"
    ) -> tuple[str, ...]:
        deep = self.depth(mate=mate).value
        # Common practice, no source: half to two thirds of the rabbeted part.
        if deep > mate * Fraction(2, 3):
            return (
                f"a rabbet {say(deep, unit)} deep leaves less than a third of a part {say(mate, unit)} thick",
            )
        return ()

    @property
    def cautions(self) -> tuple[str, ...]:
        return (
            "Rabbets across an end: back the work up so that it cannot turn, and keep the "
            "offcut free of the blade.",
        )
