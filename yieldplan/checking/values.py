"""The values of a wood's pieces at any prices: the shape of each piece is worked out once for all of them."""

from __future__ import annotations

from collections.abc import Collection, Mapping

from yieldplan.checking.facts import Piece, Plan, Wood
from yieldplan.checking.fits import may_come_from
from yieldplan.checking.further import Limited, Row
from yieldplan.checking.grid import Grid, lay_out
from yieldplan.checking.pieces import greatest
from yieldplan.checking.tables import Tables
from yieldplan.checking.wanted import Blank
from yieldplan.checking.worths import held, worth_having

Prices = Mapping[str, int]
"""Part to price. [money/10,000]"""


class Values:
    """The most each piece of a wood can give in one pattern, at the prices one asks for."""

    def __init__(self, plan: Plan, wood: Wood) -> None:
        self.plan = plan
        self.wood = wood
        self.pieces = stock_of(plan, wood)
        self.grids: dict[str, Grid] = {}
        self.blanks: dict[str, tuple[Blank, ...]] = {}
        """What may come from each piece."""
        self._of_all: dict[tuple[tuple[str, int], ...], dict[str, int]] = {}
        self._first_alike: dict[str, str] = {}
        # Sheets come by the dozen, all alike.
        alike: dict[tuple[object, ...], str] = {}
        for piece in self.pieces:
            self.blanks[piece.id] = tuple(
                blank
                for blank in plan.blanks
                if blank.wood == wood.name
                and may_come_from(plan, wood.rules, blank, piece)
            )
            grid = self.grids[piece.id] = lay_out(piece, wood.rules)
            names = tuple(blank.id for blank in self.blanks[piece.id])
            shape = grid, piece.price, piece.length, piece.width, names
            self._first_alike[piece.id] = alike.setdefault(shape, piece.id)

    def at_row(self, row: Row) -> dict[str, int]:
        """V of every piece at a row's prices, or its lesser value. [money/10,000]"""
        values = self.at(row.prices)
        for limited in row.limited:
            beyond = self.beyond(row.prices, limited)
            for stock, value in self.at(limited.prices, limited.stock).items():
                values[stock] = min(values[stock], value + beyond)
        return values

    def beyond(self, prices: Prices, limited: Limited) -> int:
        """What all that is needed costs more at the prices than at the lower ones. [money/10,000]"""
        return sum(
            (prices.get(part, 0) - limited.prices.get(part, 0)) * count
            for part, count in self.wood.need.items()
        )

    def need_at(self, prices: Prices) -> int:
        """What all that is needed is worth. [money/10,000]"""
        return sum(prices.get(part, 0) * n for part, n in self.wood.need.items())

    def at(
        self, prices: Prices, stock: Collection[str] | None = None
    ) -> dict[str, int]:
        """V of every piece, or of those asked for, by its name. [money/10,000]"""
        if stock is not None:
            return self._of(prices, stock)
        # A row of the sets may be the prices of the bound once more.
        key = tuple(sorted(prices.items()))
        if key not in self._of_all:
            self._of_all[key] = self._of(prices, [piece.id for piece in self.pieces])
        return dict(self._of_all[key])

    def _of(self, prices: Prices, stock: Collection[str]) -> dict[str, int]:
        names = set(stock)
        asked = [piece for piece in self.pieces if piece.id in names]
        together: dict[tuple[str, ...], tuple[tuple[Blank, ...], list[Piece]]] = {}
        for name in dict.fromkeys(self._first_alike[piece.id] for piece in asked):
            blanks = worth_having(self.blanks[name], prices)
            held_by = tuple(blank.id for blank in blanks)
            piece = self.plan.piece_of[name]
            together.setdefault(held_by, (blanks, []))[1].append(piece)
        values: dict[str, int] = {}
        for blanks, pieces in together.values():
            tables = Tables(
                held(self.plan, self.wood, blanks, prices),
                max(self.grids[piece.id].along for piece in pieces),
                max(self.grids[piece.id].across for piece in pieces),
                is_marked=any(self.grids[piece.id].blocks for piece in pieces),
            )
            for piece in pieces:
                grid = self.grids[piece.id]
                values[piece.id] = greatest(piece, self.wood.rules, grid, tables)
        return {piece.id: values[self._first_alike[piece.id]] for piece in asked}


def stock_of(plan: Plan, wood: Wood) -> list[Piece]:
    """Every piece of the wood that was offered."""
    return [piece for piece in plan.stock if piece.wood == wood.name]
