"""Narrow parts beside marks: the compiled pricing against every pattern tried, and plans of it."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.packing.from_the_page import Page
from tests.packing.random_problems import problems
from tests.packing.valid import assert_is_of_its_family
from tests.packing.wood_jobs import (
    make_blank,
    make_board,
    make_mark,
    make_part,
    objections,
    plan_of,
)
from yieldplan.model.plan import Family, Node
from yieldplan.packing.filling.yard import Yard
from yieldplan.packing.grid.pattern import makes_of
from yieldplan.packing.patterns.pricing import Pricing
from yieldplan.packing.problem import Problem
from yieldplan.units import TICKS_PER_INCH

pytest.importorskip("numba")

PRICES = st.lists(st.integers(0, 3000), min_size=6, max_size=6)
WIDER = st.sampled_from(["R+", "C+", "E+"])


@settings(max_examples=100, deadline=None)
@given(problem=problems(longest=24, widest=13), family=WIDER, prices=PRICES)
def test_value_is_what_the_page_says(
    problem: Problem, family: Family, prices: list[int]
) -> None:
    prices = prices[: len(problem.demands)]
    found = Pricing(replace(problem, family=family)).price(prices)
    for number, piece in enumerate(problem.bins):
        page = Page(problem, piece)
        # A board that nothing is cut from is no pattern, whatever it would count for.
        uncut = max(page.end_worth(0), page.edge_worth(0)) if page.along > 0 else 0
        greatest = page.greatest(prices, family)
        assert found[number] == greatest or max(found[number], greatest) <= uncut


@settings(max_examples=100, deadline=None)
@given(problem=problems(), family=WIDER, prices=PRICES)
def test_pattern_is_allowed_and_worth_its_value_or_no_more(
    problem: Problem, family: Family, prices: list[int]
) -> None:
    prices = prices[: len(problem.demands)]
    wider = replace(problem, family=family)
    plain = Pricing(replace(problem, family=family[0])).price(prices)  # type: ignore[arg-type]
    pricing = Pricing(wider)
    values = pricing.price(prices)
    for number in pricing.bins:
        pattern = pricing.pattern(number)
        if not pattern.items():
            continue
        assert_is_of_its_family(pattern, wider)
        made = makes_of(pattern, wider)
        value = sum(m * p for m, p in zip(made, prices, strict=True))
        worth = Yard(wider).worth(pattern)
        assert value + worth <= values[number]
        # Whatever may be cut the plain way may be cut here.
        assert values[number] >= plain[number]
        in_sets = set(pattern.items()) & problem.in_sets()
        is_exact = problem.bins[number].is_straight and not problem.sets
        if is_exact and (worth or not problem.offcut_percent):
            assert value + worth == values[number]
        assert not in_sets or pattern.breakdown == "C"


def nodes(tree: Node) -> Iterator[Node]:
    """The node and all below it."""
    yield tree
    for child in tree.into:
        yield from nodes(child)


@pytest.mark.parametrize("breakdown", ["crosscut first", "rip first", "either"])
def test_a_narrow_part_beside_a_hole_saves_a_board(breakdown: str) -> None:
    rail = make_part("rail", "50", "1-1/2")
    panel = make_part("panel", "16", "3", 2)
    slat = make_part("slat", "16", "1-1/2")
    parts = [rail, panel, slat]
    # Along there are 55 - 2 x 2 = 51 in. The rail's blank of 50-1/2 and a kerf takes all of
    # it on marks of 1/2 in; those of 16-1/2 take 17 each, three of them all of it too.
    # Across there are 5-1/8 - 2 x 1/8 + 1/8 = 5 in: 1-5/8 + 1/8 for the rail, and for the
    # panels 3-1/8 + 1/8. So everything fits when the slat lies between the panels, in
    # their strip; and there is the hole, 2 to 3 in from the edge. Below it (2 - 1/8) in
    # are clear: a kerf more than the slat's 1-5/8 and 1/8 over.
    hole = make_mark("hole", "through", "27", "29", "2", "3")
    boards = [make_board(name, "55", "5-1/8", hole) for name in ("W1", "W2")]
    blanks = [make_blank([part]) for part in parts]

    plan, wood = plan_of(parts, blanks, boards, breakdown=breakdown, work=400_000)
    assert objections(plan) == []
    assert len(wood.cuttings) == 2

    plan, wood = plan_of(
        parts, blanks, boards, breakdown=breakdown, beside_marks=True, work=400_000
    )
    assert objections(plan) == []
    (cutting,) = wood.cuttings
    assert wood.bound.value == wood.cost
    (piece,) = [
        node
        for node in nodes(cutting.tree)
        if node.cut == "rip" and any(leaf.blank == "plane slat" for leaf in node.into)
    ]
    # Its own piece of the strip is 17 in less a kerf long and as wide as the panels are.
    assert piece.length == (17 - Fraction(1, 8)) * TICKS_PER_INCH
    assert piece.width == Fraction(25, 8) * TICKS_PER_INCH


@settings(max_examples=12, deadline=None)
@given(data=st.data())
def test_plans_pass_the_proof_and_no_plain_plan_is_below_their_floor(
    data: st.DataObject,
) -> None:
    draw = data.draw
    parts = [
        make_part(
            f"p{number}",
            str(draw(st.integers(6, 24))),
            str(draw(st.integers(1, 4))),
            draw(st.integers(1, 3)),
            show=draw(st.sampled_from(["clear", "sound"])),
        )
        for number in range(draw(st.integers(1, 4)))
    ]
    blanks = [make_blank([part]) for part in parts]
    boards = []
    for number in range(draw(st.integers(1, 4))):
        length, width = draw(st.integers(30, 60)), draw(st.integers(3, 9))
        marks = []
        for _ in range(draw(st.integers(0, 3))):
            x, y = draw(st.integers(0, length - 4)), draw(st.integers(0, width - 2))
            kind = draw(st.sampled_from(["knot", "hole", "check"]))
            face = draw(st.sampled_from(["A", "B", "through"]))
            marks.append(make_mark(kind, face, str(x), str(x + 3), str(y), str(y + 1)))
        boards.append(make_board(f"W{number}", str(length), str(width), *marks))
    breakdown = draw(st.sampled_from(["crosscut first", "rip first", "either"]))
    over: dict[str, Any] = {"breakdown": breakdown, "work": 60_000}
    plain, plain_wood = plan_of(parts, blanks, boards, **over)
    plan, wood = plan_of(parts, blanks, boards, beside_marks=True, **over)
    assert objections(plan) == []
    if plan.complete and plain.complete:
        # A plain plan is one of the wider kind.
        assert wood.bound.value <= plain_wood.cost
