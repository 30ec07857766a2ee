"""Sticks: one cross-section in fixed lengths, such as moulding, dowel, edging and S4S stock."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from typing import ClassVar

from yieldplan.model.blanks import Blank
from yieldplan.model.pieces import MarksFrom, Piece
from yieldplan.model.plan import Family
from yieldplan.model.shop import Shop
from yieldplan.stock.kind import StockKind
from yieldplan.units import Inches


class Stick(StockKind):
    """A stick is crosscut to finished lengths; its width and thickness stay as bought.

    A little is trimmed off each end, and every cut is measured from the trimmed one.
    """

    marks_from: ClassVar[MarksFrom] = "trimmed end"
    is_planed: ClassVar[bool] = True
    is_stick: ClassVar[bool] = True

    def end_trim(self, shop: Shop) -> Inches:
        return shop.stick_trim

    def edge_pass(self, shop: Shop) -> Inches:
        return Fraction(0)

    def steps(self, shop: Shop) -> tuple[Inches, Inches]:
        return shop.stick_step, shop.stick_step

    def steps_on(self, pieces: Sequence[Piece], shop: Shop) -> tuple[Inches, Inches]:
        # Across, the whole stick and the kerf beside it are the one and only cell: all
        # that is cut from it is exactly as wide, and there is nothing to rip.
        along, _ = self.steps(shop)
        return along, max(piece.width for piece in pieces) + shop.kerf

    def family(self, shop: Shop) -> Family:
        # Rip first without a rip is one row of crosscuts: every way to cut a stick.
        return "R"

    def serves(self, blank: Blank, piece: Piece) -> bool:
        return blank.is_stick and piece.wood == blank.wood
