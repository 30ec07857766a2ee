"""Mortise and tenon: a tongue on the end of a rail that enters a hole in a leg or stile."""

from __future__ import annotations

import dataclasses
from dataclasses import dataclass, field
from fractions import Fraction
from typing import ClassVar, Self

from yieldplan.joints.joint import MATE, Joint, Role, say, settled_figure
from yieldplan.model.shop import Shop
from yieldplan.model.sums import Sum
from yieldplan.units import Inches, UnitName

LEAST_BEHIND = Fraction(1, 8)
"""What a blind mortise leaves of its mate; common practice, no source. [in]"""


@dataclass(frozen=True, kw_only=True)
class MortiseAndTenon(Joint):
    """A tenon with shoulders; blind, or through the mate.

    A rail measures shoulder to shoulder plus its tenons. A through tenon is as long as
    its mate is wide, and more where it is left proud.

    Parameters
    ----------
    length
        Length of a blind tenon; left out: the shop's. [in]
    through
        Whether the tenon runs through its mate.
    proud
        How far a through tenon stands out beyond its mate. [in]
    """

    makes_frame_corner: ClassVar[bool] = True
    lets_run_past: ClassVar[bool] = True

    length: Inches | None = field(
        default=None, metadata={"words": "length of a blind tenon"}
    )
    through: bool = field(
        default=False, metadata={"words": "whether the tenon runs through its mate"}
    )
    proud: Inches = field(
        default=Fraction(0),
        metadata={"words": "how far a through tenon stands out beyond its mate"},
    )

    def __post_init__(self) -> None:
        if self.through and self.length is not None:
            raise ValueError(
                "a through tenon takes its length from its mate; leave length out"
            )
        if self.proud and not self.through:
            raise ValueError("only a through tenon can stand proud")

    def settled(self, shop: Shop, *, on_template: bool = False) -> Self:
        if self.through or self.length is not None:
            return self
        return dataclasses.replace(self, length=shop.tenon_length)

    def depth(self, *, mate: Inches) -> Sum:
        if not self.through:
            return Sum.of(("tenon", settled_figure(self.length, "tenon")))
        through = Sum.of((MATE, mate))
        return through + Sum.of(("left proud", self.proud)) if self.proud else through

    def allowance(self, *, role: Role, own: Inches, mate: Inches) -> Sum:
        if role is Role.HOUSING:
            return Sum.nothing("the mortise is cut into this part")
        return self.depth(mate=mate)

    @property
    def needs_mate(self) -> bool:
        return self.through

    def impossible(self, *, mate: Inches, unit: UnitName = "in") -> str:
        deep = self.depth(mate=mate).value
        if deep <= 0:
            return "a tenon without length holds nothing"
        if self.through or deep < mate:
            return ""
        return f"a blind tenon {say(deep, unit)} long comes through a mate of {say(mate, unit)}"

    def limits(
        self, *, own: Inches, mate: Inches, unit: UnitName = "in"
    ) -> tuple[str, ...]:
        if not self.through and mate - self.depth(mate=mate).value < LEAST_BEHIND:
            return (
                f"less than {say(LEAST_BEHIND, unit)} of a mate of {say(mate, unit)} stays behind the mortise",
            )
        return ()

    @property
    def cautions(self) -> tuple[str, ...]:
        return (
            "Tenons: stand the work in a tenoning jig or lay it flat against the miter "
            "gauge; never run it on end along a low fence by hand.",
        )
