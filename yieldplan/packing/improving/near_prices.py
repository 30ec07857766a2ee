"""Patterns that are best at prices near the floor's, each price drawn a little higher or lower.

Column generation meets only patterns that are best at the prices of its own way, too few of
a kind for the program over all patterns met (`best_of_known`) to put a plan together. A second
of drawn prices gives it hundreds more that lose next to nothing.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from yieldplan.packing.filling.refill import refill
from yieldplan.packing.filling.yard import Column, Yard
from yieldplan.packing.grid.pattern import cut_to_demand
from yieldplan.packing.improving.dives import Common, Found
from yieldplan.packing.stop import NO_LIMIT, Budget, Stop

_PAYS = 0.85
"""A board whose best pattern is worth less of its price is left alone."""


@dataclass(frozen=True)
class NearPrices:
    """Such patterns until so much work is done; the plan of them is for the next program.

    Parameters
    ----------
    prices
        Of each demand, from the floor. [money/10,000]
    spread
        Of the logarithm of what a price is multiplied by.
    """

    seed: tuple[int, ...]
    work: int
    prices: tuple[int, ...]
    spread: float

    def do(self, yard: Yard, shared: Common, stop: Stop) -> Found:
        """Do it."""
        rng = np.random.default_rng(self.seed)
        budget = Budget(stop, NO_LIMIT)
        bins = [number for number in yard.pricing.bins if shared.copies.get(number)]
        known = {(column.bin, column.makes) for column in shared.columns}
        found: list[Column] = []
        # Asked once at least, however long it takes.
        while not budget.is_over() and (budget.done == 0 or budget.done < self.work):
            before = yard.pricing.work
            for column in self._drawn(yard, shared, bins, rng):
                if (column.bin, column.makes) not in known:
                    known.add((column.bin, column.makes))
                    found.append(column)
            budget.spend(1000 + yard.pricing.work - before)
        return Found(None, found, budget.done)

    def _drawn(
        self, yard: Yard, shared: Common, bins: list[int], rng: np.random.Generator
    ) -> list[Column]:
        """The patterns of one drawing of prices, as far as they make what is needed."""
        luck = np.exp(rng.normal(0.0, self.spread, len(self.prices)))
        prices = [int(price) for price in np.array(self.prices, float) * luck]
        values = yard.pricing.price(prices, bins)
        columns = []
        for number in bins:
            if values[number] < _PAYS * yard.price[number]:
                continue
            for whole in yard.pricing.patterns(number)[:2]:
                pattern, left = cut_to_demand(whole, shared.need, yard.problem)
                pattern, _ = refill(pattern, left, prices, yard)
                columns.append(yard.column(pattern))
        return columns
