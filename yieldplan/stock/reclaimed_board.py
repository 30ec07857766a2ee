"""Reclaimed boards: old beams, barn siding and floors, nailed, weathered and bought by the board."""

from __future__ import annotations

from fractions import Fraction
from typing import ClassVar

from yieldplan.model.blanks import Blank
from yieldplan.model.pieces import MarksFrom, Piece
from yieldplan.model.shop import Shop
from yieldplan.stock.kind import StockKind
from yieldplan.units import Inches

END_TRIMS = 2
"""Its ends were nailed and have split: as many of the shop's end trims are lost at each.
Common practice, no source. [-]"""
MORE_AT_AN_EDGE = Fraction(1, 8)
"""Worn and dented edges take so much more than a new board's. Common practice, no source. [in]"""


class ReclaimedBoard(StockKind):
    """A board that was something else before: rough, with old ends and old edges.

    A tally says so in its column `kind`. The holes of nails stand among its marks as
    `hole`. A mark keeps parts away, not the blade: a cut through waste may cross it, so
    every nail is found and pulled before the board comes to a saw.
    """

    marks_from: ClassVar[MarksFrom] = "zero end"
    is_planed: ClassVar[bool] = False
    cautions: ClassVar[tuple[str, ...]] = (
        "Reclaimed boards: find every nail with a detector and pull it before the board"
        " comes to a saw or a planer; a mark keeps parts away, not the blade.",
    )

    def end_trim(self, shop: Shop) -> Inches:
        return END_TRIMS * shop.end_trim

    def edge_pass(self, shop: Shop) -> Inches:
        return shop.edge_pass + MORE_AT_AN_EDGE

    def steps(self, shop: Shop) -> tuple[Inches, Inches]:
        return shop.crosscut_step, shop.rip_step

    def serves(self, blank: Blank, piece: Piece) -> bool:
        return (
            not blank.is_sawn_to_size
            and piece.wood == blank.wood
            and piece.thick >= blank.thickness.value
        )
