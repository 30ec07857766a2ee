"""One board less: what a cheaper plan leaves unmade, and lines of tries that go on side by side."""

from __future__ import annotations

import pytest

from tests.packing.plates import ROLL, make_problem
from yieldplan.packing.filling.first_plan import first_plan
from yieldplan.packing.filling.packed import packed
from yieldplan.packing.filling.yard import Yard
from yieldplan.packing.grid.pattern import Pattern, left_after
from yieldplan.packing.improving.cut_anew import Asked, CutAnew
from yieldplan.packing.improving.dives import AT_ONCE
from yieldplan.packing.improving.one_less import Line, OneLess, Reached
from yieldplan.packing.stop import Budget, Stop

PRICES = (ROLL * 6 // 10, ROLL * 4 // 10)
"""What a 6 and a 4 are worth of a stick of 10, where nothing need be wasted."""


def sticks(needs: list[int]) -> Yard:
    """Sticks of 10, of which 6 and 4 are cut."""
    return Yard(make_problem((10, 1), [(6, 1), (4, 1)], needs, "R", copies=9))


def asked(yard: Yard) -> Asked:
    need = tuple(demand.need for demand in yard.problem.demands)
    return Asked(need, {0: 9}, PRICES, ())


def sixes(yard: Yard) -> tuple[Pattern, ...]:
    """Three sticks with a 6 on each, and nothing else."""
    return first_plan(yard, [3, 0], PRICES).patterns


def cost(yard: Yard, patterns: list[Pattern]) -> int:
    return sum(yard.cost(pattern) for pattern in patterns)


def test_what_is_unmade_finds_its_place() -> None:
    # By hand: three sticks hold three of each, 6 + 4; the fours are all unmade at first.
    yard = sticks([3, 3])
    line = Line(sixes(yard), (1.0, 1.0), 3 * ROLL, (1,), 10**7)
    answer = line.do(yard, asked(yard), Stop())
    assert answer.plan is not None
    assert answer.plan.is_whole
    assert answer.plan.cost == 3 * ROLL


def test_money_that_is_left_buys_another_board() -> None:
    # Four sticks: three sixes, and two of the fours together.
    yard = sticks([3, 2])
    tries = CutAnew(yard, asked(yard), 4 * ROLL, sixes(yard), (1.0, 1.0), (1,))
    tries.begin(Budget(Stop(), 10**7))
    assert tries.left == [0, 0]
    assert len(tries.patterns) == 4


@pytest.mark.parametrize("patterns", ["from three sticks", "anew"])
def test_no_plan_costs_more_than_there_is(patterns: str) -> None:
    yard = sticks([5, 3])
    start = sixes(yard) if patterns == "from three sticks" else ()
    tries = CutAnew(yard, asked(yard), 3 * ROLL - 1, start, (1.0, 1.0), (1,))
    budget = Budget(Stop(), 10**9)
    tries.begin(budget)
    for _ in range(10):
        assert len(tries.patterns) == 2
        assert cost(yard, tries.patterns) <= 3 * ROLL - 1
        assert tries.left == left_after(tries.patterns, [5, 3], yard.problem)
        tries.one(budget)


def test_what_stays_unmade_grows_dearer_up_to_an_end() -> None:
    # Two sticks make two of three sixes, whatever is tried.
    yard = sticks([3, 0])
    tries = CutAnew(yard, asked(yard), 2 * ROLL, sixes(yard), (1.0, 1.0), (1,))
    budget = Budget(Stop(), 10**9)
    tries.begin(budget)
    seen = [1.0]
    for _ in range(30):
        tries.one(budget)
        seen.append(tries.dearer[0])
        assert tries.dearer[1] == 1.0
    assert seen == sorted(seen)
    assert 1.5 < seen[-1] <= 1.6


def test_where_no_board_can_be_paid_nothing_is_tried() -> None:
    yard = sticks([3, 3])
    answer = Line((), (1.0, 1.0), ROLL - 1, (1,), 10**7).do(yard, asked(yard), Stop())
    assert answer.plan is None
    assert answer.patterns == ()


def test_the_same_seed_gives_the_same_tries() -> None:
    yard = sticks([5, 6])
    line = Line((), (1.0, 1.0), 5 * ROLL, (4, 2), 10**5)
    one, other = (line.do(yard, asked(yard), Stop()) for _ in range(2))
    assert (one.patterns, one.dearer) == (other.patterns, other.dearer)
    assert one.work == other.work


def test_lines_look_for_more_and_more_saved() -> None:
    yard = sticks([3, 3])
    plan = packed(
        [*sixes(yard), *first_plan(yard, [0, 3], PRICES).patterns], [3, 3], yard
    )
    assert plan.cost == 5 * ROLL
    lines = OneLess(yard, PRICES, [3, 3]).lines(plan, 3 * ROLL, 10)
    most = [line.most for line in lines]
    assert most[0] == 5 * ROLL - 1
    assert most == sorted(most, reverse=True)
    assert all(line_most >= 3 * ROLL for line_most in most)


def test_a_line_far_behind_goes_on_from_the_best() -> None:
    yard = sticks([3, 3])
    plan = packed(
        [*sixes(yard), *first_plan(yard, [0, 3], PRICES).patterns], [3, 3], yard
    )
    one_less = OneLess(yard, PRICES, [3, 3])
    lines = one_less.lines(plan, 3 * ROLL, 10)
    near = first_plan(yard, [3, 2], PRICES).patterns
    one_less.go_on(
        [
            Reached(None, [], 1, sixes(yard)[:1] if place == 2 else near, line.dearer)
            for place, line in enumerate(lines)
        ]
    )
    after = one_less.lines(plan, 3 * ROLL, 10)
    assert [line.patterns for line in after] == [near] * AT_ONCE
    assert [line.most for line in after] == [line.most for line in lines]
