"""Strips of a panel: all or none of them, and all from one lot where their colour must match."""

from __future__ import annotations

import random
import time
from dataclasses import replace
from fractions import Fraction

from yieldplan.packing.buying.lots import solve_by_lot
from yieldplan.packing.floors.bound import certify
from yieldplan.packing.patterns.pricing import Pricing
from yieldplan.packing.problem import Bin, Demand, Item, Problem
from yieldplan.packing.searching.solution import Solution
from yieldplan.packing.searching.solve import solve
from yieldplan.packing.stop import Stop

STRIP = 0
CLEAR = ((0, 0), (0, 0))


def board(name: str, width: int, price: int) -> Bin:
    """A board 100 long; a strip of the panel takes 100 by 10 of it."""
    return Bin(
        name=name,
        length=100,
        width=width,
        trims=(0, 0),
        edges=(0, 0),
        blocks=(),
        price=price,
        copies=1,
        holds=frozenset({0, 1}),
    )


def panel(strips: int, *bins: Bin, rails: int = 1) -> Problem:
    """A panel of equal strips, and rails of 50 by 5 that any board gives."""
    return Problem(
        demands=(
            Demand(name="panel strip", need=strips, rank=1, area=1000, whole=strips),
            Demand(name="rail", need=rails, rank=1, area=250),
        ),
        items=(
            Item(name="k1", length=99, width=9, makes={0: 1}, layers=CLEAR),
            Item(name="k2", length=49, width=4, makes={1: 1}, layers=CLEAR),
        ),
        bins=bins,
        family="C",
        kerf=1,
        step_along=1,
        step_across=1,
        marks_from="trimmed end",
    )


def lots_of_strips(solution: Solution, lots: list[str]) -> set[str]:
    return {lots[p.bin] for p in solution.patterns if STRIP in p.items()}


def test_strips_of_one_panel_come_from_one_lot() -> None:
    # Three strips. Freely from three boards at 1.00, two of lot A and one of lot C. No lot
    # has three of these, so the panel comes from lot B's one wide board at 4.00.
    problem = panel(
        3,
        board("A1", 10, 10_000),
        board("A2", 10, 10_000),
        board("B1", 30, 40_000),
        board("C1", 10, 10_000),
        rails=0,
    )
    lots = ["A", "A", "B", "C"]
    freely = solve(problem, Stop(), lambda _: None)
    assert freely.cost == 30_000
    assert lots_of_strips(freely, lots) == {"A", "C"}
    kept = solve_by_lot(problem, lots, [STRIP], Stop(), lambda _: None)
    assert kept.cost == 40_000
    assert lots_of_strips(kept, lots) == {"B"}
    # The floor is that of every plan, whatever lots it mixes.
    assert kept.bound == freely.bound


def test_boards_without_a_lot_make_no_panel_of_one_colour() -> None:
    problem = panel(2, board("N1", 10, 10_000), board("N2", 10, 10_000))
    kept = solve_by_lot(problem, ["", ""], [STRIP], Stop(), lambda _: None)
    assert kept.short == (2, 0)
    assert kept.need == (0, 1)
    assert kept.bound == certify(kept.bound.prices, kept.need, Pricing(problem))


def test_a_panel_that_lacks_a_strip_is_left_out_whole() -> None:
    # Two strips fit, three are needed: none is cut, and the rails get the wood.
    problem = panel(3, board("W1", 20, 30_000), rails=8)
    solution = solve(problem, Stop(), lambda _: None)
    assert solution.short == (3, 0)
    assert solution.need == (0, 8)


def test_a_lot_is_tried_only_where_it_holds_the_strips() -> None:
    short = replace(board("S1", 30, 5_000), length=60)
    problem = panel(2, short, board("B1", 30, 40_000))
    kept = solve_by_lot(problem, ["A", "B"], [STRIP], Stop(), lambda _: None)
    assert lots_of_strips(kept, ["A", "B"]) == {"B"}
    assert kept.short == (0, 0)


def test_by_the_clock_all_searches_for_one_colour_keep_within_its_time() -> None:
    # Plates of four sizes on boards of all widths: at a gap of nothing no search ends by
    # itself. Five of them (freely, three lots, the best one) take the time of one, not
    # ten seconds; the limit leaves room for a machine that is busy otherwise.
    rng = random.Random(3)
    sizes = [(49, 4), (37, 6), (61, 5), (23, 7)]
    plain = panel(4)
    bins = []
    for number in range(24):
        long, wide = rng.randint(100, 160), rng.randint(11, 17)
        price = long * wide + rng.randint(0, 200)
        each = replace(board(f"B{number}", wide, price), length=long)
        bins.append(replace(each, holds=frozenset(range(5))))
    problem = replace(
        plain,
        demands=(
            plain.demands[0],
            *(Demand(name=f"plate {x}", need=6, rank=1, area=x * y) for x, y in sizes),
        ),
        items=(
            plain.items[0],
            *(
                Item(name=f"k{x}", length=x, width=y, makes={n: 1}, layers=CLEAR)
                for n, (x, y) in enumerate(sizes, 1)
            ),
        ),
        bins=tuple(bins),
    )
    lots = ["ABC"[number % 3] for number in range(24)]
    stop = Stop(gap=Fraction(0), seconds=2)
    began = time.monotonic()
    found = solve_by_lot(problem, lots, [STRIP], stop, lambda _: None)
    assert time.monotonic() - began < 2.5 * 2
    assert found.ended == "clock"
