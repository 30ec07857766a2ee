"""Dives and repairs by turns: a dive finds a plan of another kind, repairs make the best of it."""

from __future__ import annotations

from fractions import Fraction
from typing import TYPE_CHECKING

from yieldplan.packing.dives import AT_ONCE
from yieldplan.packing.repair import Repair

if TYPE_CHECKING:
    from yieldplan.packing.search import Search

_IDLE = 40
"""Dives, and repairs, in vain after which the search has found all it will find."""
_DIVES_UP_TO = 120
"""Of more boards a dive takes too long: repairs alone improve the plan."""


class Turns:
    """The turns of one search."""

    def __init__(self, search: Search) -> None:
        self._search = search
        self._idle_dives = self._idle_repairs = 0
        self._work_of_dives = self._work_of_repairs = 0
        self._repair: Repair | None = None

    def run(self, share: Fraction = Fraction(1)) -> None:
        """Turn after turn, until many were in vain.

        Parameters
        ----------
        share
            Of the work that is left.
        """
        search = self._search
        state, budget = search.state, search.budget
        share = budget.used + share * (1 - budget.used)
        state.begin_stage("dive")
        while not state.is_done() and not budget.is_over(share):
            if not budget.goes_on and self._is_through:
                budget.ended = "searched"
                break
            may_dive = search.num_boards <= _DIVES_UP_TO
            if may_dive and self._work_of_dives <= self._work_of_repairs:
                state.begin_stage("dive")
                self._dive()
            else:
                state.begin_stage("repair")
                self._mend()
        state.end_stage()

    @property
    def _is_through(self) -> bool:
        dives = self._idle_dives >= _IDLE or self._search.num_boards > _DIVES_UP_TO
        return dives and self._idle_repairs >= _IDLE

    def _dive(self) -> None:
        waves, budget = self._search.waves, self._search.budget
        before = budget.done
        is_better, is_long = waves.next(), waves.are_long
        self._idle_dives = 0 if is_better else self._idle_dives + AT_ONCE * is_long
        self._work_of_dives += budget.done - before

    def _mend(self) -> None:
        search = self._search
        state, budget, generation = search.state, search.budget, search.generation
        before = budget.done
        if self._repair is None:
            self._repair = Repair(
                search.yard,
                state.need,
                search.short_price,
                generation.prices,
                search.rng,
            )
        places = self._repair.choose(state.plan, search.pool(), AT_ONCE)
        answers = search.crew.run(None, places, budget.seconds_left)
        for answer in answers:
            budget.spend(answer.work)
            for column in answer.columns:
                generation.add(column)
        is_better = state.take(self._repair.taken(state.plan, answers))
        self._idle_repairs = 0 if is_better else self._idle_repairs + len(places)
        self._work_of_repairs += budget.done - before
