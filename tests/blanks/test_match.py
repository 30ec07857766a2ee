"""Fronts cut from one board in order, worked by hand. Common practice, no source."""

from __future__ import annotations

from fractions import Fraction
from typing import Any

import pytest

from tests.builders import (
    HERE,
    build,
    inches,
    make_drawer,
    make_job,
    make_part,
    make_shop,
)
from yieldplan.blanks import routes
from yieldplan.faults import Fault, Faults
from yieldplan.model.blanks import Blank
from yieldplan.model.job import GrainMatch
from yieldplan.model.parts import Part
from yieldplan.model.shop import Shop


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
    (blank,) = (blank for blank in found if blank.step is None)
    return blank


def steps(*parts: Part, shop: Shop | None = None) -> list[Blank]:
    job = make_job(grain_matches=(match(*(p.id for p in parts)),), shop=shop)
    return [blank for blank in routes(parts, job, Faults()) if blank.step is not None]


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
        ([make_part("a"), make_part("b"), make_part("c")],
         [match("a", "b", "c", laid="book-matched")], "fronts", "is a pair"),
        ([make_part("a"), make_part("b", "29")],
         [match("a", "b", laid="slip-matched")], "fronts", "of one size"),
        ([make_part("a", "30", "8"), make_part("b", "30", "8")],
         [match("a", "b", laid="book-matched")], "a", "8 1/4 in wide"),
        ([make_part(n, wood="ply", is_sheet=True) for n in "ab"],
         [match("a", "b", laid="book-matched")], "a", "resawn from a board"),
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


def test_parts_of_different_width_are_also_offered_in_steps() -> None:
    # Fronts of a graduated chest: 36 long, 5, 6-1/2 and 8 wide. Each in a section of its
    # own: 36 + 1 long (over 24), its own width + 1/4.
    wide = {"upper": "5", "middle": "6-1/2", "lower": "8"}
    found = steps(*(make_part(name, "36", width) for name, width in wide.items()))
    assert [(b.step.set, b.step.number, b.step.of) for b in found if b.step] == [
        ("fronts", 1, 3),
        ("fronts", 2, 3),
        ("fronts", 3, 3),
    ]
    assert [dict(b.makes) for b in found] == [{name: 1} for name in wide]
    assert {b.length.value for b in found} == {inches("37")}
    assert [b.width.value for b in found] == [
        inches("5-1/4"),
        inches("6-3/4"),
        inches("8-1/4"),
    ]
    assert found[0].words == "upper, step 1 of 3 of fronts"
    # As a rectangle: 3 x 36 + 2 x 1/8 + 1 long and 8-1/4 wide, 901-5/16 sq in; in steps
    # 37 x (5-1/4 + 6-3/4 + 8-1/4) = 749-1/4: beside the narrow ones 152 sq in stay stock.
    whole = one(*(make_part(name, "36", width) for name, width in wide.items()))
    assert whole.length.value * whole.width.value == Fraction(14421, 16)
    assert sum(b.length.value * b.width.value for b in found) == Fraction(2997, 4)


def test_steps_are_one_in_face_and_in_thickness() -> None:
    # The 9 in one is over 8 and takes 1/4 to plane: so do both, from one board.
    upper = make_part("upper", "22", "5", show_face="sap allowed", back_face="any")
    lower = make_part("lower", "22", "9", show_face="clear")
    found = steps(upper, lower)
    assert {b.thickness.value for b in found} == {Fraction(1)}
    assert {(b.show_face, b.back_face) for b in found} == {("clear", "sound")}


def test_a_short_step_is_long_enough_for_the_machines() -> None:
    # 9 + 1/2 is 9-1/2; every step is milled by itself, so 14.
    found = steps(make_part("a", "9", "4"), make_part("b", "9", "5"))
    assert {b.length.value for b in found} == {Fraction(14)}


def test_no_steps_where_nothing_is_won_or_the_board_is_ripped_first() -> None:
    alike = make_part("a", "22", "6"), make_part("b", "22", "6")
    assert steps(*alike) == []
    unlike = make_part("a", "22", "6"), make_part("b", "22", "8")
    assert len(steps(*unlike)) == 2
    assert len(steps(*unlike, shop=make_shop(breakdown="either"))) == 2
    assert steps(*unlike, shop=make_shop(breakdown="rip first")) == []
    doors = [make_part(n, "12", w, "1/4", wood="ply", is_sheet=True)
             for n, w in (("a", "9"), ("b", "8"))]  # fmt: skip
    assert steps(*doors) == []


@pytest.mark.parametrize(
    ("laid", "how"), [("book-matched", "like a book"), ("slip-matched", "slide one slice")]
)  # fmt: skip
def test_a_pair_comes_from_two_slices_of_one_blank(laid: str, how: str) -> None:
    # Door panels 1/2 thick: 2 x (1/2 + 1/8) + 1/16 + 1/16 = 1-3/8; 22 + 1/2; 7 + 1/4.
    panels = [
        make_part(n, "22", "7", "1/2", show_face="clear") for n in ("left", "right")
    ]
    blank = one(*panels, laid=laid)
    assert blank.route == "match"
    assert blank.words == f"fronts ({laid})"
    assert blank.thickness.value == inches("1-3/8")
    assert (blank.length.value, blank.width.value) == (
        inches("22-1/2"),
        inches("7-1/4"),
    )
    assert dict(blank.makes) == {"left": 1, "right": 1}
    assert [(i.demand, i.slice) for i in blank.inside] == [("left", 0), ("right", 1)]
    assert len({(i.x, i.y) for i in blank.inside}) == 1
    # What shows is sawn open: both faces of the wood must be clear.
    assert (blank.show_face, blank.back_face) == ("clear", "clear")
    assert any(how in caution for caution in blank.cautions)


def test_two_halves_of_one_panel_can_be_a_pair() -> None:
    half = make_part("half", "22", "6", "1/2", quantity=2)
    found, faults = offered(half, matches=(match("half", "half", laid="book-matched"),))
    assert faults == []
    assert [dict(blank.makes) for blank in found] == [{"half": 2}]


def test_a_shop_without_resawing_opens_no_pair() -> None:
    parts = [make_part(n, "22", "7", "1/2") for n in "ab"]
    faults = Faults()
    job = make_job(
        shop=make_shop(without=("resaw",)),
        grain_matches=(match("a", "b", laid="book-matched"),),
    )
    routes(parts, job, faults)
    (fault,) = faults
    assert "does without resawing" in fault.wrong
