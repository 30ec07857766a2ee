"""Drawers worked by hand from their openings. Figures are common practice, no source."""

from __future__ import annotations

import dataclasses

import pytest

from tests.builders import inches, make_drawer, make_job, make_shop, parts_by_id
from yieldplan.assemblies.drawer import Drawer
from yieldplan.assemblies.drawer.keys import (
    Back,
    Bottom,
    BoxFront,
    Clearance,
    Front,
    Jig,
)
from yieldplan.joints.butt import Butt
from yieldplan.joints.dado import Dado
from yieldplan.joints.half_blind_dovetail import HalfBlindDovetail
from yieldplan.joints.joint import Joint
from yieldplan.joints.rabbet import Rabbet
from yieldplan.joints.through_dovetail import ThroughDovetail
from yieldplan.model.parts import Part
from yieldplan.model.shop import Shop
from yieldplan.units import Inches

NO_REAR = Clearance(rear=inches("0"))


def front(joint: Joint | None = None, **over: Inches) -> Front:
    return Front(wood="walnut", thickness=inches("3/4"), joint=joint, **over)


def back(joint: Joint, **over: object) -> Back:
    settings = {"wood": "poplar", "thickness": inches("1/2"), "joint": joint} | over
    return Back(**settings)  # type: ignore[arg-type]


def parts(drawer: Drawer, shop: Shop | None = None) -> dict[str, Part]:
    made = parts_by_id(make_job(drawer, shop=shop))
    return {name.removeprefix("upper/"): part for name, part in made.items()}


# -- the check values: common practice, no source --------------------------------------


def test_half_blind_sides_are_the_depth_less_the_lap() -> None:
    # common practice, no source: 20 - 3/8 = 19-5/8.
    joint = HalfBlindDovetail(lap=inches("3/8"))
    side = parts(make_drawer(front=front(joint), clearance=NO_REAR))["side"]
    assert side.length.value == inches("19-5/8")
    assert str(side.length) == "20 opening depth − 3/8 lap = 19-5/8"


def test_through_dovetailed_sides_are_the_whole_depth() -> None:
    # common practice, no source
    side = parts(make_drawer(front=front(ThroughDovetail()), clearance=NO_REAR))["side"]
    assert side.length.value == inches("20")


def test_the_default_rear_clearance_is_a_quarter() -> None:
    # common practice, no source: 20 - 1/4 - 3/8 = 19-3/8, and 20 - 1/4 = 19-3/4.
    half_blind = front(HalfBlindDovetail(lap=inches("3/8")))
    assert parts(make_drawer(front=half_blind))["side"].length.value == inches("19-3/8")
    through = front(ThroughDovetail())
    assert parts(make_drawer(front=through))["side"].length.value == inches("19-3/4")


def test_a_front_to_be_planed_in_is_as_long_as_its_opening_is_wide() -> None:
    # common practice, no source
    shown = parts(make_drawer(width="22", height="6", fit="plane to fit"))["front"]
    assert (shown.length.value, shown.width.value) == (22, 6)
    assert shown.note == "plane to its opening"


@pytest.mark.parametrize(
    ("height", "side"),
    [("6", "5-1/4"), ("6-1/4", "6-1/4"), ("7-3/16", "6-1/4"), ("4", "3-1/4")],
)
def test_on_a_one_inch_template_a_side_is_whole_inches_and_a_quarter(
    height: str, side: str
) -> None:
    # common practice, no source: n x 1 + 1/4.
    jig = Jig(spacing=inches("1"), remainder=inches("1/4"))
    made = parts(make_drawer(height=height, jig=jig))
    assert made["side"].width.value == inches(side)
    # The front keeps its height; the back follows the side.
    assert made["front"].width.value == inches(height)
    below = inches("3/8") + inches("1/4")
    assert made["back"].width.value == inches(side) - below


# -- front joints ----------------------------------------------------------------------


def test_a_rabbeted_front_houses_the_sides_by_half_its_thickness() -> None:
    # 20 - 1/4 - 3/4 front + 3/8 rabbet = 19-3/8; the front stays 22.
    made = parts(make_drawer(front=front(Rabbet())))
    assert made["side"].length.value == inches("19-3/8")
    assert made["front"].length.value == 22


def test_sides_that_butt_against_the_front_are_shorter_by_it() -> None:
    # 20 - 1/4 - 3/4 = 19.
    assert parts(make_drawer(front=front(Butt())))["side"].length.value == 19


def test_dovetails_left_proud_lengthen_front_and_sides() -> None:
    # Front 22 + 2 x 1/32; side 20 - 1/4 + 1/32 at the front, its back is rabbeted.
    made = parts(make_drawer(front=front(ThroughDovetail(proud=inches("1/32")))))
    assert made["front"].length.value == inches("22-1/16")
    assert made["side"].length.value == inches("19-25/32")


def test_a_lap_left_out_on_a_template_is_the_templates() -> None:
    # 20 - 1/4 - 3/8 template lap = 19-3/8.
    jig = Jig(spacing=inches("1"), remainder=inches("1/4"))
    drawer = make_drawer(front=front(HalfBlindDovetail()), jig=jig)
    assert parts(drawer)["side"].length.value == inches("19-3/8")


# -- back and bottom -------------------------------------------------------------------


def test_a_rabbeted_back_enters_the_sides_by_half_of_each() -> None:
    # 22 - 2 x 1/2 + 2 x 1/4 = 21-1/2.
    made = parts(make_drawer(back=back(Rabbet())))
    assert made["back"].length.value == inches("21-1/2")
    assert (
        str(made["back"].length)
        == "22 opening width − 2 × 1/2 side + 2 × 1/4 rabbet = 21-1/2"
    )


def test_a_dadoed_back_enters_the_sides_by_a_third_and_stands_in() -> None:
    # 22 - 2 x 1/2 + 2 x 1/6 = 21-1/3, and 1/2 of side stays behind it.
    made = parts(make_drawer(back=back(Dado())))
    assert made["back"].length.value == inches("21") + inches("1/3")
    # 20 - 1/4 rear - 1/2 behind - 3/4 front + 1/4 groove - 1/16 play = 18-11/16.
    assert made["bottom"].width.value == inches("18-11/16")


def test_how_far_a_dadoed_back_stands_in_can_be_said() -> None:
    # 20 - 1/4 - 1 - 3/4 + 1/4 - 1/16 = 18-3/16.
    made = parts(make_drawer(back=back(Dado(), set_in=inches("1"))))
    assert made["bottom"].width.value == inches("18-3/16")


def test_a_dovetailed_back_is_as_long_as_the_box_is_wide() -> None:
    made = parts(make_drawer(back=back(ThroughDovetail())))
    assert made["back"].length.value == 22
    # 20 - 1/4 - 1/4 lap: through dovetails at the back take nothing off the sides.
    assert made["side"].length.value == inches("19-1/2")


def test_half_blind_dovetails_at_both_ends_take_two_laps_off_the_sides() -> None:
    # 20 - 1/4 - 2 x 1/4 = 19-1/4.
    made = parts(make_drawer(back=back(HalfBlindDovetail())))
    assert made["side"].length.value == inches("19-1/4")
    assert str(made["side"].length).endswith("− 2 × 1/4 lap = 19-1/4")


def test_the_back_sits_on_the_bottom() -> None:
    # 6 - 3/8 below the groove - 1/4 bottom = 5-3/8.
    assert parts(make_drawer(height="6"))["back"].width.value == inches("5-3/8")


def test_a_back_of_full_height_holds_the_bottom_in_a_groove() -> None:
    made = parts(make_drawer(back=back(Dado(), sits="full height")))
    assert made["back"].width.value == 6
    # 20 - 1/4 - 1/2 behind - 3/4 front - 1/2 back + 2 x 1/4 groove - 1/16 = 18-7/16.
    assert made["bottom"].width.value == inches("18-7/16")


def test_a_sheet_bottom_has_play_each_way() -> None:
    bottom = parts(make_drawer())["bottom"]
    # 22 - 2 x 1/2 + 2 x 1/4 - 1/16 = 21-7/16.
    assert bottom.length.value == inches("21-7/16")
    # 20 - 1/4 - 3/4 + 1/4 - 1/16 = 19-3/16: under the back, flush with its outside.
    assert bottom.width.value == inches("19-3/16")
    assert bottom.is_sheet


def test_a_solid_bottom_runs_side_to_side_without_play() -> None:
    # W. Noyes, Handwork in Wood, 1910: grain side to side, no play left to right, and
    # free under the back. 22 - 1 + 1/2 = 21-1/2; 20 - 1/4 - 3/4 + 1/4 = 19-1/4.
    solid = Bottom(wood="poplar", thickness=inches("3/8"), strips=4)
    bottom = parts(make_drawer(bottom=solid))["bottom"]
    assert bottom.length.value == inches("21-1/2")
    assert bottom.width.value == inches("19-1/4")
    assert (bottom.is_sheet, bottom.strips) == (False, 4)


def test_the_groove_is_the_drawers_own_if_it_says_so() -> None:
    own = Bottom(sheet="ply", groove_depth=inches("3/16"), groove_up=inches("1/2"))
    made = parts(make_drawer(bottom=own))
    # 22 - 1 + 2 x 3/16 - 1/16 = 21-5/16; 6 - 1/2 - 1/4 = 5-1/4.
    assert made["bottom"].length.value == inches("21-5/16")
    assert made["back"].width.value == inches("5-1/4")


# -- fit, runners, slides --------------------------------------------------------------


def test_made_net_on_wooden_runners_it_leaves_room_for_the_wettest_season() -> None:
    # Width 22 - 1/16 = 21-15/16. Height: walnut 6 x 0.00274 x 4 = 0.0658, up to 3/32:
    # 6 - 1/32 - 3/32 = 5-7/8. Poplar 6 x 0.00289 x 4 = 0.0694, up to 3/32 too.
    # Coefficients: Wood Handbook, FPL-GTR-190, 2010, table 13-5.
    made = parts(make_drawer(fit="net"))
    assert made["front"].length.value == inches("21-15/16")
    assert made["front"].width.value == inches("5-7/8")
    assert made["side"].width.value == inches("5-7/8")
    assert made["back"].length.value == inches("21-7/16")


def test_a_height_clearance_given_is_all_there_is() -> None:
    clearance = Clearance(width=inches("1/8"), height=inches("3/16"))
    made = parts(make_drawer(fit="net", clearance=clearance))
    assert made["front"].length.value == inches("21-7/8")
    assert made["front"].width.value == inches("5-13/16")


def on_slides(**over: object) -> Drawer:
    settings: dict[str, object] = {
        "runs": "side-mounted slides",
        "slide_length": inches("18"),
        "front": front(),
    } | over
    return make_drawer(**settings)


def test_on_side_mounted_slides_the_sides_are_as_long_as_the_slides() -> None:
    made = parts(on_slides())
    assert made["side"].length.value == 18
    # 22 - 2 x 1/2 = 21 over the box; 6 - 1/2 = 5-1/2 high.
    assert made["box front"].length.value == 21
    assert made["side"].width.value == made["box front"].width.value == inches("5-1/2")
    # 21 - 2 x 1/2 side + 2 x 1/4 rabbet = 20-1/2.
    assert made["back"].length.value == inches("20-1/2")


def test_a_side_behind_a_lap_is_still_as_long_as_its_slide() -> None:
    # Behind an 1/8 lap the box is 18-1/8 deep, and its side 18.
    joint = HalfBlindDovetail(lap=inches("1/8"))
    made = parts(on_slides(front=front(joint)))
    assert made["side"].length.value == 18
    # Bottom: 18 + 1/8 lap - 1/2 box front + 1/4 groove - 1/16 = 17-13/16.
    assert made["bottom"].width.value == inches("17-13/16")


def test_an_inset_applied_front_leaves_a_gap_all_round() -> None:
    # 22 - 2 x 1/8 = 21-3/4; 6 - 2 x 1/8 = 5-3/4.
    made = parts(on_slides(front=front(gap=inches("1/8"))))
    assert made["front"].length.value == inches("21-3/4")
    assert made["front"].width.value == inches("5-3/4")
    # Left out: the shop's 3/32: 22 - 3/16 = 21-13/16.
    assert parts(on_slides())["front"].length.value == inches("21-13/16")


def test_an_overlay_front_covers_the_case() -> None:
    # 22 + 2 x 1/2 = 23; 6 + 1/2 over + 1/4 under = 6-3/4.
    shown = front(overlay=inches("1/2"), overlay_bottom=inches("1/4"))
    made = parts(on_slides(front=shown))
    assert made["front"].length.value == 23
    assert made["front"].width.value == inches("6-3/4")


def test_an_overlay_front_on_wooden_runners_is_applied_too() -> None:
    made = parts(make_drawer(front=front(overlay=inches("1/2"))))
    assert made["front"].length.value == 23
    assert made["box front"].length.value == 22
    # The box fills the depth: 20 - 1/4, through dovetailed.
    assert made["side"].length.value == inches("19-3/4")


def test_under_mounted_slides_fix_the_inside_width() -> None:
    made = parts(on_slides(runs="under-mounted slides"))
    # Inside 22 in - 42 mm; over two sides of 1/2: + 1.
    assert made["box front"].length.value == 22 - inches("42 mm") + 1
    # 6 - 13/16 = 5-3/16 high; bottom 1/2 up: 5-3/16 - 1/2 - 1/4 = 4-7/16 of back.
    assert made["side"].width.value == inches("5-3/16")
    assert made["back"].width.value == inches("4-7/16")


def test_a_slides_sheet_overrules_the_table() -> None:
    clearance = Clearance(width=inches("1-1/16"), height=inches("3/4"))
    made = parts(on_slides(clearance=clearance))
    assert made["box front"].length.value == inches("20-15/16")
    assert made["side"].width.value == inches("5-1/4")


def test_a_box_front_may_be_of_another_wood() -> None:
    behind = BoxFront(wood="ash", thickness=inches("5/8"))
    made = parts(on_slides(box_front=behind))
    assert made["box front"].wood == "ash"
    assert made["box front"].thickness.value == inches("5/8")


def test_shop_settings_rule_every_clearance() -> None:
    shop = make_shop(rear_clearance="1/2", groove_depth="3/16", sheet_play="1/8")
    made = parts(make_drawer(), shop)
    # 20 - 1/2 - 1/4 = 19-1/4; 22 - 1 + 3/8 - 1/8 = 21-1/4.
    assert made["side"].length.value == inches("19-1/4")
    assert made["bottom"].length.value == inches("21-1/4")


def test_every_part_says_what_faces_it_must_have() -> None:
    made = parts(make_drawer())
    assert (made["front"].show_face, made["front"].back_face) == ("clear", "sound")
    assert made["side"].quantity == 2
    shown = dataclasses.replace(front(), show_face="sap allowed")
    assert parts(make_drawer(front=shown))["front"].show_face == "sap allowed"


def test_a_box_on_under_mounted_slides_is_as_long_as_they_are() -> None:
    # Common practice, no source: 18 slide - 3/8 lap = 17-5/8; the box is 18 deep.
    half_blind = front(HalfBlindDovetail(lap=inches("3/8")))
    made = parts(on_slides(runs="under-mounted slides", front=half_blind))
    assert made["side"].length.value == inches("18") - inches("3/8")
