"""Panels of free strip widths, worked by hand from the defaults. Common practice, no source."""

from __future__ import annotations

from fractions import Fraction
from itertools import combinations_with_replacement
from typing import Any

import pytest

from tests.builders import (
    HERE,
    build,
    inches,
    make_job,
    make_part,
    make_plain,
    make_shop,
    parts_by_id,
)
from yieldplan import assemblies
from yieldplan.assemblies.glued import GluedUp, glued_up, strip_step
from yieldplan.blanks import routes
from yieldplan.faults import Faults
from yieldplan.model.blanks import Blank
from yieldplan.model.job import GrainMatch
from yieldplan.model.parts import Part
from yieldplan.model.shop import Shop


def panel(width: str = "21", shop: Shop | None = None, **said: Any) -> Part:
    job = make_job(shop=shop)
    faults = Faults()
    part = make_part("top", "30", width)
    (glued,) = glued_up(part, GluedUp(**said), job, faults)
    assert not len(faults)
    return glued


def offered(part: Part, shop: Shop | None = None) -> list[Blank]:
    faults = Faults()
    found = routes([part], make_job(shop=shop), faults)
    assert not len(faults)
    return list(found)


def test_the_panel_is_counted_in_quarter_inches() -> None:
    # 21 and 1/2 to trim are 21-1/2: 86 steps of 1/4.
    part = panel()
    assert part.glue_up is not None
    assert (part.glue_up.step, part.glue_up.units) == (Fraction(1, 4), 86)
    assert (part.demand, part.needed) == ("top width", 86)
    # 20-7/8 + 1/2 = 21-3/8: 85-1/2 steps, so 86.
    almost = panel("20-7/8").glue_up
    assert almost is not None
    assert almost.units == 86


def test_a_strip_for_every_width_from_least_to_most() -> None:
    # From 2 to 5 by quarters: 13 of them.
    found = offered(panel())
    assert [b.makes["top width"] for b in found] == list(range(8, 21))
    narrow, *_, wide = found
    # 2 + 1/8 and 5 + 1/8 wide; 30 + 1 long; 3/4 + 1/16 + 3/16 = 1 thick, of 4/4.
    assert (narrow.width.value, wide.width.value) == (inches("2-1/8"), inches("5-1/8"))
    assert {b.length.value for b in found} == {Fraction(31)}
    assert {b.thickness.value for b in found} == {Fraction(1)}
    # A surfaced board must leave the 1/16 that flattens the panel.
    assert {b.finished_thickness for b in found} == {inches("13/16")}
    assert all(b.may_spare and b.route == "glue up" for b in found)
    (place,) = wide.inside
    assert (place.x, place.y) == (inches("1/2"), inches("1/16"))
    assert (place.length, place.width) == (30, 5)
    assert wide.words == "strip of top, 5 wide"


def test_any_strips_that_come_to_the_units_cover_panel_and_trim() -> None:
    # Whatever the plan picks: strips of i steps with a sum of at least 86 steps are at
    # least 86 x 1/4 = 21-1/2 wide when jointed, the panel's 21 and its 1/2.
    part = panel()
    assert part.glue_up is not None
    wide = {b.makes["top width"]: b.inside[0].width for b in offered(part)}
    covers = {True: 0, False: 0}
    for count in (5, 6, 7):
        for strips in combinations_with_replacement(sorted(wide), count):
            enough = sum(strips) >= part.glue_up.units
            covers[enough] += 1
            assert (sum(wide[s] for s in strips) >= inches("21-1/2")) == enough
    assert all(covers.values())
    # Three of 5, one of 4-1/2 and one of 2 are just enough.
    assert sum(wide[s] for s in (20, 20, 20, 18, 8)) == inches("21-1/2")


def test_a_panel_the_planer_takes_may_be_of_one_board() -> None:
    # 12 + 1/4 is under 15: one blank that brings all 50 steps of 12-1/2.
    (whole,) = (b for b in offered(panel("12")) if b.route == "plane")
    assert dict(whole.makes) == {"top width": 50}
    assert (whole.length.value, whole.width.value) == (31, inches("12-1/4"))
    assert whole.inside[0].width == 12
    assert whole.words == "top in one piece"
    assert not whole.may_spare
    # 15 + 1/4 is over 15.
    assert all(b.route == "glue up" for b in offered(panel("15")))
    assert all(b.route == "glue up" for b in offered(panel("12", one_piece=False)))


def test_no_strip_is_as_wide_as_its_panel() -> None:
    # A panel of 3: strips of 2 to 2-3/4, and the panel in one piece.
    found = offered(panel("3"))
    strips = [b.inside[0].width for b in found if b.route == "glue up"]
    assert strips == [Fraction(n, 4) for n in range(8, 12)]


def test_least_and_most_can_be_said() -> None:
    part = panel(least=inches("2-3/8"), most=inches("3-3/8"))
    # On quarters: 2-1/2, 2-3/4, 3, 3-1/4.
    assert [b.inside[0].width for b in offered(part)] == [
        Fraction(n, 4) for n in (10, 11, 12, 13)
    ]


def test_the_step_is_one_of_the_fence_and_a_quarter_at_the_least() -> None:
    assert strip_step(make_shop()) == Fraction(1, 4)
    assert strip_step(make_shop(rip_step="1/16")) == Fraction(1, 4)
    assert strip_step(make_shop(rip_step="1/2")) == Fraction(1, 2)
    # 3 mm: 6 mm is under a quarter inch, so 9 mm.
    assert strip_step(make_shop("mm")) == inches("9 mm")


def test_of_one_board_all_strips_lie_in_one_blank() -> None:
    # 86 steps in strips of 8 to 20: 5 at the least, up to 8 (three more).
    found = offered(panel(colour="one board"))
    assert all(dict(b.makes) == {"top width": 86} for b in found)
    assert {len(b.inside) for b in found} == {5, 6, 7, 8}
    # Each count in every grid: 5: 2, 6: 4, 7: 2, 8: 4.
    assert len(found) == 12
    assert not any(b.may_spare for b in found)


def test_five_strips_above_one_another() -> None:
    # 86 / 5: one of 18 steps (4-1/2) and four of 17 (4-1/4), all sawn 4-1/2 + 1/8:
    # 5 x 4-5/8 + 4 kerfs of 1/8 = 23-5/8 wide, 31 long.
    (stack,) = (
        b
        for b in offered(panel(colour="one board"))
        if len({i.y for i in b.inside}) == 5 and len(b.inside) == 5
    )
    assert (stack.length.value, stack.width.value) == (31, inches("23-5/8"))
    assert [i.width for i in stack.inside] == [inches("4-1/2"), *[inches("4-1/4")] * 4]
    # The second begins a rough strip and a kerf above the first: 1/16 + 4-5/8 + 1/8.
    assert stack.inside[1].y == inches("4-13/16")


def test_five_strips_end_to_end() -> None:
    # 5 x 31 + 4 x 1/8 = 155-1/2 long, 4-5/8 wide.
    (row,) = (
        b
        for b in offered(panel(colour="one board"))
        if len({i.x for i in b.inside}) == 5 and len(b.inside) == 5
    )
    assert (row.length.value, row.width.value) == (inches("155-1/2"), inches("4-5/8"))
    assert row.inside[1].x == inches("31-5/8")


def test_a_panel_wider_than_the_planer_is_glued_up_as_narrower_ones() -> None:
    # 30 + 1/2 = 30-1/2: three of 15 at the most.
    (said,) = {c for b in offered(panel("30")) for c in b.cautions}
    assert "30 1/2 in before it is trimmed" in said
    assert "into 3 narrower panels, none wider than 15 in" in said
    assert not any(b.cautions for b in offered(panel("14")) if b.route == "glue up")
    # Equal strips too.
    equal = offered(make_part("top", "30", "21", strips=5))
    assert any("2 narrower panels" in caution for caution in equal[0].cautions)


def test_every_copy_is_a_panel_of_its_own() -> None:
    job = make_job(make_plain("top", width="21", quantity=2, glue_up=GluedUp()))
    parts = parts_by_id(job)
    assert {name: part.quantity for name, part in parts.items()} == {
        "top 1": 1,
        "top 2": 1,
    }
    found = routes(build(job).parts, job, Faults())
    assert {demand for b in found for demand in b.makes} == {
        "top 1 width",
        "top 2 width",
    }


@pytest.mark.parametrize(
    ("over", "said", "wrong"),
    [
        ({}, {"least": inches("6")}, "its narrowest strip, 6 in, is wider"),
        ({"width": "1-1/2"}, {}, "1 1/2 in wide, narrower than a strip of 2 in"),
        ({"strips": 3}, {}, "equal strips already"),
        ({"wood": None, "sheet": "ply", "thickness": None}, {}, "only solid wood"),
        ({"quantity": 101}, {}, "100 at the most"),
    ],
)
def test_what_cannot_be_glued_up_gives_one_message(
    over: dict[str, Any], said: dict[str, Any], wrong: str
) -> None:
    part = make_plain("top", glue_up=GluedUp(**said), **({"width": "21"} | over))
    faults = Faults()
    assert assemblies.parts_of(make_job(part), faults).parts == ()
    (fault,) = faults
    assert wrong in fault.wrong
    assert fault.remedy


def test_a_glued_panel_cannot_run_on_from_another() -> None:
    glued, plain = panel(), make_part("front", "30", "21")
    both = GrainMatch(name="set", parts=("top", "front"), where=HERE)
    faults = Faults()
    routes([glued, plain], make_job(grain_matches=(both,)), faults)
    (fault,) = faults
    assert (fault.said, "leave glue_up out" in fault.remedy) == ("top", True)


def test_without_the_route_a_wide_panel_cannot_be_made() -> None:
    shop = make_shop(without=("glue up",))
    faults = Faults()
    routes([panel()], make_job(shop=shop), faults)
    (fault,) = faults
    assert (fault.said, fault.wrong) == ("top", "no way this shop takes can make it")
    assert "glue up" in fault.remedy
    # One that a board is wide enough for still can.
    assert [b.route for b in offered(panel("12"), shop)] == ["plane"]
