"""Column generation: prices that prove a floor, and the patterns worth knowing at those prices."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from contextlib import suppress
from fractions import Fraction

import numpy as np

from yieldplan.packing.filling.first_plan import all_copies
from yieldplan.packing.filling.yard import Column, Yard
from yieldplan.packing.floors.bound import (
    Certificate,
    best_scale,
    certificate_of,
    estimate,
    scaled_up,
)
from yieldplan.packing.floors.master import Master, Shares, Unsolved
from yieldplan.packing.grid.crossings import Ints
from yieldplan.packing.grid.pattern import cut_to_demand
from yieldplan.packing.stop import Budget

_FEW = 6
"""Of so few boards that pay, every saw's best pattern is taken: more for one asking."""
_SMOOTH, _SMOOTHER = 0.4, 0.85
"""How much of the best prices so far stays in the prices asked next; more of it where a round
brings few patterns (one kind of sheet) or the program takes longest (a sample of many boards)."""
_CLOSED = 0.0005
"""Share of the program's cost at which the floor counts as reached."""
_SOFT = 4
"""What a part left unmade costs at first, in prices of its area: wild prices say little."""
_SAMPLE_FROM = 900
"""From so many boards on, prices are sought on a sample of them."""
_SAMPLE = 250
_HARDER = 8
"""By how much that grows when parts are still left unmade at the end."""


class Generation:
    """Patterns and prices for one set of needs.

    Parameters
    ----------
    bins
        A sample of the bins: prices are sought as if only these were offered and their
        share of everything were needed. The floor they give is that of all bins.
    prices
        To begin with, where any are known; else every part counts by its area.
    """

    def __init__(
        self,
        yard: Yard,
        need: Sequence[int],
        short_price: Sequence[int],
        bins: Sequence[int] | None = None,
        prices: Sequence[int] = (),
    ) -> None:
        self.yard = yard
        self._first_prices = prices
        self.need = list(need)
        self.best = Certificate((0,) * len(need), 0, 0)
        self.prices: list[int] = list(self.best.prices)
        self.met: list[tuple[int, ...]] = []
        """Price vectors asked, the earliest first."""
        self._short_price = list(short_price)
        self._soft = [
            min(hard, _SOFT * max(1, price))
            for hard, price in zip(
                short_price, yard.area_prices([1] * len(need)), strict=True
            )
        ]
        copies = all_copies(yard)
        self._bins = sorted(copies) if bins is None else sorted(bins)
        self._is_sample = len(self._bins) < len(copies)
        self._in_sample = frozenset(self._bins)
        # Of a sample, what it must make; a guide only.
        self._asked: list[float] = [count * _share(yard, self._bins) for count in need]
        self._master = Master(
            yard.problem,
            self._asked,
            {number: copies[number] for number in self._bins},
            self._soft,
        )
        self._known: set[tuple[int, int, tuple[int, ...]]] = set()
        self.shares: Shares | None = None

    @property
    def columns(self) -> list[Column]:
        """Every pattern met."""
        return self._master.columns

    def best_paying(self, most: int) -> list[Column]:
        """The patterns met that pay best, so many of them, the best first."""
        columns, shares = self.columns, self.shares
        if shares is None or not columns:
            return columns[:most]
        makes = np.array([column.makes for column in columns], float)
        bins = [column.bin for column in columns]
        rent = np.array(self.yard.price, float) + np.array(shares.rents)
        cost = rent[bins] - makes @ np.array(shares.prices)
        return [columns[place] for place in np.argsort(cost, kind="stable")[:most]]

    def add(self, column: Column) -> bool:
        """Keep a pattern, unless one like it is known or its bin not in the sample."""
        if self._is_sample and column.bin not in self._in_sample:
            return False
        key = (column.bin, column.cost, column.makes)
        if key in self._known:
            return False
        self._known.add(key)
        self._master.add([column], [10**9] * len(self.need))
        return True

    def run(self, budget: Budget, share: Fraction, hear: Callable[[int], None]) -> None:
        """Add patterns until the floor meets the program's cost, or the work is done.

        Parameters
        ----------
        share
            Part of all allowed work that may be used up when it ends.
        hear
            Told each better floor. [money/10,000]
        """
        is_few = len(self._bins) <= _FEW
        smoothing = smooth = _SMOOTHER if is_few or self._is_sample else _SMOOTH
        centre, highest = self._middle()
        while not budget.is_over(share):
            before = self.yard.pricing.work
            try:
                shares = self.shares = self._master.solve()
            except Unsolved:
                # The prices so far prove what they prove.
                break
            exact = [max(0.0, price) for price in shares.prices]
            asked = [
                # Where nothing is needed a price would only raise the boards' values.
                int(smooth * middle + (1 - smooth) * price) if count else 0
                for middle, price, count in zip(centre, exact, self.need, strict=True)
            ]
            values = self.yard.pricing.price(asked, self._asked_bins)
            self.met.append(tuple(asked))
            floor = estimate(asked, self._asked, values, self.yard.problem)
            if floor > highest:
                highest, centre = floor, [float(price) for price in asked]
                if not self._is_sample:
                    self._certify(asked, values, hear, closely=False)
            added = self._add_best(shares, values)
            budget.spend(self.yard.pricing.work - before + self._master.work)
            is_closed = shares.cost - highest <= _CLOSED * shares.cost
            if is_closed or (not added and smooth == 0.0):
                if not self._is_harder(shares):
                    break
                added = 1
            smooth = smoothing if added else 0.0
        if self.shares is not None:
            with suppress(Unsolved):
                self.shares = self._master.solve()
        asked = [int(price) for price in centre]
        values = self.yard.pricing.price(asked)
        self._certify(asked, values, hear, closely=True)

    def _middle(self) -> tuple[list[float], float]:
        """Prices to begin with, and the floor they give."""
        problem = self.yard.problem
        asked = list(self._first_prices) or self.yard.area_prices(self.need)
        values = self.yard.pricing.price(asked, self._asked_bins)
        scale = float(best_scale(asked, self._asked, values, problem))
        floor = estimate(asked, self._asked, values, problem)
        return [scale * price for price in asked], floor

    @property
    def _asked_bins(self) -> list[int] | None:
        return self._bins if self._is_sample else None

    def _is_harder(self, shares: Shares) -> bool:
        """Make parts left unmade dearer, where there are any; whether that was possible."""
        if sum(shares.short) < 1e-6 or self._soft == self._short_price:
            return False
        self._soft = [
            min(hard, _HARDER * soft)
            for hard, soft in zip(self._short_price, self._soft, strict=True)
        ]
        self._master.set_short_price(self._soft)
        return True

    def _certify(
        self,
        asked: list[int],
        values: Ints,
        hear: Callable[[int], None],
        *,
        closely: bool,
    ) -> None:
        found = certificate_of(asked, self.need, values, self.yard.problem)
        hoped = estimate(asked, self.need, values, self.yard.problem)
        if closely or hoped > 1.01 * max(found.priced, self.best.priced):
            found = max(
                found,
                scaled_up(asked, self.need, values, self.yard.pricing),
                key=lambda certificate: certificate.priced,
            )
        if found.priced > self.best.priced:
            self.best = found
            self.prices = list(found.prices)
            hear(found.value)

    def _add_best(self, shares: Shares, values: Ints) -> int:
        """Add the patterns that would make the program cheaper; how many."""
        yard = self.yard
        hopeful = [
            number
            for number in yard.pricing.bins
            if values[number] > 0.97 * (yard.price[number] + shares.rents[number])
        ]
        added = 0
        whole: list[Column] = []
        for number in hopeful:
            patterns = (
                yard.pricing.patterns(number)
                if len(hopeful) <= _FEW
                else [yard.pricing.pattern(number)]
            )
            for pattern in patterns:
                column = yard.column(pattern)
                if _gain(column, shares) <= column.cost + shares.rents[number] + 0.5:
                    continue
                whole.append(column)
                cut, _ = cut_to_demand(pattern, self.need, yard.problem)
                column = yard.column(cut)
                if _gain(column, shares) > column.cost + shares.rents[number] + 0.5:
                    added += self.add(column)
        if not added:
            # Without more than is asked for, the program would stall here.
            added = sum(self.add(column) for column in whole)
        return added


def sample_of(yard: Yard) -> list[int] | None:
    """Every so manyth board by size, where there are very many."""
    bins, grids = yard.pricing.bins, yard.grids
    if len(bins) < _SAMPLE_FROM:
        return None
    by_size = sorted(
        bins, key=lambda number: (grids[number].across, grids[number].along, number)
    )
    every = -(-len(bins) // _SAMPLE)
    return by_size[every // 2 :: every]


def _share(yard: Yard, bins: Sequence[int]) -> float:
    """Of the wood offered, how much these bins are, by what they cost."""
    copies = all_copies(yard)
    cost = {number: max(1, yard.price[number]) * copies[number] for number in copies}
    return sum(cost[number] for number in bins) / max(1, sum(cost.values()))


def _gain(column: Column, shares: Shares) -> float:
    return sum(
        count * price for count, price in zip(column.makes, shares.prices, strict=True)
    )
