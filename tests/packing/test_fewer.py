"""Fewer sheets: what they leave unmade becomes nothing, and only then is it a plan.

The plates are those of a published instance (`tests/reference/cutting_instances.toml`).
"""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from tests.benchmarks.sheets import JOBS
from tests.packing.plates import make_problem
from yieldplan.packing import Problem, Stop
from yieldplan.packing.filling.first_plan import all_copies
from yieldplan.packing.grid.pattern import left_after
from yieldplan.packing.searching.fewer import Fewer
from yieldplan.packing.searching.search import Search


def begun(problem: Problem) -> Search:
    """A search with a plan at once, and prices."""
    search = Search(problem, Stop(gap=Fraction(0)), lambda _: None, "plywood")
    search.state.take(search._begin())
    search.price()
    return search


def test_a_sheet_less() -> None:
    search = begun(JOBS["plates"](2, "E"))
    state = search.state
    cost, need = state.plan.cost, [d.need for d in search.yard.problem.demands]
    assert cost > state.floor.value, "nothing to find"
    fewer = Fewer(search)
    for _ in range(60):
        fewer.step()
        assert state.plan.is_whole
        if state.plan.cost < cost:
            break
    assert state.floor.value <= state.plan.cost < cost
    assert not any(left_after(state.plan.patterns, need, search.yard.problem))
    assert len(state.plan.patterns) <= all_copies(search.yard)[0]


def test_only_for_many_of_few_sizes() -> None:
    assert Fewer.is_for(begun(JOBS["plates"](2, "E")))
    offcuts = replace(
        JOBS["plates"](2, "E"), offcut_percent=30, offcut_sizes=((40, 20),)
    )
    assert not Fewer.is_for(begun(offcuts))
    stick = make_problem((192, 40), [(66, 40), (52, 40)], [4, 4], "R", copies=9)
    assert not Fewer.is_for(begun(stick))
