"""A piece: any stretch of wood that is still to be cut, as it is offered."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from typing import Literal

from yieldplan.faults import Where
from yieldplan.model.faces import Mark
from yieldplan.units import Inches

MONEY_PER_UNIT = 10_000
"""Money is kept in integers of 1/10,000 of the currency."""

SOME_TWIST = Fraction(1, 64)
"""Stands for twist that was seen and not measured: less than any tape shows. [in]"""

MarksFrom = Literal["zero end", "trimmed end"]


@dataclass(frozen=True, kw_only=True)
class Piece:
    """A board, sheet or offcut that the plan may cut.

    Parameters
    ----------
    line
        What a purchase line calls it: wood and thickness, `walnut 4/4`.
    kind
        Name of its stock kind in words (`rough board`, `sheet`).
    is_planed
        Its thickness is what a rule reads: nothing is planed off its faces.
    is_sheet, is_stick
        A sheet product, or a stick of one cross-section; neither is a board.
    thickness
        The name it is sold by: `4/4`, `5.2 mm`.
    thick
        Nominal thickness; the actual one of what is planed. [in]
    length, width
        Whole length; narrowest clear width, or the width at the numbered end where
        `width_far` says that the far end has another. [in]
    width_far
        Clear width at the far end of a tapered board; None when it is as wide. [in]
    crook, bow
        How far an edge, or a face, is off a straight line from end to end. [in]
    twist
        How far one corner stands up when the other three lie; 0 is flat. [in]
    board_feet
        Fixed on reading, to 1/100; None for sheets.
    per_foot
        Price per board foot; None when priced as a piece. [money/10,000]
    price
        Of one copy. [money/10,000]
    marks_from
        Where its crosscut marks are read from; None where its kind says it.
    pack
        Boards of one pack are sold only together; empty for a piece sold by itself.
    end_trims, edge_passes
        What is lost at zero and far end, at near and far edge. [in]
    """

    id: str
    wood: str
    line: str
    kind: str
    thickness: str
    thick: Inches
    grade: str = ""
    lot: str = ""
    length: Inches
    width: Inches
    copies: int = 1
    board_feet: Fraction | None
    per_foot: int | None
    price: int
    is_planed: bool = False
    is_sheet: bool = False
    is_stick: bool = False
    end_trims: tuple[Inches, Inches]
    edge_passes: tuple[Inches, Inches]
    marks: tuple[Mark, ...] = ()
    width_far: Inches | None = None
    crook: Inches = Fraction(0)
    bow: Inches = Fraction(0)
    twist: Inches = Fraction(0)
    marks_from: MarksFrom | None = None
    pack: str = ""
    where: Where | None = None

    @property
    def thing(self) -> str:
        """What a person calls it: board, sheet or stick."""
        return "sheet" if self.is_sheet else "stick" if self.is_stick else "board"

    @property
    def ends_wide(self) -> tuple[Inches, Inches]:
        """Clear width at the numbered end and at the far one. [in]"""
        return self.width, self.width if self.width_far is None else self.width_far

    @property
    def is_straight(self) -> bool:
        """Whether both its edges are straight and parallel, and its faces flat."""
        near, far = self.ends_wide
        return near == far and not (self.crook or self.bow or self.twist)
