"""A part's story: its sums, its blank, the board it lies on, from mark to mark."""

from __future__ import annotations

import dataclasses

import pytest

from tests.measure.hall_case import (
    BOARD,
    FRONTS,
    LOWER,
    TREE,
    UPPER,
    inches,
    make_part,
    make_plan,
    make_wood_plan,
)
from yieldplan import plan_file
from yieldplan.checking import check
from yieldplan.desk.explain import explain
from yieldplan.faults import FaultsFound
from yieldplan.model.parts import Part
from yieldplan.model.plan import Cutting, Missing
from yieldplan.model.sums import Sum
from yieldplan.plan_file import Document


def document_with(*parts: Part) -> Document:
    return plan_file.write(make_plan(parts=parts))


DOCUMENT = document_with(UPPER, LOWER)


def test_the_plan_of_these_tests_holds() -> None:
    assert check(DOCUMENT)["objections"] == []


def test_a_size_is_told_as_its_sum() -> None:
    length = Sum.of(
        ("opening depth", inches("20")),
        ("rear clearance", -inches("1/4")),
        ("lap", -inches("3/8")),
        ("back in a rabbet", inches("0")),
        ("tenon", inches("1-5/16"), 2),
    )
    # 20 - 1/4 - 3/8 + 2 x 1-5/16 = 22.
    part = dataclasses.replace(UPPER, length=length)
    said = explain(document_with(part, LOWER), "upper/front")
    assert (
        "length     20 opening depth − 1/4 rear clearance − 3/8 lap + 0, back in a "
        "rabbet + 2 × 1-5/16 tenon = 22"
    ) in said


def test_how_many_and_how_large() -> None:
    said = explain(DOCUMENT, "upper/front")
    assert said.startswith("upper/front: 1 of 3/4 × 6 × 22 finished")
    assert "Show face clear, back sound." in said


def test_where_it_lies_from_mark_to_mark() -> None:
    said = explain(DOCUMENT, "lower/front")
    # The blade goes right of the mark at 2: the wood begins at 2-1/8.
    assert "W7 (walnut 4/4 FAS, 8 × 60): from mark 2 to mark 47-1/2" in said
    assert "1/8 to 6-3/8 from the near edge, face A up; piece W7.2.1" in said
    # Second in its set, behind 22 of the first and a kerf.
    assert "second of 2, from 22-1/8 along" in said
    assert "Blank k1 (match), rough 6-1/4 × 45-1/8" in said


def test_the_face_up_is_the_one_of_the_plan() -> None:
    tree = dataclasses.replace(TREE)
    section = tree.into[1]
    turned = dataclasses.replace(section.into[0], face_up="B")
    section = dataclasses.replace(section, into=(turned, *section.into[1:]))
    tree = dataclasses.replace(tree, into=(tree.into[0], section, *tree.into[2:]))
    cutting = Cutting(piece=BOARD, copy=1, tree=tree, breakdown="crosscut first")
    plan = make_plan(woods=(make_wood_plan(cuttings=(cutting,)),))
    assert "face B up" in explain(plan_file.write(plan), "upper/front")


def test_a_single_part_says_what_is_milled_away() -> None:
    inside = dataclasses.replace(FRONTS.inside[0], demand="upper/front")
    alone = dataclasses.replace(
        FRONTS, makes={"upper/front": 1}, inside=(inside,), route="plane"
    )
    plan = make_plan(blanks=(alone,))
    # 45-1/8 - 22 and 6-1/4 - 6.
    assert "23-1/8 over in length and 1/4 in width to mill away" in explain(
        plan_file.write(plan), "upper/front"
    )


def test_a_strip_of_a_glued_part_is_found_under_the_part() -> None:
    glued = dataclasses.replace(UPPER, strips=2)
    inside = dataclasses.replace(FRONTS.inside[0], demand="upper/front strip")
    blank = dataclasses.replace(
        FRONTS, makes={"upper/front strip": 1}, inside=(inside,), route="plane"
    )
    document = plan_file.write(make_plan(parts=(glued, LOWER), blanks=(blank,)))
    said = explain(document, "upper/front")
    assert "Glued up from 2 equal strips." in said
    assert "piece W7.2.1" in said


def test_what_is_missing_is_said() -> None:
    missing = Missing(
        demand="upper/front", count=1, reason="too little wood", remedy="Buy some"
    )
    wood = make_wood_plan(missing=(missing,))
    said = explain(plan_file.write(make_plan(woods=(wood,))), "upper/front")
    assert "INCOMPLETE: 1 of them could not be had from the walnut offered." in said


def test_a_part_nothing_is_cut_for_says_so() -> None:
    spare = make_part("test piece", "8", "6", set_up=True)
    said = explain(document_with(UPPER, LOWER, spare), "test piece")
    assert "No board of this plan is cut for it." in said
    assert "A set-up piece" in said


def test_the_end_of_an_id_will_do_where_only_one_has_it() -> None:
    other = make_part("upper/side", "20", "5")
    document = document_with(UPPER, LOWER, other)
    assert explain(document, "SIDE") == explain(document, "upper/side")


@pytest.mark.parametrize(
    ("typed", "remedy"),
    [
        ("front", "lower/front, upper/front"),
        ("upper", "Say which: upper/front"),
        ("uper/front", "Did you mean"),
        ("zzz", "Known here: lower/front, upper/front"),
    ],
)
def test_an_unknown_part_gets_a_hint(typed: str, remedy: str) -> None:
    with pytest.raises(FaultsFound) as found:
        explain(DOCUMENT, typed)
    (fault,) = found.value.faults
    assert fault.said == typed
    assert remedy in fault.remedy
