"""Rough boards: as they come off the sawmill's saw, random in width and length, sold by the quarter."""

from __future__ import annotations

from typing import ClassVar

from yieldplan.model.blanks import Blank
from yieldplan.model.pieces import MarksFrom, Piece
from yieldplan.model.shop import Shop
from yieldplan.stock.kind import StockKind
from yieldplan.units import Inches


class RoughBoard(StockKind):
    """A board with rough faces and edges; whatever is milled from it loses planing.

    The end that carries the board's number is zero, and crosscuts are chalked from it.
    Any board thick enough serves, the thicker ones too: it is planed further.
    """

    marks_from: ClassVar[MarksFrom] = "zero end"
    is_planed: ClassVar[bool] = False

    def end_trim(self, shop: Shop) -> Inches:
        return shop.end_trim

    def edge_pass(self, shop: Shop) -> Inches:
        return shop.edge_pass

    def steps(self, shop: Shop) -> tuple[Inches, Inches]:
        return shop.crosscut_step, shop.rip_step

    def serves(self, blank: Blank, piece: Piece) -> bool:
        return (
            not blank.is_sawn_to_size
            and piece.wood == blank.wood
            and piece.thick >= blank.thickness.value
        )
