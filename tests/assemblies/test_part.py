"""Plain parts, by finished size or by the distance between their mates."""

from __future__ import annotations

import dataclasses
from decimal import Decimal
from fractions import Fraction
from typing import Any

import pytest

from tests.builders import (
    HERE,
    build,
    inches,
    make_job,
    make_plain,
    make_shop,
    parts_by_id,
)
from yieldplan import assemblies
from yieldplan.assemblies.part import Between
from yieldplan.faults import Faults
from yieldplan.joints.butt import Butt
from yieldplan.joints.dado import Dado
from yieldplan.joints.joint import Joint
from yieldplan.joints.mortise_and_tenon import MortiseAndTenon
from yieldplan.joints.through_dovetail import ThroughDovetail
from yieldplan.model.job import Job, Stick, StickLength


def between(clear: str, joint: Joint, **over: Any) -> Between:
    return Between(clear=inches(clear), joint=joint, **over)


def test_a_dadoed_shelf_is_longer_than_what_it_spans() -> None:
    # 34-1/2 + 2 x 1/3 x 3/4 = 35.
    shelf = make_plain(
        length=None, between=between("34-1/2", Dado(), mate=inches("3/4"))
    )
    made = parts_by_id(make_job(shelf))["shelf"]
    assert made.length.value == 35
    assert str(made.length) == "34-1/2 between shoulders + 2 × 1/4 dado = 35"


def test_a_tenon_left_out_is_as_long_as_the_shops() -> None:
    # 30 + 2 x 1-1/8 = 32-1/4.
    rail = make_plain("rail", length=None, between=between("30", MortiseAndTenon()))
    job = make_job(rail, shop=make_shop(tenon_length="1-1/8"))
    assert parts_by_id(job)["rail"].length.value == inches("32-1/4")


def test_each_end_may_have_its_own_joint_and_mate() -> None:
    # 30 + 1/3 x 3/4 + 1/3 x 1-1/2 = 30-3/4; and with a butt 30-1/4.
    near = {"mate": inches("3/4")}
    two = between("30", Dado(), far_mate=inches("1-1/2"), **near)
    one = between("30", Dado(), far_joint=Butt(), **near)
    job = make_job(
        make_plain("two", length=None, between=two),
        make_plain("one", length=None, between=one),
    )
    made = parts_by_id(job)
    assert made["two"].length.value == inches("30-3/4")
    assert made["one"].length.value == inches("30-1/4")


def test_between_dovetailed_mates_it_runs_to_their_outsides() -> None:
    # 30 + 2 x 3/4 = 31-1/2.
    span = between("30", ThroughDovetail(), mate=inches("3/4"))
    made = parts_by_id(make_job(make_plain(length=None, between=span)))
    assert made["shelf"].length.value == inches("31-1/2")


def test_a_sheet_part_takes_its_thickness_from_the_sheet() -> None:
    made = parts_by_id(make_job(make_plain(wood=None, sheet="ply", thickness=None)))
    assert made["shelf"].thickness.value == inches("1/4")
    assert made["shelf"].is_sheet


@pytest.mark.parametrize(
    ("over", "wrong"),
    [
        ({"sheet": "ply"}, "of a wood, of a sheet or of a stick"),
        ({"wood": None}, "of a wood, of a sheet or of a stick"),
        ({"wood": "oak"}, "wood the job does not have"),
        ({"thickness": None}, "how thick the part is"),
        ({"length": None}, "one of the two"),
        ({"between": between("30", Butt())}, "one of the two"),
        ({"wood": None, "sheet": "ply"}, "the sheet measures 1/4 in"),
        ({"wood": None, "sheet": "pli", "thickness": None}, "sheet the job does not have"),
        ({"wood": None, "sheet": "ply", "thickness": None, "strips": 2}, "not glued up"),
        ({"length": None, "between": between("30", Dado())}, "depends on its mate"),
        ({"length": None, "between": between("30", MortiseAndTenon(), mate=inches("1"))},
         "comes through a mate of 1 in"),
    ],
)  # fmt: skip
def test_a_mistake_gives_one_message(over: dict[str, Any], wrong: str) -> None:
    faults = Faults()
    assemblies.parts_of(make_job(make_plain(**over)), faults)
    (fault,) = faults
    assert wrong in fault.wrong
    assert fault.remedy


EDGING = Stick(
    name="edging",
    product="maple edging",
    width=inches("3/4"),
    thickness=inches("1/8"),
    lengths=(StickLength(length=inches("96"), price=Decimal("6.40")),),
    where=HERE,
)


def with_edging(**over: Any) -> Job:
    asked = {"wood": None, "stick": "edging", "width": None, "thickness": None} | over
    return dataclasses.replace(make_job(make_plain(**asked)), sticks={"edging": EDGING})


def test_a_stick_brings_its_width_and_thickness() -> None:
    part = parts_by_id(with_edging())["shelf"]
    assert (part.width.value, part.thickness.value) == (inches("3/4"), inches("1/8"))
    assert (part.wood, part.is_stick, part.is_sheet) == ("edging", True, False)
    # To say them again is no mistake.
    assert parts_by_id(with_edging(width="3/4", thickness="1/8"))["shelf"] == part


@pytest.mark.parametrize(
    ("over", "wrong"),
    [
        ({"width": "1"}, "the stick measures 3/4 in"),
        ({"thickness": "1/4"}, "the stick measures 1/8 in"),
        ({"stick": "edgin"}, "stick the job does not have"),
        ({"stick": "ply"}, "this is a sheet"),
        ({"stick": "walnut"}, "this is a wood"),
        ({"wood": "edging", "stick": None, "width": "1", "thickness": "1/8"}, "this is a stick"),
        ({"sheet": "ply"}, "of a wood, of a sheet or of a stick"),
        ({"strips": 3}, "a stick is not glued up"),
        ({"turn": True}, "a part of a stick is not turned"),
        ({"stick": None, "wood": "walnut", "thickness": "3/4"}, "how wide"),
        ({"stick": None, "wood": "walnut", "thickness": "3/4", "width": "4", "turn": True},
         "a part of a board is not turned"),
    ],
)  # fmt: skip
def test_a_mistake_about_a_stick_gives_one_message(
    over: dict[str, Any], wrong: str
) -> None:
    faults = Faults()
    assemblies.parts_of(with_edging(**over), faults)
    (fault,) = faults
    assert wrong in fault.wrong
    assert fault.remedy


def test_its_joint_is_set_up_on_its_own_wood() -> None:
    rail = make_plain("rail", length=None, between=between("30", MortiseAndTenon()))
    (test_piece,) = [part for part in build(make_job(rail)).parts if part.set_up]
    assert (test_piece.wood, test_piece.quantity) == ("walnut", 2)
    assert test_piece.length.value == Fraction(8)
    assert test_piece.width.value == Fraction(4)


def test_an_unwise_joint_is_a_caution_that_names_the_part() -> None:
    deep = between("30", Dado(deep=inches("1/2")), mate=inches("3/4"))
    built = build(make_job(make_plain(length=None, between=deep)))
    assert any(caution.startswith("shelf: a dado 1/2 in") for caution in built.cautions)
