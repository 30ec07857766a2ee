"""Fronts cut from one board in order, worked by hand. Common practice, no source."""

from __future__ import annotations

from typing import Any

import pytest

from tests.builders import HERE, build, inches, make_drawer, make_job, make_part
from yieldplan.blanks import routes
from yieldplan.faults import Fault, Faults
from yieldplan.model.blanks import Blank
from yieldplan.model.job import GrainMatch
from yieldplan.model.parts import Part


def match(*parts: str, **over: Any) -> GrainMatch:
    return GrainMatch(**{"name": "fronts", "parts": parts, "where": HERE} | over)


def offered(
    *parts: Part, matches: tuple[GrainMatch, ...], made: dict[str, int] | None = None
) -> tuple[tuple[Blank, ...], list[Fault]]:
    faults = Faults()
    job = make_job(grain_matches=matches, made=made)
    return routes(parts, job, faults), list(faults)


def one(*parts: Part, **over: Any) -> Blank:
    found, faults = offered(*parts, matches=(match(*(p.id for p in parts), **over),))
    assert faults == []
    (blank,) = found
    return blank


def test_end_to_end_there_is_a_kerf_between_and_one_allowance() -> None:
    # 22 + 1/8 + 22 + 1/2 = 44-5/8; 6 + 1/4 = 6-1/4.
    blank = one(make_part("a", "22", "6"), make_part("b", "22", "6"))
    assert (blank.route, blank.words) == ("match", "fronts (2 matched)")
    assert blank.length.value == inches("44-5/8")
    assert blank.width.value == inches("6-1/4")
    assert dict(blank.makes) == {"a": 1, "b": 1}
    assert [inside.demand for inside in blank.inside] == ["a", "b"]
    assert [inside.x for inside in blank.inside] == [inches("1/4"), inches("22-3/8")]


def test_it_is_as_wide_as_the_widest() -> None:
    # 5 and 7 wide: 7 + 1/4.
    blank = one(make_part("a", "22", "5"), make_part("b", "30", "7"))
    assert blank.width.value == inches("7-1/4")
    # The longest part decides: 22 + 1/8 + 30 + 1.
    assert blank.length.value == inches("53-1/8")


def test_one_above_the_other_the_first_is_uppermost() -> None:
    # 4 + 1/8 + 6 + 1/4 = 10-3/8 wide; 22 + 1/2 long; wider than 8: + 1/4 to plane.
    parts = make_part("upper", "22", "4"), make_part("lower", "22", "6")
    blank = one(*parts, laid="one above the other")
    assert blank.width.value == inches("10-3/8")
    assert blank.length.value == inches("22-1/2")
    assert blank.thickness.value == 1
    upper, lower = blank.inside
    assert (upper.demand, lower.demand) == ("upper", "lower")
    # lower from 1/8 to 6-1/8, a kerf, upper from 6-1/4 to 10-1/4.
    assert (lower.y, upper.y) == (inches("1/8"), inches("6-1/4"))


def test_a_set_shows_the_strictest_face_of_its_parts() -> None:
    blank = one(
        make_part("a", show_face="sap allowed"),
        make_part("b", show_face="clear", back_face="any"),
    )
    assert (blank.show_face, blank.back_face) == ("clear", "sound")


def test_its_parts_are_made_in_no_other_way() -> None:
    parts = [make_part(name, "9", "2") for name in ("a", "b", "c")]
    found, _ = offered(*parts, matches=(match("a", "b"),))
    assert [(b.route, tuple(b.makes)) for b in found] == [
        ("match", ("a", "b")),
        ("plane", ("c",)),
    ]


def test_matched_sheet_parts_take_only_kerfs() -> None:
    # 12 + 1/8 + 12 = 24-1/8.
    doors = [make_part(n, "12", "9", "1/4", wood="ply", is_sheet=True) for n in "ab"]
    blank = one(*doors)
    assert blank.length.value == inches("24-1/8")
    assert blank.width.value == 9
    assert blank.is_sheet


def test_two_of_each_are_two_sets() -> None:
    parts = [make_part(name, quantity=2) for name in ("a", "b")]
    found, faults = offered(*parts, matches=(match("a", "b"),))
    assert faults == []
    assert dict(found[0].makes) == {"a": 1, "b": 1}


def test_the_same_part_may_run_on_into_itself() -> None:
    found, faults = offered(make_part("a", quantity=2), matches=(match("a", "a"),))
    assert faults == []
    assert dict(found[0].makes) == {"a": 2}


def test_a_part_made_already_leaves_its_set() -> None:
    left = make_part("b"), make_part("c")
    found, faults = offered(*left, matches=(match("a", "b", "c"),), made={"a": 1})
    assert faults == []
    assert dict(found[0].makes) == {"b": 1, "c": 1}
    alone, _ = offered(make_part("b"), matches=(match("a", "b"),), made={"a": 1})
    assert alone[0].route == "plane"


@pytest.mark.parametrize(
    ("parts", "matches", "said", "wrong"),
    [
        ([make_part("a"), make_part("b")], [match("a", "bb")], "bb", "no part"),
        ([make_part("a"), make_part("b", wood="ash")], [match("a", "b")], "b", "one wood"),
        ([make_part("a"), make_part("b", "9", "9", "1")], [match("a", "b")], "b", "thickness"),
        ([make_part("a"), make_part("b", strips=2)], [match("a", "b")], "b", "glued up"),
        ([make_part("a"), make_part("b", quantity=2)], [match("a", "b")], "fronts", "equally"),
        ([make_part("a", quantity=3)], [match("a", "a")], "fronts", "equally"),
        ([make_part("a"), make_part("b")],
         [match("a", "b"), match("a", name="again")], "a", 'the other is "fronts"'),
    ],
)  # fmt: skip
def test_what_cannot_match_gives_one_message(
    parts: list[Part], matches: list[GrainMatch], said: str, wrong: str
) -> None:
    _, faults = offered(*parts, matches=tuple(matches))
    (fault,) = faults
    assert fault.said == said
    assert wrong in fault.wrong
    assert fault.remedy


def test_matched_drawer_fronts_by_their_own_names() -> None:
    job = make_job(
        make_drawer(name="upper"),
        make_drawer(name="lower"),
        grain_matches=(match("upper/front", "lower/front"),),
    )
    found = routes(build(job).parts, job, Faults())
    assert dict(found[0].makes) == {"upper/front": 1, "lower/front": 1}
    # 22 + 1/8 + 22 + 1/2.
    assert found[0].length.value == inches("44-5/8")
