"""Improves a plan piecemeal: takes a few boards out, and looks for a cheaper way to make what they made."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from yieldplan.packing.dive import Dive, Question
from yieldplan.packing.first_plan import all_copies
from yieldplan.packing.packed import Packed, packed
from yieldplan.packing.pattern import Pattern, makes_of
from yieldplan.packing.stop import Budget
from yieldplan.packing.yard import Column, Yard

_OUT = (2, 7)
"""Fewest and most boards taken out at once."""
_IN = (1, 8)
"""Fewest and most unused boards offered beside them."""
_ROUNDS = 5


class Repair:
    """Neighbourhoods of one plan.

    Parameters
    ----------
    prices
        What each demand is worth, from the floor; tells which boards pay badly.
    """

    def __init__(
        self,
        yard: Yard,
        need: Sequence[int],
        short_price: Sequence[int],
        prices: Sequence[int],
        rng: np.random.Generator,
    ) -> None:
        self.yard = yard
        self.need = list(need)
        self.short_price = short_price
        self.prices = prices
        self._rng = rng
        values = yard.pricing.price(prices)
        self._pays = {
            number: int(values[number]) / max(1, yard.price[number])
            for number in yard.pricing.bins
        }

    def step(
        self, plan: Packed, columns: Sequence[Column], budget: Budget
    ) -> tuple[Packed, list[Column]]:
        """The plan after one neighbourhood, no worse; and patterns met."""
        out = self._badly_paying(plan)
        kept = [
            pattern for place, pattern in enumerate(plan.patterns) if place not in out
        ]
        freed = [plan.patterns[place] for place in sorted(out)]
        need = [0] * len(self.need)
        for pattern in freed:
            for demand, count in enumerate(makes_of(pattern, self.yard.problem)):
                need[demand] += count
        # What spares or a short plan left open belongs to it too.
        need = [
            min(count + short, asked)
            for count, short, asked in zip(need, plan.short, self.need, strict=True)
        ]
        supply = self._supply(kept, freed)
        cost = sum(self.yard.cost(pattern) for pattern in freed)
        question = Question(
            tuple(need),
            supply,
            self.short_price,
            cost + sum(map(int.__mul__, plan.short, map(int, self.short_price))),
            _ROUNDS,
        )
        dive = Dive(
            self.yard,
            question,
            [
                *(self.yard.column(pattern) for pattern in freed),
                *(column for column in columns if column.bin in supply),
            ],
            self._rng,
            0.1,
        )
        found = dive.run(budget)
        if found is not None:
            better = packed([*kept, *found.patterns], self.need, self.yard)
            if better.key < plan.key:
                return better, dive.found
        return plan, dive.found

    def _badly_paying(self, plan: Packed) -> set[int]:
        """Boards to take out: at random, rather those whose parts pay little of them."""
        problem = self.yard.problem
        loss = []
        for pattern in plan.patterns:
            made = makes_of(pattern, problem)
            worth = sum(p * n for p, n in zip(self.prices, made, strict=True))
            loss.append(1 - worth / max(1, self.yard.price[pattern.bin]))
        weight = np.exp(2.0 * np.clip(np.array(loss), 0.0, 1.0))
        count = min(len(loss), int(self._rng.integers(_OUT[0], _OUT[1] + 1)))
        chosen = self._rng.choice(
            len(loss), size=count, replace=False, p=weight / weight.sum()
        )
        return {int(place) for place in chosen}

    def _supply(
        self, kept: Sequence[Pattern], freed: Sequence[Pattern]
    ) -> dict[int, int]:
        """The freed boards (half the time less one), and a few unused ones that pay."""
        supply = all_copies(self.yard)
        for pattern in kept:
            supply[pattern.bin] -= 1
        own = sorted({pattern.bin for pattern in freed})
        unused = [
            number for number in sorted(supply) if supply[number] and number not in own
        ]
        chosen = set(own)
        if len(own) > 1 and unused and self._rng.random() < 0.5:
            chosen.discard(own[int(self._rng.integers(len(own)))])
        if unused:
            count = min(len(unused), int(self._rng.integers(_IN[0], _IN[1] + 1)))
            weight = np.array([self._pays[number] for number in unused]) ** 8 + 1e-9
            picked = self._rng.choice(
                len(unused), size=count, replace=False, p=weight / weight.sum()
            )
            chosen.update(unused[int(place)] for place in picked)
        return {number: supply[number] for number in sorted(chosen) if supply[number]}
