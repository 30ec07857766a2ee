"""What is cut is moved together, and what is left is one long piece; nothing moves onto a mark."""

from __future__ import annotations

from dataclasses import replace

from hypothesis import given, settings
from hypothesis import strategies as st

from tests.packing.plates import make_problem
from tests.packing.random_problems import problems
from tests.packing.valid import assert_is_of_its_family
from yieldplan.packing.filling.close_up import closed_up
from yieldplan.packing.filling.yard import Yard
from yieldplan.packing.grid.pattern import Cut, Pattern, Section, Strip, cut_to_demand
from yieldplan.packing.problem import Block, Problem


def test_a_gap_between_two_sections_goes_to_the_end() -> None:
    # A plate 100 long, two blanks of 20 with 15 left before each: closed up they take 40,
    # and 60 are left in one piece instead of 15, 15 and 30.
    yard = Yard(make_problem((100, 10), [(20, 10)], [2], "C", 1))
    blanks = [
        Section(i, i + 20, (Strip(0, 10, (Cut(i, i + 20, 0),)),)) for i in (15, 50)
    ]
    closed = closed_up(Pattern(0, "C", tuple(blanks)), yard)
    assert [(section.i, section.j) for section in closed.sections] == [
        (0, 20),
        (20, 40),
    ]
    assert [cut.i for cut in closed.cuts()] == [0, 20]


def test_in_a_strip_ripped_first_too() -> None:
    yard = Yard(make_problem((100, 10), [(20, 10)], [2], "R", 1))
    strip = Strip(0, 10, (Cut(15, 35, 0), Cut(70, 90, 0)))
    closed = closed_up(Pattern(0, "R", (Section(0, 100, (strip,)),)), yard)
    assert [(cut.i, cut.j) for cut in closed.cuts()] == [(0, 20), (20, 40)]


def test_strips_lie_one_beside_the_other_and_their_waste_behind_them() -> None:
    # A plate 20 wide, two strips of 6 with 3 left before each: side by side they take 12.
    for breakdown in ("R", "C"):
        yard = Yard(make_problem((40, 20), [(40, 6)], [2], breakdown, 1))
        strips = tuple(Strip(u, u + 6, (Cut(0, 40, 0),)) for u in (3, 12))
        closed = closed_up(Pattern(0, breakdown, (Section(0, 40, strips),)), yard)
        assert [(s.u, s.v) for s in closed.sections[0].strips] == [(0, 6), (6, 12)]


def test_a_strip_stays_behind_a_mark() -> None:
    problem = make_problem((40, 20), [(40, 6)], [1], "R", 1)
    (plate,), (item,) = problem.bins, problem.items
    mark = Block(box=(10, 0, 12, 3), on_a=1, on_b=1)
    problem = replace(
        problem,
        bins=(replace(plate, blocks=(mark,)),),
        items=(replace(item, layers=((1, 1), (1, 1))),),
    )
    yard = Yard(problem)
    strip = Strip(12, 18, (Cut(0, 40, 0),))
    (section,) = closed_up(Pattern(0, "R", (Section(0, 40, (strip,)),)), yard).sections
    # It begins where the mark ends, not at the edge.
    assert 3 <= section.strips[0].u < 12
    assert section.strips[0].v - section.strips[0].u == 6


@settings(max_examples=40, deadline=None)
@given(
    problem=problems(),
    prices=st.lists(st.integers(1, 3000), min_size=6, max_size=6),
    data=st.data(),
)
def test_closed_up_it_is_still_of_its_family_and_makes_the_same(
    problem: Problem, prices: list[int], data: st.DataObject
) -> None:
    yard = Yard(problem)
    yard.pricing.price(prices[: len(problem.demands)])
    for number in yard.pricing.bins:
        whole = yard.pricing.pattern(number)
        of_sets = {
            d for steps in problem.sets for i in steps for d in problem.items[i].makes
        }
        kept = data.draw(st.integers(0, 1))
        need = [
            9 if demand in of_sets else data.draw(st.integers(0, 2)) + kept
            for demand in range(len(problem.demands))
        ]
        pattern, _ = cut_to_demand(whole, need, problem)
        closed = closed_up(pattern, yard)
        assert_is_of_its_family(closed, problem)
        assert closed.items() == pattern.items()
        assert all(
            now.i <= before.i
            for now, before in zip(closed.cuts(), pattern.cuts(), strict=True)
        )
        for now, before in zip(closed.sections, pattern.sections, strict=True):
            assert all(
                one.u <= other.u and one.v - one.u == other.v - other.u
                for one, other in zip(now.strips, before.strips, strict=True)
            )
        assert yard.worth(closed) >= yard.worth(pattern)
