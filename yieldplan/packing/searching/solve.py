"""The packer's one question: the cheapest plan found within the stop, and the floor under it."""

from __future__ import annotations

from collections.abc import Callable
from concurrent.futures import Executor
from dataclasses import replace

from yieldplan.packing.filling.known import Known
from yieldplan.packing.floors.bound import Certificate
from yieldplan.packing.problem import Problem
from yieldplan.packing.searching.search import Search
from yieldplan.packing.searching.solution import Solution
from yieldplan.packing.searching.wider import PLAIN, search_wider
from yieldplan.packing.stop import Progress, Stop

__all__ = ["Solution", "solve"]


def solve(
    problem: Problem,
    stop: Stop,
    hear: Callable[[Progress], None],
    wood: str = "",
    executor: Executor | None = None,
    known: Known | None = None,
) -> Solution:
    """The cheapest plan found within the stop, and the floor under it.

    Wood that costs nothing is not wasted either: where no piece has a price the plan
    that takes the least area is looked for.

    Parameters
    ----------
    hear
        Told of every better plan and floor.
    executor
        Where parts of the search are done side by side (see `crew.hands`); None does
        all of it here. The plan is the same.
    known
        What an earlier search of nearly the same problem found; of free wood nothing is.
    """
    if any(piece.price for piece in problem.bins):
        return _search(problem, stop, hear, wood, executor, known)
    by_area = replace(
        problem,
        offcut_percent=0,
        bins=tuple(
            replace(piece, price=piece.length * piece.width // 10**6)
            for piece in problem.bins
        ),
    )

    def hear_nothing_paid(progress: Progress) -> None:
        hear(replace(progress, cost=0, bound=0))

    found = _search(by_area, stop, hear_nothing_paid, wood, executor)
    none = (0,) * len(problem.demands)
    return replace(
        found,
        cost=0,
        bound=Certificate(none, 0, 0),
        stages=tuple(replace(stage, cost=0, bound=0) for stage in found.stages),
    )


def _search(
    problem: Problem,
    stop: Stop,
    hear: Callable[[Progress], None],
    wood: str,
    executor: Executor | None,
    known: Known | None = None,
) -> Solution:
    if problem.family in PLAIN:
        return search_wider(problem, stop, hear, wood, executor, known)
    return Search(problem, stop, hear, wood, executor, known).run()
