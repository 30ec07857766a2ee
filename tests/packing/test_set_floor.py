"""The floor of whole boards against an exact model, and against the page worked out in plain Python."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from math import gcd

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.packing.exact_model import cheapest
from tests.packing.plates import make_problem
from tests.packing.proofs_from_the_page import holds
from tests.packing.random_problems import problems
from yieldplan.packing.filling.first_plan import all_copies
from yieldplan.packing.filling.yard import Yard
from yieldplan.packing.floors.bound import Certificate
from yieldplan.packing.floors.column_generation import Generation
from yieldplan.packing.floors.proofs import Branch, Leaf, SetsProof
from yieldplan.packing.floors.set_floor import set_floor
from yieldplan.packing.improving.dives import Common
from yieldplan.packing.problem import Problem
from yieldplan.packing.searching.set_floor_task import SetFloorTask
from yieldplan.packing.stop import Budget, Stop

_WORK = 10**9
_NO_LIMIT = 10**9


@st.composite
def piles(draw: st.DrawFn) -> Problem:
    """A random problem without worth of offcuts, mostly with wood enough."""
    problem = draw(problems(most_bins=4, longest=24, widest=12))
    bins = tuple(
        replace(piece, copies=piece.copies + 2) if piece.is_straight else piece
        for piece in problem.bins
    )
    return replace(problem, offcut_percent=0, bins=bins)


def with_sets(
    problem: Problem, limit: int, rows: list[list[int]] | None = None
) -> Certificate:
    """The floor after column generation and the program over whole boards."""
    yard = Yard(problem)
    need = [demand.need for demand in problem.demands]
    dear = [sum(piece.price * piece.copies for piece in problem.bins)] * len(need)
    generation = Generation(yard, need, dear)
    generation.run(Budget(Stop(), _WORK), Fraction(1), lambda _: None)
    return set_floor(
        yard,
        need,
        dear,
        generation.best,
        generation.columns,
        rows if rows is not None else [yard.area_prices(need)],
        limit,
        Budget(Stop(), _WORK),
    )


def test_two_thirds_of_a_board_are_not_sold() -> None:
    # A board of 21 x 4 in ticks with a kerf of 1 holds two parts of 9 x 4 (10 x 5 cells
    # of 21 x 5 each). Three parts at 10 and one dearer board: one and a half boards of
    # 7 are 10.50, two are 14; prices 7 and 8 have no common divisor but 1.
    problem = make_problem(
        (21, 4), [(9, 4)], needs=[3], family="R", copies=2, kerf=1, price=7
    )
    dearer = replace(problem.bins[0], name="dearer", price=8, copies=1)
    problem = replace(problem, bins=(*problem.bins, dearer))
    found = with_sets(problem, 15)
    assert found.priced <= 11
    assert found.value == 14
    assert found.sets is not None
    assert holds(problem, [3], found.sets)


@pytest.mark.parametrize("is_asked_to_stop", [False, True])
def test_as_a_task_it_is_the_same_floor_or_when_stopped_the_one_before(
    is_asked_to_stop: bool,
) -> None:
    # The boards of the test above; there the prices alone prove no more than 11.
    problem = make_problem(
        (21, 4), [(9, 4)], needs=[3], family="R", copies=2, kerf=1, price=7
    )
    dearer = replace(problem.bins[0], name="dearer", price=8, copies=1)
    yard = Yard(replace(problem, bins=(*problem.bins, dearer)))
    generation = Generation(yard, [3], [22])
    generation.run(Budget(Stop(), _WORK), Fraction(1), lambda _: None)
    before = generation.best
    task = SetFloorTask(
        before,
        tuple(generation.columns),
        (tuple(yard.area_prices([3])),),
        15,
        _WORK,
        9.0,
    )
    stop = Stop()
    if is_asked_to_stop:
        stop.asked.set()
    supply = all_copies(yard)
    answer = task.do(yard, Common((3,), supply, (22,), 15, 0, ()), stop)
    assert answer.plan is None
    assert answer.floor == before if is_asked_to_stop else answer.floor.value == 14


@settings(max_examples=30, deadline=None)
@given(problem=piles())
def test_the_floor_is_never_above_the_cheapest_plan_and_what_the_page_says(
    problem: Problem,
) -> None:
    best = cheapest(problem)
    need = [demand.need for demand in problem.demands]
    found = with_sets(problem, _NO_LIMIT)
    assert best is None or found.value <= best
    if found.sets is not None:
        assert found.sets.least == found.value
        assert holds(problem, need, found.sets)
        # Not a unit more: the next sum that whole boards can cost is not proved (unless
        # there is too little wood: then anything is).
        step = gcd(*(piece.price for piece in problem.bins))
        more = replace(found.sets, least=found.sets.least + step)
        assert best is None or not holds(problem, need, more)


@settings(max_examples=20, deadline=None)
@given(problem=piles(), data=st.data())
def test_rows_of_any_prices_never_prove_more_than_a_plan_costs(
    problem: Problem, data: st.DataObject
) -> None:
    best = cheapest(problem)
    price = st.integers(0, 60_000)
    size = len(problem.demands)
    rows = data.draw(
        st.lists(st.lists(price, min_size=size, max_size=size), max_size=5)
    )
    value = with_sets(problem, _NO_LIMIT, rows).value
    assert best is None or value <= best


def test_a_wrong_leaf_is_refused() -> None:
    problem = make_problem(
        (21, 4), [(9, 4)], needs=[3], family="R", copies=2, kerf=1, price=7
    )
    dearer = replace(problem.bins[0], name="dearer", price=8, copies=1)
    problem = replace(problem, bins=(*problem.bins, dearer))
    found = with_sets(problem, 15).sets
    assert found is not None

    def lightened(node: Branch | Leaf) -> Branch | Leaf:
        """The tree with nothing weighed at its last leaf."""
        if isinstance(node, Leaf):
            return Leaf((), node.of)
        return replace(node, no_more=lightened(node.no_more))

    wrong = SetsProof(found.least, found.rows, lightened(found.tree))
    assert not holds(problem, [3], wrong)


def test_nothing_is_proved_where_offcuts_count() -> None:
    problem = make_problem(
        (21, 4), [(9, 4)], needs=[3], family="R", copies=2, kerf=1, price=7
    )
    assert with_sets(replace(problem, offcut_percent=25), 15).sets is None
