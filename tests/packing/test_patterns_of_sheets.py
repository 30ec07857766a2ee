"""Of a sheet, one asking of prices gives a best pattern with each length of section in it."""

from __future__ import annotations

from dataclasses import replace

from hypothesis import given
from hypothesis import strategies as st

from tests.packing.plates import make_problem
from tests.packing.valid import assert_is_of_its_family
from yieldplan.packing.filling.yard import Yard
from yieldplan.packing.grid.pattern import makes_of
from yieldplan.packing.problem import Block, Problem


def made(problem: Problem, prices: list[int]) -> list[tuple[int, ...]]:
    """What the patterns of the only bin make, in the order they are given."""
    yard = Yard(problem)
    yard.pricing.price(prices)
    patterns = yard.pricing.patterns(0)
    for pattern in patterns:
        assert_is_of_its_family(pattern, problem)
    return [tuple(makes_of(pattern, problem)) for pattern in patterns]


def sheet(sizes: list[tuple[int, int]]) -> Problem:
    """Of 100 by 20, crosscut first; every part nine times."""
    return make_problem((100, 20), sizes, [9] * len(sizes), "C", copies=9)


SIZES = [(40, 20), (30, 20), (35, 20)]


def test_the_best_with_each_length() -> None:
    # By hand: 40 + 30 + 30 is worth 10,000, with a 35 it is 35 + 35 + 30 at best, 9,980.
    found = made(sheet(SIZES), [4000, 3000, 3490])
    assert found[0] == (1, 2, 0)
    assert set(found) == {(1, 2, 0), (0, 1, 2)}


def test_what_is_worth_much_less_is_left_out() -> None:
    # With a 35 it is 9,900 at best, 1 % less.
    assert (0, 1, 2) not in made(sheet(SIZES), [4000, 3000, 3450])


def test_of_a_marked_board_only_the_best() -> None:
    problem = sheet(SIZES)
    knot = Block(box=(99, 19, 100, 20), on_a=1, on_b=1)
    items = tuple(replace(item, layers=((1, 1), (1, 1))) for item in problem.items)
    marked = replace(
        problem, items=items, bins=(replace(problem.bins[0], blocks=(knot,)),)
    )
    assert len(made(marked, [4000, 3000, 3490])) == 1


@given(
    sizes=st.lists(
        st.tuples(st.integers(10, 60), st.integers(3, 20)), min_size=1, max_size=5
    ),
    prices=st.lists(st.integers(1, 5000), min_size=5, max_size=5),
)
def test_none_is_worth_more_than_the_best(
    sizes: list[tuple[int, int]], prices: list[int]
) -> None:
    problem = sheet(sizes)
    worths = [
        sum(count * price for count, price in zip(counts, prices, strict=False))
        for counts in made(problem, prices[: len(sizes)])
    ]
    assert worths[0] == max(worths)
    assert min(worths) >= 0.99 * worths[0]
