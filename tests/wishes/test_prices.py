"""What wishes cost, on jobs small enough to lay out by hand."""

from __future__ import annotations

from pathlib import Path

from tests.system.runs import outcome_of
from yieldplan.desk.wishes import price_wishes
from yieldplan.model.price_of_a_wish import PriceOfAWish
from yieldplan.packing import Stop

HEAD = """
title = "Wishes"
unit = "in"
currency = "USD"
board_measure = "exact"
[shop]
set_up_pieces = 0
{shop}
[wood.walnut]
species = "black walnut"
[[price]]
wood = "walnut"
thickness = "4/4"
per_foot = "12.00"
[[price]]
wood = "walnut"
thickness = "6/4"
per_foot = "12.00"
"""
CLEAR = 'show_face = "clear"\nback_face = "clear"'
PART = """
[[part]]
name = "{name}"
wood = "walnut"
length = "{length}"
width = "{width}"
thickness = "{thickness}"
{more}
"""


def prices(
    folder: Path, tally: str, *parts: str, shop: str = ""
) -> dict[str, PriceOfAWish]:
    job, stock = folder / "job.toml", folder / "tally.csv"
    job.write_text(HEAD.format(shop=shop) + "".join(parts))
    stock.write_text(tally)
    outcome = outcome_of(job, stock, Stop())
    found = price_wishes(outcome, Stop(), lambda _: None)
    return {price.words: price for price in found}


def part(
    name: str, length: str, width: str, thickness: str = "3/4", more: str = ""
) -> str:
    return PART.format(
        name=name, length=length, width=width, thickness=thickness, more=more
    )


def test_a_clear_back_costs_the_clear_board(tmp_path: Path) -> None:
    # W1 has a knot on face B all along: 36 x 6 x 1 / 144 = 1.5 feet, bought for 9.00. W2
    # is clear, for 24.00. With the clear back W2 must be bought, without it W1 will do.
    tally = (
        "id,wood,thickness,length,width,price_for_piece,marks\n"
        "W1,walnut,4/4,36,6,9.00,knot B 0 to 36\n"
        "W2,walnut,4/4,36,6,24.00,\n"
    )
    shelf = part("shelf", "24", "4", more=CLEAR)
    price = prices(tmp_path, tally, shelf)["clear backs: shelf"]
    assert price.found == price.least == price.most == 150_000
    assert price.woods == ("walnut",)


def test_a_matched_pair_costs_the_long_board(tmp_path: Path) -> None:
    # Two rails of 24: matched end to end they take 48 + 1/8 + 1/2 and a 60 in board at
    # 30.00; each by itself comes from a 30 in board at 8.00: 30 - 2 x 8 = 14.
    tally = (
        "id,wood,thickness,length,width,price_for_piece\n"
        "L1,walnut,4/4,60,4,30.00\n"
        "S1,walnut,4/4,30,4,8.00\n"
        "S2,walnut,4/4,30,4,8.00\n"
    )
    match = (
        '[[grain_match]]\nname = "rails"\nparts = ["left", "right"]\n'
        'laid = "end to end"\n'
    )
    found = prices(
        tmp_path, tally, part("left", "24", "3"), part("right", "24", "3"), match
    )
    price = found["rails matched, end to end"]
    assert price.found == price.least == price.most == 140_000


def test_a_route_left_out_has_its_price(tmp_path: Path) -> None:
    # Two 1/2 in sides from 6/4 by resawing: one board at 20.00, else two of 4/4 at 15.00.
    tally = (
        "id,wood,thickness,length,width,price_for_piece\n"
        "T1,walnut,6/4,30,5,20.00\n"
        "A1,walnut,4/4,30,5,15.00\n"
        "A2,walnut,4/4,30,5,15.00\n"
    )
    side = part("side", "24", "4", "1/2", "quantity = 2")
    found = prices(tmp_path, tally, side, shop='without = ["resaw"]')
    price = found["without the route resaw"]
    assert price.found == price.least == price.most == 100_000


def test_a_wish_that_changes_nothing_costs_nothing(tmp_path: Path) -> None:
    tally = "id,wood,thickness,length,width,price_for_piece\nW1,walnut,4/4,36,6,9.00\n"
    shelf = part("shelf", "24", "4", more='show_face = "clear"')
    price = prices(tmp_path, tally, shelf)["no sap on the show face: shelf"]
    assert (price.found, price.least, price.most) == (0, 0, 0)


def test_a_wide_part_in_one_board_costs_the_wide_board(tmp_path: Path) -> None:
    # 10 wide in one board: 40.00; glued up from strips of two narrow boards: 2 x 10.00.
    tally = (
        "id,wood,thickness,length,width,price_for_piece\n"
        "X1,walnut,6/4,36,12,40.00\n"
        "N1,walnut,6/4,36,6-1/2,10.00\n"
        "N2,walnut,6/4,36,6-1/2,10.00\n"
    )
    price = prices(tmp_path, tally, part("top", "30", "10"))["top in one board"]
    assert price.found == price.least == price.most == 200_000


def test_missing_parts_leave_a_wish_without_a_price(tmp_path: Path) -> None:
    tally = (
        "id,wood,thickness,length,width,price_for_piece,marks\n"
        "W1,walnut,4/4,36,6,9.00,knot B 0 to 36\n"
    )
    shelf = part("shelf", "24", "4", more=CLEAR)
    price = prices(tmp_path, tally, shelf)["clear backs: shelf"]
    assert "missing" in price.unknown


def test_strips_of_one_lot_cost_the_wide_board_of_that_lot(tmp_path: Path) -> None:
    # Two strips of 24 x 5. Of one lot: A1 and A2 at 10.00 and 30.00, or B1 and B2 at 12.00
    # and 30.00: 40.00. Of any lot A1 and B1 at 10.00 and 12.00: 40 - 22 = 18.
    tally = (
        "id,wood,thickness,length,width,price_for_piece,lot\n"
        "A1,walnut,4/4,30,6,10.00,A\n"
        "A2,walnut,4/4,30,6,30.00,A\n"
        "B1,walnut,4/4,30,6,12.00,B\n"
        "B2,walnut,4/4,30,6,30.00,B\n"
    )
    glue_up = 'glue_up = { colour = "one lot" }'
    found = prices(tmp_path, tally, part("top", "24", "10", more=glue_up))
    price = found["top glued up from one lot"]
    assert price.found == 180_000
    assert 0 <= price.least <= 180_000 <= price.most


def test_who_stops_has_the_other_wishes_without_a_price(tmp_path: Path) -> None:
    tally = "id,wood,thickness,length,width,price_for_piece\nW1,walnut,4/4,36,6,9.00\n"
    shelf = part("shelf", "24", "4", more=CLEAR)
    job, stock = tmp_path / "job.toml", tmp_path / "tally.csv"
    job.write_text(HEAD.format(shop="") + shelf)
    stock.write_text(tally)
    outcome = outcome_of(job, stock, Stop())
    stop = Stop()
    stop.asked.set()
    found = price_wishes(outcome, stop, lambda _: None)
    assert {price.unknown for price in found} == {"stopped before it was priced"}
