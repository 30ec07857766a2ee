"""Like parts milled as one blank, worked by hand. Common practice, no source."""

from __future__ import annotations

from tests.builders import inches, make_job, make_part, make_shop
from yieldplan.blanks import routes
from yieldplan.faults import Faults
from yieldplan.model.blanks import Blank
from yieldplan.model.parts import Part
from yieldplan.model.shop import Shop


def together(*parts: Part, shop: Shop | None = None) -> list[Blank]:
    found = routes(parts, make_job(shop=shop), Faults())
    return [blank for blank in found if blank.route == "mill together"]


def test_two_sides_share_one_rough_length() -> None:
    # 17-1/2 + 1/8 + 17-1/2 + 1/2 = 35-5/8; by themselves 2 x 18 + 1/8 = 36-1/8.
    (blank,) = together(make_part("side", "17-1/2", "5", "1/2", quantity=2))
    assert blank.length.value == inches("35-5/8")
    assert blank.width.value == inches("5-1/4")
    assert dict(blank.makes) == {"side": 2}
    assert [inside.x for inside in blank.inside] == [inches("1/4"), inches("17-7/8")]
    assert not blank.may_spare


def test_three_where_they_are_no_longer_than_is_handy() -> None:
    # 3 x 17-1/2 + 2/8 + 1/2 = 53-1/4; very_long_over is 60. Three of 20: 60-3/4.
    three = together(make_part("side", "17-1/2", "5", quantity=3))
    assert [dict(blank.makes) for blank in three] == [{"side": 2}, {"side": 3}]
    two = together(make_part("side", "20", "5", quantity=3))
    assert [dict(blank.makes) for blank in two] == [{"side": 2}]
    longer = make_shop(very_long_over="61")
    assert len(together(make_part("side", "20", "5", quantity=3), shop=longer)) == 2


def test_the_whole_run_decides_what_is_planed_away() -> None:
    # One of 25 loses 3/16. Two are 25 + 1/8 + 25 = 50-1/8, over 48: 1/4.
    (blank,) = together(make_part("rail", "25", "5", quantity=2))
    assert blank.thickness.value == 1
    # Flat stock may be planed less up to 24: two of 17-1/2 are 35-1/8, so 3/16.
    (blank,) = together(make_part("rail", "17-1/2", "5", quantity=2, flat=True))
    assert blank.thickness.value == inches("15/16")


def test_two_like_parts_of_different_length_share_a_blank() -> None:
    # 20 + 1/8 + 17 + 1/2 = 37-5/8, the longer first.
    (blank,) = together(make_part("short", "17", "5"), make_part("long", "20", "5"))
    assert blank.length.value == inches("37-5/8")
    assert [inside.demand for inside in blank.inside] == ["long", "short"]
    assert blank.words == "long + short"


def test_unlike_parts_do_not() -> None:
    plain = make_part("side", "17", "5")
    for other in (
        make_part("other", "17", "4"),
        make_part("other", "17", "5", "1"),
        make_part("other", "17", "5", wood="poplar"),
        make_part("other", "17", "5", show_face="clear"),
    ):
        assert together(plain, other) == []


def test_narrow_ones_also_lie_one_above_the_other() -> None:
    # 2 + 1/8 + 2 = 4-1/8, over 3: + 1/4 = 4-3/8 wide; 20 + 1/2 long.
    row, pair = together(make_part("slip", "20", "2", quantity=2))
    assert (row.length.value, row.width.value) == (inches("40-5/8"), inches("2-1/4"))
    assert (pair.length.value, pair.width.value) == (inches("20-1/2"), inches("4-3/8"))
    assert not row.cautions
    assert "rip them apart with a clean blade" in pair.cautions[0]
    # A pair wider than the jointer is none: 4-3/8 over 4.
    (row,) = together(
        make_part("slip", "20", "2", quantity=2), shop=make_shop(jointer_width="4")
    )
    assert len({inside.y for inside in row.inside}) == 1


def test_few_blanks_a_part() -> None:
    crowd = [make_part(f"s{n:02}", f"{15 + n % 8}", "2", quantity=5) for n in range(40)]
    assert len(together(*crowd)) <= 3 * len(crowd)


def test_short_parts_are_ganged_instead() -> None:
    assert together(make_part("stop", "9", "2", quantity=4)) == []
