"""Whole sheets: how little is left unmade with fewer of them, less and less, until it is nothing.

Where all wood comes in a few sizes, nearly every change leaves the cost as it is, so the
cost alone shows no way down. So wood for less than the plan costs is set aside, and the
plan sought that leaves the least area of parts unmade of it: first by dives, then piece by
piece (`neighbourhoods`), going on from plans that are a little worse, too (record-to-record travel:
G. Dueck, Journal of Computational Physics 104 (1993) 86-92).
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from typing import TYPE_CHECKING

import numpy as np

from yieldplan.packing.filling.first_plan import all_copies
from yieldplan.packing.filling.packed import Packed
from yieldplan.packing.improving.dive import Question
from yieldplan.packing.improving.dives import AT_ONCE, Common, wave
from yieldplan.packing.improving.neighbourhoods import Repair

if TYPE_CHECKING:
    from yieldplan.packing.searching.search import Search

_KINDS = 6
"""Sizes of sheet, at most."""
_COPIES = 3
"""Of each kind, on average at least."""
_OUT = (3, 13)
"""Sheets taken out at once."""
_DEARER = 20
"""What a part left unmade costs, in prices of its area: more than any wood for it."""
_WORSE, _NOISE = 0.03, 0.1
"""How much worse than the best a plan may be that it goes on from, in parts of the weight of
a sheet full of parts; and how far weights are off each time."""
_WORK = 1_000_000
"""Of one task, at most."""
_IDLE = 40
"""Tasks in vain after which it begins anew."""
_DRAWS = 50
"""Choices of wood looked at before there seems to be none."""
_NO_LIMIT = 1 << 62


class Fewer:
    """The search for a plan of less wood than the best one takes."""

    def __init__(self, search: Search) -> None:
        self._search = search
        yard = search.yard
        prices = yard.area_prices([1] * len(search.state.need))
        mean = max(1, sum(prices) // max(1, len(prices)))
        # A large part is harder to find room for than small ones of its area.
        self._weights = tuple(1 + _DEARER * price * price // mean for price in prices)
        self.has_sizes = len(yard.pricing.bins) > 1
        """Whether the wood comes in more than one size."""
        self._slack = int(_WORSE * _DEARER * max(search.yard.price))
        self._values = [
            int(value) for value in yard.pricing.price(search.generation.prices)
        ]
        self._wave = 0
        self._idle = 0
        self._limit = self._least = 0
        self._plan: Packed | None = None
        self._repair: Repair | None = None

    @staticmethod
    def is_for(search: Search) -> bool:
        """Whether the wood comes as sheets of few sizes, many of each."""
        problem, kinds = search.yard.problem, len(search.yard.pricing.bins)
        narrowest = min((size.across for size in search.yard.sizes), default=0)
        return (
            kinds <= _KINDS
            # Of a stick there is one strip: dives do better, for few patterns pay.
            and any(grid.across >= 2 * narrowest for grid in search.yard.grids)
            and search.num_copies >= _COPIES * kinds
            and not problem.packs
            and not problem.offcut_percent
        )

    def step(self) -> int:
        """Some tasks more, begun with other wood where the last were in vain; how many."""
        state = self._search.state
        if state.plan.cost != self._limit:
            self._limit, self._plan = state.plan.cost, None
        if self._plan is None or self._idle >= _IDLE:
            return self._begin()
        return self._mend(self._plan)

    def _begin(self) -> int:
        """The wood, and the first plan of it."""
        search = self._search
        copies = self._wood()
        self._idle = 0
        if copies is None:
            return AT_ONCE
        state, yard, budget = search.state, search.yard, search.budget
        common = Common(
            tuple(state.need),
            copies,
            self._weights,
            _NO_LIMIT,
            self._limit - 1,
            tuple(search.pool()),
            again=0,
        )
        self._wave += 1
        tasks = wave(1000 + self._wave, budget.work_for(AT_ONCE, 1, _WORK))
        answers = search.crew.run(
            common, tasks, budget.seconds_left, lambda a: self._is_found(a.plan)
        )
        plans = []
        for answer in answers:
            budget.spend(answer.work)
            for column in answer.columns:
                search.generation.add(column)
            if answer.plan is not None:
                plans.append(answer.plan)
        self._plan = min(plans, key=self._unmade, default=None)
        self._least = self._unmade(self._plan) if self._plan else 0
        self._repair = Repair(
            yard,
            state.need,
            self._weights,
            search.generation.prices,
            search.rng,
            copies=copies,
            out=_OUT,
        )
        self._look()
        return AT_ONCE

    def _mend(self, plan: Packed) -> int:
        search, repair = self._search, self._repair
        assert repair is not None
        budget = search.budget
        # With other weights each time it does not stay where it is.
        noise = np.exp(search.rng.normal(0.0, _NOISE, len(self._weights)))
        repair.short_price = tuple(
            int(weight * factor)
            for weight, factor in zip(self._weights, noise, strict=True)
        )
        places = repair.choose(
            plan, search.pool(), AT_ONCE, budget.work_for(AT_ONCE, 1, _WORK)
        )
        places = [
            replace(place, question=_quick(place.question, self._slack), dives=1)
            for place in places
        ]
        answers = search.crew.run(None, places, budget.seconds_left)
        self._idle += len(places)
        found = []
        for answer in answers:
            budget.spend(answer.work)
            for column in answer.columns:
                search.generation.add(column)
            if answer.patterns is not None:
                found.append(repair.with_it(plan, answer))
        best = min(found, key=self._unmade, default=plan)
        if self._unmade(best) < self._least:
            self._least, self._idle = self._unmade(best), 0
        if self._unmade(best) <= self._least + self._slack:
            self._plan = best
        self._look()
        return len(places)

    def _look(self) -> None:
        """Whether everything is made."""
        if self._is_found(self._plan) and self._plan is not None:
            self._search.state.take(self._plan)

    def _is_found(self, plan: Packed | None) -> bool:
        return plan is not None and plan.is_whole and plan.cost < self._limit

    def _unmade(self, plan: Packed) -> int:
        return sum(s * w for s, w in zip(plan.short, self._weights, strict=True))

    def _wood(self) -> Mapping[int, int] | None:
        """Sheets that cost less than the plan and could be enough; None where none are found."""
        search = self._search
        yard, prices = search.yard, search.generation.prices
        needed = sum(p * n for p, n in zip(prices, search.state.need, strict=True))
        supply = all_copies(yard)
        shares = dict.fromkeys(supply, 0.0)
        if search.generation.shares is not None:
            for column, use in zip(
                search.generation.columns, search.generation.shares.use, strict=False
            ):
                shares[column.bin] += use
        for _ in range(_DRAWS):
            copies = {
                number: min(supply[number], int(shares[number])) for number in supply
            }
            left = self._limit - 1 - sum(yard.price[b] * n for b, n in copies.items())
            while may := [
                b for b in supply if copies[b] < supply[b] and yard.price[b] <= left
            ]:
                number = int(search.rng.choice(may))
                copies[number] += 1
                left -= yard.price[number]
            if left < 0:
                return None
            worth = sum(self._values[b] * n for b, n in copies.items())
            if worth >= needed:
                return {number: n for number, n in copies.items() if n}
        return None


def _quick(question: Question, slack: int) -> Question:
    """The same for a quick dive: many of them find more here than a few thorough ones."""
    return replace(question, limit=question.limit + slack, rounds=1, again=0)
