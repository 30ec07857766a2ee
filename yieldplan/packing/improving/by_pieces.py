"""Plans built board after board, each filled piece by piece; parts that were hard to place grow dearer.

What stays unmade, or ends on boards that pay badly, counts for more in the next plan, so
that it is placed sooner (sequential value correction: Mukhacheva, Belov, Kartak, Mukhacheva
2000). A plan takes a fraction of a second, and hundreds of them go their own ways.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

import numpy as np

from yieldplan.packing.filling.packed import Packed, packed
from yieldplan.packing.filling.piece_by_piece import piece_by_piece
from yieldplan.packing.filling.yard import Column, Yard
from yieldplan.packing.grid.crossings import Floats
from yieldplan.packing.grid.pattern import Pattern
from yieldplan.packing.improving.dives import Common, Found
from yieldplan.packing.stop import NO_LIMIT, Budget, Stop

_POWERS = (1.0, 1.0, 1.05, 1.1, 1.2)
"""By how much more than its area a large part counts: the power of its price."""
_LUCK = (0.0, 0.01, 0.03)
"""Spread of the luck of sections and strips."""
_LUCK_OF_BOARDS = 0.05
_DEARER, _FORGET = 0.05, 0.97
"""By how much a part grows dearer that was hard to place, and how much of that stays."""

_WORK = 1000
"""Of one plan, beside pricing."""


class ByPieces:
    """Plans for one set of needs, one after the other; sets in steps are not built so.

    Parameters
    ----------
    supply
        Boards that may be cut, with how often.
    prices
        Of each demand, to begin with; by its area without.

    Attributes
    ----------
    met
        The boards of all plans, those too that did not come out: put together anew they often
        make a better one.
    """

    def __init__(
        self,
        yard: Yard,
        need: Sequence[int],
        supply: Mapping[int, int],
        prices: Sequence[int],
        rng: np.random.Generator,
    ) -> None:
        self._yard = yard
        self._need = tuple(need)
        self._supply = dict(supply)
        self._prices = np.array(prices or yard.area_prices(need), float)
        self._dearer = np.ones(len(self._need))
        self._rng = rng
        self._spread = 0.0
        self.met: list[Column] = []

    def one(self, limit: int, budget: Budget) -> Packed | None:
        """A plan that makes everything for less; None where it did not come out."""
        before = self._yard.pricing.work
        prices = self._drawn()
        left, patterns = self._board_by_board(limit, prices)
        columns = [self._yard.column(pattern) for pattern in patterns]
        self.met += columns
        # Also where there is money for no board, so that it ends. What is counted for boards
        # one at a time takes half as long as for all of them.
        budget.spend(_WORK + (self._yard.pricing.work - before) // 2)
        self._correct(left, columns)
        if any(left):
            return None
        plan = packed(patterns, self._need, self._yard)
        return plan if plan.cost < limit else None

    def _drawn(self) -> list[int]:
        """Prices of this plan."""
        self._spread = float(self._rng.choice(_LUCK))
        power = self._rng.choice(_POWERS)
        highest = max(1.0, self._prices.max())
        prices = highest * (self._prices / highest) ** power * self._dearer
        return [int(price) + 1 for price in prices]

    def _luck(self, count: int) -> Floats:
        return np.exp(self._rng.normal(0.0, self._spread, count))

    def _board_by_board(
        self, limit: int, prices: Sequence[int]
    ) -> tuple[list[int], list[Pattern]]:
        left, patterns, money = list(self._need), list[Pattern](), limit
        supply = dict(self._supply)
        while any(left):
            number = self._next(supply, money, left, prices)
            if number is None:
                break
            pattern, after = piece_by_piece(
                self._yard, number, left, prices, self._luck
            )
            supply[number] -= 1
            if after == left:
                continue
            left = after
            patterns.append(pattern)
            money -= self._yard.cost(pattern)
        return left, patterns

    def _next(
        self,
        supply: Mapping[int, int],
        money: int,
        left: Sequence[int],
        prices: Sequence[int],
    ) -> int | None:
        """The board that gives most for its money, of those there is money for."""
        price = self._yard.price
        open_ = [n for n, count in supply.items() if count and price[n] < money]
        if len(open_) < 2:
            return open_[0] if open_ else None
        now = [each if count else 0 for each, count in zip(prices, left, strict=True)]
        values = self._yard.pricing.price(now, open_, left=left)
        enough = sum(each * count for each, count in zip(prices, left, strict=True))
        gives = np.minimum(values[open_], enough) / [max(1, price[n]) for n in open_]
        gives *= np.exp(self._rng.normal(0.0, _LUCK_OF_BOARDS, len(open_)))
        return open_[int(np.argmax(gives))] if gives.any() else None

    def _correct(self, left: Sequence[int], columns: Sequence[Column]) -> None:
        """What stayed unmade grows dearer; what lies on the board that pays worst too, where all is made."""
        hard = np.array(left) > 0
        if not hard.any() and columns:
            pays = [
                float(np.dot(column.makes, self._prices)) / max(1, column.cost)
                for column in columns
            ]
            hard = np.array(columns[int(np.argmin(pays))].makes) > 0
        self._dearer = 1 + (self._dearer - 1) * _FORGET
        self._dearer[hard] += _DEARER


@dataclass(frozen=True)
class PiecesTask:
    """Such plans until so much work is done.

    Parameters
    ----------
    prices
        To begin with; by area without.
    patience
        Plans in vain, one after the other, after which there is no further one.
    """

    seed: tuple[int, ...]
    work: int
    prices: tuple[int, ...] = ()
    patience: int = 1000

    def do(self, yard: Yard, shared: Common, stop: Stop) -> Found:
        """Do it."""
        rng = np.random.default_rng(self.seed)
        # One plan at least is gone through, however long it takes.
        budget = Budget(stop, NO_LIMIT)
        plans = ByPieces(yard, shared.need, shared.copies, self.prices, rng)
        best: Packed | None = None
        limit, idle = shared.limit, 0
        while not budget.is_over() and (budget.done == 0 or budget.done < self.work):
            plan = plans.one(limit, budget)
            idle += 1
            if plan is not None:
                best, limit, idle = plan, plan.cost, 0
            if limit <= shared.enough or idle >= self.patience:
                break
        return Found(best, plans.met, budget.done)
