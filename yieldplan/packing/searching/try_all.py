"""Where boards are few, every choice of them that costs less than the plan is tried; with many kinds of part, dives by turns.

What a board can make of eight kinds is listed in a second, of thirty perhaps never, and
it shows only on the way. A cheaper plan leaves fewer choices and shorter lists.
"""

from __future__ import annotations

from fractions import Fraction
from typing import TYPE_CHECKING

from yieldplan.packing.searching.allowed import SOON_LISTED
from yieldplan.packing.trying.tried import Tried

if TYPE_CHECKING:
    from yieldplan.packing.searching.search import Search

_NEAR = 1.1
"""Where a plan costs at most so many times the floor, it need not wait for a dive."""
_DIVES_FIRST = Fraction(1, 5)
"""Share of all work for dives before the first list, of more kinds; prices alone may rule out every choice before."""
_FAR, _DIVES_WHERE_FAR = 1.03, Fraction(1, 2)
"""Where a plan costs more than so many times the floor, lists are long: dives get such a share first."""


def try_all(search: Search, share: Fraction) -> None:
    """Try all choices; the floor is the plan where none does.

    Parameters
    ----------
    share
        Of the work that is left, to be used up when it ends.
    """
    state, budget = search.state, search.budget
    if search.is_wider or search.yard.problem.offcut_percent:
        return
    state.begin_stage("all choices")
    takes_turns = sum(count > 0 for count in state.need) > SOON_LISTED
    if not takes_turns and state.plan.cost > _NEAR * state.floor.value:
        search.waves.one_dive(state.plan.cost)
    tried = Tried(
        search.yard, state.need, state.plan, state.floor, search.generation.columns
    )
    share = budget.used + share * (1 - budget.used)
    of_tries = of_dives = Fraction(0)
    while tried.is_open and not state.is_done() and not budget.is_over(share):
        before = budget.used
        if takes_turns and of_tries > 0 and of_dives < max(of_tries, _least(search)):
            search.waves.next()
            of_dives += budget.used - before
        else:
            state.take(tried.step(state.plan, budget, share))
            of_tries += budget.used - before
    proof = None if state.is_done() else tried.proof(budget)
    if proof is not None:
        state.raise_floor(state.floor.with_tried(proof))
    state.end_stage()


def _least(search: Search) -> Fraction:
    """Share of all work that dives get at the least."""
    is_far = search.state.plan.cost > _FAR * search.state.floor.value
    return _DIVES_WHERE_FAR if is_far else _DIVES_FIRST
