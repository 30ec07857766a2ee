"""Pricing against every pattern tried by hand, from the page of the format."""

from __future__ import annotations

from dataclasses import replace

from hypothesis import given, settings
from hypothesis import strategies as st

from tests.packing.from_the_page import Page
from tests.packing.random_problems import problems
from tests.packing.valid import assert_is_of_its_family
from yieldplan.packing.filling.yard import Yard
from yieldplan.packing.grid.pattern import makes_of
from yieldplan.packing.patterns.pricing import Pricing
from yieldplan.packing.problem import Problem

PRICES = st.lists(st.integers(0, 3000), min_size=6, max_size=6)


@settings(max_examples=70, deadline=None)
@given(problem=problems(longest=26, widest=14), prices=PRICES)
def test_value_is_that_of_the_best_of_all_patterns(
    problem: Problem, prices: list[int]
) -> None:
    prices = prices[: len(problem.demands)]
    pricing = Pricing(problem)
    found = pricing.price(prices)
    for number, piece in enumerate(problem.bins):
        page = Page(problem, piece)
        # A board that nothing is cut from is no pattern, whatever it would count for.
        uncut = max(page.end_worth(0), page.edge_worth(0)) if page.along > 0 else 0
        greatest = page.greatest(prices, problem.family)
        assert found[number] == greatest or max(found[number], greatest) <= uncut


@settings(max_examples=40, deadline=None)
@given(problem=problems(), prices=PRICES, data=st.data())
def test_what_is_left_is_priced_as_if_no_more_had_been_asked_for(
    problem: Problem, prices: list[int], data: st.DataObject
) -> None:
    prices = prices[: len(problem.demands)]
    left = [data.draw(st.integers(0, demand.need)) for demand in problem.demands]
    no_more = replace(
        problem,
        demands=tuple(
            replace(demand, need=count)
            for demand, count in zip(problem.demands, left, strict=True)
        ),
    )
    pricing = Pricing(problem)
    values = pricing.price(prices, left=left)
    assert values.tolist() == Pricing(no_more).price(prices).tolist()
    assert (values <= pricing.price(prices)).all()


@settings(max_examples=70, deadline=None)
@given(problem=problems(), prices=PRICES, data=st.data())
def test_pattern_is_allowed_and_worth_its_value(
    problem: Problem, prices: list[int], data: st.DataObject
) -> None:
    prices = prices[: len(problem.demands)]
    pricing = Pricing(problem)
    # Any part of the bins may be asked for; their values are the same.
    all_values = pricing.price(prices)
    bins = data.draw(st.sets(st.sampled_from(pricing.bins or [0])))
    some = sorted(bins & set(pricing.bins))
    values = pricing.price(prices, some)
    for number in some:
        assert values[number] == all_values[number]
        pattern = pricing.pattern(number)
        if not pattern.items():
            assert 2 * values[number] <= problem.bins[number].price
            continue
        assert_is_of_its_family(pattern, problem)
        made = makes_of(pattern, problem)
        value = sum(m * p for m, p in zip(made, prices, strict=True))
        worth = Yard(problem).worth(pattern)
        # An offcut with a mark past the last cell counts in no plan, but in the floor.
        assert value + worth == values[number] or (
            worth == 0 and value <= values[number]
        )
