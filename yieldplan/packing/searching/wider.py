"""Narrow parts beside marks are looked for last: a plan that does without them is there at once, and stays unless they save something."""

from __future__ import annotations

from collections.abc import Callable
from concurrent.futures import Executor
from dataclasses import replace

from yieldplan.model.plan import Family
from yieldplan.packing.filling.known import Known
from yieldplan.packing.patterns.fast import warm_up
from yieldplan.packing.problem import Problem
from yieldplan.packing.searching.search import Search
from yieldplan.packing.searching.solution import Solution
from yieldplan.packing.stop import Progress, Stop

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
    known: Known | None = None,
) -> Solution:
    """The cheapest plan found of a wider family, never dearer than its plain one.

    Every pattern of the plain family is one of the wider too; its floor is not, so none
    is told before the wider family's own. What is known already stands in for the plain
    search.
    """
    warm_up()
    if known is not None:
        return Search(problem, stop, hear, wood, executor, known).run()

    def hear_plan(progress: Progress) -> None:
        hear(replace(progress, bound=0))

    family = PLAIN[problem.family]
    search = Search(
        replace(problem, family=family), _part(stop, 1), hear_plan, wood, executor
    )
    plain = search.run()

    def hear_on(progress: Progress) -> None:
        hear(replace(progress, work=plain.work + progress.work))

    known = Known(search.state.plan.patterns, search.generation.columns)
    found = Search(
        problem, _part(stop, _FIRST - 1), hear_on, wood, executor, known
    ).run()
    stages = (replace(stage, bound=0) for stage in plain.stages)
    return replace(found, stages=(*stages, *found.stages), work=plain.work + found.work)


def _part(stop: Stop, thirds: int) -> Stop:
    """So many thirds of a stop that says how much may be done; else it is by the job's size."""
    return replace(
        stop,
        work=None if stop.work is None else stop.work * thirds // _FIRST,
        seconds=None if stop.seconds is None else stop.seconds * thirds / _FIRST,
    )
