"""Doors worked by hand. Figures are common practice, no source, unless one is named."""

from __future__ import annotations

from fractions import Fraction
from typing import Any

import pytest

from tests.builders import build, inches, make_door, make_job, make_shop, parts_by_id
from yieldplan.assemblies.door import Door
from yieldplan.assemblies.door.keys import (
    Leaf,
    MiddleRail,
    Opening,
    Panel,
    Rail,
    Stile,
)
from yieldplan.joints.butt import Butt
from yieldplan.joints.mortise_and_tenon import MortiseAndTenon
from yieldplan.joints.stub_tenon import StubTenon
from yieldplan.model.parts import Part
from yieldplan.model.shop import Shop

SEASONS = {"moisture_today": "7", "moisture_wettest": "11", "moisture_driest": "5"}


def parts(door: Door, shop: Shop | None = None) -> dict[str, Part]:
    made = parts_by_id(make_job(door, shop=shop))
    return {name.removeprefix("hall/"): part for name, part in made.items()}


def cautions(door: Door, shop: Shop | None = None) -> str:
    return "\n".join(build(make_job(door, shop=shop)).cautions)


def stile(width: str = "2-1/4", **over: Any) -> Stile:
    settings = {"wood": "walnut", "thickness": inches("3/4")} | over
    return Stile(width=inches(width), **settings)


def solid(wood: str = "cherry", **over: Any) -> Panel:
    return Panel(**{"wood": wood, "thickness": inches("1/4")} | over)


def in_opening(width: str, height: str, **over: Any) -> Door:
    opening = Opening(width=inches(width), height=inches(height))
    return make_door(leaf=None, opening=opening, **over)


# -- rails and stiles -------------------------------------------------------------------


def test_a_rail_is_the_door_less_its_stiles_and_the_stub_tenons_it_gains() -> None:
    # 18 - 2 x 2-1/4 + 2 x 3/8 = 14-1/4.
    rail = parts(make_door(width="18"), make_shop(panel_groove="3/8"))["top rail"]
    assert str(rail.length) == (
        "18 door width − 2 × 2-1/4 stile + 2 × 3/8 stub tenon = 14-1/4"
    )


def test_a_mortised_rail_gains_two_tenons() -> None:
    # 18 - 2 x 2-1/4 + 2 x 1-1/4 = 16.
    rail = parts(make_door(joint=MortiseAndTenon(length=inches("1-1/4"))))["top rail"]
    assert rail.length.value == 16


def test_a_through_tenoned_rail_is_as_long_as_the_door_is_wide() -> None:
    # 18 - 2 x 2-1/4 + 2 x 2-1/4 = 18; the stiles fold out of the sum.
    rail = parts(make_door(joint=MortiseAndTenon(through=True)))["top rail"]
    assert str(rail.length) == "18 door width"


def test_a_printed_pair_of_rails() -> None:
    # DERIVED: H. H. Windsor (ed.), Mission Furniture, How to Make It, Part 3, 1912,
    # buffet: door rails 10 in overall mortised 1/2 in into
    # stiles 2 wide: 10 - 2 x 1/2 + 2 x 2 = 13, and the back of the case is printed 13.
    tenon = MortiseAndTenon(length=inches("1/2"))
    door = make_door(
        width="13", stile=stile("2"), joint=tenon, panel=Panel(
            sheet="ply", groove_depth=inches("1/4")
        ),
    )  # fmt: skip
    assert parts(door)["top rail"].length.value == 10


def test_a_deep_moulding_lengthens_the_rail_and_not_the_panel() -> None:
    # 18 - 2 x 2-1/4 + 2 x (3/8 + 1/8) = 14-1/2; panel 18 - 4-1/2 + 2 x 3/8 - 1/16.
    joint = StubTenon(deep=inches("3/8"), profile=inches("1/2"))
    made = parts(make_door(joint=joint), make_shop(panel_play="1/16"))
    assert made["top rail"].length.value == inches("14-1/2")
    assert made["panel"].width.value == inches("14-3/16")


def test_a_dowelled_rail_ends_at_the_stiles_and_its_groove_is_stopped() -> None:
    # 18 - 2 x 2-1/4 = 13-1/2.
    door = make_door(joint=Butt())
    assert parts(door)["top rail"].length.value == inches("13-1/2")
    assert "stop the groove short" in cautions(door)


def test_horns_are_a_term_of_their_own() -> None:
    upright = parts(make_door(height="30", stile=stile(horns=inches("3/4"))))["stile"]
    assert str(upright.length) == "30 door height + 2 × 3/4 horn = 31-1/2"
    assert "trim the horns" in upright.note


def test_rails_take_after_the_stiles_and_the_bottom_rail_after_the_rails() -> None:
    made = parts(
        make_door(
            rail=Rail(width=inches("2"), wood="cherry"),
            bottom_rail=Rail(width=inches("3-1/2"), show_face="sound"),
        )
    )
    top, bottom = made["top rail"], made["bottom rail"]
    assert (top.wood, top.width.value, top.show_face) == ("cherry", 2, "clear")
    assert (bottom.wood, bottom.width.value) == ("cherry", inches("3-1/2"))
    assert bottom.show_face == "sound"
    assert made["stile"].wood == "walnut"


def test_knots_are_kept_from_the_stiles_ends_as_far_as_the_rails_are_wide() -> None:
    # A bottom rail of 4 and a horn of 1: 5 from the end.
    upright = parts(
        make_door(stile=stile(horns=inches("1")), bottom_rail=Rail(width=inches("4")))
    )["stile"]
    assert upright.joint_depth == 5


# -- the opening ------------------------------------------------------------------------


def test_a_door_in_its_opening_leaves_its_gaps() -> None:
    # 18 - 2 x 1/16 = 17-7/8; 30 - 1/16 - 1/8 = 29-13/16.
    door = in_opening("18", "30", gap=inches("1/16"), gap_bottom=inches("1/8"))
    made = parts(door)
    assert made["stile"].length.value == inches("29-13/16")
    assert str(made["top rail"].length).startswith("18 opening width − 2 × 1/16 gap")


def test_the_gap_left_out_is_the_shops_and_no_gap_is_planed_to_fit() -> None:
    shop = make_shop(door_gap="3/32")
    # 30 - 2 x 3/32 = 29-13/16.
    assert parts(in_opening("18", "30"), shop)["stile"].length.value == inches(
        "29-13/16"
    )
    planed = parts(in_opening("18", "30", gap=Fraction(0)), shop)["stile"]
    assert str(planed.length) == "30 opening height"
    assert "plane the door to its opening" in planed.note


def test_a_printed_pair() -> None:
    # DERIVED from a joiner's printed sum: opening 40, three gaps of 5/64: each door is
    # (40 - 15/64) / 2 wide; with tenons of 1/2 its rail is 12.13281 where the stiles
    # are 4-3/8: (40 - 15/64) / 2 - 2 x 4-3/8 + 2 x 1/2 = 12-17/128.
    door = in_opening(
        "40", "30", leaves=2, gap=inches("5/64"), stile=stile("4-3/8"),
        joint=MortiseAndTenon(length=inches("1/2")),
    )  # fmt: skip
    rail = parts(door)["top rail"]
    assert rail.quantity == 2
    assert round(rail.length.value, 5) == Fraction("12.13281")


def test_an_overlaid_pair_covers_the_case_and_keeps_its_gap_between() -> None:
    # Half of 24 + 1/2 - half of 1/8 = 12-7/16 wide; 30 + 1/2 + 3/4 = 31-1/4 high.
    door = in_opening(
        "24", "30", leaves=2, gap_between=inches("1/8"), overlay=inches("1/2"),
        overlay_top=inches("3/4"),
    )  # fmt: skip
    made = parts(door, make_shop(panel_groove="3/8"))
    # 12-7/16 - 2 x 2-1/4 + 2 x 3/8 = 8-11/16.
    assert made["top rail"].length.value == inches("8-11/16")
    assert made["stile"].length.value == inches("31-1/4")
    assert made["stile"].quantity == 4


def test_the_panels_of_a_pair_have_names_of_their_own() -> None:
    made = parts(make_door(leaves=2))
    assert {"left panel", "right panel"} < set(made)
    assert "panel" not in made
    both = parts(make_door(leaves=2, height="50", middle_rails=(MiddleRail(),)))
    assert {"left upper panel", "right lower panel"} < set(both)


# -- middle rails -----------------------------------------------------------------------


def test_panels_above_and_below_a_lock_rail() -> None:
    # Door 80: top rail 4-1/2, lock rail 7 at 34, bottom rail 9; grooves 1/2, no play.
    # Upper: 80 - 4-1/2 - 34 - 7 + 1 = 35-1/2; lower: 34 - 9 + 1 = 26.
    door = make_door(
        width="32", height="80", stile=stile("4-1/2", thickness=inches("1-3/8")),
        bottom_rail=Rail(width=inches("9")),
        middle_rails=(MiddleRail(width=inches("7"), up=inches("34")),),
        panel=Panel(sheet="ply", groove_depth=inches("1/2"), play=Fraction(0)),
    )  # fmt: skip
    made = parts(door)
    assert made["upper panel"].length.value == inches("35-1/2")
    assert str(made["lower panel"].length) == (
        "34 up to middle rail − 9 bottom rail + 2 × 1/2 groove = 26"
    )


def test_middle_rails_without_a_place_make_equal_panels() -> None:
    # (49 - 2 - 4 - 2 x 2) / 3 = 13, + 2 x 3/8 = 13-3/4.
    door = make_door(
        height="49", rail=Rail(width=inches("2")), bottom_rail=Rail(width=inches("4")),
        middle_rails=(MiddleRail(), MiddleRail()),
        panel=Panel(sheet="ply", play=Fraction(0)),
    )  # fmt: skip
    made = parts(door, make_shop(panel_groove="3/8"))
    heights = {
        made[f"{row} panel"].length.value for row in ("upper", "middle", "lower")
    }
    assert heights == {inches("13-3/4")}


def test_middle_rails_are_numbered_from_the_top_however_they_are_written() -> None:
    ups = [MiddleRail(up=inches("10")), MiddleRail(up=inches("30"), width=Fraction(3))]
    made = parts(make_door(height="50", middle_rails=tuple(ups)))
    assert made["middle rail 1"].width.value == 3


# -- panels -----------------------------------------------------------------------------


def test_a_printed_panel() -> None:
    # DERIVED: the same buffet: panel 9-1/2, 1/4 in the groove each side, no
    # clearance: 9 between the stiles, which are 2: the door is 13.
    door = make_door(
        width="13", stile=stile("2"),
        panel=Panel(sheet="ply", groove_depth=inches("1/4"), play=Fraction(0)),
    )  # fmt: skip
    assert parts(door)["panel"].width.value == inches("9-1/2")


@pytest.mark.parametrize(
    ("wood", "cut", "room"),
    [
        # Groove to groove: 16-1/2 - 2 x 2-1/4 + 2 x 3/8 = 12-3/4; 4 per cent to come.
        # 12-3/4 x 0.00248 x 4 = 0.1265, above 4/32 = 0.125: 5/32.
        ("cherry", "flatsawn", "5/32"),
        # 12-3/4 x 0.00126 x 4 = 0.0643, above 2/32 = 0.0625: 3/32.
        ("cherry", "quartersawn", "3/32"),
        # 12-3/4 x 0.00274 x 4 = 0.1397: 5/32.
        ("walnut", "flatsawn", "5/32"),
        # 12-3/4 x 0.00190 x 4 = 0.0969, above 3/32 = 0.09375: 4/32.
        ("walnut", "quartersawn", "1/8"),
    ],
)
def test_a_solid_panel_has_room_to_move_by_species_and_cut(
    wood: str, cut: str, room: str
) -> None:
    # Coefficients: Wood Handbook, FPL-GTR-190, 2010, table 13-5.
    shop = make_shop(panel_groove="3/8", movement_step="1/32", **SEASONS)
    panel = parts(make_door(width="16-1/2", panel=solid(wood, cut=cut)), shop)["panel"]
    assert panel.width.value == inches("12-3/4") - inches(room)
    assert panel.width.terms[-1].words == "room to move"
    # Along the grain it has its play only: 30 - 4-1/2 + 3/4 - 1/16.
    assert panel.length.value == inches("26-3/16")


def test_a_panel_with_its_grain_across_moves_up_and_down() -> None:
    # Height groove to groove 12 - 2 x 2-1/4 + 2 x 3/8 = 8-1/4:
    # x 0.00248 x 4 = 0.0818, up to 3/32: 8-5/32 wide; 30 - 4-1/2 + 3/4 - 1/16 long.
    shop = make_shop(panel_groove="3/8", panel_play="1/16", **SEASONS)
    door = make_door(width="30", height="12", panel=solid(grain="across"))
    panel = parts(door, shop)["panel"]
    assert panel.length.value == inches("26-3/16")
    assert panel.width.value == inches("8-5/32")


def test_a_panel_is_glued_up_from_strips() -> None:
    panel = parts(make_door(panel=solid(strips=3, raised=True)))["panel"]
    assert panel.strips == 3
    assert "raised to 1/4" in panel.note


def test_a_panel_given_too_little_room_is_told_to_push_its_frame_apart() -> None:
    # READ: sullivanhardwoodflooring.com, wood flooring stability: 5 in of white oak from
    # 6 to 9 per cent is printed as 0.055 in (0.05475).
    # Here 5 - 1/32 = 4-31/32 gains 0.0544, the tape's nearest is 1/16, in room of 1/32.
    shop = make_shop(moisture_today="6", moisture_wettest="9", panel_groove="3/8")
    tight = solid("white oak", room_to_move=inches("1/32"))
    # Groove to groove 8-3/4 - 2 x 2-1/4 + 2 x 3/8 = 5.
    door = make_door(width="8-3/4", panel=tight)
    species = {"walnut": "black walnut", "white oak": "white oak"}
    built = build(make_job(door, shop=shop, species=species))
    (said,) = [each for each in built.cautions if "push the frame" in each]
    assert "it grows by about 1/16 in and has 1/32 in of room" in said


def test_a_wide_panel_in_a_shallow_groove_falls_out_in_the_driest_season() -> None:
    # Between stiles 40 - 4-1/2 = 35-1/2, grooves 1/4: 36 - room 36 x 0.00248 x 4 =
    # 0.357, up to 3/8: 35-5/8 wide. At 5 per cent it loses 35-5/8 x 0.00248 x 2 = 0.177:
    # 35.448, less than 35-1/2.
    door = make_door(width="40", panel=solid(groove_depth=inches("1/4")))
    said = cautions(door, make_shop(**SEASONS))
    assert "falls out of its grooves, which are 35 1/2 in apart" in said


def test_a_panel_that_could_slide_out_on_one_side_is_to_be_pinned() -> None:
    # Between stiles 27-1/2, grooves 3/8: 28-1/4 - 28-1/4 x 0.00248 x 4 = 0.280, up to
    # 9/32: 27-31/32. It loses 0.139: 27.830; both grooves hold 0.330, one of them 3/8.
    door = make_door(width="32", panel=solid())
    said = cautions(door, make_shop(panel_groove="3/8", **SEASONS))
    assert "pin it at the middle of both rails" in said
    assert "falls out" not in said


def test_a_narrow_panel_needs_no_warning() -> None:
    said = cautions(make_door(width="14", panel=solid()), make_shop(**SEASONS))
    assert "per cent moisture" not in said


# -- what goes with it ------------------------------------------------------------------


def test_each_rail_meets_the_stiles_and_each_panel_its_frame() -> None:
    met = build(make_job(make_door(height="50", middle_rails=(MiddleRail(),)))).meetings
    pairs = {(each.joint, each.housed, each.housing) for each in met}
    assert ("stub tenon", "hall/middle rail", "hall/stile") in pairs
    assert ("groove", "hall/upper panel", "hall/top rail") in pairs
    assert ("groove", "hall/upper panel", "hall/middle rail") in pairs
    assert ("groove", "hall/lower panel", "hall/bottom rail") in pairs
    assert ("groove", "hall/lower panel", "hall/top rail") not in pairs
    tried = {each.joint for each in met if each.needs_set_up}
    assert tried == {"stub tenon"}


def test_set_up_pieces_are_of_a_stile_and_a_rail() -> None:
    made = [part for part in parts_by_id(make_job(make_door())).values() if part.set_up]
    assert {part.wood for part in made} == {"walnut"}
    assert {part.id for part in made} == {
        "set-up/stub tenon, bottom rail", "set-up/stub tenon, stile",
    }  # fmt: skip


def test_copes_and_raising_bring_their_cautions() -> None:
    joint = StubTenon(profile=inches("3/8"))
    said = cautions(make_door(joint=joint, panel=solid(raised=True)))
    for words in ("back-up block", "cope the ends first", "Raised panels", "no glue"):
        assert words in said
    assert "Raised panels" not in cautions(make_door())


def test_a_leaf_by_its_size_is_made_as_often_as_there_are_leaves() -> None:
    made = parts(
        make_door(leaves=2, leaf=Leaf(width=Fraction(12), height=Fraction(20)))
    )
    assert made["stile"].quantity == 4
    assert made["bottom rail"].quantity == 2
