"""Each joint worked by hand. Figures are common practice, no source, unless one is named."""

from __future__ import annotations

import dataclasses
from fractions import Fraction

import pytest

from tests.builders import inches, make_shop
from yieldplan.joints.butt import Butt
from yieldplan.joints.dado import Dado
from yieldplan.joints.groove import Groove
from yieldplan.joints.half_blind_dovetail import HalfBlindDovetail
from yieldplan.joints.joint import Joint, Role
from yieldplan.joints.mortise_and_tenon import MortiseAndTenon
from yieldplan.joints.rabbet import Rabbet
from yieldplan.joints.stub_tenon import StubTenon
from yieldplan.joints.through_dovetail import ThroughDovetail
from yieldplan.joints.tongue_and_groove import TongueAndGroove


def gain(joint: Joint, mate: str, role: Role = Role.HOUSED) -> Fraction:
    return joint.allowance(role=role, own=inches("1/2"), mate=inches(mate)).value


def test_a_through_dovetail_goes_as_deep_as_its_mate_is_thick() -> None:
    # common practice, no source
    assert ThroughDovetail().depth(mate=inches("3/4")).value == inches("3/4")
    assert gain(ThroughDovetail(), "3/4") == 0


def test_a_half_blind_dovetail_goes_as_deep_as_the_front_less_the_lap() -> None:
    # common practice, no source: 3/4 - 3/8 = 3/8.
    joint = HalfBlindDovetail(lap=inches("3/8"))
    assert joint.depth(mate=inches("3/4")).value == inches("3/8")


def test_ends_left_proud_lengthen_both_boards() -> None:
    # W. Noyes, Handwork in Wood, 1910: up to 1/32 in an end to plane flush.
    joint = ThroughDovetail(proud=inches("1/32"))
    assert gain(joint, "3/4") == gain(joint, "3/4", Role.HOUSING) == Fraction(1, 32)
    assert joint.depth(mate=inches("3/4")).value == inches("25/32")
    assert joint.limits(own=inches("1/2"), mate=inches("3/4")) == ()


def test_ends_left_far_too_proud_are_warned_of() -> None:
    joint = ThroughDovetail(proud=inches("1/4"))
    assert "1/4 in proud" in joint.limits(own=inches("1/2"), mate=inches("3/4"))[0]


def test_a_lap_left_out_is_the_shops_and_on_a_template_the_templates() -> None:
    shop = make_shop(lap="1/4", template_lap="3/8")
    assert HalfBlindDovetail().settled(shop).lap == inches("1/4")
    assert HalfBlindDovetail().settled(shop, on_template=True).lap == inches("3/8")
    given = HalfBlindDovetail(lap=inches("3/16"))
    assert given.settled(shop, on_template=True) == given


def test_an_unsettled_joint_is_a_programmers_mistake() -> None:
    with pytest.raises(ValueError, match="settled"):
        HalfBlindDovetail().depth(mate=inches("3/4"))


def test_a_lap_as_thick_as_the_front_leaves_no_socket() -> None:
    joint = HalfBlindDovetail(lap=inches("3/4"))
    assert "leaves no socket" in joint.impossible(mate=inches("3/4"))
    assert "19.1 mm" in joint.impossible(mate=inches("3/4"), unit="mm")


def test_a_lap_thinner_than_any_in_print_is_warned_of() -> None:
    thin = HalfBlindDovetail(lap=inches("1/16"))
    assert "may break out" in thin.limits(own=inches("1/2"), mate=inches("3/4"))[0]


def test_shallow_sockets_are_warned_of() -> None:
    # 1/2 front - 3/8 lap = 1/8 of socket, for a side 1/2 thick.
    joint = HalfBlindDovetail(lap=inches("3/8"))
    assert "1/8 in deep" in joint.limits(own=inches("1/2"), mate=inches("1/2"))[0]


def test_a_rabbet_is_half_its_board_unless_its_depth_is_given() -> None:
    assert gain(Rabbet(), "1/2") == inches("1/4")
    assert gain(Rabbet(deep=inches("3/16")), "1/2") == inches("3/16")
    assert gain(Rabbet(), "1/2", Role.HOUSING) == 0


def test_a_deep_rabbet_is_warned_of_and_one_through_the_board_refused() -> None:
    deep = Rabbet(depth_share=Fraction(3, 4))
    assert "less than a third" in deep.limits(own=inches("1/2"), mate=inches("1/2"))[0]
    assert "goes through" in Rabbet(deep=inches("1/2")).impossible(mate=inches("1/2"))
    assert "without depth" in Rabbet(deep=Fraction(0)).impossible(mate=inches("1/2"))


def test_a_dado_is_a_third_of_its_board() -> None:
    # 1/3 x 3/4 = 1/4.
    assert gain(Dado(), "3/4") == inches("1/4")
    warned = Dado(deep=inches("1/2")).limits(own=inches("3/4"), mate=inches("3/4"))
    assert "less than half" in warned[0]
    assert "goes through" in Dado(deep=inches("3/4")).impossible(mate=inches("3/4"))


def test_a_blind_tenon_adds_its_length() -> None:
    assert gain(MortiseAndTenon(length=inches("1")), "1-3/4") == 1
    shop = make_shop(tenon_length="7/8")
    assert gain(MortiseAndTenon().settled(shop), "1-3/4") == inches("7/8")


def test_a_through_tenon_adds_its_mate_and_what_stands_proud() -> None:
    # 1-3/4 leg + 1/32 to sand flush.
    joint = MortiseAndTenon(through=True, proud=inches("1/32"))
    assert gain(joint, "1-3/4") == inches("1-3/4") + inches("1/32")
    assert joint.settled(make_shop()) == joint


def test_a_blind_tenon_must_stay_inside_its_mate() -> None:
    joint = MortiseAndTenon(length=inches("1"))
    assert "comes through" in joint.impossible(mate=inches("1"))
    assert joint.impossible(mate=inches("1-1/16")) == ""
    assert "stays behind" in joint.limits(own=inches("3/4"), mate=inches("1-1/16"))[0]


def test_tenon_figures_that_contradict_each_other_are_refused() -> None:
    with pytest.raises(ValueError, match="leave length out"):
        MortiseAndTenon(length=inches("1"), through=True)
    with pytest.raises(ValueError, match="proud"):
        MortiseAndTenon(proud=inches("1/8"))


def test_a_groove_and_its_stub_tenon_left_out_are_the_shops() -> None:
    shop = make_shop(panel_groove="7/16", tongue_length="3/16")
    assert gain(Groove().settled(shop), "2") == inches("7/16")
    assert gain(StubTenon().settled(shop), "2") == inches("7/16")
    assert gain(TongueAndGroove().settled(shop), "2") == inches("3/16")
    given = StubTenon(deep=inches("1/2"))
    assert given.settled(shop) == given


def test_a_groove_deeper_than_half_its_part_is_warned_of_and_one_through_it_refused() -> (
    None
):
    # Half of 3/4 is 3/8: 3/8 is deep enough, 7/16 too deep, 3/4 comes through.
    at_half = Groove(deep=inches("3/8"))
    assert at_half.limits(own=inches("1/4"), mate=inches("3/4")) == ()
    deep = Groove(deep=inches("7/16"))
    assert "less than half" in deep.limits(own=inches("1/4"), mate=inches("3/4"))[0]
    through = Groove(deep=inches("3/4"))
    assert "comes through" in through.impossible(mate=inches("3/4"))
    assert "19.1 mm deep" in through.impossible(mate=inches("3/4"), unit="mm")
    assert "without depth" in Groove(deep=Fraction(0)).impossible(mate=inches("3/4"))


def test_a_cope_that_comes_through_the_stile_is_refused() -> None:
    # The tenon stops at 3/8, the moulding runs right across a stile of 1-1/2.
    joint = StubTenon(deep=inches("3/8"), profile=inches("1-1/2"))
    assert "comes through" in joint.impossible(mate=inches("1-1/2"))


def test_a_short_stub_tenon_is_warned_of() -> None:
    joint = StubTenon(deep=inches("3/16"))
    assert "little glue" in joint.limits(own=inches("3/4"), mate=inches("2"))[0]


def test_copes_are_warned_of_where_there_is_a_moulding() -> None:
    square, moulded = StubTenon(), StubTenon(profile=inches("3/8"))
    assert not any("cope the ends first" in each for each in square.cautions)
    assert any("cope the ends first" in each for each in moulded.cautions)
    assert all("back-up block" in each.cautions[0] for each in (square, moulded))


def test_which_joints_join_a_rail_to_a_stile() -> None:
    assert all(kind.makes_frame_corner for kind in (StubTenon, MortiseAndTenon, Butt))
    assert not any(kind.makes_frame_corner for kind in (Groove, Dado, Rabbet))


def test_a_butt_adds_nothing_and_needs_no_set_up() -> None:
    assert gain(Butt(), "3/4") == gain(Butt(), "3/4", Role.HOUSING) == 0
    assert not Butt().needs_set_up
    assert Rabbet().needs_set_up


def test_joints_are_data() -> None:
    assert dataclasses.replace(Rabbet(), deep=inches("1/4")) == Rabbet(
        deep=inches("1/4")
    )
