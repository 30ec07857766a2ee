"""No board needs to make more of a part than is needed: lower prices for the boards that would.

The best pattern of a board at given prices may hold a part more often than anybody asked
for it. Then a little is taken off the part's price for this board, and what is taken off
is added for as many as are needed: no pattern that holds no more than is needed is worth
more than both together (Lagrangian relaxation of the limits, after Held and Karp 1971;
steps after Polyak 1969; both from memory). Any reduction is a proof; only good ones lift the floor.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from yieldplan.packing.crossings import Ints
from yieldplan.packing.pattern import cut_to_demand, makes_of
from yieldplan.packing.problem import Problem
from yieldplan.packing.proofs import Limited
from yieldplan.packing.stop import Budget
from yieldplan.packing.yard import Column, Yard

_STEPS = 6
"""How often the reductions of a board are corrected."""
_LONG = 1.2
"""Steps a little longer than to the target, which nothing may reach."""


@dataclass(frozen=True)
class LimitedValues:
    """What each bin is worth at most when no more is counted than is needed.

    Parameters
    ----------
    values
        Of each bin. [money/10,000]
    limited
        The lower prices that prove those that are below the best pattern's value.
    columns
        Patterns met on the way, cut to what is needed.
    """

    values: Ints
    limited: tuple[Limited, ...]
    columns: tuple[Column, ...] = ()


def may_be_limited(problem: Problem) -> tuple[bool, ...]:
    """For each demand, whether no plan makes more of it than is needed."""
    spared = {
        demand for item in problem.items if item.may_spare for demand in item.makes
    }
    return tuple(number not in spared for number in range(len(problem.demands)))


def limited_values(
    yard: Yard,
    need: Sequence[int],
    prices: Sequence[int],
    bins: Sequence[int],
    budget: Budget,
    steps: int = _STEPS,
) -> LimitedValues:
    """The values of all bins at these prices, those of `bins` limited to what is needed.

    Spends the work of its pricing from the budget; ends early when that is over.
    """
    return _Limiting(yard, need, prices, budget).run(bins, steps)


class _Limiting:
    def __init__(
        self, yard: Yard, need: Sequence[int], prices: Sequence[int], budget: Budget
    ) -> None:
        self.yard, self.budget = yard, budget
        self.need = np.array(need, np.int64)
        self.prices = np.array(prices, np.int64)
        self.may = np.array(may_be_limited(yard.problem))
        self.columns: list[Column] = []
        self.reached: dict[int, int] = {}
        """The dearest pattern met of each bin that holds no more than is needed."""

    def run(self, bins: Sequence[int], steps: int) -> LimitedValues:
        values = self._price(self.prices, None)
        best = values.copy()
        how: dict[int, tuple[int, ...]] = {}
        clusters: dict[tuple[int, ...], list[tuple[int, NDArray[np.float64]]]] = {}
        # Nothing is worth more than all that is needed.
        most = int(self.prices @ np.where(self.may, self.need, 0))
        if self.may.all() or not (self.prices * ~self.may).any():
            for number in bins:
                if values[number] > most:
                    best[number], how[number] = most, (0,) * len(self.need)
        for number in bins:
            over = self._over(number, np.zeros(len(self.need)))
            if over.any():
                support = tuple(np.flatnonzero(over).tolist())
                clusters.setdefault(support, []).append((number, over))
        for support in sorted(clusters):
            self._lower(clusters[support], values, best, how, steps)
        by_prices: dict[tuple[int, ...], list[int]] = {}
        for number in sorted(how):
            by_prices.setdefault(how[number], []).append(number)
        limited = tuple(
            Limited(tuple(numbers), lower) for lower, numbers in by_prices.items()
        )
        return LimitedValues(best, limited, tuple(self.columns))

    def _lower(
        self,
        cluster: list[tuple[int, NDArray[np.float64]]],
        values: Ints,
        best: Ints,
        how: dict[int, tuple[int, ...]],
        steps: int,
    ) -> None:
        """Take something off for bins that hold too much of the same parts."""
        numbers = [number for number, _ in cluster]
        over = np.mean([each for _, each in cluster], axis=0)
        now = np.array([values[number] for number in numbers], float)
        off = np.zeros(len(self.need))
        for _ in range(steps):
            length = float(over @ over)
            open_ = float(np.mean(now - [self.reached[n] for n in numbers]))
            if not length or open_ < 1 or self.budget.is_over():
                break
            off = np.clip(off + _LONG * open_ / length * over, 0, self.prices)
            lower = self.prices - off.astype(np.int64)
            added = int((self.prices - lower) @ self.need)
            found = self._price(lower, numbers)
            for number in numbers:
                if found[number] + added < best[number]:
                    best[number] = found[number] + added
                    how[number] = tuple(lower.tolist())
            now = np.array([found[number] + added for number in numbers], float)
            over = np.mean([self._over(number, off) for number in numbers], axis=0)

    def _price(self, prices: Ints, bins: Sequence[int] | None) -> Ints:
        pricing = self.yard.pricing
        before = pricing.work
        values = pricing.price(prices.tolist(), bins)
        self.budget.spend(pricing.work - before)
        return values

    def _over(self, number: int, off: NDArray[np.float64]) -> NDArray[np.float64]:
        """How much too much of each demand the bin's last pattern holds.

        Too little counts only where something is taken off its price.
        """
        yard = self.yard
        pattern = yard.pricing.pattern(number)
        made = np.array(makes_of(pattern, yard.problem), np.int64)
        column = yard.column(
            cut_to_demand(pattern, self.need.tolist(), yard.problem)[0]
        )
        self.columns.append(column)
        worth = int(self.prices @ np.array(column.makes, np.int64))
        self.reached[number] = max(self.reached.get(number, 0), worth)
        over = np.where(self.may, made - self.need, 0).astype(float)
        return np.where((over < 0) & (off <= 0), 0.0, over)
