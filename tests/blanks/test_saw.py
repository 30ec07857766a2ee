"""Parts of sheets and sticks come off the saw finished; a sheet without grain offers them twice."""

from __future__ import annotations

import dataclasses
from typing import Any

import pytest

from tests.builders import inches, make_job, make_part
from yieldplan.blanks import routes
from yieldplan.faults import Faults
from yieldplan.model.blanks import Blank
from yieldplan.model.job import Job


def blanks(job: Job, length: str = "30", width: str = "12", **over: Any) -> list[Blank]:
    settings = {"wood": "ply", "is_sheet": True} | over
    return list(
        routes([make_part("shelf", length, width, "1/4", **settings)], job, Faults())
    )


def job(*, has_grain: bool) -> Job:
    made = make_job()
    ply = dataclasses.replace(made.sheets["ply"], has_grain=has_grain)
    return dataclasses.replace(made, sheets={"ply": ply})


def test_on_a_face_with_grain_a_part_lies_along_it() -> None:
    (blank,) = blanks(job(has_grain=True))
    assert not blank.turned
    assert (blank.length.value, blank.width.value) == (30, 12)


def test_on_a_face_without_grain_it_may_lie_across_too() -> None:
    along, across = blanks(job(has_grain=False))
    assert (along.turned, across.turned) == (False, True)
    assert (across.length.value, across.width.value) == (12, 30)
    (place,) = across.inside
    # Nothing is added: the part is all of its blank, its length lying across.
    assert (place.x, place.y, place.length, place.width) == (0, 0, 12, 30)
    assert across.makes == along.makes == {"shelf": 1}
    assert "turned" in across.words


def test_turning_a_square_is_nothing_new() -> None:
    (blank,) = blanks(job(has_grain=False), "12", "12")
    assert not blank.turned


@pytest.mark.parametrize(("has_grain", "may_turn"), [(True, True), (False, False)])
def test_what_the_part_says_comes_before_the_face(
    has_grain: bool, may_turn: bool
) -> None:
    offered = blanks(job(has_grain=has_grain), may_turn=may_turn)
    assert [blank.turned for blank in offered] == [False, True][: 1 + may_turn]


def test_a_part_of_a_stick_is_cut_to_its_length_and_nothing_is_planed() -> None:
    part = {"wood": "edging", "is_sheet": False, "is_stick": True}
    (blank,) = blanks(make_job(), "3", "3/4", **part)
    # Short and narrow as it is: no allowance, no gang, and nothing goes past a fence.
    assert (blank.length.value, blank.width.value) == (3, inches("3/4"))
    assert blank.thickness.value == blank.finished_thickness == inches("1/4")
    assert blank.route == "saw"
    assert not blank.turned
    assert not blank.cautions
