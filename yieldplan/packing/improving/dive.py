"""From shares of patterns to whole boards: fix what the program nearly takes, ask again, go on."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from yieldplan.packing.filling.packed import Packed, packed
from yieldplan.packing.filling.refill import refill
from yieldplan.packing.filling.yard import Column, Yard
from yieldplan.packing.floors.master import Master, Shares, Unsolved
from yieldplan.packing.grid.pattern import Pattern, cut_to_demand, makes_of
from yieldplan.packing.stop import Budget

_NEARLY = 0.9
"""From this share on a pattern is taken as it stands."""
_NEW = 14
"""New patterns looked at for each asking, at least."""
_NEW_SHARE = 8
"""Of many boards, one in so many is looked at."""
_AT_ONCE = 24
"""Where nothing is nearly whole, one in so many of the boards to come is taken at once."""
_TRIED = 7
"""Patterns tried where it is careful."""
_LIKELY = 0.05
"""Share below which a pattern is not tried."""
_AGAIN = 2
"""How often prices are asked again where boards held too much of a part."""
_CHEAPER = 75
"""What such a part is worth then, in parts of a hundred."""


@dataclass(frozen=True)
class Question:
    """What a dive must make, and from what.

    Parameters
    ----------
    copies
        Bins that may be cut, with how often.
    limit
        A plan that costs this much is of no use.
    rounds
        How often prices are asked again before the first pattern is taken.
    """

    need: tuple[int, ...]
    copies: Mapping[int, int]
    short_price: Sequence[int]
    limit: int
    rounds: int = 1


class Dive:
    """One way down from the program's shares to a plan.

    Parameters
    ----------
    columns
        Patterns known already.
    noise
        How freely it chooses among shares; 0 takes the largest.
    is_careful
        Whether to try several patterns and take the one that costs the rest least
        (strong diving: Sadykov et al., Primal heuristics for branch and price, 2019).
    """

    def __init__(
        self,
        yard: Yard,
        question: Question,
        columns: Sequence[Column],
        rng: np.random.Generator,
        noise: float,
        *,
        is_careful: bool = False,
    ) -> None:
        self.yard = yard
        self.question = question
        self.found: list[Column] = []
        self.root: Shares | None = None
        """What the program came to before anything was taken."""
        self._rng = rng
        self._noise = noise
        self._is_careful = is_careful
        self._left = list(question.need)
        self._supply = dict(question.copies)
        self._chosen: list[Pattern] = []
        self._cost = 0
        self._best: Packed | None = None
        self._master = Master(
            yard.problem,
            question.need,
            self._supply,
            question.short_price,
        )
        self._known: set[tuple[int, int, tuple[int, ...]]] = set()
        self._add([column for column in columns if column.bin in self._supply])

    def _add(self, columns: Sequence[Column]) -> list[Column]:
        """Offer those that are new; which they are."""
        new = []
        for column in columns:
            counted = tuple(map(min, column.makes, self._left))
            key = (column.bin, column.cost, counted)
            if key not in self._known and any(counted):
                self._known.add(key)
                new.append(column)
        self._master.add(new, self._left)
        return new

    def run(self, budget: Budget) -> Packed | None:
        """The best plan met on the way down; None when there is none, or hope of one below the limit.

        A plan that leaves something unmade is given only where the program itself
        prefers that (`short_price`) or no board is left.
        """
        try:
            return self._down(budget)
        except Unsolved:
            return self._best

    def _down(self, budget: Budget) -> Packed | None:
        while any(self._left) and not budget.is_over():
            before = self.yard.pricing.work
            shares = self._master.solve()
            for _ in range(1 if self._chosen else self.question.rounds):
                added = self._reprice(shares)
                shares = self._master.solve()
                budget.spend(self._master.work)
                if not added:
                    break
            budget.spend(self.yard.pricing.work - before + self._master.work)
            if not self._chosen:
                self.root = shares
            if self._is_hopeless(shares):
                return self._best
            if not self._fix(shares, budget):
                break
            self._master.set_left(self._left)
        if self._cost < self.question.limit:
            self._keep(self._chosen)
        return self._best

    def _is_hopeless(self, shares: Shares) -> bool:
        return self._cost + shares.cost >= self.question.limit

    def _keep(self, patterns: Sequence[Pattern]) -> None:
        plan = packed(patterns, self.question.need, self.yard)
        if self._best is None or plan.key < self._best.key:
            self._best = plan

    def _reprice(self, shares: Shares) -> int:
        """Add patterns that are better now, and look whether one board can finish.

        A pattern may hold more of a part than is left to make. So prices are asked a
        second time with those parts cheaper: then the boards hold something else too.
        """
        prices = [
            max(0, int(price)) if count else 0
            for price, count in zip(shares.prices, self._left, strict=True)
        ]
        asked = prices
        added = 0
        bins = sorted(self._supply)
        for _ in range(1 + _AGAIN):
            more, over, bins = self._offer(asked, bins, prices, shares)
            added += more
            if not any(over):
                break
            asked = [
                price * _CHEAPER // 100 if much else price
                for price, much in zip(asked, over, strict=True)
            ]
        return added

    def _offer(
        self,
        asked: Sequence[int],
        bins: Sequence[int],
        prices: Sequence[int],
        shares: Shares,
    ) -> tuple[int, list[int], list[int]]:
        """Add the best patterns at the prices asked.

        Returns
        -------
        tuple
            How many were new, for each demand how much too much they held, and the
            bins that come nearest to paying.
        """
        yard = self.yard
        met = []
        over = [0] * len(self._left)
        values = yard.pricing.price(asked, bins, left=self._left)
        order = sorted(
            (
                number
                for number in bins
                if values[number] > 0.9 * (yard.price[number] + shares.rents[number])
            ),
            key=lambda number: (
                yard.price[number] + shares.rents[number] - float(values[number]),
                number,
            ),
        )
        most = max(_NEW, len(bins) // _NEW_SHARE)
        for number in order[:most]:
            whole = yard.pricing.pattern(number)
            for demand, made in enumerate(makes_of(whole, yard.problem)):
                over[demand] += max(0, made - self._left[demand])
            pattern, left = cut_to_demand(whole, self._left, yard.problem)
            pattern, left = refill(pattern, left, prices, yard)
            met.append(yard.column(pattern))
            if not any(left):
                self._keep([*self._chosen, pattern])
        new = self._add(met)
        self.found += new
        return len(new), over, sorted(order[: 2 * most])

    def _fix(self, shares: Shares, budget: Budget) -> bool:
        """Take the patterns that are nearly whole, or else one; False where there are none.

        A pattern can be good for nothing though the program takes it: its parts make
        more than is left. The program then goes on without it.
        """
        if not shares.use:
            return False
        use = np.array(shares.use)
        nearly = [int(place) for place in np.flatnonzero(use >= _NEARLY)]
        if nearly:
            nearly.sort(key=lambda place: (-use[place], place))
        else:
            spread = use * np.exp(self._rng.normal(0.0, self._noise, len(use)))
            at_once = max(1, int(use.sum()) // _AT_ONCE)
            order = np.argsort(-spread, kind="stable")
            most = _TRIED if self._is_careful and at_once == 1 else at_once
            nearly = [int(place) for place in order[:most] if use[place] > 1e-6]
            if not nearly:
                return False
            if most > at_once:
                nearly = [self._least_costly(nearly, use, budget)]
        taken = False
        for place in nearly:
            column = self._master.columns[place]
            for _ in range(max(1, int(use[place] + 1 - _NEARLY))):
                if self._supply.get(column.bin, 0) and self._take(column, not taken):
                    taken = True
        if not taken:
            for place in nearly:
                self._master.leave_out(place)
        return True

    def _least_costly(
        self, places: Sequence[int], use: NDArray[np.float64], budget: Budget
    ) -> int:
        """The pattern after which the program costs least."""
        likely = [place for place in places if use[place] >= _LIKELY] or places[:1]
        if len(likely) == 1:
            return likely[0]
        budget.spend(self._master.work * len(likely))
        return min(likely, key=lambda place: (self._master.cost_with(place), place))

    def _take(self, column: Column, is_first: bool) -> bool:
        pattern, left = cut_to_demand(column.pattern, self._left, self.yard.problem)
        made = makes_of(pattern, self.yard.problem)
        # Behind another one taken now it must still make most of its parts.
        if not is_first and 10 * sum(made) < 9 * sum(column.makes):
            return False
        if not any(made):
            return False
        weights = self.yard.area_prices(self._left)
        pattern, left = refill(pattern, left, weights, self.yard)
        self._chosen.append(pattern)
        self._left = left
        self._cost += self.yard.cost(pattern)
        self._supply[column.bin] -= 1
        self._master.set_copies(column.bin, self._supply[column.bin])
        if not self._supply[column.bin]:
            del self._supply[column.bin]
        return True
