"""The search, stage by stage: a plan at once, prices and floor, dives, repairs."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from fractions import Fraction

import numpy as np

from yieldplan.model.plan import Stage
from yieldplan.packing.board_sets import MOST_BOARDS, BoardSets
from yieldplan.packing.close_up import closed_up
from yieldplan.packing.dive import Dive, Question
from yieldplan.packing.first_plan import all_copies, first_plan
from yieldplan.packing.generate import Generation
from yieldplan.packing.least_missing import least_missing
from yieldplan.packing.packed import Packed, packed
from yieldplan.packing.problem import Problem
from yieldplan.packing.repair import Repair
from yieldplan.packing.solution import Solution
from yieldplan.packing.stop import Budget, Progress, Stop
from yieldplan.packing.yard import Column, Yard

_POOL = 2500
"""Patterns a dive starts from, at most."""
_IDLE = 40
"""Dives or repairs in vain after which the search has found all it will find."""
_TRIES = 12
"""Dives for a whole plan before wood counts as too little."""
_NOISE = 0.15
"""How freely a dive chooses."""
_NO_LIMIT = 1 << 62
_WORK_LEAST = 300_000
_WORK_PER_BIN = 150_000
_WORK_MOST = 60_000_000


_ROUNDS_LEAST = 10
_ROUNDS_MOST = 60
"""Rounds of prices that the work allowed must hold beside the search."""


def work_for(yard: Yard) -> int:
    """Units of work allowed where the stop does not say."""
    num_bins = len(yard.pricing.bins)
    rounds = min(_ROUNDS_MOST, _ROUNDS_LEAST + num_bins)
    search = _WORK_LEAST + _WORK_PER_BIN * num_bins
    if sum(all_copies(yard).values()) <= MOST_BOARDS + 4:
        search = 3 * search // 2
    return min(_WORK_MOST, search + rounds * yard.pricing.round_work)


class Search:
    """One search for a cheapest plan, and for the floor under it."""

    def __init__(
        self,
        problem: Problem,
        stop: Stop,
        hear: Callable[[Progress], None],
        wood: str,
    ) -> None:
        self.yard = Yard(problem)
        self.wood = wood
        self.asked = [demand.need for demand in problem.demands]
        self.need = [
            count if self.yard.can_make(number) else 0
            for number, count in enumerate(self.asked)
        ]
        self.budget = Budget(stop, work_for(self.yard))
        self.rng = np.random.default_rng(7)
        self.stages: list[Stage] = []
        self.stage = "first plan"
        self.hear = hear
        # Dearer than any board, so that nothing is left out to save money.
        dear = max(1, sum(piece.price * piece.copies for piece in problem.bins))
        self.short_price = [min(dear, 10**12)] * len(self.need)
        self.bound = 0

    def run(self) -> Solution:
        yard = self.yard
        self.plan = self._first_plan(yard.area_prices(self.need))
        self._end_stage()
        self._prices()
        if not self.plan.is_whole:
            self._make_whole()
        if not self._is_done():
            is_small = sum(all_copies(yard).values()) <= MOST_BOARDS
            self._dives(Fraction(2, 5) if is_small else Fraction(17, 20))
        if not self._is_done() and not yard.problem.offcut_percent:
            # Which boards, before how to cut them: their prices alone must decide.
            self._board_sets()
        if not self._is_done():
            self._repairs()
        return self._solution()

    # -- stages ----------------------------------------------------------------

    def _prices(self) -> None:
        """Column generation, and the plan that its prices lead to."""
        self.stage = "prices"
        self.bound = 0
        self.generation = Generation(self.yard, self.need, self.short_price)
        for pattern in self.plan.patterns:
            self.generation.add(self.yard.column(pattern))
        share = self.budget.used + Fraction(1, 2)
        self.generation.run(self.budget, share, self._hear_floor)
        self._take(self._first_plan(self.generation.prices))
        self._end_stage()

    def _first_plan(self, prices: Sequence[int]) -> Packed:
        before = self.yard.pricing.work
        plan = first_plan(self.yard, self.need, prices)
        self.budget.spend(self.yard.pricing.work - before)
        return plan

    def _make_whole(self) -> None:
        """Cover what the first plans left open; if that fails, ask for less."""
        shares = self.generation.shares
        self.stage = "too little wood"
        if shares is None or sum(shares.short) < 1e-6:
            for tries in range(_TRIES):
                if self.plan.is_whole or self.budget.is_over(Fraction(3, 5)):
                    break
                self._dive(noise=_NOISE if tries else 0.0, limit=_NO_LIMIT)
        if self.plan.is_whole:
            return
        while True:
            self._take(
                least_missing(self.yard, self.need, self.plan, self.budget, self.rng)
            )
            made = [
                count - short
                for count, short in zip(self.need, self.plan.short, strict=True)
            ]
            whole = [
                count - count % demand.whole
                for count, demand in zip(made, self.yard.problem.demands, strict=True)
            ]
            if whole == made:
                break
            # Some strips of a panel are no panel: their wood may make something else.
            self.need = [
                least if least < count else need
                for need, count, least in zip(self.need, made, whole, strict=True)
            ]
            self.plan = packed(self.plan.patterns, self.need, self.yard)
        self.need = made
        self.plan = packed(self.plan.patterns, self.need, self.yard)
        self._end_stage()
        self._prices()

    def _dives(self, share: Fraction) -> None:
        self.stage = "dive"
        idle = 0
        while idle < _IDLE and not self._is_done() and not self.budget.is_over(share):
            noise = _NOISE if idle or self.stages[-1].name == "dive" else 0.0
            idle = 0 if self._dive(noise, self.plan.cost) else idle + 1
        self._end_stage()

    def _board_sets(self) -> None:
        """Where few boards will do, look for the cheapest that can hold everything."""
        self.stage = "board sets"
        rows = (self.generation.prices, self.yard.area_prices(self.need))
        sets = BoardSets(
            self.yard, self.need, self.short_price, self.plan, rows, self.rng
        )
        while sets.may_go_on and not self._is_done():
            known = len(sets.found)
            self._take(sets.step(self.plan, self.generation.columns, self.budget))
            for column in sets.found[known:]:
                self.generation.add(column)
        is_through = sets.is_small and not sets.is_open and not self.budget.goes_on
        if is_through and self.budget.ended is None:
            self.budget.ended = "searched"
        self._end_stage()

    def _repairs(self) -> None:
        self.stage = "repair"
        repair = Repair(
            self.yard, self.need, self.short_price, self.generation.prices, self.rng
        )
        idle = 0
        while (idle < _IDLE or self.budget.goes_on) and not self._is_done():
            columns = self.generation.columns
            plan, found = repair.step(self.plan, columns, self.budget)
            for column in found:
                self.generation.add(column)
            idle = 0 if self._take(plan) else idle + 1
        if idle >= _IDLE and self.budget.ended is None:
            self.budget.ended = "searched"
        self._end_stage()

    def _dive(self, noise: float, limit: int) -> bool:
        question = Question(
            tuple(self.need), all_copies(self.yard), self.short_price, limit
        )
        dive = Dive(self.yard, question, self._pool(), self.rng, noise)
        found = dive.run(self.budget)
        for column in dive.found:
            self.generation.add(column)
        return found is not None and self._take(found)

    def _pool(self) -> list[Column]:
        """The known patterns that pay best."""
        columns = self.generation.columns
        shares = self.generation.shares
        if len(columns) <= _POOL or shares is None:
            return columns
        makes = np.array([column.makes for column in columns], float)
        bins = [column.bin for column in columns]
        rent = np.array(self.yard.price, float) + np.array(shares.rents)
        cost = rent[bins] - makes @ np.array(shares.prices)
        return [columns[place] for place in np.argsort(cost, kind="stable")[:_POOL]]

    # -- keeping count ---------------------------------------------------------

    def _take(self, plan: Packed) -> bool:
        if plan.key >= self.plan.key:
            return False
        self.plan = plan
        self._tell()
        return True

    def _hear_floor(self, floor: int) -> None:
        self.bound = floor
        self._tell()

    def _tell(self) -> None:
        self.hear(
            Progress(
                wood=self.wood,
                stage=self.stage,
                cost=self.plan.cost,
                bound=self.bound,
                work=self.budget.done,
            )
        )

    def _is_done(self) -> bool:
        if self.plan.cost <= self.bound:
            self.budget.ended = "proved"
        elif self.budget.is_close(self.plan.cost, self.bound):
            self.budget.ended = "gap"
        return self.budget.ended is not None or self.budget.is_over()

    def _end_stage(self) -> None:
        self.stages.append(
            Stage(name=self.stage, cost=self.plan.cost, bound=self.bound)
        )
        self._tell()

    def _solution(self) -> Solution:
        patterns = tuple(closed_up(p, self.yard) for p in self.plan.patterns)
        return Solution(
            need=tuple(self.need),
            short=tuple(
                asked - count
                for asked, count in zip(self.asked, self.need, strict=True)
            ),
            patterns=patterns,
            # Closed up, a board may keep a longer offcut than the search counted.
            cost=sum(map(self.yard.cost, patterns)),
            worths=tuple(map(self.yard.worth, patterns)),
            bound=self.generation.best,
            stages=tuple(self.stages),
            ended=self.budget.ended or "searched",
            work=self.budget.done,
        )
