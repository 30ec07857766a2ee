"""Boards filled section by section or strip by strip, and plans built of them."""

from __future__ import annotations

from fractions import Fraction

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.benchmarks.planted import plant
from tests.packing.plates import make_problem
from tests.packing.random_problems import problems
from tests.packing.valid import assert_is_of_its_family
from yieldplan.packing import solve
from yieldplan.packing.filling.first_plan import all_copies
from yieldplan.packing.filling.piece_by_piece import piece_by_piece
from yieldplan.packing.filling.yard import Yard
from yieldplan.packing.grid.crossings import Floats
from yieldplan.packing.grid.pattern import Breakdown, left_after, makes_of, tidy
from yieldplan.packing.improving.by_pieces import ByPieces, PiecesTask
from yieldplan.packing.improving.dives import Common
from yieldplan.packing.problem import Problem
from yieldplan.packing.searching.allowed import are_few_of_each
from yieldplan.packing.stop import Budget, Stop

_WORK = 10**9


def no_luck(count: int) -> Floats:
    return np.ones(count)


@pytest.mark.parametrize(
    ("family", "size"), [("C", (50, 10)), ("R", (100, 5)), ("E", (50, 10))]
)
def test_each_part_lies_on_the_board_once(
    family: Breakdown, size: tuple[int, int]
) -> None:
    # By hand: two parts share the board; the best pattern holds the dearer one twice.
    problem = make_problem((100, 10), [size, size], [1, 1], family, copies=1)
    yard = Yard(problem)
    yard.pricing.price([51, 50])
    assert yard.pricing.pattern(0).items() == [0, 0]
    pattern, left = piece_by_piece(yard, 0, [1, 1], [51, 50], no_luck)
    assert sorted(pattern.items()) == [0, 1]
    assert left == [0, 0]


@settings(max_examples=60, deadline=None)
@given(
    problem=problems(most_bins=2, longest=24, widest=12),
    seed=st.integers(0, 99),
    breakdown=st.sampled_from(["C", "R", None]),
)
def test_a_board_is_cut_as_its_family_is_and_makes_no_more_than_is_left(
    problem: Problem, seed: int, breakdown: Breakdown | None
) -> None:
    yard = Yard(problem)
    rng = np.random.default_rng(seed)
    need = [demand.need for demand in problem.demands]
    sizes = [(size.along, size.across) for size in yard.sizes]
    for number in yard.pricing.bins:
        pattern, left = piece_by_piece(
            yard,
            number,
            need,
            yard.area_prices(need),
            lambda count: rng.uniform(0.9, 1.1, count),
            breakdown if problem.family[0] in ("E", breakdown) else None,
        )
        pattern = tidy(pattern, sizes)
        if pattern.sections:
            assert_is_of_its_family(pattern, problem)
        assert left == left_after([pattern], need, problem)


PLANTED = plant(639)
"""One board of ten, of which 39 parts were cut, each once, without waste; any other would be dearer."""


def builder(yard: Yard) -> ByPieces:
    need = [demand.need for demand in yard.problem.demands]
    rng = np.random.default_rng(1)
    return ByPieces(yard, need, all_copies(yard), (), rng)


def test_what_was_cut_of_one_board_is_cut_of_it_again() -> None:
    yard = Yard(PLANTED.problem)
    plans, budget = builder(yard), Budget(Stop(), _WORK)
    dear = sum(piece.price for piece in PLANTED.problem.bins)
    found = [plans.one(dear, budget) for _ in range(60)]
    costs = [plan.cost for plan in found if plan is not None]
    assert min(costs) == PLANTED.cost
    for plan in found:
        assert plan is None or plan.is_whole
    assert budget.done > 0


def test_a_task_ends_where_nothing_is_cheap_enough() -> None:
    yard = Yard(PLANTED.problem)
    need = tuple(demand.need for demand in PLANTED.problem.demands)
    shared = Common(need, all_copies(yard), need, PLANTED.cost, 0, ())
    answer = PiecesTask((1,), 20_000).do(yard, shared, Stop())
    assert answer.plan is None
    assert answer.work >= 20_000


def test_plans_become_cheaper_and_all_their_patterns_are_told() -> None:
    yard = Yard(PLANTED.problem)
    need = tuple(demand.need for demand in PLANTED.problem.demands)
    dear = sum(piece.price for piece in PLANTED.problem.bins)
    shared = Common(need, all_copies(yard), need, dear, PLANTED.cost, ())
    answer = PiecesTask((1,), 1_000_000).do(yard, shared, Stop())
    assert answer.plan is not None
    told = {(column.bin, column.makes) for column in answer.columns}
    mine = {
        (pattern.bin, tuple(makes_of(pattern, PLANTED.problem)))
        for pattern in answer.plan.patterns
    }
    # Those of plans that were dearer, or did not come out, too.
    assert told > mine
    for column in answer.columns:
        assert_is_of_its_family(column.pattern, PLANTED.problem)


def test_a_search_by_counted_work_finds_what_was_cut_and_proves_it() -> None:
    planted = plant(17)
    solution = solve(planted.problem, Stop(gap=Fraction(0)), lambda _: None)
    assert solution.cost == solution.bound.value == planted.cost


@pytest.mark.parametrize(
    ("needs", "are_few"),
    [
        ([1, 2, 4, 2, 6], True),
        ([4, 4, 3, 5], False),
        # A chest of single parts, and two tops glued up of strips.
        ([2, 1, 2, 1, 2, 3, 6, 74, 73], True),
        ([0, 0, 9, 9], False),
    ],
)
def test_few_of_each_is_by_the_mean_or_by_half_the_kinds(
    needs: list[int], *, are_few: bool
) -> None:
    assert are_few_of_each(needs) is are_few
