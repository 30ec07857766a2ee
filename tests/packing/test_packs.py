"""Whole packs: the plan found is the cheapest of all choices of packs, and its floor is proved."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction
from itertools import combinations
from math import gcd

import hypothesis.strategies as st
from hypothesis import HealthCheck, given, settings

from tests.benchmarks.planted import plant
from tests.packing.exact_model import cheapest
from tests.packing.from_the_page import Page
from tests.packing.random_problems import problems
from tests.packing.valid import assert_is_of_its_family
from yieldplan.packing.buying.packs import solve_by_pack
from yieldplan.packing.buying.portions import Portions
from yieldplan.packing.problem import Problem
from yieldplan.packing.searching.solution import Solution
from yieldplan.packing.stop import Stop


@st.composite
def packed_problems(draw: st.DrawFn) -> Problem:
    """A tiny problem, some of whose boards are sold in one pack or two."""
    problem = draw(
        problems(most_bins=4, most_items=2, most_need=2, longest=26, widest=12)
    )
    pack_of = [draw(st.sampled_from([0, 1, 1, 2])) for _ in problem.bins]
    packs = tuple(
        pack
        for place in (1, 2)
        if (pack := tuple(n for n, each in enumerate(pack_of) if each == place))
    )
    return replace(problem, packs=packs, offcut_percent=0)


def choices(problem: Problem) -> Iterator[tuple[tuple[int, ...], ...]]:
    """Every choice of packs, none and all too."""
    for count in range(len(problem.packs) + 1):
        yield from combinations(problem.packs, count)


def price_of(choice: tuple[tuple[int, ...], ...], problem: Problem) -> int:
    bins = problem.bins
    return sum(bins[n].price * bins[n].copies for pack in choice for n in pack)


def cheapest_by_pack(problem: Problem) -> int | None:
    """The packs chosen in every way; what is in them is paid, the others are not there."""
    found = []
    packed = {n for pack in problem.packs for n in pack}
    for choice in choices(problem):
        opened = {n for pack in choice for n in pack}
        bins = tuple(
            replace(piece, price=0)
            if number in opened
            else replace(piece, holds=frozenset())
            if number in packed
            else piece
            for number, piece in enumerate(problem.bins)
        )
        rest = cheapest(replace(problem, packs=(), bins=bins))
        if rest is not None:
            found.append(price_of(choice, problem) + rest)
    return min(found, default=None)


def proved(problem: Problem, solution: Solution) -> int:
    """The floor by the page, from values found by trying every pattern."""
    pages = [Page(problem, piece) for piece in problem.bins]

    def more(prices: tuple[int, ...], number: int) -> int:
        piece = problem.bins[number]
        value = pages[number].greatest(prices, problem.family)
        return piece.copies * (piece.price - value)

    def asked(prices: tuple[int, ...]) -> int:
        return sum(p * n for p, n in zip(prices, solution.need, strict=True))

    alone = [
        n for n in range(len(pages)) if not any(n in pack for pack in problem.packs)
    ]
    prices = solution.bound.prices
    priced = asked(prices)
    priced += sum(min(0, more(prices, n)) for n in alone)
    priced += sum(min(0, sum(more(prices, n) for n in p)) for p in problem.packs)
    assert priced == solution.bound.priced
    of_packs = [price_of((pack,), problem) for pack in problem.packs]
    g = gcd(*of_packs, *(problem.bins[n].price for n in alone))
    value = max(0, -(-priced // g) * g) if g else 0
    proof = solution.bound.packs
    if proof is None:
        return value
    single = gcd(*(problem.bins[n].price for n in alone))
    for choice in choices(problem):
        price = price_of(choice, problem)
        if price >= proof.least:
            continue
        most = 0
        for row in proof.rows:
            rest = asked(row.prices) + sum(min(0, more(row.prices, n)) for n in alone)
            # Of the packs in the choice every copy gives its value, the price being paid.
            rest += sum(more(row.prices, n) for pack in choice for n in pack) - price
            most = max(most, rest)
        if single:
            assert price + -(-most // single) * single >= proof.least
        else:
            assert most > 0
    return max(value, proof.least)


@given(packed_problems())
@settings(max_examples=60, deadline=None, suppress_health_check=list(HealthCheck))
def test_no_choice_of_packs_is_cheaper_than_the_floor_and_the_plan_is_about_the_cheapest(
    problem: Problem,
) -> None:
    solution = solve_by_pack(problem, Stop(work=1_500_000), lambda _: None)
    for pattern in solution.patterns:
        assert_is_of_its_family(pattern, problem)
    used = {pattern.bin for pattern in solution.patterns}
    opened = [pack for pack in problem.packs if used & set(pack)]
    alone = [
        p.bin for p in solution.patterns if not any(p.bin in k for k in problem.packs)
    ]
    paid = price_of(tuple(opened), problem) + sum(problem.bins[n].price for n in alone)
    assert solution.cost == paid
    value = proved(problem, solution)
    assert solution.bound.value == value <= solution.cost
    if not any(solution.short):
        best = cheapest_by_pack(problem)
        assert best is not None
        assert value <= best <= solution.cost
        if solution.ended == "proved":
            assert best == solution.cost


def test_a_pack_that_is_far_too_dear_keeps_no_plan_from_being_found() -> None:
    # Twenty parts cut of one board; a pack of like boards is offered at three times the price.
    planted = plant(17)
    problem, count = planted.problem, len(planted.problem.bins)
    dear = [replace(piece, price=3 * piece.price) for piece in problem.bins[:2]]
    problem = replace(problem, bins=(*problem.bins, *dear), packs=((count, count + 1),))
    solution = solve_by_pack(problem, Stop(), lambda _: None)
    assert solution.cost == planted.cost
    assert [stage.name for stage in solution.stages][-1] == "in earnest"


def test_portions_keep_a_third_for_the_last_search() -> None:
    portions = Portions(Stop(work=900))
    portions.took(599)
    assert not portions.is_over(Fraction(2, 3))
    portions.took(1)
    assert portions.is_over(Fraction(2, 3))
    assert portions.rest(Fraction(0)).work == 300
