"""A wood searched again: the search begins with what an earlier one knew, and asks for less time."""

from __future__ import annotations

from collections.abc import Callable
from concurrent.futures import Executor

from yieldplan.packing.fast import warm_up
from yieldplan.packing.known import Known
from yieldplan.packing.problem import Problem
from yieldplan.packing.search import Search
from yieldplan.packing.solution import Solution
from yieldplan.packing.solve import solve
from yieldplan.packing.stop import Progress, Stop
from yieldplan.packing.wider import PLAIN


def solve_again(
    problem: Problem,
    stop: Stop,
    hear: Callable[[Progress], None],
    wood: str = "",
    executor: Executor | None = None,
    known: Known | None = None,
) -> Solution:
    """As `solve`, from what is known. Free wood is searched as if nothing were."""
    if known is None or not any(piece.price for piece in problem.bins):
        return solve(problem, stop, hear, wood, executor)
    if problem.family in PLAIN:
        # A known plan stands in for the plain search: no part of it need be found first.
        warm_up()
    return Search(problem, stop, hear, wood, executor, known).run()
