"""Dado: a square channel across the grain that houses the end of another part."""

from __future__ import annotations

from dataclasses import dataclass, field
from fractions import Fraction
from typing import ClassVar

from yieldplan.joints.share_of_mate import ShareOfMate


@dataclass(frozen=True, kw_only=True)
class Dado(ShareOfMate):
    """A dado cut to a share of the housing part's thickness.

    The housed part gains the depth at each end it is housed; the part with the dado
    runs on past it and keeps its length.
    """

    lets_run_past: ClassVar[bool] = True
    # Common practice, no source: a third to half of the housing part.
    most_share: ClassVar[Fraction] = Fraction(1, 2)
    leaves: ClassVar[str] = "half"

    depth_share: Fraction = field(
        default=Fraction(1, 3),
        metadata={"words": "depth as a share of the housing part's thickness"},
    )

    @property
    def cautions(self) -> tuple[str, ...]:
        return (
            "Dados with a wide blade or a router: never freehand; use the miter gauge or a "
            "clamped fence, in passes.",
        )
