"""Narrow parts beside marks are looked for last: a plan that does without them is there at once, and stays unless they save something."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from concurrent.futures import Executor
from dataclasses import replace
from fractions import Fraction

from yieldplan.model.plan import Family
from yieldplan.packing.fast import warm_up
from yieldplan.packing.generate import Generation
from yieldplan.packing.limited import limited_floor
from yieldplan.packing.packed import Packed, packed
from yieldplan.packing.problem import Problem
from yieldplan.packing.search import Search
from yieldplan.packing.solution import Solution
from yieldplan.packing.stop import Progress, Stop
from yieldplan.packing.yard import Column

PLAIN: dict[Family, Family] = {"R+": "R", "C+": "C", "E+": "E"}
"""The family in which no part lies beside a mark."""
_FIRST = 3
"""The plain search takes this part of the work or time that is allowed, 3 a third."""


def search_wider(
    problem: Problem,
    stop: Stop,
    hear: Callable[[Progress], None],
    wood: str,
    executor: Executor | None = None,
) -> Solution:
    """The cheapest plan found of a wider family, never dearer than its plain one.

    Every pattern of the plain family is one of the wider too; its floor is not, so none
    is told before the wider family's own.
    """
    warm_up()

    def hear_plan(progress: Progress) -> None:
        hear(replace(progress, bound=0))

    family = PLAIN[problem.family]
    search = Search(
        replace(problem, family=family), _part(stop, 1), hear_plan, wood, executor
    )
    plain = search.run()

    def hear_on(progress: Progress) -> None:
        hear(replace(progress, work=plain.work + progress.work))

    wider = _Wider(problem, _part(stop, _FIRST - 1), hear_on, wood, executor, search)
    found = wider.run()
    stages = (replace(stage, bound=0) for stage in plain.stages)
    return replace(found, stages=(*stages, *found.stages), work=plain.work + found.work)


def _part(stop: Stop, thirds: int) -> Stop:
    """So many thirds of a stop that says how much may be done; else it is by the job's size."""
    return replace(
        stop,
        work=None if stop.work is None else stop.work * thirds // _FIRST,
        seconds=None if stop.seconds is None else stop.seconds * thirds / _FIRST,
    )


class _Wider(Search):
    """A search that begins with the plan of another, and with all patterns it met."""

    def __init__(
        self,
        problem: Problem,
        stop: Stop,
        hear: Callable[[Progress], None],
        wood: str,
        executor: Executor | None,
        before: Search,
    ) -> None:
        super().__init__(problem, stop, hear, wood, executor)
        self._patterns = before.state.plan.patterns
        self._columns: Sequence[Column] = before.generation.columns

    def _first_plan(self, prices: Sequence[int]) -> Packed:
        if not self._patterns:
            return super()._first_plan(prices)
        known, self._patterns = self._patterns, ()
        return packed(known, self.state.need, self.yard)

    def price(self) -> None:
        """Column generation from all that is known, and the plan its prices lead to."""
        state = self.state
        state.begin_stage("prices")
        self.generation = Generation(
            self.yard, state.need, self.short_price, self._sample()
        )
        for pattern in state.plan.patterns:
            self.generation.add(self.yard.column(pattern))
        for column in self._columns:
            self.generation.add(column)
        share = self.budget.used + Fraction(1, 2)
        self.generation.run(self.budget, share, self._hear_floor)
        state.floor = self.generation.best
        state.take(self._first_plan(self.generation.prices))
        state.end_stage()

    def _floors(self, share: Fraction) -> None:
        """Limited prices alone: sets of whole pieces prove nothing in a wider family."""
        state = self.state
        state.begin_stage("floor")
        state.raise_floor(
            limited_floor(
                self.yard,
                state.need,
                self.short_price,
                state.floor,
                self.generation.columns,
                self.budget,
                self.budget.used + share,
            )
        )
        state.end_stage()
