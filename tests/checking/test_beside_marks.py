"""Narrow parts beside marks: what a piece is worth by R+, C+ and E+, against trying everything."""

from __future__ import annotations

from dataclasses import replace
from random import Random

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.checking import brute, brute_beside
from tests.checking.test_bound_by_trying_everything import tiny_woods
from tests.checking.test_worth_of_marked_pieces import MODES, marked_wood
from tests.checking.tiny import TinyWood, document
from yieldplan.checking.bound import greatest_worths, price_out
from yieldplan.checking.reading import read

FAMILIES = ("R+", "C+", "E+")


@settings(max_examples=60, deadline=None)
@given(st.data(), tiny_woods((8, 5)), st.sampled_from(FAMILIES))
def test_priced_floor_is_what_the_page_says(
    data: st.DataObject, wood: TinyWood, family: str
) -> None:
    wood = replace(wood, family=family)
    prices = {part: data.draw(st.integers(0, 900)) for part in wood.need}
    plan, objections = read(document(wood, [], prices=prices))
    assert plan is not None, objections
    assert price_out(plan, plan.woods[0]) == brute_beside.priced(wood, prices)


@pytest.mark.parametrize("family", FAMILIES)
@pytest.mark.parametrize("mode", ["", *MODES])
def test_worth_of_a_marked_piece_is_what_the_page_says(family: str, mode: str) -> None:
    random = Random(f"{family} {mode}")
    for _ in range(8):
        wood, prices = marked_wood(family, random, mode)
        (piece,) = wood.pieces
        is_ = _worth(wood, prices)
        assert is_ == brute_beside.greatest(wood, piece, prices)
        true = brute_beside.greatest_true(wood, piece, prices)
        plain = brute.greatest(replace(wood, family=family[0]), piece, prices)
        assert is_ >= true >= plain


def _worth(wood: TinyWood, prices: dict[str, int]) -> int:
    plan, objections = read(document(wood, [], prices=prices))
    assert plan is not None, objections
    return greatest_worths(plan, plan.woods[0])["P"]
