"""Sheets: plywood and its like, of one or several sizes, as many copies as it takes."""

from __future__ import annotations

from typing import ClassVar

from yieldplan.model.blanks import Blank
from yieldplan.model.pieces import MarksFrom, Piece
from yieldplan.model.plan import Family
from yieldplan.model.shop import FAMILY_OF, Shop
from yieldplan.stock.kind import StockKind
from yieldplan.units import Inches


class Sheet(StockKind):
    """A sheet of one product; its thickness comes with it and nothing is planed.

    Factory edges are trimmed all round, and every cut is measured from a trimmed one.
    """

    marks_from: ClassVar[MarksFrom] = "trimmed end"
    is_planed: ClassVar[bool] = True
    is_sheet: ClassVar[bool] = True

    def end_trim(self, shop: Shop) -> Inches:
        return shop.sheet_trim

    def edge_pass(self, shop: Shop) -> Inches:
        return shop.sheet_trim

    def steps(self, shop: Shop) -> tuple[Inches, Inches]:
        return shop.sheet_step, shop.sheet_step

    def family(self, shop: Shop) -> Family:
        # A sheet has no marks for parts to lie beside.
        return FAMILY_OF[shop.breakdown]

    def serves(self, blank: Blank, piece: Piece) -> bool:
        return blank.is_sheet and piece.wood == blank.wood
