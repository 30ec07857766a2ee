"""Surfaced boards: planed on both faces at the yard, sold by what they measure now."""

from __future__ import annotations

from typing import ClassVar

from yieldplan.model.blanks import Blank
from yieldplan.model.pieces import MarksFrom, Piece
from yieldplan.model.shop import Shop
from yieldplan.stock.kind import StockKind
from yieldplan.units import Inches


class SurfacedBoard(StockKind):
    """A board with planed faces; its edges are still as sawn.

    It need be no thicker than what is milled from it ends at. Its ends are sounder than
    a rough board's, so less is trimmed.
    """

    marks_from: ClassVar[MarksFrom] = "zero end"
    is_planed: ClassVar[bool] = True

    def end_trim(self, shop: Shop) -> Inches:
        return shop.surfaced_end_trim

    def edge_pass(self, shop: Shop) -> Inches:
        return shop.edge_pass

    def steps(self, shop: Shop) -> tuple[Inches, Inches]:
        return shop.crosscut_step, shop.rip_step

    def serves(self, blank: Blank, piece: Piece) -> bool:
        return (
            not blank.is_sawn_to_size
            and piece.wood == blank.wood
            and piece.thick >= blank.finished_thickness
        )
