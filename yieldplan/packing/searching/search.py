"""The search, stage by stage: a plan at once, prices and floor, then dives and repairs by turns."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from concurrent.futures import Executor
from fractions import Fraction

import numpy as np

from yieldplan.packing.filling.first_plan import all_copies, first_plan
from yieldplan.packing.filling.known import Known, plan_from
from yieldplan.packing.filling.make_room import make_room
from yieldplan.packing.filling.packed import Packed
from yieldplan.packing.filling.yard import Column, Yard
from yieldplan.packing.floors.column_generation import Generation, sample_of
from yieldplan.packing.floors.limited import limited_floor
from yieldplan.packing.improving.at_the_floor import nearly_lossless
from yieldplan.packing.improving.board_sets import MOST_BOARDS, BoardSets
from yieldplan.packing.improving.dives import Found
from yieldplan.packing.problem import Problem
from yieldplan.packing.searching.allowed import are_alike, are_few_of_each, work_for
from yieldplan.packing.searching.crew import Crew
from yieldplan.packing.searching.make_whole import make_whole
from yieldplan.packing.searching.set_floor_task import Lifted, SetFloorTask
from yieldplan.packing.searching.solution import Solution
from yieldplan.packing.searching.state import State
from yieldplan.packing.searching.try_all import try_all
from yieldplan.packing.searching.turns import Turns
from yieldplan.packing.searching.waves import Waves
from yieldplan.packing.stop import Budget, Progress, Stop

_POOL = 2500
"""Patterns a dive starts from, at most."""
_DEAREST = 10**12
_OUT_OF_REACH = Fraction(101, 100)
"""Where the next sum that whole sheets can cost lies so far above what the prices prove, no
better floor is looked for: it would have to gain more than that. Few boards are another matter."""
_NEAR = Fraction(21, 20)
"""A plan so near to the floor is not bettered by building others piece by piece."""
_FAR = Fraction(3, 2)
"""A plan that costs so many times the floor is worth more such work."""
_NODES_UP_TO = 120
"""Boards among which sets of them are looked at as a whole."""


class Search:
    """One search for a cheapest plan, and for the floor under it.

    Parameters
    ----------
    executor
        Where tasks are done side by side; None does them here.
    known
        What an earlier search of nearly the same problem found.
    """

    def __init__(
        self,
        problem: Problem,
        stop: Stop,
        hear: Callable[[Progress], None],
        wood: str,
        executor: Executor | None = None,
        known: Known | None = None,
    ) -> None:
        self.yard = Yard(problem)
        self.known = known
        self.budget = Budget(stop, work_for(self.yard))
        self.state = State(self.yard, self.budget, hear, wood)
        self.crew = Crew(self.yard, stop, executor)
        self.waves = Waves(self)
        self.rng = np.random.default_rng(7)
        # Dearer than any board, so that nothing is left out to save money.
        dear = max(1, sum(piece.price * piece.copies for piece in problem.bins))
        self.short_price = [min(dear, _DEAREST)] * len(self.state.need)
        self.num_copies = sum(all_copies(self.yard).values())
        self.num_boards = len(self.yard.pricing.bins)
        self.are_alike = are_alike(self.yard)
        if self.is_small and stop.gap is None:
            self.budget.gap = Fraction(0)
        self.is_wider = problem.family.endswith("+")

    @property
    def is_small(self) -> bool:
        """Whether sets of boards can be looked through one by one."""
        return self.num_copies <= MOST_BOARDS

    @property
    def _is_few(self) -> bool:
        """Whether to ask which boards, before how to cut them: their prices alone must decide."""
        few = len(self.state.plan.patterns) < MOST_BOARDS and not self.are_alike
        return (self.is_small or few) and not self.yard.problem.offcut_percent

    def run(self) -> Solution:
        """Stage by stage, until the plan is proved or close enough or the work is done."""
        state = self.state
        state.take(self._begin())
        state.end_stage()
        self.price()
        if not state.is_done():
            self._near_prices()
        if not state.is_done():
            self._by_pieces()
        if not state.plan.is_whole:
            make_whole(self)
        reach = _OUT_OF_REACH * state.floor.priced
        may_lift = self.is_small or state.floor.value <= reach
        if not state.is_done() and may_lift:
            self._limited_floor(Fraction(1, 8))
        if not state.is_done() and self.is_small:
            try_all(self, Fraction(2, 3))
        if not state.is_done() and may_lift and self.num_boards > 1:
            self._set_floor(Fraction(1, 8))
        if not state.is_done():
            self._at_the_floor()
        turns = Turns(self)
        if self._is_few:
            if not state.is_done():
                turns.run(Fraction(2, 5) if self.is_small else Fraction(4, 5))
            if not state.is_done():
                self._board_sets()
        turns.to_the_end()
        return state.solution()

    def _begin(self) -> Packed:
        """A plan at once: the known one, or board after board."""
        if self.known is not None and self.known.patterns:
            return plan_from(self.known, self.state.need, self.yard)
        return self._first_plan(self.yard.area_prices(self.state.need), in_a_hurry=True)

    def price(self) -> None:
        """Column generation, and the plan that its prices lead to."""
        state = self.state
        state.begin_stage("prices")
        self.generation = Generation(
            self.yard,
            state.need,
            self.short_price,
            sample_of(self.yard),
            self.known.prices if self.known is not None else (),
        )
        for pattern in state.plan.patterns:
            self.generation.add(self.yard.column(pattern))
        for column in self.known.columns if self.known is not None else ():
            self.generation.add(column)
        share = self.budget.used + Fraction(1, 2)
        self.generation.run(self.budget, share, self._hear_floor)
        state.floor = self.generation.best
        state.take(self._first_plan(self.generation.prices))
        state.end_stage()

    def _first_plan(self, prices: Sequence[int], *, in_a_hurry: bool = False) -> Packed:
        yard, need, is_over = self.yard, self.state.need, self.budget.is_over
        before = yard.pricing.work
        plan = first_plan(yard, need, prices, in_a_hurry=in_a_hurry)
        plan = make_room(yard, need, plan, prices, is_over, in_a_hurry=in_a_hurry)
        self.budget.spend(yard.pricing.work - before)
        if in_a_hurry and yard.may_rip_only and not plan.is_whole:
            return self._first_plan(prices)
        return plan

    def _near_prices(self) -> None:
        """A good plan soon: of patterns at the floor's prices and near them."""
        if self.num_boards > _NODES_UP_TO or self.are_alike:
            return
        self.state.begin_stage("prices near by")
        self.waves.near_prices()
        self.state.end_stage()

    def _by_pieces(self) -> None:
        """Of parts asked for once or twice, plans built section by section: a good one spares many choices."""
        state = self.state
        if self.num_boards > _NODES_UP_TO or not are_few_of_each(state.need):
            return
        if state.plan.is_whole and state.plan.cost <= _NEAR * state.floor.value:
            return
        state.begin_stage("piece by piece")
        before = state.plan.key
        self.waves.by_pieces()
        is_far = state.plan.cost > _FAR * state.floor.value
        may_help = state.plan.is_whole and (is_far or state.plan.key < before)
        if may_help and self._is_few and not state.is_done():
            share = self.budget.used + Fraction(1, 8)
            state.take(self._sets().soon(state.plan, self.budget, share))
        state.end_stage()

    def _limited_floor(self, share: Fraction) -> None:
        """Lift the floor: no board need make more of a part than is needed."""
        state = self.state
        # Of sheets or sticks of few kinds it proves no more than counting as asked does.
        if self.num_boards > _NODES_UP_TO or self.are_alike:
            return
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

    def _set_floor(self, share: Fraction) -> None:
        """Lift the floor by what one price vector for all boards cannot prove.

        Where it takes long the first dives go on beside it.
        """
        state, budget = self.state, self.budget
        if self.num_boards > _NODES_UP_TO or self.is_wider:
            return
        state.begin_stage("floor of sets")
        task = SetFloorTask(
            state.floor,
            tuple(self.generation.columns),
            tuple(self.generation.met),
            state.plan.cost,
            budget.work_left(budget.used + share),
            budget.seconds_of(share),
        )
        if self.is_small or self.are_alike:
            self.waves.without(task)
        else:
            self.waves.next(beside=task)
        state.end_stage()

    def _at_the_floor(self) -> None:
        """Where few patterns lose little enough, try whether they make a plan at the floor."""
        state = self.state
        state.begin_stage("at the floor")
        columns = nearly_lossless(
            self.yard, state.need, state.floor, state.enough, self.budget
        )
        if columns is not None:
            self.waves.best_of(columns)
        state.end_stage()

    def _board_sets(self) -> None:
        """Where few boards will do, look for the cheapest that can hold everything."""
        state = self.state
        state.begin_stage("board sets")
        sets = self._sets()
        while sets.may_go_on and not state.is_done():
            known = len(sets.found)
            state.take(sets.step(state.plan, self.generation.columns, self.budget))
            for column in sets.found[known:]:
                self.generation.add(column)
        is_through = sets.is_small and not sets.is_open and not self.budget.goes_on
        if is_through and self.budget.ended is None:
            self.budget.ended = "searched"
        state.end_stage()

    def _sets(self) -> BoardSets:
        state = self.state
        rows = (self.generation.prices, self.yard.area_prices(state.need))
        return BoardSets(
            self.yard, state.need, self.short_price, state.plan, rows, self.rng
        )

    def is_enough(self, answer: Found) -> bool:
        """Whether a plan was found that need not be bettered."""
        plan = answer.plan
        return plan is not None and plan.is_whole and plan.cost <= self.state.enough

    def taken(self, answers: Iterable[Found]) -> bool:
        """Keep what was found; whether it is a better plan."""
        is_better = False
        for answer in answers:
            self.budget.spend(answer.work)
            for column in answer.columns:
                self.generation.add(column)
            if answer.plan is not None:
                is_better |= self.state.take(answer.plan)
            if isinstance(answer, Lifted):
                self.state.raise_floor(answer.floor)
        return is_better

    def pool(self) -> list[Column]:
        """The known patterns that pay best."""
        return self.generation.best_paying(_POOL)

    def _hear_floor(self, floor: int) -> None:
        self.state.raise_floor(self.generation.best)
        self.crew.get_ready()
