"""Bookcases worked by hand from their outsides. Where no source is named: common practice, no source."""

from __future__ import annotations

from fractions import Fraction

import pytest

from tests.builders import (
    build,
    inches,
    make_bookcase,
    make_job,
    make_shop,
    parts_by_id,
)
from yieldplan.assemblies.bookcase import Bookcase
from yieldplan.assemblies.bookcase.keys import (
    Back,
    End,
    Loose,
    Shelf,
    Side,
    ToeKick,
)
from yieldplan.joints.butt import Butt
from yieldplan.joints.dado import Dado
from yieldplan.joints.half_blind_dovetail import HalfBlindDovetail
from yieldplan.joints.joint import Joint
from yieldplan.joints.rabbet import Rabbet
from yieldplan.joints.through_dovetail import ThroughDovetail
from yieldplan.model.parts import Part


def parts(bookcase: Bookcase) -> dict[str, Part]:
    shop = make_shop(
        lap="1/4",
        sheet_play="1/16",
        shelf_clearance="1/16",
        groove_depth="1/4",
        board_gap="1/16",
    )
    made = parts_by_id(make_job(bookcase, shop=shop))
    return {name.removeprefix("den/"): part for name, part in made.items()}


def test_a_fixed_shelf_is_as_long_as_it_is_clear_and_both_its_dados() -> None:
    shelf = parts(make_bookcase(fixed_shelves=2))["shelf"]
    assert str(shelf.length) == "36 width − 2 × 3/4 side + 2 × 1/4 dado = 35"
    assert shelf.quantity == 2


def test_a_stand_with_shelves_of_seventeen_inches() -> None:
    # DERIVED from H. H. Windsor (ed.), Mission Furniture, Part 3, 1912, dictionary stand:
    # shelves ordered 17 long, let 1/4 into each side, so 16-1/2 clear between the sides.
    # With sides of 7/8 the stand is 16-1/2 + 2 x 7/8 = 18-1/4 wide.
    stand = make_bookcase(
        width="18-1/4",
        side=Side(wood="walnut", thickness=inches("7/8")),
        shelf=Shelf(joint=Dado(deep=inches("1/4"))),
        fixed_shelves=2,
    )
    assert parts(stand)["shelf"].length.value == inches("17")


def test_a_loose_shelf_clears_each_side() -> None:
    # 36 - 2 x 3/4 - 2 x 1/16 = 34-3/8; said otherwise, 2 x 1/8 less: 34-1/4.
    loose = parts(make_bookcase(loose=Loose(quantity=3)))["loose shelf"]
    assert str(loose.length) == "36 width − 2 × 3/4 side − 2 × 1/16 clearance = 34-3/8"
    assert loose.quantity == 3
    said = Loose(quantity=1, clearance=inches("1/8"))
    loose = parts(make_bookcase(loose=said))["loose shelf"]
    assert loose.length.value == inches("34-1/4")


def test_shelves_are_shallower_than_the_sides_by_the_back_and_by_what_they_stand_back() -> (
    None
):
    # 12 - 1/4 ply = 11-3/4; less 1/2 set back = 11-1/4.
    made = parts(
        make_bookcase(
            fixed_shelves=1,
            loose=Loose(quantity=1, set_back=inches("1/2")),
            back=Back(sheet="ply"),
        )
    )
    assert str(made["shelf"].width) == "12 depth − 1/4 back = 11-3/4"
    assert made["loose shelf"].width.value == inches("11-1/4")
    assert made["side"].width.value == inches("12")


@pytest.mark.parametrize(
    ("joint", "top", "side"),
    [
        # Between the sides: 36 - 2 x 3/4.
        (Butt(), "34-1/2", "72"),
        # Half of 3/4 into each side: 34-1/2 + 2 x 3/8.
        (Rabbet(), "35-1/4", "72"),
        # Up to the lap of 1/4: 36 - 2 x 1/4.
        (HalfBlindDovetail(), "35-1/2", "72"),
        # Through: the whole width; 1/32 proud at each end of the top, and of the
        # sides above and (the bottom is in rabbets) not below.
        (ThroughDovetail(), "36", "72"),
        (ThroughDovetail(proud=inches("1/32")), "36-1/16", "72-1/32"),
    ],
)
def test_the_top_is_as_long_as_its_joint_makes_it(
    joint: Joint, top: str, side: str
) -> None:
    made = parts(make_bookcase(top=End(joint=joint)))
    assert made["top"].length.value == inches(top)
    assert made["side"].length.value == inches(side)


def test_a_top_in_dados_lies_lower_than_the_sides_and_the_back_with_it() -> None:
    # Left out, the sides run past it by its thickness of 3/4, so the ply is 40 - 3/4 high
    # above a bottom at the floor.
    made = parts(
        make_bookcase(
            height="40",
            top=End(joint=Dado()),
            bottom=End(joint=Rabbet()),
            back=Back(sheet="ply"),
        )
    )
    assert made["top"].length.value == inches("35")
    assert str(made["back"].length) == "40 height − 3/4 above the top = 39-1/4"


def test_over_a_toe_kick_the_bottom_sits_in_dados_at_its_height() -> None:
    made = parts(
        make_bookcase(toe_kick=ToeKick(height=inches("4"), set_back=inches("2")))
    )
    # 36 - 2 x 3/4 + 2 x 1/4 = 35; the kick between the sides: 34-1/2 by 4.
    assert made["bottom"].length.value == inches("35")
    kick = made["toe kick"]
    assert (kick.length.value, kick.width.value) == (inches("34-1/2"), 4)
    assert kick.note == "set back 2 in"


def test_a_back_in_the_top_too_ends_in_its_rabbet_and_leaves_the_top_deep() -> None:
    # 72 - 3/4 top + 3/8 rabbet - 1/16 play = 71-9/16.
    made = parts(make_bookcase(back=Back(sheet="ply", rabbeted="sides and top")))
    assert made["top"].width.value == inches("12")
    assert made["back"].length.value == inches("71-9/16")
    assert made["bottom"].width.value == inches("11-3/4")


def test_back_boards_lie_in_each_others_grooves_by_the_tongue_less_the_gap() -> None:
    # 34-1/2 + 2 x 3/8 = 35-1/4 across. Four boards overlap three times by 1/4 - 1/16:
    # (35-1/4 + 3 x 3/16) / 4 = 8-61/64, down to 8-15/16; the last has what is left:
    # 35-1/4 - 3 x 8-15/16 + 3 x 3/16 = 9.
    back = Back(wood="poplar", thickness=inches("1/2"), boards=4)
    made = parts(make_bookcase(back=back))
    assert made["back board"].quantity == 3
    assert made["back board"].width.value == inches("8-15/16")
    assert made["last back board"].width.value == inches("9")


def test_back_boards_that_come_out_even_are_all_alike() -> None:
    # 35-1/4 and one lap of 1/4 (no gap): 35-1/2 / 2 = 17-3/4.
    back = Back(wood="poplar", thickness=inches("1/2"), boards=2, gap=Fraction(0))
    made = parts(make_bookcase(back=back))
    assert made["back board"].quantity == 2
    assert made["back board"].width.value == inches("17-3/4")
    assert "last back board" not in made


def test_equal_openings_are_set_out_on_the_sides_from_the_floor() -> None:
    # 60 - 4 - 2 x 3/4 - 2 x 3/4 = 53 for three openings of 17-2/3; the shelves' lower
    # faces at 4 + 3/4 + 17-2/3 = 22-5/12 and 22-5/12 + 3/4 + 17-2/3 = 40-5/6.
    made = parts(
        make_bookcase(
            height="60", toe_kick=ToeKick(height=inches("4")), fixed_shelves=2
        )
    )
    assert made["side"].note == (
        "lower faces from the floor: bottom 4, shelf about 22-13/32, "
        "shelf about 40-27/32"
    )


def test_openings_are_given_from_the_top_down() -> None:
    # 40 - 2 x 3/4 - 2 x 3/4 = 37 = 10 + 12 + 15; from the floor: 3/4 + 15 = 15-3/4,
    # then 15-3/4 + 3/4 + 12 = 28-1/2.
    openings = tuple(inches(each) for each in ("10", "12", "15"))
    made = parts(make_bookcase(height="40", openings=openings))
    assert made["shelf"].quantity == 2
    assert made["side"].note == (
        "lower faces from the floor: shelf 15-3/4, shelf 28-1/2"
    )


def test_what_is_not_said_is_as_with_the_sides() -> None:
    side = Side(wood="cherry", thickness=inches("7/8"), strips=3)
    made = parts(
        make_bookcase(
            side=side,
            fixed_shelves=1,
            shelf=Shelf(wood="poplar"),
            bottom=End(sheet="ply"),
            toe_kick=ToeKick(height=inches("4")),
        )
    )
    top, shelf, bottom = made["top"], made["shelf"], made["bottom"]
    assert (top.wood, top.thickness.value, top.strips) == ("cherry", inches("7/8"), 3)
    assert (shelf.wood, shelf.thickness.value) == ("poplar", inches("7/8"))
    assert (bottom.wood, bottom.is_sheet, bottom.strips) == ("ply", True, 1)
    # A toe kick is narrow: it is of one board unless it says otherwise.
    assert made["toe kick"].strips == 1


def test_each_joint_with_the_sides_is_set_up_and_named() -> None:
    bookcase = make_bookcase(fixed_shelves=1, toe_kick=ToeKick(height=inches("4")))
    meetings = {
        each.housed: (each.joint, each.housing, each.depth.value)
        for each in build(make_job(bookcase)).meetings
    }
    assert meetings == {
        "den/top": ("rabbet", "den/side", inches("3/8")),
        "den/bottom": ("dado", "den/side", inches("1/4")),
        "den/shelf": ("dado", "den/side", inches("1/4")),
        "den/toe kick": ("butt", "den/side", 0),
    }


def test_in_millimetres_it_is_the_same_sum() -> None:
    # 900 - 2 x 20 + 2 x 20/3 = 873.3.
    side = Side(wood="walnut", thickness=inches("20 mm"))
    bookcase = make_bookcase("900 mm", "1800 mm", "300 mm", side=side, fixed_shelves=1)
    shelf = parts_by_id(make_job(bookcase, unit="mm"))["den/shelf"]
    assert shelf.length.say("mm") == (
        "900 width − 2 × 20 side + 2 × about 6.7 dado = about 873.3"
    )
