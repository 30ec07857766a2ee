"""Short parts milled as one blank, worked by hand. Common practice, no source."""

from __future__ import annotations

from fractions import Fraction

from tests.builders import build, inches, make_drawer, make_job, make_part, make_shop
from yieldplan.blanks import routes
from yieldplan.faults import Faults
from yieldplan.model.blanks import Blank
from yieldplan.model.parts import Part
from yieldplan.model.shop import Shop


def gangs(*parts: Part, shop: Shop | None = None) -> list[Blank]:
    job = make_job(shop=shop)
    return [b for b in routes(parts, job, Faults()) if b.route == "gang"]


def test_two_short_parts_share_one_allowance() -> None:
    # 9 + 1/8 kerf + 9 + 1/2 = 18-5/8; as wide as one of them, 2 + 1/8.
    (gang,) = gangs(make_part("stop", "9", "2", quantity=2))
    assert gang.length.value == inches("18-5/8")
    assert gang.width.value == inches("2-1/8")
    assert dict(gang.makes) == {"stop": 2}
    assert [inside.x for inside in gang.inside] == [inches("1/4"), inches("9-3/8")]
    assert str(gang.length) == "2 × 9 stop + 1/8 kerf + 1/2 rough length = 18-5/8"
    assert gang.words == "2 × stop"


def test_at_most_four_and_never_more_than_asked() -> None:
    three = gangs(make_part("stop", "9", "2", quantity=3))
    assert [dict(gang.makes) for gang in three] == [{"stop": 2}, {"stop": 3}]
    many = gangs(make_part("stop", "9", "2", quantity=9))
    assert max(sum(gang.makes.values()) for gang in many) == 4
    none = gangs(
        make_part("stop", "9", "2", quantity=9), shop=make_shop(gang_at_most=1)
    )
    assert none == []


def test_parts_of_one_width_and_thickness_mix() -> None:
    # 9 + 1/8 + 7 + 1/2 = 16-5/8, the longer first.
    (gang,) = gangs(make_part("short", "7", "2"), make_part("stop", "9", "2"))
    assert [inside.demand for inside in gang.inside] == ["stop", "short"]
    assert gang.length.value == inches("16-5/8")
    assert gang.words == "stop + short"


def test_parts_that_differ_in_width_thickness_or_face_do_not_mix() -> None:
    plain = make_part("stop", "9", "2")
    for other in (
        make_part("other", "9", "3"),
        make_part("other", "9", "2", "1"),
        make_part("other", "9", "2", wood="poplar"),
        make_part("other", "9", "2", show_face="clear"),
    ):
        assert gangs(plain, other) == []


def test_four_different_ones_make_one_gang() -> None:
    parts = [make_part(f"stop {n}", str(n), "2") for n in (6, 7, 8, 9)]
    sizes = {tuple(sorted(gang.makes)) for gang in gangs(*parts)}
    assert ("stop 6", "stop 7", "stop 8", "stop 9") in sizes


def test_long_parts_glued_parts_and_sheets_are_not_ganged() -> None:
    assert gangs(make_part("rail", "14", "2", quantity=4)) == []
    assert gangs(make_part("top", "9", "12", strips=3, quantity=4)) == []
    sheet = make_part("bottom", "9", "9", "1/4", wood="ply", is_sheet=True, quantity=4)
    assert gangs(sheet) == []


def test_a_gang_still_too_short_is_left_long() -> None:
    # 2 + 1/8 + 2 + 1/2 = 4-5/8, and 9-3/8 more to 14.
    (gang,) = gangs(make_part("knob", "2", "2", quantity=2))
    assert gang.length.value == 14


def test_a_single_one_can_be_had_too() -> None:
    job = make_job()
    parts = [make_part("stop", "9", "2", quantity=2)]
    found = routes(parts, job, Faults())
    assert [(b.route, b.length.value) for b in found] == [
        ("plane", Fraction(14)),
        ("gang", inches("18-5/8")),
    ]


def test_a_crowd_of_short_parts_gives_a_list_that_stays_short() -> None:
    parts = [make_part(f"s{n:02}", f"{4 + n % 8}", "2", quantity=5) for n in range(40)]
    assert len(gangs(*parts)) < 40 * 30


def test_test_pieces_are_ganged_and_take_no_allowance() -> None:
    job = make_job(make_drawer())
    blanks = [b for b in routes(build(job).parts, job, Faults()) if b.set_up]
    assert len(blanks) == 4
    for blank in blanks:
        # 8 + 1/8 + 8 = 16-1/8, from any face.
        assert blank.route == "gang"
        assert blank.length.value == inches("16-1/8")
        assert list(blank.makes.values()) == [2]
        assert blank.show_face == "any"
