"""Rabbet: a step cut along the end or edge of one part, in which its mate sits."""

from __future__ import annotations

from dataclasses import dataclass, field
from fractions import Fraction
from typing import ClassVar

from yieldplan.joints.share_of_mate import ShareOfMate


@dataclass(frozen=True, kw_only=True)
class Rabbet(ShareOfMate):
    """A rabbet in the end or edge of the housing part, as wide as its mate is thick.

    The housed part gains the rabbet's depth; the rabbeted part keeps its full length.
    """

    makes_box_corner: ClassVar[bool] = True
    # Common practice, no source: half to two thirds of the rabbeted part.
    most_share: ClassVar[Fraction] = Fraction(2, 3)
    leaves: ClassVar[str] = "a third"

    depth_share: Fraction = field(
        default=Fraction(1, 2),
        metadata={"words": "depth as a share of the rabbeted part's thickness"},
    )

    @property
    def cautions(self) -> tuple[str, ...]:
        return (
            "Rabbets across an end: back the work up so that it cannot turn, and keep the "
            "offcut free of the blade.",
        )
