"""Dives in waves: some side by side, and beside them the best plan of all patterns known when the wave began."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from typing import TYPE_CHECKING

from yieldplan.packing.best_of_known import BestOfKnown
from yieldplan.packing.dives import AT_ONCE, Common, DiveTask, Found, wave
from yieldplan.packing.first_plan import all_copies
from yieldplan.packing.yard import Column

if TYPE_CHECKING:
    from yieldplan.packing.search import Search

_IDLE = 40
"""Dives in vain after which the search has found all that dives will find."""
_LEAST, _MOST = 100_000, 1_500_000
"""Work of one task."""


class Waves:
    """The dives of one search."""

    def __init__(self, search: Search) -> None:
        self._search = search

    def run(self, share: Fraction) -> None:
        """Wave after wave, until many were in vain.

        Parameters
        ----------
        share
            Of the work that is left.
        """
        state, budget = self._search.state, self._search.budget
        share = budget.used + share * (1 - budget.used)
        state.begin_stage("dive")
        idle = number = 0
        while idle < _IDLE and not state.is_done() and not budget.is_over(share):
            most = min(_MOST, _LEAST << number)
            is_better = self.one(number, state.plan.cost, most)
            # The first waves are short, to be through early where it is easy.
            idle = 0 if is_better else idle + AT_ONCE * (most == _MOST)
            number += 1
        state.end_stage()

    def one(self, number: int, limit: int, most: int) -> bool:
        """One wave; whether it found a better plan.

        Parameters
        ----------
        limit
            What a plan must cost less than. [money/10,000]
        most
            Work of a task, at most.
        """
        work = self._search.budget.work_for(AT_ONCE, _LEAST, most)
        return self._take([BestOfKnown(work), *wave(number, work)], limit)

    def one_dive(self, limit: int) -> None:
        """The first dive alone, for a plan soon."""
        self._take(wave(0, _LEAST)[:1], limit)

    def best_of(self, columns: Sequence[Column]) -> None:
        """The best plan of these patterns, where it costs no more than enough."""
        limit = self._search.state.enough + 1
        self._take([BestOfKnown(_MOST)], limit, columns)

    def _take(
        self,
        tasks: Sequence[DiveTask | BestOfKnown],
        limit: int,
        columns: Sequence[Column] | None = None,
    ) -> bool:
        search = self._search
        state, budget = search.state, search.budget
        common = Common(
            tuple(state.need),
            all_copies(search.yard),
            tuple(search.short_price),
            limit,
            state.enough,
            tuple(search.pool() if columns is None else columns),
        )

        def is_enough(answer: Found) -> bool:
            plan = answer.plan
            return plan is not None and plan.is_whole and plan.cost <= common.enough

        answers = search.crew.run(common, tasks, budget.seconds_left, is_enough)
        is_better = False
        for answer in answers:
            budget.spend(answer.work)
            for column in answer.columns:
                search.generation.add(column)
            if answer.plan is not None:
                is_better |= state.take(answer.plan)
        return is_better
