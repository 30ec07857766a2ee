"""Patterns of drawn prices, and the program over those that pay best."""

from __future__ import annotations

from tests.packing.plates import make_problem
from tests.packing.valid import assert_is_of_its_family
from yieldplan.packing.filling.first_plan import all_copies
from yieldplan.packing.filling.yard import Column, Yard
from yieldplan.packing.grid.pattern import Pattern
from yieldplan.packing.improving.best_of_known import BestOfKnown
from yieldplan.packing.improving.dives import Common
from yieldplan.packing.improving.near_prices import NearPrices
from yieldplan.packing.stop import Stop

# Three kinds of part from boards alike; which go together depends on the prices.
PROBLEM = make_problem(
    (60, 20), [(30, 10), (20, 10), (25, 7)], [3, 5, 4], "E", copies=9, price=10
)
NEED = tuple(demand.need for demand in PROBLEM.demands)


def common(yard: Yard, columns: tuple[Column, ...] = ()) -> Common:
    return Common(NEED, all_copies(yard), (1000,) * 3, 1000, 0, columns)


def drawn(seed: int) -> list[Pattern]:
    yard = Yard(PROBLEM)
    task = NearPrices((seed,), 50_000, (300, 200, 175), 0.3)
    found = task.do(yard, common(yard), Stop()).columns
    again = task.do(yard, common(yard, tuple(found)), Stop()).columns
    # What is known already is not told again.
    assert not again
    return [column.pattern for column in found]


def test_they_are_new_of_the_family_and_make_no_more_than_is_asked_for() -> None:
    yard = Yard(PROBLEM)
    patterns = drawn(1)
    assert len(patterns) > 1
    for pattern in patterns:
        assert_is_of_its_family(pattern, PROBLEM)
        makes = yard.column(pattern).makes
        assert all(made <= need for made, need in zip(makes, NEED, strict=True))


def test_the_same_seed_gives_the_same_patterns() -> None:
    assert drawn(2) == drawn(2)


def test_the_program_is_over_the_first_so_many() -> None:
    yard = Yard(PROBLEM)
    task = NearPrices((1,), 200_000, (300, 200, 175), 0.3)
    columns = tuple(task.do(yard, common(yard), Stop()).columns)
    all_of_them = BestOfKnown(10**6, len(columns)).do(
        yard, common(yard, columns), Stop()
    )
    assert all_of_them.plan is not None
    assert all_of_them.plan.is_whole
    # One pattern, nine times, leaves something unmade.
    alone = BestOfKnown(10**6, 1).do(yard, common(yard, columns), Stop())
    assert alone.plan is None
