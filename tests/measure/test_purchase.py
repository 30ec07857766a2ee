"""The purchase list: grouped, in natural order, rounded once a line."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.measure.hall_case import (
    FRONTS,
    TREE,
    inches,
    make_board,
    make_plan,
    make_wood_plan,
)
from yieldplan.measure import purchase
from yieldplan.measure.money import say_money, to_the_cent
from yieldplan.measure.order import natural
from yieldplan.model.pieces import Piece
from yieldplan.model.plan import Cutting, PurchaseLine


def lines_of(*pieces: Piece, copies: int = 1) -> tuple[PurchaseLine, ...]:
    cuttings = tuple(
        Cutting(piece=piece, copy=copy, tree=TREE, breakdown="crosscut first")
        for piece in pieces
        for copy in range(1, copies + 1)
    )
    return purchase.lines([make_wood_plan(cuttings=cuttings)])


def test_boards_of_one_line_grade_and_price_stand_together_in_natural_order() -> None:
    (line,) = lines_of(make_board("W10"), make_board("W2"))
    assert line.pieces == (("W2", 1), ("W10", 1))
    # 3 + 3 board feet at 12.00.
    assert (line.board_feet, line.total) == (6, 720_000)


def test_another_price_a_foot_is_another_line_and_the_dearer_comes_first() -> None:
    cheap = make_board("W1", per_foot=90_000, price=270_000)
    dear, less = lines_of(cheap, make_board("W2"))
    assert (dear.per, less.per) == (120_000, 90_000)


def test_a_line_is_rounded_half_up_to_the_cent_once() -> None:
    # 0.35 board feet at 14.30 is 5.005; two of them are 10.01, not 5.01 + 5.01.
    small = {"board_feet": Fraction(35, 100), "per_foot": 143_000, "price": 50_050}
    (one,) = lines_of(make_board("W1", **small))
    assert say_money(one.total) == "5.01"
    (two,) = lines_of(make_board("W1", **small), make_board("W2", **small))
    assert say_money(two.total) == "10.01"


def test_pieces_priced_as_a_piece_are_counted_and_keep_their_feet_as_a_record() -> None:
    whole = {"per_foot": None, "price": 250_000}
    (line,) = lines_of(make_board("W1", **whole), make_board("W2", **whole))
    assert (line.by, line.per, line.total) == ("piece", 250_000, 500_000)
    assert line.board_feet == 6


def test_copies_of_a_sheet_are_counted_and_have_no_board_feet() -> None:
    sheet = make_board("ply", board_feet=None, per_foot=None, price=380_000)
    (line,) = lines_of(sheet, copies=3)
    assert line.pieces == (("ply", 3),)
    assert (line.board_feet, line.total) == (None, 1_140_000)


def test_net_and_rough_board_feet_of_two_matched_fronts() -> None:
    plan = make_plan()
    net, rough = purchase.net_and_rough(plan, plan.purchase[0])
    # Two parts 22 x 6 x 1 nominal, over 144; one blank 45-1/8 x 6-1/4.
    assert net == Fraction(2 * 22 * 6, 144)
    assert rough == inches("45-1/8") * inches("6-1/4") / 144


def test_surfaced_stock_is_counted_as_what_it_was_before_the_planer() -> None:
    board = make_board(
        "W1",
        kind="surfaced board",
        is_planed=True,
        thickness="13/16 surfaced",
        thick=Fraction(13, 16),
    )
    # 13/16 is planed from 4/4 (engineeringtoolbox.com, hardwood lumber dimensions).
    assert purchase.measured_thickness(board, "in") == 1
    thicker = make_board(
        "W2",
        kind="surfaced board",
        is_planed=True,
        thickness="8/4 surfaced",
        thick=Fraction(7, 4),
    )
    assert purchase.measured_thickness(thicker, "in") == 2


def test_set_up_pieces_count_neither_net_nor_rough() -> None:
    import dataclasses

    plan = make_plan(blanks=(dataclasses.replace(FRONTS, set_up=True),))
    assert purchase.net_and_rough(plan, plan.purchase[0]) == (0, 0)


def test_sheets_have_no_board_feet_to_ask_for() -> None:
    (line,) = lines_of(make_board("ply", board_feet=None, per_foot=None))
    with pytest.raises(ValueError, match="not measured in board feet"):
        purchase.net_and_rough(make_plan(), line)


@given(st.integers(0, 10**9))
def test_rounding_to_the_cent_is_half_up_and_never_off_by_more_than_half(
    amount: int,
) -> None:
    # 100 of the money unit are a cent.
    rounded = to_the_cent(amount)
    assert rounded % 100 == 0
    assert -50 < rounded - amount <= 50


def test_natural_order_counts_the_numbers_in_names() -> None:
    names = ["W10", "W2", "w2", "W2b", "10", "9", "W"]
    assert sorted(names, key=natural) == ["9", "10", "W", "W2", "W2b", "W10", "w2"]


@given(st.text(max_size=12), st.text(max_size=12))
def test_two_names_never_share_a_place(one: str, other: str) -> None:
    assert (natural(one) == natural(other)) == (one == other)
