"""Boards the yard sells only as whole packs: which packs to open first, then how to cut what is in them.

An opened pack is paid for, whatever is cut of it. So the packs are chosen outside, by what
each choice must cost at the least (`pack_choices`), the most promising first; the boards of
the chosen packs then cost next to nothing, and the search decides how to cut them and what to
buy besides.
"""

from __future__ import annotations

from collections.abc import Callable
from concurrent.futures import Executor
from dataclasses import replace
from fractions import Fraction

import numpy as np

from yieldplan.model.plan import Stage
from yieldplan.packing.buying.opened import Found, shared_out, with_opened
from yieldplan.packing.buying.pack_choices import PackChoices, numbers_of, parts_of
from yieldplan.packing.buying.portions import Portions
from yieldplan.packing.filling.known import Known
from yieldplan.packing.filling.yard import Yard
from yieldplan.packing.floors.column_generation import Generation
from yieldplan.packing.problem import Problem
from yieldplan.packing.searching.solution import Solution
from yieldplan.packing.searching.solve import solve
from yieldplan.packing.stop import Budget, Ended, Progress, Stop

_SHORT = 12
"""A search within one choice of packs takes this part of the work."""
_CHOOSING = Fraction(2, 3)
"""Part of the allowance that the choice of packs may use up."""


def solve_by_pack(
    problem: Problem,
    stop: Stop,
    hear: Callable[[Progress], None],
    wood: str = "",
    executor: Executor | None = None,
    known: Known | None = None,
) -> Solution:
    """The cheapest plan found in which every pack is bought whole or not at all.

    What an earlier search knew is of use only where there are no packs.
    """
    if not problem.packs:
        return solve(problem, stop, hear, wood, executor, known)
    if not any(piece.price for piece in problem.bins):
        return solve(replace(problem, packs=()), stop, hear, wood, executor)
    return _Packs(problem, stop, hear, wood, executor).run()


class _Packs:
    def __init__(
        self,
        problem: Problem,
        stop: Stop,
        hear: Callable[[Progress], None],
        wood: str,
        executor: Executor | None,
    ) -> None:
        self.problem, self.stop, self.hear, self.wood = problem, stop, hear, wood
        self.executor = executor
        self._pack_of = {
            number: place for place, pack in enumerate(problem.packs) for number in pack
        }
        self.portions = Portions(stop)
        self.stages: list[Stage] = []

    def run(self) -> Solution:
        problem = self.problem
        free = solve(
            replace(problem, packs=()),
            self.portions.first(),
            self._hear_freely,
            self.wood,
            self.executor,
        )
        self.portions.took(free.work)
        self.need = free.need
        self.short = free.short
        self._for_need = replace(
            problem,
            demands=tuple(
                replace(demand, need=count)
                for demand, count in zip(problem.demands, self.need, strict=True)
            ),
        )
        self.yard = Yard(self._for_need)
        self.choices = PackChoices(self._for_need, self.need, self.yard.pricing)
        self.choices.add_row(free.bound.prices)
        self.best = self._found(free)
        self._end_stage("bought singly")
        self._first_choices()
        self._end_stage("first packs")
        self._other_choices()
        self._end_stage("packs")
        self._in_earnest()
        self._end_stage("in earnest")
        return self._solution()

    # -- stages ----------------------------------------------------------------

    def _first_choices(self) -> None:
        """The packs that give most for their price, as many as are about needed."""
        self._reprice(frozenset(range(len(self.problem.packs))), as_worth=True)
        for choice in self.choices.likely():
            if not self._is_done() and not self.portions.is_over(_CHOOSING):
                self._try(choice)

    def _other_choices(self) -> None:
        """Every choice that could be cheaper, or the neighbours of the best, the most promising first."""
        tried: set[frozenset[int]] = set()
        every = self.choices.cheaper_than(self.best.cost)
        no_other = not self.problem.sold_alone()
        while not self._is_done() and not self.portions.is_over(_CHOOSING):
            choices = (
                self.choices.neighbours(self.best.opened) if every is None else every
            )
            least = self.choices.least(choices)
            order = np.lexsort((np.arange(len(least)), least))
            chosen = next(
                (
                    choice
                    for place in order
                    if least[place] < self.best.cost
                    and (choice := numbers_of(choices, int(place))) not in tried
                ),
                None,
            )
            if chosen is None:
                return
            tried.add(chosen)
            if not self._try(chosen) and every is not None and no_other:
                # What these packs cannot do, fewer of them cannot.
                tried |= set(parts_of(chosen, every))

    def _in_earnest(self) -> None:
        """The best choice once more, with as much work as if there were no packs.

        Fewer boards are cut then too, and the rest stay whole.
        """
        if self.portions.ended is not None:
            return
        opened, stop = self.best.opened, self.portions.rest(self.stop.near)
        if self._is_done():
            stop = self.portions.part(_SHORT // 4)
        paid = self._price_of(opened)
        known = Known(self.best.solution.patterns, (), self.best.solution.bound.prices)

        def hear(progress: Progress) -> None:
            cost = min(self.best.cost, paid + progress.cost)
            self._say("packs", cost, self.bound)

        self._take(self._search(opened, True, stop, hear, known))

    # -- one choice ------------------------------------------------------------

    def _try(self, opened: frozenset[int]) -> bool:
        """Look for a plan from these packs; whether one was found, or none could be better."""
        row = self.choices.as_choices([sorted(opened)])
        self._reprice(opened)
        if int(self.choices.least(row)[0]) >= self.best.cost:
            return True
        if int(self.choices.rest(row)[0]) == 0:
            # Perhaps nothing else need be bought: then any plan will do.
            found = self._solve(opened, singly=False, gap=Fraction(1))
            if found is not None:
                self._take(found)
                return True
        if not self.problem.sold_alone():
            return False
        found = self._solve(opened, singly=True)
        self._take(found)
        return found is not None

    def _reprice(self, opened: frozenset[int], *, as_worth: bool = False) -> None:
        """Prices that say what these packs can do; where they cannot, the row shows it.

        Parameters
        ----------
        as_worth
            Instead, as if all were sold singly for what each is worth of its pack's price.
        """
        if as_worth:
            last = list(self.choices.rows[-1].prices)
            problem = shared_out(self._for_need, self.yard.pricing.price(last))
        else:
            problem = with_opened(self._for_need, opened, singly=True)
        yard = Yard(problem)
        dear = max(1, sum(p.price * p.copies for p in self.problem.bins))
        budget = Budget(self.portions.part(_SHORT), self.portions.allowed // _SHORT)
        generation = Generation(yard, self.need, [min(dear, 10**12)] * len(self.need))
        generation.run(budget, Fraction(1), lambda _: None)
        self.portions.took(budget.done)
        self.choices.add_row(generation.best.prices)
        if as_worth:
            self._tell()

    def _solve(
        self,
        opened: frozenset[int],
        *,
        singly: bool,
        gap: Fraction | None = None,
    ) -> Found | None:
        stop = replace(
            self.portions.part(_SHORT), gap=self.stop.near if gap is None else gap
        )
        return self._search(opened, singly, stop, lambda _: None)

    def _search(
        self,
        opened: frozenset[int],
        singly: bool,
        stop: Stop,
        hear: Callable[[Progress], None],
        known: Known | None = None,
    ) -> Found | None:
        problem = with_opened(self._for_need, opened, singly=singly)
        found = solve(problem, stop, hear, self.wood, self.executor, known)
        self.portions.took(found.work)
        if any(found.short):
            return None
        return self._found(found)

    def _found(self, solution: Solution) -> Found:
        used = [pattern.bin for pattern in solution.patterns]
        opened = frozenset(self._pack_of[n] for n in used if n in self._pack_of)
        alone = (n for n in used if n not in self._pack_of)
        cost = self._price_of(opened) + sum(self.problem.bins[n].price for n in alone)
        return Found(solution, opened, cost)

    def _price_of(self, opened: frozenset[int]) -> int:
        return sum(int(self.choices.price[place]) for place in opened)

    # -- keeping count ---------------------------------------------------------

    @property
    def bound(self) -> int:
        """The floor so far. [money/10,000]"""
        return 0 if self.choices.best is None else self.choices.best.value

    def _is_done(self) -> bool:
        gap = self.best.cost - self.bound
        return gap <= self.stop.near * self.best.cost or self.portions.ended is not None

    def _take(self, found: Found | None) -> None:
        if found is not None and found.key < self.best.key:
            self.best = found
            self._tell()

    def _tell(self) -> None:
        self._say("packs", self.best.cost, self.bound)

    def _hear_freely(self, progress: Progress) -> None:
        # What it costs singly is no plan's cost; its floor holds.
        self._say("bought singly", self._all_packs, progress.bound)

    @property
    def _all_packs(self) -> int:
        return sum(piece.price * piece.copies for piece in self.problem.bins)

    def _say(self, stage: str, cost: int, bound: int) -> None:
        self.hear(
            Progress(
                wood=self.wood,
                stage=stage,
                cost=cost,
                bound=bound,
                work=self.portions.work,
            )
        )

    def _end_stage(self, name: str) -> None:
        self.stages.append(Stage(name=name, cost=self.best.cost, bound=self.bound))
        self._tell()

    def _solution(self) -> Solution:
        best, bound = self.best, self.choices.certificate(self.best.cost)
        ended: Ended = self.portions.ended or "searched"
        if bound.value >= best.cost:
            ended = "proved"
        elif best.cost - bound.value <= self.stop.near * best.cost:
            ended = "gap"
        return replace(
            best.solution,
            need=self.need,
            short=self.short,
            cost=best.cost,
            worths=(0,) * len(best.solution.patterns),
            bound=bound,
            stages=tuple(self.stages),
            ended=ended,
            work=self.portions.work,
        )
