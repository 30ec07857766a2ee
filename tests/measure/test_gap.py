"""The gap in words: feet before boards before per cent, and never made smaller."""

from __future__ import annotations

import dataclasses
from decimal import Decimal
from fractions import Fraction

import pytest

from tests.measure.hall_case import BOARD, TREE, make_board, make_plan, make_wood_plan
from yieldplan.measure import purchase
from yieldplan.measure.gap import (
    cost_and_floor,
    counted_for,
    floor_of,
    gap_in_words,
    gap_percent,
    less_offcuts,
    say_percent,
)
from yieldplan.measure.minimum import filled_up
from yieldplan.model.plan import Bound, Cutting, Plan, WoodPlan


def wood_with_floor(value: int) -> WoodPlan:
    # The board costs 36.00: 3 board feet at 12.00.
    return make_wood_plan(
        bound=Bound(value=value, priced=value, family="C", prices={"upper/front": 1})
    )


@pytest.mark.parametrize(
    ("floor", "words"),
    [
        (360_000, "no plan costs less"),
        # 36.00 - 24.01 = 11.99, a foot is 12.00.
        (240_100, "less than one board foot"),
        (240_000, "less than one board"),
        (100, "less than one board"),
        (0, "100.0 % of the cost"),
    ],
)
def test_the_gap_is_said_in_the_smallest_measure_that_holds_it(
    floor: int, words: str
) -> None:
    assert gap_in_words(make_plan(woods=(wood_with_floor(floor),))) == words


def test_a_board_priced_as_a_piece_has_a_foot_too() -> None:
    # 25.00 for 3 board feet is 8.33 a foot.
    board = make_board("W1", per_foot=None, price=250_000)
    cutting = Cutting(piece=board, copy=1, tree=TREE, breakdown="crosscut first")

    def words(floor: int) -> str:
        bound = Bound(value=floor, priced=floor, family="C", prices={})
        wood = make_wood_plan(cuttings=(cutting,), cost=250_000, bound=bound)
        return gap_in_words(make_plan(woods=(wood,)))

    assert words(250_000 - 83_200) == "less than one board foot"
    assert words(250_000 - 83_300) == "less than one board"


def test_own_wood_that_costs_nothing_has_no_gap() -> None:
    board = make_board("W1", per_foot=0, price=0)
    cutting = Cutting(piece=board, copy=1, tree=TREE, breakdown="crosscut first")
    bound = Bound(value=0, priced=0, family="C", prices={})
    wood = make_wood_plan(cuttings=(cutting,), cost=0, bound=bound)
    assert gap_in_words(make_plan(woods=(wood,))) == "no plan costs less"
    assert gap_percent(make_plan(woods=(wood,))) == 0


def test_per_cent_are_rounded_up() -> None:
    assert say_percent(Fraction(1, 1000)) == "0.1"
    assert say_percent(Fraction(5, 2)) == "2.5"
    assert say_percent(Fraction(251, 100)) == "2.6"


def test_the_floor_is_rounded_down_and_a_proof_stands_at_the_total() -> None:
    assert floor_of(make_plan(woods=(wood_with_floor(359_999),))) == 359_900
    assert floor_of(make_plan()) == 360_000
    # Two lines of 5.004 are paid as 5.00 + 5.00; the proof does not claim 10.00 + a cent.
    boards = [
        make_board(name, board_feet=Fraction(1), per_foot=per, price=per)
        for name, per in (("W1", 50_040), ("W2", 50_041))
    ]
    cuttings = tuple(
        Cutting(piece=board, copy=1, tree=TREE, breakdown="crosscut first")
        for board in boards
    )
    bound = Bound(value=100_081, priced=100_081, family="C", prices={})
    wood = make_wood_plan(cuttings=cuttings, cost=100_081, bound=bound)
    assert floor_of(make_plan(woods=(wood,))) == 100_000
    assert BOARD.price == 360_000


def test_a_proved_plan_that_keeps_an_offcut_is_proved_less_what_that_counts_for() -> (
    None
):
    # 36.00 paid, 4.00 counted for the offcut: 32.00 is proved, and 36.00 is not the floor.
    kept = dataclasses.replace(TREE, id="W7.9", into=(), fate="keep", worth=40_000)
    tree = dataclasses.replace(TREE, into=(*TREE.into, kept))
    wood = dataclasses.replace(
        wood_with_floor(320_000),
        cost=320_000,
        cuttings=(Cutting(piece=BOARD, copy=1, tree=tree, breakdown="crosscut first"),),
    )
    plan = make_plan(woods=(wood,))
    assert counted_for([wood]) == 40_000
    assert floor_of(plan) == plan.total - 40_000 == 320_000
    assert less_offcuts([wood]) == ", or 4.00 less for the offcuts it keeps"
    assert less_offcuts([wood_with_floor(0)]) == ""


def with_orders(of_walnut: str | None, of_all: str | None) -> Plan:
    """The plan of 36.00 and a floor of 24.01, with what the yard sells at the least."""
    job = make_plan().job
    walnut = dataclasses.replace(
        job.woods["walnut"], minimum_order=of_walnut and Decimal(of_walnut)
    )
    whole = of_all and Decimal(of_all)
    job = dataclasses.replace(job, woods={"walnut": walnut}, minimum_order=whole)
    woods = (wood_with_floor(240_100),)
    return make_plan(
        job=job, woods=woods, purchase=filled_up(purchase.lines(woods), job)
    )


@pytest.mark.parametrize(
    ("of_walnut", "of_all", "of_wood", "together"),
    [
        (None, None, (360_000, 240_100), (360_000, 240_100)),
        # To be paid in any case: the gap is what the cost lies above it.
        ("30.00", None, (360_000, 300_000), (360_000, 300_000)),
        ("40.00", None, (400_000, 400_000), (400_000, 400_000)),
        (None, "34.00", (360_000, 240_100), (360_000, 340_000)),
        ("30.00", "40.00", (360_000, 300_000), (400_000, 400_000)),
    ],
)
def test_a_minimum_order_belongs_to_cost_and_floor(
    of_walnut: str | None,
    of_all: str | None,
    of_wood: tuple[int, int],
    together: tuple[int, int],
) -> None:
    plan = with_orders(of_walnut, of_all)
    (wood,) = plan.woods
    assert cost_and_floor(plan, wood) == of_wood
    assert cost_and_floor(plan) == together
    cost, floor = together
    assert gap_percent(plan) == Fraction(100 * (cost - floor), cost)
    assert (gap_in_words(plan) == "no plan costs less") is (cost == floor)
    assert plan.total == cost
    assert floor_of(plan) == floor
