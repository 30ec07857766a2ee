"""The quick bid: net, rough, what the shop adds, and what to look for first."""

from __future__ import annotations

import dataclasses
from decimal import Decimal
from fractions import Fraction

import pytest

from tests.measure.hall_case import (
    FRONTS,
    LOWER,
    UPPER,
    WHERE,
    inches,
    make_blank,
    make_job,
    make_part,
    make_price,
    make_shop,
)
from yieldplan.measure.bid import bid
from yieldplan.measure.must_find import least_board
from yieldplan.measure.takeoff import takeoff
from yieldplan.model.blanks import Inside
from yieldplan.model.job import Sheet
from yieldplan.model.sums import Sum

SHELF = make_part("shelf", "47-1/2", "11-3/4", quantity=3)
SHELF_BLANK = make_blank("shelf", "48", "12")


def test_a_line_adds_thirty_and_says_that_it_is_twenty_three_of_a_hundred() -> None:
    (line,) = bid(make_job(), [SHELF], [SHELF_BLANK]).lines
    assert (line.line, line.grade, line.thickness) == ("walnut 4/4", "FAS", "4/4")
    # Net 3 x 47-1/2 x 11-3/4 / 144, rough 3 x 48 x 12 / 144 = 12 board feet.
    assert line.net == 3 * inches("47-1/2") * inches("11-3/4") / 144
    assert line.rough == 12
    # 12 x 1.30 = 15.6, up to 16; at 12.00 a foot.
    assert (line.add_percent, line.buy) == (30, 16)
    assert line.waste_percent == Fraction(3000, 130)
    assert line.total == 1_920_000


def test_matched_fronts_take_sixty_and_say_why() -> None:
    (line,) = bid(make_job(), [UPPER, LOWER], [FRONTS]).lines
    # 45-1/8 x 6-1/4 / 144 = 1.96 rough, x 1.60 = 3.13, up to 4.
    assert (line.add_percent, line.buy) == (60, 4)
    assert "matched" in line.price_note


def test_a_line_with_matched_and_plain_parts_takes_the_mean_by_rough_face() -> None:
    (line,) = bid(make_job(), [UPPER, LOWER, SHELF], [FRONTS, SHELF_BLANK]).lines
    # Matched 45-1/8 x 6-1/4 = 282.03 of 2,010.03 square inches: 30 + 30 x 0.1403 = 34.2.
    assert line.add_percent == 35
    assert "60 %" in line.price_note
    assert "30 % for the rest" in line.price_note


def test_clear_on_both_faces_means_heartwood_only() -> None:
    clear = dataclasses.replace(SHELF_BLANK, show_face="clear", back_face="clear")
    (line,) = bid(make_job(), [SHELF], [clear]).lines
    assert line.add_percent == 60


def test_common_stock_takes_forty_five() -> None:
    common = make_price(grade="No. 1 Common", per_foot=Decimal("8.00"))
    (line,) = bid(make_job(prices=(common,)), [SHELF], [SHELF_BLANK]).lines
    # 12 x 1.45 = 17.4, up to 18.
    assert (line.add_percent, line.buy, line.total) == (45, 18, 1_440_000)


def test_of_two_listed_grades_clear_faces_ask_for_the_best_and_others_the_cheapest() -> (
    None
):
    prices = (
        make_price(),
        make_price(grade="No. 1 Common", per_foot=Decimal("8.00")),
    )
    job = make_job(prices=prices)
    (plain,) = bid(job, [SHELF], [SHELF_BLANK]).lines
    clear = dataclasses.replace(SHELF_BLANK, show_face="clear")
    (show,) = bid(job, [SHELF], [clear]).lines
    assert (plain.grade, plain.per) == ("No. 1 Common", 80_000)
    assert (show.grade, show.per) == ("FAS", 120_000)
    assert show.price_note == "FAS, as a face must be clear"


@pytest.mark.parametrize(
    ("thickness", "quarter"),
    # Quarters are sold at 1, 1-1/4, 1-1/2, 1-3/4, 2 (woodbin.com, lumber dimensions).
    [
        ("1/2", "4/4"),
        ("1", "4/4"),
        ("1-1/16", "5/4"),
        ("1-1/4", "5/4"),
        ("1-15/16", "8/4"),
    ],
)
def test_the_least_quarter_that_is_thick_enough(thickness: str, quarter: str) -> None:
    blank = dataclasses.replace(
        SHELF_BLANK, thickness=Sum.of(("rough", inches(thickness)))
    )
    (line,) = bid(make_job(), [SHELF], [blank]).lines
    assert line.thickness == quarter


def test_board_feet_of_a_bid_are_counted_at_the_quarter_bought() -> None:
    blank = dataclasses.replace(SHELF_BLANK, thickness=Sum.of(("rough", inches("2"))))
    (line,) = bid(make_job(), [SHELF], [blank]).lines
    # 3 x 48 x 12 x 2 / 144.
    assert line.rough == 24


def test_a_price_list_in_millimetres_is_what_the_yard_sells() -> None:
    prices = tuple(
        make_price(thickness=f"{mm} mm rough", grade="") for mm in (27, 34, 52)
    )
    (line,) = bid(make_job(prices=prices), [SHELF], [SHELF_BLANK]).lines
    # 15/16 in is 23.8 mm: 27 mm rough.
    assert line.line == "walnut 27 mm rough"
    assert line.rough == 12 * Fraction(270, 254)


def test_thicker_than_any_quarter_is_said() -> None:
    blank = dataclasses.replace(
        SHELF_BLANK, thickness=Sum.of(("rough", inches("4-1/2")))
    )
    (line,) = bid(make_job(), [SHELF], [blank]).lines
    assert line.thickness == "4 1/2 rough"
    assert "thicker than any quarter" in line.price_note


def test_without_a_price_the_line_says_what_to_add_and_the_total_is_open() -> None:
    made = bid(make_job(prices=()), [SHELF], [SHELF_BLANK])
    (line,) = made.lines
    assert (line.per, line.total, made.total) == (None, None, None)
    assert "no price for walnut 4/4" in line.price_note


def test_sheets_are_bought_by_area_and_fifteen_more() -> None:
    sheet = Sheet(
        name="bottom",
        product="birch plywood",
        length=Fraction(96),
        width=Fraction(48),
        thickness=inches("1/4"),
        price=Decimal("38.00"),
        quantity=1,
        where=WHERE,
    )
    part = make_part("base", "40", "40", quantity=3, wood="bottom", is_sheet=True)
    blank = make_blank("base", "40", "40", wood="bottom", is_sheet=True)
    (line,) = bid(make_job(sheets={"bottom": sheet}), [part], [blank]).lines
    # 3 x 40 x 40 = 4,800, x 1.15 = 5,520 over 96 x 48 = 4,608: two sheets.
    assert (line.buy, line.total, line.net) == (2, 760_000, None)
    assert line.waste_percent == Fraction(1500, 115)
    assert "only 1" in line.price_note


def test_the_thriftiest_route_is_taken_and_a_spare_only_at_the_end() -> None:
    short = make_part("knob", "6", "2", quantity=5)
    one = make_blank("knob", "6-1/2", "2-1/4", id="k1")
    inside = dataclasses.replace(one.inside[0], length=Fraction(6), width=Fraction(2))
    pair = dataclasses.replace(
        one,
        id="k2",
        route="gang",
        length=Sum.of(("rough", inches("12-5/8"))),
        makes={"knob": 2},
        inside=(inside, dataclasses.replace(inside, x=inches("6-1/8"))),
    )
    # 12-5/8 / 2 is less than 6-1/2 for each: two pairs, then one by itself.
    taken = {t.blank.id: t.count for t in takeoff([short], [one, pair])}
    assert taken == {"k1": 1, "k2": 2}
    # Where only pairs are offered the third pair leaves a spare, which is not needed face.
    (only,) = takeoff([short], [pair])
    assert (only.count, only.face) == (3, 5 * 6 * 2)


def test_strips_of_a_glued_part_are_counted_strip_by_strip() -> None:
    top = make_part("top", "40", "18", quantity=2, strips=3)
    strip = Inside(
        demand="top strip",
        x=Fraction(0),
        y=Fraction(0),
        length=Fraction(40),
        width=Fraction(6),
    )
    blank = make_blank(
        "top strip", "41", "6-1/4", makes={"top strip": 1}, inside=(strip,)
    )
    (taken,) = takeoff([top], [blank])
    # Two tops of three strips; their face is that of the tops.
    assert (taken.count, taken.face) == (6, 2 * 40 * 18)


def test_set_up_pieces_and_what_is_made_already_are_not_bought() -> None:
    piece = make_part("test piece", "8", "6", set_up=True)
    blank = make_blank("test piece", "8-1/2", "6-1/4", set_up=True)
    assert bid(make_job(), [piece], [blank]).lines == ()


def test_the_least_board_for_the_fronts_takes_trims_kerf_and_edges() -> None:
    # Along: the first mark at 2; 45-1/8 + 1/8 up to half inches is 45-1/2; 2 more: 49-1/2.
    # Across: 6-1/4 + 1/8 on eighths, less the kerf that runs off, and two 1/8 edges: 6-1/2.
    assert least_board(FRONTS, make_shop()) == (inches("49-1/2"), inches("6-1/2"))


def test_what_to_find_starts_with_matched_sets_then_widest_then_longest() -> None:
    rail = make_part("rail", "70", "2")
    knob = make_part("knob", "6", "2")
    made = bid(
        make_job(),
        [UPPER, LOWER, SHELF, rail, knob],
        [
            FRONTS,
            SHELF_BLANK,
            make_blank("rail", "71", "2-1/4"),
            make_blank("knob", "7", "2"),
        ],
    )
    assert [each.what_for for each in made.must_find] == [
        "fronts (2 matched)",
        "shelf",
        "rail",
    ]
    assert [each.count for each in made.must_find] == [1, 3, 1]


def test_at_most_six_pieces_are_to_be_found() -> None:
    sets = [
        make_blank(f"set {n}", f"{40 + n}", "6", route="match", id=f"k{n}")
        for n in range(9)
    ]
    parts = [make_part(f"set {n}", "39", "5") for n in range(9)]
    found = bid(make_job(), parts, sets).must_find
    assert [each.what_for for each in found] == [f"set {n}" for n in range(8, 2, -1)]
