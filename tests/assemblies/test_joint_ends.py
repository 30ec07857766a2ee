"""How deep the joints at the ends of parts are, worked by hand. Common practice, no source."""

from __future__ import annotations

from fractions import Fraction

from tests.builders import (
    inches,
    make_drawer,
    make_job,
    make_plain,
    make_shop,
    parts_by_id,
)
from yieldplan.assemblies.drawer.keys import Back, Front
from yieldplan.assemblies.part import Between
from yieldplan.joints.butt import Butt
from yieldplan.joints.dado import Dado
from yieldplan.joints.finger_joint import FingerJoint
from yieldplan.joints.mortise_and_tenon import MortiseAndTenon
from yieldplan.model.parts import joint_zone
from yieldplan.units import Inches


def depths(**over: object) -> dict[str, Inches]:
    parts = parts_by_id(make_job(make_drawer(**over)))  # type: ignore[arg-type]
    return {name.partition("/")[2]: part.joint_depth for name, part in parts.items()}


def test_half_blind_dovetails_reach_into_side_and_front() -> None:
    # The side enters the 3/4 front less its 1/4 lap: 1/2. The front's end is cut for the
    # tails as far as the side is thick: 1/2.
    found = depths()
    assert found["front"] == inches("1/2")
    # At the back the 1/2 back enters the side's rabbet by half its 1/2: 1/4; the side
    # gives up its rear end as far as the back is thick: 1/2.
    assert found["side"] == inches("1/2")
    assert found["back"] == inches("1/4")


def test_the_deepest_joint_counts() -> None:
    # A 1 in front less 1/4 lap takes 3/4 of the side, more than the 1/2 at its rear.
    front = Front(wood="walnut", thickness=inches("1"))
    assert depths(front=front)["side"] == inches("3/4")


def test_a_dado_along_a_part_is_no_joint_at_its_end() -> None:
    # The back enters a dado of 1/3 x 1/2 = 1/6; the side has only its dovetails, 1/2.
    back = Back(wood="poplar", thickness=inches("1/2"), joint=Dado())
    thick = Front(wood="walnut", thickness=inches("1/2"))
    found = depths(back=back, front=thick)
    assert found["back"] == Fraction(1, 6)
    # The 1/2 front less 1/4 lap.
    assert found["side"] == inches("1/4")


def test_sheets_and_test_pieces_have_none() -> None:
    parts = parts_by_id(make_job(make_drawer()))
    assert all(
        part.joint_depth == 0 for part in parts.values() if part.is_sheet or part.set_up
    )


def rail(joint: Butt | Dado | MortiseAndTenon, mate: str = "3/4") -> Inches:
    spans = Between(clear=inches("20"), joint=joint, mate=inches(mate))
    job = make_job(make_plain("rail", length=None, between=spans))
    return parts_by_id(job)["rail"].joint_depth


def test_a_rail_has_its_tenon() -> None:
    assert rail(MortiseAndTenon(length=inches("1-1/4")), "2-1/4") == inches("1-1/4")
    # A third of the 3/4 upright.
    assert rail(Dado()) == inches("1/4")


def test_a_butted_end_is_not_cut_for_its_mate() -> None:
    assert rail(Butt()) == 0


def test_the_zone_is_the_depth_and_the_shops_inch() -> None:
    part = parts_by_id(make_job(make_drawer()))["upper/front"]
    assert joint_zone(part, make_shop()) == inches("1-1/2")


def test_a_shop_can_do_without_zones() -> None:
    shop = make_shop(joint_zones=False)
    parts = parts_by_id(make_job(make_drawer(), shop=shop))
    assert {part.joint_depth for part in parts.values()} == {Fraction(0)}


def test_what_a_joint_has_to_say_stands_with_both_parts() -> None:
    joint = FingerJoint(finger=inches("1/4"))
    front = Front(wood="walnut", thickness=inches("3/4"), joint=joint)
    back = Back(wood="poplar", thickness=inches("1/2"), joint=joint)
    parts = parts_by_id(make_job(make_drawer(front=front, back=back)))
    notes = {name.partition("/")[2]: part.note for name, part in parts.items()}
    for name in ("front", "side", "back"):
        assert notes[name].split("; ").count("fingers 1/4 in wide") == 1, name
    assert "fingers" not in notes["bottom"]
    # The jig of dovetails is set by the template: they say nothing.
    assert not any(
        "fingers" in part.note for part in parts_by_id(make_job(make_drawer())).values()
    )
