"""The parts of a whole job: set-up pieces, what is made already, names that clash."""

from __future__ import annotations

import pytest

from tests.builders import (
    HERE,
    build,
    inches,
    make_drawer,
    make_job,
    make_plain,
    make_shop,
    parts_by_id,
)
from yieldplan import assemblies
from yieldplan.assemblies.drawer.keys import Back, Side
from yieldplan.blanks import routes
from yieldplan.faults import Faults, FaultsFound
from yieldplan.joints.butt import Butt
from yieldplan.model.job import GrainMatch


def test_each_joint_and_pair_of_thicknesses_has_two_test_pieces_of_each_part() -> None:
    job = make_job(
        make_drawer(name="upper", height="6"), make_drawer(name="lower", height="8")
    )
    pieces = [part for part in build(job).parts if part.set_up]
    assert [(p.id, p.wood, p.thickness.value, p.quantity) for p in pieces] == [
        ("set-up/half-blind dovetail, side", "poplar", inches("1/2"), 2),
        ("set-up/half-blind dovetail, front", "walnut", inches("3/4"), 2),
        ("set-up/rabbet, back", "poplar", inches("1/2"), 2),
        ("set-up/rabbet, side", "poplar", inches("1/2"), 2),
    ]
    # As wide as the narrower of the two drawers' parts, 8 long, any face.
    assert [p.width.value for p in pieces] == [6, 6, inches("5-3/8"), 6]
    assert {p.length.value for p in pieces} == {8}
    assert {p.show_face for p in pieces} == {"any"}


def test_another_lap_is_another_setting() -> None:
    deep = make_shop(lap="3/8")
    one = make_job(make_drawer(name="upper"), make_drawer(name="lower"))
    assert len([p for p in build(one).parts if p.set_up]) == 4
    thick = Back(wood="poplar", thickness=inches("5/8"))
    two = make_job(
        make_drawer(name="upper"), make_drawer(name="lower", back=thick), shop=deep
    )
    assert len([p for p in build(two).parts if p.set_up]) == 6


def test_a_test_piece_is_no_wider_than_long() -> None:
    # 8 in long as the shop has it; the drawer is 12 high.
    pieces = [p for p in build(make_job(make_drawer(height="12"))).parts if p.set_up]
    assert {p.width.value for p in pieces} == {8}


def test_sizes_no_wood_comes_in_are_said_before_all_else() -> None:
    # Ten times too wide: 170 for 17. Hardwood is graded in lengths up to 16 ft.
    slip = build(make_job(make_drawer(name="slip", width="250")))
    assert slip.cautions[0].startswith("Hardly any wood is so large: slip/")
    assert "lost point" in slip.cautions[0]
    usual = build(make_job(make_drawer(width="40")))
    assert not [line for line in usual.cautions if line.startswith("Hardly")]


def test_a_shop_may_do_without_test_pieces() -> None:
    job = make_job(make_drawer(), shop=make_shop(set_up_pieces=0))
    assert not [part for part in build(job).parts if part.set_up]


def test_butt_joints_need_none() -> None:
    plain = Back(wood="poplar", thickness=inches("1/2"), joint=Butt())
    pieces = [p.id for p in build(make_job(make_drawer(back=plain))).parts if p.set_up]
    assert pieces == [
        "set-up/half-blind dovetail, side",
        "set-up/half-blind dovetail, front",
    ]


def test_what_is_made_already_is_left_out() -> None:
    job = make_job(make_drawer(), made={"upper/front": 1, "upper/side": 1})
    made = parts_by_id(job)
    assert "upper/front" not in made
    assert made["upper/side"].quantity == 1


def test_a_finished_drawer_needs_no_test_pieces() -> None:
    all_of_it = {"upper/front": 1, "upper/side": 2, "upper/back": 1, "upper/bottom": 1}
    assert build(make_job(make_drawer(), made=all_of_it)).parts == ()


@pytest.mark.parametrize(
    ("made", "wrong"),
    [
        ({"uper/front": 1}, "no part of the job is called this"),
        ({"upper/side": 3}, "3 are made, and the job asks for 2"),
    ],
)
def test_made_must_name_parts_the_job_asks_for(
    made: dict[str, int], wrong: str
) -> None:
    faults = Faults()
    assemblies.parts_of(make_job(make_drawer(), made=made), faults)
    (fault,) = faults
    assert wrong in fault.wrong
    assert fault.said == next(iter(made))


def test_two_parts_of_one_name_are_a_fault() -> None:
    with pytest.raises(FaultsFound, match="two parts have this name"):
        build(make_job(make_plain("shelf"), make_plain("shelf")))


def test_more_parts_than_a_job_may_have_are_refused() -> None:
    with pytest.raises(FaultsFound, match="50,000 parts at the most"):
        build(make_job(make_plain("shelf", quantity=50_001)))


def test_every_caution_is_said_once() -> None:
    built = build(make_job(make_drawer(name="upper"), make_drawer(name="lower")))
    assert len(set(built.cautions)) == len(built.cautions)
    assert built.cautions


def test_what_could_not_be_built_is_told_once_even_where_it_is_named_again() -> None:
    oak = Side(wood="oak", thickness=inches("1/2"))
    both = GrainMatch(name="fronts", parts=("upper/front", "lower/front"), where=HERE)
    job = make_job(
        make_drawer(name="upper"),
        make_drawer(name="lower", side=oak),
        made={"lower/back": 1},
        grain_matches=(both,),
    )
    faults = Faults()
    routes(assemblies.parts_of(job, faults).parts, job, faults)
    (fault,) = faults
    assert fault.said == "oak"
