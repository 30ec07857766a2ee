"""Dives and repairs by turns: a dive finds a plan of another kind, repairs make the best of it."""

from __future__ import annotations

from fractions import Fraction
from typing import TYPE_CHECKING

from yieldplan.packing.filling.first_plan import all_copies
from yieldplan.packing.improving.dives import AT_ONCE
from yieldplan.packing.improving.neighbourhoods import Repair
from yieldplan.packing.improving.one_less import OneLess, Reached
from yieldplan.packing.searching.allowed import are_hardly_alike

if TYPE_CHECKING:
    from yieldplan.packing.searching.search import Search

_IDLE = 40
"""Dives, and repairs, in vain after which the search has found all it will find."""
_DIVES_UP_TO = 120
"""Of more boards a dive takes too long: repairs alone improve the plan."""
_STILL_FAR = Fraction(51, 50)
"""Where the floor is nearer, no more work is allowed than for every job."""
_LEAST, _MOST = 500_000, 20_000_000
"""Most work of a repair: small where little work is allowed."""
_RARER = 4
"""Where boards are alike, dives get one in so many parts of the work of their repairs."""
_FIRST_LINES, _MOST_OF_A_LINE = 250_000, 3_000_000
"""Work of a line: little at first, to be through early where it is easy."""


class Turns:
    """The turns of one search."""

    def __init__(self, search: Search) -> None:
        self._search = search
        self._may_dive = search.num_boards <= _DIVES_UP_TO
        self._idle_dives = self._idle_repairs = 0
        self._work_of_dives = self._work_of_repairs = 0
        self._repair: Repair | None = None
        self._one_less: OneLess | None = None

    def to_the_end(self) -> None:
        """Until nothing more is found or all work is done; more is allowed where it is likely to pay."""
        self.run(is_last=True)
        state = self._search.state
        is_far = state.plan.cost > _STILL_FAR * state.floor.value
        # Of such parts the best plan comes late, and by luck.
        if is_far and are_hardly_alike(state.need) and self._search.budget.stretch():
            self.run(is_last=True)

    def run(self, share: Fraction = Fraction(1), *, is_last: bool = False) -> None:
        """Turn after turn, until many were in vain.

        Parameters
        ----------
        share
            Of the work that is left.
        is_last
            Whether nothing else is to be tried after it.
        """
        state, budget = self._search.state, self._search.budget
        share = budget.used + share * (1 - budget.used)
        stage = ""
        while not state.is_done() and not budget.is_over(share):
            dives, repairs = self._may_go_on
            if not dives and not repairs:
                if is_last:
                    budget.ended = "searched"
                break
            share_of_dives = _RARER if self._are_alike else 1
            is_turn = share_of_dives * self._work_of_dives <= self._work_of_repairs
            now = "dive" if dives and (is_turn or not repairs) else "repair"
            if now != stage:
                if stage:
                    state.end_stage()
                state.begin_stage(now)
                stage = now
            if stage == "dive":
                self._dive()
            elif self._are_alike:
                self._with_one_less()
            else:
                self._mend()
        if stage:
            state.end_stage()

    @property
    def _may_go_on(self) -> tuple[bool, bool]:
        """Whether dives, and repairs, may still find something."""
        if self._search.budget.goes_on:
            return self._may_dive, True
        dives = self._may_dive and self._idle_dives < _IDLE
        return dives, self._idle_repairs < _IDLE

    @property
    def _are_alike(self) -> bool:
        """Whether plans cost a whole number of boards alike, and one less can be tried."""
        plan = self._search.state.plan
        return self._search.are_alike and plan.is_whole and len(plan.patterns) > 1

    def _dive(self) -> None:
        waves, budget = self._search.waves, self._search.budget
        before = budget.done
        is_better = waves.next()
        idle = AT_ONCE if waves.are_long else 0
        self._idle_dives = 0 if is_better else self._idle_dives + idle
        self._work_of_dives += budget.done - before

    def _with_one_less(self) -> None:
        search = self._search
        state, budget = search.state, search.budget
        if self._one_less is None:
            self._one_less = OneLess(search.yard, search.generation.prices, state.need)
        before, plan = budget.done, state.plan
        most = min(_MOST_OF_A_LINE, _FIRST_LINES << self._one_less.waves)
        work = budget.work_for(AT_ONCE, _FIRST_LINES, most)
        asked = self._one_less.asked(all_copies(search.yard), search.pool())
        answers: list[Reached] = search.crew.run(
            asked,
            self._one_less.lines(plan, state.floor.value, work),
            budget.seconds_left,
            search.is_enough,
        )
        self._one_less.go_on(answers)
        is_better = search.taken(answers)
        self._idle_repairs = 0 if is_better else self._idle_repairs + AT_ONCE
        # A turn counts for something, also where there was money for nothing.
        self._work_of_repairs += max(budget.done - before, _FIRST_LINES)

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
        work = budget.work_for(AT_ONCE, _LEAST, _MOST)
        places = self._repair.choose(state.plan, search.pool(), AT_ONCE, work)
        answers = search.crew.run(None, places, budget.seconds_left)
        for answer in answers:
            budget.spend(answer.work)
            for column in answer.columns:
                generation.add(column)
        is_better = state.take(self._repair.taken(state.plan, answers))
        self._idle_repairs = 0 if is_better else self._idle_repairs + len(places)
        # A turn counts for something, also where it did nothing.
        self._work_of_repairs += budget.done - before + 1
