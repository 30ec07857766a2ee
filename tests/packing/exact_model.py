"""The cheapest plan of a tiny problem by another way: all patterns enumerated, chosen by HiGHS.

Nothing is shared with the packer but the problem: patterns come from plain recursion over
the page's rules, the choice from a mixed-integer program.
"""

from __future__ import annotations

from functools import lru_cache

import highspy

from tests.packing.from_the_page import Page
from yieldplan.packing.problem import Problem

Made = tuple[int, ...]


def _best_only(found: set[Made]) -> frozenset[Made]:
    """Without those that another one makes at least as much as."""
    return frozenset(
        one
        for one in found
        if not any(
            other != one and all(a >= b for a, b in zip(other, one, strict=True))
            for other in found
        )
    )


def makes_of_bin(problem: Problem, number: int, need: Made) -> frozenset[Made]:
    """What one copy of a bin can make, every way there is, up to what is needed."""
    piece = problem.bins[number]
    page = Page(problem, piece)
    none: Made = (0,) * len(need)
    if page.along < 1 or page.across < 1:
        return frozenset({none})

    def plus(one: Made, other: Made) -> Made:
        return tuple(min(n, a + b) for n, a, b in zip(need, one, other, strict=True))

    def of(item: int) -> Made:
        makes = problem.items[item].makes
        return tuple(makes.get(demand, 0) for demand in range(len(need)))

    def joined(ones: frozenset[Made], others: frozenset[Made]) -> set[Made]:
        return {plus(one, other) for one in ones for other in others}

    singly = piece.holds - problem.in_sets()
    ripped_across, _ = page.room(0, page.along, "R")

    @lru_cache(None)
    def ripped(u: int, v: int, i: int) -> frozenset[Made]:
        if i >= page.along:
            return frozenset({none})
        found = set(ripped(u, v, i + 1))
        for item in singly:
            long, wide = page.takes(item)
            if (
                i + long <= page.along
                and wide <= v - u
                and page.may_lie(item, i, i + long, u, v, "R")
            ):
                found |= {plus(of(item), rest) for rest in ripped(u, v, i + long)}
        return _best_only(found)

    @lru_cache(None)
    def rip_board(u: int) -> frozenset[Made]:
        if u >= ripped_across:
            return frozenset({none})
        found = set(rip_board(u + 1))
        for v in range(u + 1, ripped_across + 1):
            found |= joined(ripped(u, v, 0), rip_board(v))
        return _best_only(found)

    @lru_cache(None)
    def strip(i: int, j: int, u: int, v: int, left: int) -> frozenset[Made]:
        found = {none}
        for item in singly:
            long, wide = page.takes(item)
            if long <= left and wide <= v - u and page.may_lie(item, i, j, u, v):
                found |= {
                    plus(of(item), rest) for rest in strip(i, j, u, v, left - long)
                }
        return _best_only(found)

    @lru_cache(None)
    def section(i: int, j: int, u: int) -> frozenset[Made]:
        across, _ = page.room(i, j, "C")
        if u >= across:
            return frozenset({none})
        found = set(section(i, j, u + 1))
        for v in range(u + 1, across + 1):
            found |= joined(strip(i, j, u, v, j - i), section(i, j, v))
        return _best_only(found)

    @lru_cache(None)
    def crosscut_board(i: int) -> frozenset[Made]:
        if i >= page.along:
            return frozenset({none})
        found = set(crosscut_board(i + 1))
        for j in range(i + 1, page.along + 1):
            found |= joined(section(i, j, 0), crosscut_board(j))
        for steps in problem.sets:
            if piece.is_straight and set(steps) <= piece.holds:
                end, made = in_steps(i, steps)
                if end:
                    found |= joined(made, crosscut_board(end))
        return _best_only(found)

    def in_steps(i: int, steps: tuple[int, ...]) -> tuple[int, frozenset[Made]]:
        """Where a set that begins at i ends, and what it and the strips beside it make."""
        ways, at = {0, 1}, i
        made = frozenset({none})
        for step in steps:
            long, wide = page.takes(step)
            if at + long > page.along or wide > page.across:
                return 0, frozenset()
            ways &= page.ways_up(step, at, at + long, 0, wide, "C")
            made = _best_only(joined(made, frozenset({of(step)})))
            made = _best_only(joined(made, section(at, at + long, wide)))
            at += long
        return (at, made) if ways else (0, frozenset())

    found: set[Made] = set()
    if problem.family in ("R", "E"):
        found |= rip_board(0)
    if problem.family in ("C", "E"):
        found |= crosscut_board(0)
    return _best_only(found)


def cheapest(problem: Problem) -> int | None:
    """Least cost of a plan that makes at least what is needed; None when there is none."""
    need = tuple(demand.need for demand in problem.demands)
    model = highspy.Highs()
    model.silent()
    covers: list[list[tuple[int, object]]] = [[] for _ in need]
    cost = []
    for number, piece in enumerate(problem.bins):
        used = []
        for made in sorted(makes_of_bin(problem, number, need)):
            if not any(made):
                continue
            # In thousands: the solver works with floating point, the answer is whole.
            take = model.addIntegral(lb=0, ub=piece.copies)
            used.append(take)
            cost.append((piece.price // 1000, take))
            for demand, count in enumerate(made):
                if count:
                    covers[demand].append((count, take))
        if used:
            model.addConstr(sum(1 * take for take in used) <= piece.copies)
    for asked, cover in zip(need, covers, strict=True):
        if not asked:
            continue
        if not cover:
            return None
        model.addConstr(sum(count * take for count, take in cover) >= asked)
    if not any(need):
        return 0
    model.minimize(sum(price * take for price, take in cost))
    if model.getModelStatus() != highspy.HighsModelStatus.kOptimal:
        return None
    return round(model.getObjectiveValue()) * 1000
