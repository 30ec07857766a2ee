"""No plan file, however broken, is an error of the checker's; and no change of meaning passes."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.checking.examples import full
from yieldplan.checking import check

Place = tuple[Any, Any]
"""A dict or list, and a key or index in it."""

NONSENSE = st.one_of(
    st.none(),
    st.booleans(),
    st.integers(-3, 3),
    st.integers(),
    st.sampled_from([10**7, 10**9, 10**16, -(10**30), 10**5000, 2**63]),
    st.floats(),
    st.text(max_size=5),
    st.sampled_from(["", "A", "walnut", "k1", "top strip", "2.26", "\u202e", "\ud800"]),
    st.recursive(
        st.integers(-5, 5),
        lambda inner: (
            st.lists(inner, max_size=4)
            | st.dictionaries(st.text(max_size=3), inner, max_size=3)
        ),
        max_leaves=6,
    ),
)


def places(within: Any) -> Iterator[Place]:
    """Every place in a document where a value stands."""
    if isinstance(within, dict | list):
        keys = list(within) if isinstance(within, dict) else range(len(within))
        for key in keys:
            yield within, key
            yield from places(within[key])


@settings(max_examples=100, deadline=None)
@given(st.data())
def test_nonsense_is_refused_or_harmless_and_never_an_error(
    data: st.DataObject,
) -> None:
    plan = full()
    for _ in range(data.draw(st.integers(1, 3))):
        within, key = data.draw(st.sampled_from(list(places(plan))))
        if data.draw(st.booleans()):
            del within[key]
        else:
            within[key] = data.draw(NONSENSE)
    report = check(plan)
    assert sorted(report) == ["checked", "costs", "floors", "objections"]
    assert all(isinstance(each, str) and each for each in report["objections"])


@given(NONSENSE)
def test_nonsense_instead_of_a_plan_is_refused(nonsense: Any) -> None:
    assert check(nonsense)["objections"]


def test_any_entry_left_out_is_refused() -> None:
    for path, plan, within, key in _copies():
        if isinstance(within, dict):
            del within[key]
            assert check(plan)["objections"], path


def test_any_row_left_out_is_refused() -> None:
    rows = {"parts", "woods", "cuttings", "into", "inside", "lines", "pieces", "box"}
    for path, plan, within, key in _copies():
        if path[-1] in range(100) and path[-2] in rows:
            del within[key]
            assert check(plan)["objections"], path


@pytest.mark.parametrize("by", [-1, 1])
def test_any_count_or_amount_off_by_one_is_refused(by: int) -> None:
    exact = {"need", "missing", "makes", "cost", "value", "priced", "per_foot", "kerf"}
    exact |= {"price", "total", "per", "pieces", "ticks_per_inch", "money_per_unit"}
    exact |= {"yieldplan_plan", "strips", "worth"}
    num_changed = 0
    for path, plan, within, key in _copies():
        if exact & {*path[-3:]} and type(within[key]) is int:
            within[key] += by
            assert check(plan)["objections"], path
            num_changed += 1
    assert num_changed > 40


def _copies() -> Iterator[tuple[tuple[Any, ...], Any, Any, Any]]:
    """For every place of the plan a fresh copy: path, plan, and what holds the place."""
    num_places = len(list(places(full())))
    for number in range(num_places):
        plan = full()
        for count, (path, within, key) in enumerate(_paths(plan, ())):
            if count == number:
                yield path, plan, within, key
                break


def _paths(
    within: Any, path: tuple[Any, ...]
) -> Iterator[tuple[tuple[Any, ...], Any, Any]]:
    if isinstance(within, dict | list):
        keys = list(within) if isinstance(within, dict) else range(len(within))
        for key in keys:
            yield (*path, key), within, key
            yield from _paths(within[key], (*path, key))
