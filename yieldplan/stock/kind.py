"""What every kind of stock states: how it is trimmed, where marks are measured from, what it may serve."""

from __future__ import annotations

from abc import ABC, abstractmethod
from collections.abc import Sequence
from typing import ClassVar

from yieldplan.model.blanks import Blank
from yieldplan.model.pieces import MarksFrom, Piece
from yieldplan.model.plan import Family
from yieldplan.model.shop import BESIDE_MARKS, FAMILY_OF, Shop
from yieldplan.registry import name_in_words
from yieldplan.units import Inches


class StockKind(ABC):
    """A kind of stock. A subclass is one file; its name in words is `Piece.kind`."""

    marks_from: ClassVar[MarksFrom]
    """Whether crosscut marks are read from the numbered end or from the trimmed end."""

    is_planed: ClassVar[bool]
    """Whether its thickness is what a rule reads and nothing is planed off its faces."""
    is_sheet: ClassVar[bool] = False
    """Whether it is a sheet product of the job file."""
    cautions: ClassVar[tuple[str, ...]] = ()
    """What can hurt someone while sawing it; printed where a piece of it is cut."""
    is_stick: ClassVar[bool] = False
    """Whether it is a stick of the job file."""

    @property
    def is_board(self) -> bool:
        """Whether a tally lists it; sheets and sticks stand in the job file."""
        return not (self.is_sheet or self.is_stick)

    @property
    def name(self) -> str:
        """Its name in words."""
        return name_in_words(type(self))

    @abstractmethod
    def end_trim(self, shop: Shop) -> Inches:
        """Lost at each end before the first part. [in]"""

    @abstractmethod
    def edge_pass(self, shop: Shop) -> Inches:
        """Lost at each long edge. [in]"""

    @abstractmethod
    def steps(self, shop: Shop) -> tuple[Inches, Inches]:
        """Grid that marks along and settings across lie on. [in]"""

    def steps_on(self, pieces: Sequence[Piece], shop: Shop) -> tuple[Inches, Inches]:
        """The grid of these pieces of one wood; the shop's steps unless the stock decides. [in]"""
        return self.steps(shop)

    def family(self, shop: Shop) -> Family:
        """How it is broken down: as the shop says, where there are two ways."""
        return (BESIDE_MARKS if shop.beside_marks else FAMILY_OF)[shop.breakdown]

    @abstractmethod
    def serves(self, blank: Blank, piece: Piece) -> bool:
        """Whether a blank may come from a piece of this kind, as to wood and thickness."""
