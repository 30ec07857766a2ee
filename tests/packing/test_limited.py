"""Lower prices for boards that would make too much, against an exact model and against the page."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from hypothesis import given, settings
from hypothesis import strategies as st

from tests.packing.exact_model import cheapest
from tests.packing.plates import make_problem
from tests.packing.proofs_from_the_page import priced, values_of
from tests.packing.random_problems import problems
from yieldplan.packing.filling.yard import Yard
from yieldplan.packing.floors.bound import Certificate
from yieldplan.packing.floors.column_generation import Generation
from yieldplan.packing.floors.limited import limited_floor
from yieldplan.packing.floors.set_rows import row_of
from yieldplan.packing.problem import Item, Problem
from yieldplan.packing.stop import Budget, Stop

_WORK = 10**9


def budget() -> Budget:
    return Budget(Stop(), _WORK)


def limited(problem: Problem) -> tuple[Certificate, Certificate]:
    """The floor after column generation, and that with limits."""
    yard = Yard(problem)
    need = [demand.need for demand in problem.demands]
    dear = [sum(piece.price * piece.copies for piece in problem.bins)] * len(need)
    generation = Generation(yard, need, dear)
    generation.run(budget(), Fraction(1), lambda _: None)
    plain = generation.best
    return plain, limited_floor(yard, need, dear, plain, generation.columns, budget())


def one_part() -> Problem:
    """A board at 7 that holds two parts beside each other, and one part to be made."""
    return make_problem(
        (11, 9), [(9, 4)], needs=[1], family="R", copies=2, kerf=1, price=7
    )


def test_a_board_need_not_make_a_part_nobody_asked_for_twice() -> None:
    # A part takes 5 of the 10 cells across, so a board holds two strips of it, and in one
    # strip there is one. At 3 each, 6 in all, a board pays for itself; at 4 it would be
    # worth 8, more than it costs. So one part is worth 3. But the second part serves no one: at 7 less 7 a board is worth 0, and 7
    # more for the one part that is needed: no more than it costs. The part is worth 7.
    plain, found = limited(one_part())
    assert plain.priced == 3
    assert found.priced == 7
    assert found.limited
    assert priced(one_part(), [1], found.prices, found.limited) == 7


def test_a_strip_is_said_to_hold_no_more_of_a_part_than_is_asked_for() -> None:
    # Now the two parts lie one behind the other. Ripped first they are in one strip, which
    # is said to hold one, so that one part is worth a board without more ado.
    behind = make_problem(
        (21, 4), [(9, 4)], needs=[1], family="R", copies=2, kerf=1, price=7
    )
    assert limited(behind)[0].priced == 7
    # Beside each other, and crosscut first: of the strips one part leads there is one.
    beside = make_problem(
        (11, 9), [(9, 4)], needs=[1], family="C", copies=2, kerf=1, price=7
    )
    assert limited(beside)[0].priced == 7
    # Two sections hold one each.
    in_two = replace(behind, family="C")
    plain, found = limited(in_two)
    assert (plain.priced, found.priced) == (3, 7)


def test_a_gang_may_make_too_much_and_is_not_limited() -> None:
    problem = one_part()
    gang = Item(
        name="gang",
        length=9,
        width=9,
        makes={0: 2},
        layers=((0, 0), (0, 0)),
        may_spare=True,
    )
    ganged = replace(
        problem,
        items=(*problem.items, gang),
        bins=(replace(problem.bins[0], holds=frozenset({0, 1})),),
    )
    # The gang brings two at once, one of them a spare: still half a board is enough.
    _, found = limited(ganged)
    assert found.priced == 3
    assert not found.limited


@st.composite
def piles(draw: st.DrawFn) -> Problem:
    """A random problem, mostly with wood enough and few of each part."""
    problem = draw(problems(most_bins=4, longest=24, widest=12, most_need=2))
    bins = tuple(
        replace(piece, copies=piece.copies + 2) if piece.is_straight else piece
        for piece in problem.bins
    )
    return replace(problem, offcut_percent=0, bins=bins)


@settings(max_examples=25, deadline=None)
@given(problem=piles())
def test_the_limited_floor_is_what_the_page_says_and_below_the_cheapest_plan(
    problem: Problem,
) -> None:
    best = cheapest(problem)
    need = [demand.need for demand in problem.demands]
    plain, found = limited(problem)
    assert found.value >= plain.value
    assert best is None or found.value <= best
    assert found.priced == priced(problem, need, found.prices, found.limited)


@settings(max_examples=40, deadline=None)
@given(problem=piles(), data=st.data())
def test_a_row_is_worth_what_the_page_says_whatever_is_taken_off(
    problem: Problem, data: st.DataObject
) -> None:
    need = [demand.need for demand in problem.demands]
    price = st.integers(0, 9_000)
    size = len(need)
    prices = data.draw(st.lists(price, min_size=size, max_size=size))
    off = data.draw(
        st.dictionaries(
            st.sampled_from(range(len(problem.bins))),
            st.dictionaries(st.sampled_from(range(size)), st.floats(0, 12_000)),
        )
    )
    yard = Yard(problem)
    off = {n: less for n, less in off.items() if n in yard.pricing.bins}
    row = row_of(yard, need, prices, off, budget())
    if row is None:
        assert not any(prices)
        return
    assert row.need == sum(p * n for p, n in zip(prices, need, strict=True))
    assert row.values.tolist() == values_of(
        problem, need, row.row.prices, row.row.limited
    )
