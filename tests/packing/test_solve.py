"""The whole search on small problems: against an exact model, and its own certificate."""

from __future__ import annotations

from dataclasses import replace

from hypothesis import given, settings
from hypothesis import strategies as st

from tests.packing.exact_model import cheapest
from tests.packing.from_the_page import Page, floor_of
from tests.packing.random_problems import problems
from tests.packing.valid import assert_is_of_its_family
from yieldplan.packing.floors.bound import certify, lifted
from yieldplan.packing.grid.pattern import Pattern, makes_of
from yieldplan.packing.patterns.pricing import Pricing
from yieldplan.packing.problem import Problem
from yieldplan.packing.searching.solve import Solution, solve
from yieldplan.packing.stop import Stop

QUICK = 60_000
"""Units of work that are plenty for a few bins."""


def solved(problem: Problem, work: int = QUICK) -> Solution:
    return solve(problem, Stop(work=work), lambda _: None)


def made_by(solution: Solution, problem: Problem) -> list[int]:
    made = [0] * len(problem.demands)
    for pattern in solution.patterns:
        for demand, count in enumerate(makes_of(pattern, problem)):
            made[demand] += count
    return made


def worth_of(pattern: Pattern, problem: Problem) -> int:
    """What its offcut counts for, by the page."""
    page = Page(problem, problem.bins[pattern.bin])
    if pattern.breakdown == "R":
        return page.edge_worth(max(strip.v for strip in pattern.sections[0].strips))
    return page.end_worth(pattern.sections[-1].j)


def assert_sound(solution: Solution, problem: Problem) -> None:
    """Every pattern allowed, copies kept, counts and money right, the floor certified."""
    for pattern in solution.patterns:
        assert_is_of_its_family(pattern, problem)
    used = [pattern.bin for pattern in solution.patterns]
    for number, piece in enumerate(problem.bins):
        assert used.count(number) <= piece.copies
    worths = [worth_of(pattern, problem) for pattern in solution.patterns]
    # An offcut with a mark past the last cell counts in no plan.
    assert all(
        claimed in (0, worth)
        for claimed, worth in zip(solution.worths, worths, strict=True)
    )
    prices = sum(problem.bins[number].price for number in used)
    assert solution.cost == prices - sum(solution.worths)
    asked = [demand.need for demand in problem.demands]
    spares = any(item.may_spare for item in problem.items)
    for made, need, short, wish in zip(
        made_by(solution, problem), solution.need, solution.short, asked, strict=True
    ):
        assert need + short == wish
        assert made >= need
        assert made == need or spares
    bound = solution.bound
    assert bound.priced == floor_of(problem, bound.prices, solution.need)
    assert bound.value == lifted(bound.priced, problem)
    assert bound.value <= solution.cost


@settings(max_examples=25, deadline=None)
@given(problem=problems(longest=24, widest=12))
def test_never_better_than_an_exact_model_and_the_floor_never_above_it(
    problem: Problem,
) -> None:
    # Every way to make a part makes one: then "at least" and "exactly" cost the same.
    problem = replace(
        problem,
        offcut_percent=0,
        items=tuple(
            replace(item, makes={min(item.makes): 1}) for item in problem.items
        ),
    )
    solution = solved(problem)
    assert_sound(solution, problem)
    exact = cheapest(problem)
    if exact is None:
        assert any(solution.short)
    elif any(solution.short):
        # The search may miss a tight fit, but only where the wood hardly does.
        assert sum(solution.short) <= 1
    else:
        assert solution.cost >= exact
        assert solution.bound.value <= exact


@settings(max_examples=25, deadline=None)
@given(problem=problems())
def test_plans_with_sets_gangs_faces_and_copies_are_sound(problem: Problem) -> None:
    assert_sound(solved(problem), problem)


@settings(max_examples=25, deadline=None)
@given(
    problem=problems(longest=24, widest=12),
    prices=st.lists(st.integers(0, 9000), min_size=6, max_size=6),
)
def test_no_prices_prove_a_floor_above_a_plan_that_exists(
    problem: Problem, prices: list[int]
) -> None:
    problem = replace(problem, offcut_percent=0)
    exact = cheapest(problem)
    if exact is None:
        return
    need = [demand.need for demand in problem.demands]
    found = certify(prices[: len(need)], need, Pricing(problem))
    assert found.value <= exact


@settings(max_examples=25, deadline=None)
@given(problem=problems())
def test_twice_the_prices_twice_the_cost_and_floor(problem: Problem) -> None:
    # Whole prices: a floor in 1/10,000 is rounded down a little in each price, so the
    # floors before lifting may differ by a unit a part. What offcuts count for is
    # rounded too.
    problem = replace(problem, offcut_percent=0)
    dear = replace(
        problem,
        bins=tuple(replace(piece, price=2 * piece.price) for piece in problem.bins),
    )
    one, two = solved(problem), solved(dear)
    if one.need != two.need:
        return
    assert two.cost == 2 * one.cost
    assert two.bound.value == 2 * one.bound.value


@settings(max_examples=25, deadline=None)
@given(problem=problems())
def test_the_same_question_gets_the_same_answer(problem: Problem) -> None:
    assert solved(problem) == solved(problem)
