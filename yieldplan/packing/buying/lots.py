"""Panels whose strips must be of one colour: which lot of the yard each of them comes from.

First every board may serve, which gives the floor: no choice of lots costs less. Where that
plan mixes lots within a panel, the likely lots are tried one by one in a short search, panel
after panel, and the best choice is searched in earnest.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from concurrent.futures import Executor
from dataclasses import replace

from yieldplan.packing.buying.packs import solve_by_pack as solve
from yieldplan.packing.buying.portions import Clock
from yieldplan.packing.filling.known import Known
from yieldplan.packing.floors.bound import certify
from yieldplan.packing.patterns.pricing import Pricing
from yieldplan.packing.problem import Problem
from yieldplan.packing.searching.solution import Solution
from yieldplan.packing.stop import Progress, Stop

_MOST_LOTS = 6
"""Lots tried for a panel: those with most wood."""
_SHORT = 8
"""A short search takes this part of the work of a full one."""


def solve_by_lot(
    problem: Problem,
    lots: Sequence[str],
    of_one_lot: Sequence[int],
    stop: Stop,
    hear: Callable[[Progress], None],
    wood: str = "",
    executor: Executor | None = None,
    known: Known | None = None,
) -> Solution:
    """The cheapest plan found in which these demands are each made from one lot.

    Parameters
    ----------
    lots
        Lot of each bin; boards without one serve no panel of one colour.
    of_one_lot
        Demands that must be.
    known
        What an earlier search of nearly the same problem found.
    """
    clock = Clock(stop)
    first = clock.part(2) if of_one_lot else stop
    freely = solve(problem, first, hear, wood, executor, known)
    if not of_one_lot or _is_kept(freely, problem, lots, of_one_lot):
        return freely
    work = max(1, freely.work // _SHORT)
    chosen = problem
    for demand in of_one_lot:
        tries = [
            kept_to(chosen, demand, lot, lots) for lot in _likely(problem, demand, lots)
        ] or [kept_to(chosen, demand, "", lots)]
        if len(tries) == 1 or stop.asked.is_set():
            chosen = tries[0]
            continue
        # By the clock, half of what is left is for all tries together.
        searches = 2 * len(of_one_lot) * len(tries)
        quick = replace(clock.part(searches), work=work)
        chosen = min(
            tries,
            key=lambda each: _key(
                solve(each, quick, lambda _: None, wood, executor), each
            ),
        )
    found = solve(chosen, clock.part(1), hear, wood, executor)
    if found.need == freely.need:
        return replace(found, bound=freely.bound)
    # Other parts are made than freely: the same prices prove a floor for these.
    bound = certify(freely.bound.prices, found.need, Pricing(problem))
    return replace(found, bound=bound)


def kept_to(problem: Problem, demand: int, lot: str, lots: Sequence[str]) -> Problem:
    """The problem with a demand made from boards of one lot only."""
    makers = {
        number for number, item in enumerate(problem.items) if demand in item.makes
    }
    return replace(
        problem,
        bins=tuple(
            piece if lot and here == lot else replace(piece, holds=piece.holds - makers)
            for piece, here in zip(problem.bins, lots, strict=True)
        ),
    )


def _likely(problem: Problem, demand: int, lots: Sequence[str]) -> list[str]:
    """Lots that hold anything for the demand, those with most wood first."""
    area: dict[str, int] = {}
    for piece, lot in zip(problem.bins, lots, strict=True):
        if lot and any(demand in problem.items[number].makes for number in piece.holds):
            area[lot] = area.get(lot, 0) + piece.length * piece.width * piece.copies
    return sorted(area, key=lambda lot: (-area[lot], lot))[:_MOST_LOTS]


def _is_kept(
    solution: Solution, problem: Problem, lots: Sequence[str], demands: Sequence[int]
) -> bool:
    for demand in demands:
        used = {
            lots[pattern.bin]
            for pattern in solution.patterns
            if any(demand in problem.items[number].makes for number in pattern.items())
        }
        if len(used) > 1 or "" in used:
            return False
    return True


def _key(solution: Solution, problem: Problem) -> tuple[int, int]:
    missing = sum(
        short * demand.area
        for short, demand in zip(solution.short, problem.demands, strict=True)
    )
    return missing, solution.cost
