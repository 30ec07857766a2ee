"""Of a stick, one asking of prices gives the best pattern with each part in it."""

from __future__ import annotations

from tests.packing.plates import make_problem
from yieldplan.packing.filling.yard import Yard
from yieldplan.packing.grid.pattern import makes_of
from yieldplan.packing.problem import Problem


def made(problem: Problem, prices: list[int]) -> list[tuple[int, ...]]:
    """What the patterns of the only bin make, in the order they are given."""
    yard = Yard(problem)
    yard.pricing.price(prices)
    patterns = yard.pricing.patterns(0)
    for pattern in patterns:
        for strip in pattern.sections[0].strips:
            used = sum(yard.sizes[cut.item].along for cut in strip.cuts)
            assert used <= yard.grids[0].along
    return [tuple(makes_of(pattern, problem)) for pattern in patterns]


SIZES = [(45, 10), (33, 10), (30, 10)]


def test_the_best_with_each_part() -> None:
    # By hand, of 100: 45 + 45 is worth 10,180, 33 three times 10,200, 33 + 33 + 30 10,180.
    problem = make_problem((100, 10), SIZES, [9, 9, 9], "R", copies=9)
    found = made(problem, [5090, 3400, 3380])
    assert found[0] == (0, 3, 0)
    assert set(found) == {(0, 3, 0), (2, 0, 0), (0, 2, 1)}


def test_what_is_worth_much_less_is_left_out() -> None:
    # With a 45 it is 10,000 at most, 2 % less than the best.
    problem = make_problem((100, 10), SIZES, [9, 9, 9], "R", copies=9)
    assert (2, 0, 0) not in made(problem, [5000, 3400, 3380])


def test_of_anything_wider_only_the_best() -> None:
    problem = make_problem((100, 20), SIZES, [9, 9, 9], "R", copies=9)
    assert made(problem, [5090, 3400, 3380]) == [(0, 6, 0)]
