"""Drawers that cannot be built: one message each, with the place, the person's own text and a remedy."""

from __future__ import annotations

from typing import Any

import pytest

from tests.builders import SPECIES, inches, make_drawer, make_job, make_shop
from yieldplan import assemblies
from yieldplan.assemblies.drawer.keys import (
    Back,
    Bottom,
    BoxFront,
    Clearance,
    Front,
    Jig,
    Side,
)
from yieldplan.faults import Fault, Faults
from yieldplan.joints.dado import Dado
from yieldplan.joints.half_blind_dovetail import HalfBlindDovetail
from yieldplan.joints.mortise_and_tenon import MortiseAndTenon
from yieldplan.joints.rabbet import Rabbet
from yieldplan.model.job import Job

THIN = inches("1/2")
SLIDES: dict[str, Any] = {
    "runs": "side-mounted slides",
    "slide_length": inches("18"),
    "front": Front(wood="walnut", thickness=inches("3/4")),
}


def front(**over: Any) -> Front:
    return Front(**{"wood": "walnut", "thickness": inches("3/4")} | over)


def back(**over: Any) -> Back:
    return Back(**{"wood": "poplar", "thickness": THIN} | over)


def only_fault(job: Job) -> Fault:
    faults = Faults()
    assemblies.parts_of(job, faults)
    (fault,) = faults
    return fault


@pytest.mark.parametrize(
    ("over", "said", "wrong"),
    [
        ({"front": front(wood="walnutt")}, "walnutt", "wood the job does not have"),
        ({"front": front(wood="ply")}, "ply", "this is a sheet"),
        ({"side": Side(wood="oak", thickness=THIN)}, "oak", "the side is of a wood"),
        ({"back": back(wood="oak")}, "oak", "the back is of a wood"),
        ({"bottom": Bottom(sheet="plywood")}, "plywood", "sheet the job does not have"),
        ({"bottom": Bottom(sheet="poplar")}, "poplar", "this is a wood"),
        ({"bottom": Bottom()}, "", "one of the two"),
        ({"bottom": Bottom(sheet="ply", wood="ash")}, "ply", "one of the two"),
        ({"bottom": Bottom(wood="ash")}, "ash", "how thick the solid bottom is"),
        ({"bottom": Bottom(sheet="ply", strips=2)}, "ply", "not glued up"),
        ({"bottom": Bottom(sheet="ply", thickness=THIN)}, "ply", "brings its thickness"),
        ({"front": front(joint=Dado())}, "dado", "does not join a drawer's sides"),
        ({"front": front(joint=MortiseAndTenon())}, "mortise and tenon", "to its front"),
        ({"front": front(gap=THIN)}, "", "gap belongs to an applied front"),
        ({"front": front(gap=THIN, overlay=THIN)}, "", "cannot both cover"),
        ({"box_front": BoxFront(wood="ash", thickness=THIN)}, "ash", "behind an applied"),
        ({"back": back(joint=Rabbet(), set_in=THIN)}, "rabbet", "cannot be set in"),
        ({"slide_length": inches("18")}, "on wooden runners", "has no slides"),
        (SLIDES | {"fit": "plane to fit"}, "plane to fit", "cannot be planed to fit"),
        (SLIDES | {"slide_length": None}, "side-mounted slides", "how long the slides"),
        (SLIDES | {"slide_length": inches("20")}, "20 in", "20 3/4 in deep, its opening 20"),
        ({"front": front(joint=HalfBlindDovetail(lap=inches("3/4")))},
         "half-blind dovetail", "leaves no socket"),
        ({"back": back(joint=Dado(deep=THIN))}, "dado", "goes through a part 1/2 in"),
        ({"bottom": Bottom(sheet="ply", groove_depth=THIN)}, "", "goes through the side"),
        ({"jig": Jig(spacing=inches("7"))}, "", "lower than one finger"),
        ({"height": "1/2"}, "", "nothing is left of upper/back"),
        ({"back": back(sits="full height"),
          "bottom": Bottom(wood="ash", thickness=inches("3/8"))}, "ash", "must be free"),
    ],
)  # fmt: skip
def test_a_mistake_gives_one_message(
    over: dict[str, Any], said: str, wrong: str
) -> None:
    fault = only_fault(make_job(make_drawer(**over)))
    assert fault.said == said
    assert wrong in fault.wrong
    assert fault.remedy
    assert fault.where.key == 'drawer "upper"'


def test_a_wood_nearly_spelled_right_is_suggested() -> None:
    fault = only_fault(make_job(make_drawer(front=front(wood="walnutt"))))
    assert 'Did you mean "walnut"' in fault.remedy


def test_a_mistake_said_once_for_all_drawers_is_told_once() -> None:
    wrong = Side(wood="oak", thickness=THIN)
    drawers = [make_drawer(name=name, side=wrong) for name in ("one", "two", "three")]
    fault = only_fault(make_job(*drawers))
    assert fault.where.key == 'drawer "one"'
    assert fault.wrong.endswith("(so it is with 2 others)")


def test_net_needs_to_know_how_the_wood_moves() -> None:
    species = SPECIES | {"walnut": "moon wood"}
    fault = only_fault(make_job(make_drawer(fit="net"), species=species))
    assert fault.said == "moon wood"
    assert "not in the table" in fault.wrong


def test_a_given_height_clearance_asks_nothing_of_the_table() -> None:
    species = SPECIES | {"walnut": "moon wood"}
    drawer = make_drawer(fit="net", clearance=Clearance(height=inches("1/8")))
    faults = Faults()
    assert assemblies.parts_of(make_job(drawer, species=species), faults).parts
    assert not len(faults)


def test_unwise_joints_are_cautions_that_name_the_drawer() -> None:
    thin = front(joint=HalfBlindDovetail(lap=inches("1/16")))
    built = assemblies.parts_of(make_job(make_drawer(front=thin)), Faults())
    assert any(caution.startswith("upper: a lap of") for caution in built.cautions)


def test_a_deep_groove_is_a_caution() -> None:
    shop = make_shop(groove_depth="5/16")
    built = assemblies.parts_of(make_job(make_drawer(), shop=shop), Faults())
    assert "upper: the bottom's groove is deeper than half the side." in built.cautions
