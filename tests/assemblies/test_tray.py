"""Trays: what cannot be built is told with its remedy, and what shows at the corner is said."""

from __future__ import annotations

from typing import Any

from tests.builders import HERE, build, inches, make_job, make_shop
from yieldplan import assemblies
from yieldplan.assemblies.tray import Tray
from yieldplan.faults import Faults
from yieldplan.joints.dado import Dado
from yieldplan.joints.half_blind_dovetail import HalfBlindDovetail
from yieldplan.model.shop import Shop


def make_tray(**over: Any) -> Tray:
    """16 x 10 x 2-1/2 outside, of 1/2 cherry with a plywood bottom."""
    settings: dict[str, Any] = {
        "length": "16", "width": "10", "height": "2-1/2", "thickness": "1/2",
        "wood": "cherry", "bottom": "ply",
    } | over  # fmt: skip
    for size in ("length", "width", "height", "thickness"):
        settings[size] = inches(settings[size])
    return Tray(name="tea", where=HERE, **settings)


def wrong(tray: Tray, shop: Shop | None = None) -> str:
    faults = Faults()
    assert assemblies.parts_of(make_job(tray, shop=shop), faults).parts == ()
    return " | ".join(fault.wrong for fault in faults)


def test_all_of_its_mistakes_are_told_in_one_run() -> None:
    said = wrong(make_tray(wood="yew", bottom="mdf", joint=Dado()))
    assert "a wood the job does not have" in said
    assert "a sheet the job does not have" in said
    assert "a dado does not join the corners" in said


def test_a_groove_through_the_sides_and_a_bottom_above_them_are_refused() -> None:
    shop = make_shop(groove_depth="1/2", groove_up="1")
    # 1 to the groove and 1/4 of ply in a tray 1-1/4 high.
    said = wrong(make_tray(height="1-1/4"), shop)
    assert "the groove comes through" in said
    assert "no room" in said


def test_a_tray_narrower_than_its_own_sides_is_refused() -> None:
    # Bottom: 1/2 - 2 x 1/2 + 2 x 1/4 in grooves - 1/16 play = -1/16.
    assert "nothing is left" in wrong(make_tray(width="1/2"))


def test_a_joint_that_cannot_be_cut_is_refused() -> None:
    joint = HalfBlindDovetail(lap=inches("1/2"))
    assert "leaves no socket" in wrong(make_tray(joint=joint))


def test_where_the_corner_shows_both_ends_the_groove_must_stop() -> None:
    through, blind = make_tray(), make_tray(joint=HalfBlindDovetail())
    assert any("stop the groove" in each for each in build(make_job(through)).cautions)
    assert not any("stop the" in each for each in build(make_job(blind)).cautions)


def test_the_corner_is_set_up_on_test_pieces_of_both_boards() -> None:
    parts = [p.id for p in build(make_job(make_tray())).parts if p.set_up]
    assert parts == ["set-up/finger joint, end", "set-up/finger joint, side"]
