"""Doors that cannot be built: one message each, with the place, the person's own text and a remedy."""

from __future__ import annotations

from typing import Any

import pytest

from tests.builders import SPECIES, inches, make_door, make_job
from yieldplan import assemblies
from yieldplan.assemblies.door.keys import (
    MiddleRail,
    Opening,
    Panel,
    Rail,
    Stile,
)
from yieldplan.faults import Fault, Faults
from yieldplan.joints import joints_that
from yieldplan.joints.dado import Dado
from yieldplan.joints.mortise_and_tenon import MortiseAndTenon
from yieldplan.joints.stub_tenon import StubTenon
from yieldplan.model.job import Job

OPENING = Opening(width=inches("24"), height=inches("30"))
SMALL = inches("1/8")


def stile(**over: Any) -> Stile:
    settings = {"wood": "walnut", "thickness": inches("3/4"), "width": inches("2-1/4")}
    return Stile(**settings | over)


def only_fault(job: Job) -> Fault:
    faults = Faults()
    assemblies.parts_of(job, faults)
    (fault,) = faults
    return fault


@pytest.mark.parametrize(
    ("over", "said", "wrong"),
    [
        ({"stile": stile(wood="oak")}, "oak", "the stile is of a wood"),
        ({"rail": Rail(wood="oak")}, "oak", "the rail is of a wood"),
        ({"bottom_rail": Rail(wood="oak")}, "oak", "the bottom rail is of a wood"),
        ({"panel": Panel(wood="oak", thickness=SMALL)}, "oak", "the panel is of a wood"),
        ({"panel": Panel(sheet="oak")}, "oak", "the panel is of a sheet"),
        ({"panel": Panel()}, "", "one of the two"),
        ({"panel": Panel(sheet="ply", wood="ash")}, "ply", "one of the two"),
        ({"panel": Panel(wood="ash")}, "ash", "how thick the solid panel is"),
        ({"panel": Panel(sheet="ply", strips=2)}, "ply", "not glued up"),
        ({"panel": Panel(sheet="ply", thickness=SMALL)}, "ply", "brings its thickness"),
        ({"panel": Panel(sheet="ply", raised=True)}, "ply", "not raised"),
        ({"panel": Panel(sheet="ply", room_to_move=SMALL)}, "ply", "only play"),
        ({"leaf": None}, "", "one of the two"),
        ({"opening": OPENING}, "", "one of the two"),
        ({"gap": SMALL}, "", "says its leaf's size"),
        ({"leaf": None, "opening": OPENING, "gap": SMALL, "overlay": SMALL}, "",
         "cannot both cover"),
        ({"leaf": None, "opening": OPENING, "leaves": 2, "gap_top": SMALL,
          "overlay": SMALL}, "", "cannot both cover"),
        ({"leaf": None, "opening": OPENING, "gap_between": SMALL}, "", "one leaf has no"),
        ({"leaves": 3}, "3", "one leaf or a pair"),
        ({"joint": Dado()}, "dado", "does not join a rail to a stile"),
        ({"joint": StubTenon(deep=inches("3/8")),
          "panel": Panel(sheet="ply", groove_depth=inches("1/2"))}, "stub tenon",
         "does not fit the panel's groove of 1/2 in"),
        ({"joint": MortiseAndTenon(length=inches("2-1/4"))}, "mortise and tenon",
         "comes through a mate of 2 1/4 in"),
        ({"joint": MortiseAndTenon(length=inches("1/4"))}, "mortise and tenon",
         "in the panel's groove, which is 3/8 in deep"),
        ({"width": "4-1/2"}, "2 1/4 in", "leave nothing of a door 4 1/2 in wide"),
        ({"panel": Panel(sheet="ply", groove_depth=inches("1-1/4"))}, "1 1/4 in",
         "more than half of the stile"),
        ({"rail": Rail(width=inches("5/8")), "bottom_rail": Rail(width=inches("2"))},
         "3/8 in", "more than half of the top rail"),
        ({"height": "50", "middle_rails": (MiddleRail(width=inches("3/4")),)}, "3/8 in",
         "leave nothing of the middle rail"),
        ({"stile": stile(thickness=inches("1/4"))}, "1/4 in", "takes all of a frame"),
        ({"rail": Rail(thickness=inches("1/4"))}, "1/4 in", "takes all of a frame"),
        ({"panel": Panel(sheet="ply", groove_width=inches("3/8"))}, "3/8 in", "rattles"),
        ({"panel": Panel(sheet="ply", groove_width=inches("3/16"))}, "3/16 in",
         "does not enter a groove 3/16 in wide"),
        ({"middle_rails": (MiddleRail(up=inches("29")),)}, "",
         "nothing is left of hall/upper panel"),
        ({"leaves": 2, "height": "3"}, "", "nothing is left of hall/left panel"),
        ({"middle_rails": (MiddleRail(up=inches("9")), MiddleRail())}, "",
         "others do not"),
    ],
)  # fmt: skip
def test_a_mistake_gives_one_message(
    over: dict[str, Any], said: str, wrong: str
) -> None:
    fault = only_fault(make_job(make_door(**over)))
    assert wrong in fault.wrong
    assert fault.said == said
    assert fault.remedy
    assert fault.where.key == 'door "hall"'


def test_a_frame_joint_is_named_where_another_is_written() -> None:
    fault = only_fault(make_job(make_door(joint=Dado())))
    assert fault.remedy == f"Write {joints_that(lambda kind: kind.makes_frame_corner)}"
    assert "mortise and tenon" in fault.remedy
    assert "dado" not in fault.remedy


def test_a_solid_panel_needs_to_know_how_its_wood_moves() -> None:
    species = SPECIES | {"cherry": "moon wood"}
    panel = Panel(wood="cherry", thickness=inches("1/4"))
    fault = only_fault(make_job(make_door(panel=panel), species=species))
    assert fault.said == "moon wood"
    assert "room_to_move" in fault.remedy


def test_room_that_is_given_asks_nothing_of_the_table() -> None:
    species = SPECIES | {"cherry": "moon wood"}
    panel = Panel(wood="cherry", thickness=inches("1/4"), room_to_move=SMALL)
    faults = Faults()
    assert assemblies.parts_of(
        make_job(make_door(panel=panel), species=species), faults
    ).parts
    assert not len(faults)
