"""Covers what the first plans left open; where there is too little wood, asks for less."""

from __future__ import annotations

from fractions import Fraction
from typing import TYPE_CHECKING

from yieldplan.packing.filling.packed import packed
from yieldplan.packing.floors.bound import Certificate
from yieldplan.packing.improving.least_missing import least_missing
from yieldplan.packing.stop import NO_LIMIT
from yieldplan.packing.trying.tried import Tried

if TYPE_CHECKING:
    from yieldplan.packing.searching.search import Search

_WAVES = (100_000, 400_000, 1_500_000, 1_500_000)
"""Most work of a task in each wave of dives for a whole plan, before wood counts as too little."""
_BY_TRYING = Fraction(1, 2)
"""Share of the work left in which all that few boards can make is tried."""


def make_whole(search: Search) -> None:
    """Find a plan that makes everything, or else settle what is to be made."""
    state, budget = search.state, search.budget
    shares = search.generation.shares
    state.begin_stage("too little wood")
    if shares is None or sum(shares.short) < 1e-6:
        for number, most in enumerate(_WAVES):
            if state.plan.is_whole or budget.is_over(Fraction(3, 5)):
                break
            search.waves.one(number, NO_LIMIT, most)
            if not number and not state.plan.is_whole:
                _try_all(search)
    if state.plan.is_whole:
        return
    yard = search.yard
    while True:
        state.take(least_missing(yard, state.need, state.plan, budget, search.rng))
        made = [
            count - short
            for count, short in zip(state.need, state.plan.short, strict=True)
        ]
        whole = [
            count - count % demand.whole
            for count, demand in zip(made, yard.problem.demands, strict=True)
        ]
        if whole == made:
            break
        # Some strips of a panel are no panel: their wood may make something else.
        state.need = [
            least if least < count else need
            for need, count, least in zip(state.need, made, whole, strict=True)
        ]
        state.plan = packed(state.plan.patterns, state.need, yard)
    state.need = made
    state.plan = packed(state.plan.patterns, state.need, yard)
    state.end_stage()
    # The floor so far was that of making more.
    state.floor = Certificate((0,) * len(made), 0, 0)
    search.price()


def _try_all(search: Search) -> None:
    """Where boards are few, settle whether all of them together make everything."""
    state, budget = search.state, search.budget
    if search.is_wider:
        return
    tried = Tried(
        search.yard,
        state.need,
        state.plan,
        state.floor,
        search.generation.columns,
        takes_all=True,
    )
    share = budget.used + _BY_TRYING * (1 - budget.used)
    while tried.is_open and not state.plan.is_whole and not budget.is_over(share):
        state.take(tried.step(state.plan, budget, share))
