"""Thin parts sawn out of thick stock, worked by hand from the defaults. Common practice, no source."""

from __future__ import annotations

import pytest

from tests.builders import inches, make_job, make_part, make_shop
from yieldplan.blanks import routes
from yieldplan.faults import Faults
from yieldplan.model.blanks import Blank
from yieldplan.model.parts import Part
from yieldplan.model.shop import Shop


def resawn(*parts: Part, shop: Shop | None = None) -> list[Blank]:
    found = routes(parts, make_job(shop=shop), Faults())
    return [blank for blank in found if blank.route == "resaw"]


def test_two_sides_of_a_half_come_from_six_quarter() -> None:
    # 2 x (1/2 + 1/8) + 1/16 kerf + 1/16 flattening = 1-3/8: of 6/4.
    (blank,) = resawn(make_part("side", "20", "5", "1/2", quantity=2))
    assert blank.thickness.value == inches("1-3/8")
    assert dict(blank.makes) == {"side": 2}
    assert blank.words == "side (2 resawn)"
    assert str(blank.thickness) == (
        "2 × 1/2 finished thickness + 2 × 1/8 to plane a slice + 1/16 bandsaw kerf"
        " + 1/16 to flatten it before resawing = 1-3/8"
    )
    # A surfaced board is flat already: 1-3/8 - 1/16.
    assert blank.finished_thickness == inches("1-5/16")


def test_two_of_three_eighths_come_from_five_quarter() -> None:
    # 2 x (3/8 + 1/8) + 1/16 + 1/16 = 1-1/8.
    (blank,) = resawn(make_part("side", "20", "5", "3/8", quantity=2))
    assert blank.thickness.value == inches("1-1/8")


def test_length_and_width_are_those_of_one_part() -> None:
    # 20 + 1/2; 5 + 1/4; both slices over one another from 1/4 along and 1/8 across.
    (blank,) = resawn(make_part("side", "20", "5", "1/2", quantity=2))
    assert (blank.length.value, blank.width.value) == (
        inches("20-1/2"),
        inches("5-1/4"),
    )
    assert [(i.slice, i.x, i.y) for i in blank.inside] == [
        (0, inches("1/4"), inches("1/8")),
        (1, inches("1/4"), inches("1/8")),
    ]
    assert blank.slices == 2


@pytest.mark.parametrize(
    ("thickness", "counts"),
    [
        # Two 3 x 3/8 + 3/16 = 15/16 in 4/4: 1/3 in each; two 2 x 3/8 + 1/8 = 7/8 in 4/4: 1/2.
        # (for parts of 1/4: each slice 3/8; three are 3 x 3/8 + 2/16 + 1/16 = 1-5/16 in 6/4,
        # 1/2 in each, no less than two of 4/4)
        ("1/4", [2]),
        # Slice 1/2: two 1-1/8 in 5/4, 5/8 each; three 1-11/16 in 7/4, 7/12 each: less.
        ("3/8", [2, 3]),
        # Slice 5/8: two 1-3/8 in 6/4, 3/4 each; three 2-1/16 in 10/4, 5/6 each.
        ("1/2", [2]),
    ],
)
def test_three_slices_where_they_take_less_of_a_board(
    thickness: str, counts: list[int]
) -> None:
    found = resawn(make_part("side", "20", "5", thickness, quantity=5))
    assert [sum(blank.makes.values()) for blank in found] == counts


def test_never_more_slices_than_parts() -> None:
    assert resawn(make_part("side", "20", "5", "1/2")) == []
    two = resawn(make_part("side", "20", "5", "3/8", quantity=2))
    assert [dict(blank.makes) for blank in two] == [{"side": 2}]


def test_no_wider_than_the_bandsaw_resaws() -> None:
    # 7-3/4 + 1/4 = 8, the most; 7-7/8 + 1/4 is more.
    assert resawn(make_part("side", "20", "7-3/4", "1/2", quantity=2))
    assert not resawn(make_part("side", "20", "7-7/8", "1/2", quantity=2))
    high = make_shop(resaw_height="12")
    assert resawn(make_part("side", "20", "11", "1/2", quantity=2), shop=high)


def test_what_one_face_forbids_both_faces_of_the_wood_forbid() -> None:
    # The saw opens the middle: what lies there nobody has seen.
    part = make_part(
        "front", "20", "5", "1/2", quantity=2, show_face="clear", back_face="sound"
    )
    (blank,) = resawn(part)
    assert (blank.show_face, blank.back_face) == ("clear", "clear")


def test_short_parts_sheets_and_glued_parts_are_not_resawn() -> None:
    short = make_part("stop", "9", "2", "1/2", quantity=2)
    sheet = make_part("bottom", "20", "9", "1/4", wood="ply", is_sheet=True, quantity=2)
    glued = make_part("top", "30", "15", "1/2", strips=3, quantity=2)
    assert resawn(short, sheet, glued) == []


def test_the_bench_is_told_how() -> None:
    (blank,) = resawn(make_part("side", "20", "5", "1/2", quantity=2))
    said = " ".join(blank.cautions)
    for word in ("fence", "guide", "push stick", "wide blade", "slice 5/8 in thick"):
        assert word in said


def test_a_shop_can_do_without() -> None:
    shop = make_shop(without=("Resaw",))
    assert resawn(make_part("side", "20", "5", "1/2", quantity=2), shop=shop) == []
