"""Narrow parts beside marks: the compiled pricing against every pattern tried, and plans of it."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.packing.from_the_page import Page
from tests.packing.random_problems import problems
from tests.packing.valid import assert_is_of_its_family
from yieldplan.model.plan import Family
from yieldplan.packing.pattern import makes_of
from yieldplan.packing.pricing import Pricing
from yieldplan.packing.problem import Problem
from yieldplan.packing.yard import Yard

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
