"""Room for parts left unmade, repairs that share boards, and what a plan costs after them."""

from __future__ import annotations

from collections import Counter
from dataclasses import replace

import numpy as np
import pytest

from tests.benchmarks.generator import FILLS, SIZES, draw
from tests.packing.plates import make_problem
from yieldplan.packing import solve
from yieldplan.packing.filling.first_plan import all_copies, first_plan
from yieldplan.packing.filling.make_room import make_room
from yieldplan.packing.filling.packed import Packed, packed
from yieldplan.packing.filling.yard import Yard
from yieldplan.packing.grid.pattern import makes_of
from yieldplan.packing.improving.dive import Dive, Question
from yieldplan.packing.improving.neighbourhoods import Mended, Repair
from yieldplan.packing.problem import Problem
from yieldplan.packing.stop import Budget, Stop


def one_wide_board(large: int) -> Problem:
    """A board that alone is wide enough for the larger part, and one that is not."""
    plain = make_problem((50, 12), [(50, 10), (50, 5)], [large, 1], "E", copies=1)
    (wide,) = plain.bins
    return replace(plain, bins=(wide, replace(wide, name="narrow", width=6)))


def test_room_is_made_for_the_part_that_came_too_late() -> None:
    yard = Yard(one_wide_board(1))
    need, prices = [1, 1], [11, 12]
    plan = first_plan(yard, need, prices)
    # By hand: the small part pays more, and the wide board comes first.
    assert plan.short == (1, 0)
    assert make_room(yard, need, plan, prices).is_whole


def test_where_there_is_no_room_the_plan_is_no_worse() -> None:
    yard = Yard(one_wide_board(2))
    need, prices = [2, 1], [11, 12]
    plan = first_plan(yard, need, prices)
    found = make_room(yard, need, plan, prices)
    assert not found.is_whole
    assert found.key <= plan.key


def test_wood_is_enough_though_a_pair_that_nobody_needs_pays_more() -> None:
    """One part is asked for: the pair would make two, and so may not be cut at all."""
    plain = make_problem((12, 6), [(9, 5), (3, 2)], [1, 0], "R", copies=1, kerf=1)
    single, small = plain.items
    problem = replace(
        plain,
        demands=plain.demands[:1],
        items=(single, replace(small, name="pair", makes={0: 2})),
    )
    solution = solve(problem, Stop(), lambda _: None)
    assert not any(solution.short)
    assert [cut.item for cut in solution.patterns[0].cuts()] == [0]


@pytest.fixture(scope="module")
def yard() -> Yard:
    return Yard(draw(SIZES["M"], FILLS["few"], 3, "E"))


@pytest.fixture(scope="module")
def plan(yard: Yard) -> Packed:
    need = [demand.need for demand in yard.problem.demands]
    # A poor one: it thinks of no part as worth more than another.
    return first_plan(yard, need, [1] * len(need))


def a_repair(yard: Yard, plan: Packed) -> Repair:
    need = [demand.need for demand in yard.problem.demands]
    dear = [sum(yard.price)] * len(need)
    prices = yard.area_prices(need)
    return Repair(yard, need, dear, prices, np.random.default_rng(1))


@pytest.fixture(scope="module")
def answers(yard: Yard, plan: Packed) -> list[Mended]:
    """What comes of some neighbourhoods that share boards."""
    places = a_repair(yard, plan).choose(plan, [], 6, 10**9)
    assert len(places) == 6
    return [place.do(yard, None, Stop()) for place in places]


def test_repairs_that_share_boards_never_cut_a_board_twice(
    yard: Yard, plan: Packed, answers: list[Mended]
) -> None:
    better = a_repair(yard, plan).taken(plan, [*answers, *answers])
    assert better.key < plan.key
    assert better.is_whole
    times = Counter(pattern.bin for pattern in better.patterns)
    assert all(count <= all_copies(yard)[bin_] for bin_, count in times.items())


def test_of_repairs_that_share_boards_the_best_is_taken_first(
    yard: Yard, plan: Packed, answers: list[Mended]
) -> None:
    repair = a_repair(yard, plan)
    alone = [repair.taken(plan, [answer]).key for answer in answers]
    assert min(alone) < plan.key
    assert repair.taken(plan, answers).key <= min(alone)


@pytest.mark.parametrize("is_careful", [False, True])
def test_a_dive_makes_what_is_needed_of_the_boards_there_are(
    yard: Yard, is_careful: bool
) -> None:
    need = [demand.need for demand in yard.problem.demands]
    dear = [sum(yard.price)] * len(need)
    question = Question(tuple(need), all_copies(yard), dear, 1 << 62)
    rng = np.random.default_rng(1)
    dive = Dive(yard, question, [], rng, 0.0, is_careful=is_careful)
    found = dive.run(Budget(Stop(), 10**9))
    assert found is not None
    assert found.is_whole
    made = np.sum([makes_of(p, yard.problem) for p in found.patterns], axis=0)
    assert (made >= need).all()
    assert packed(found.patterns, need, yard).cost == found.cost
