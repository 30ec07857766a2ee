"""The example at the end of the format's page is true, as worked out there by hand."""

from __future__ import annotations

from tests.checking.examples import documented, ticks
from yieldplan.checking import check
from yieldplan.checking.bound import price_out
from yieldplan.checking.grid import cells_of, lay_out
from yieldplan.checking.reading import read


def test_documented_example_holds() -> None:
    report = check(documented())
    assert report["objections"] == []
    assert report["costs"] == {"walnut": 387_600}
    assert report["floors"] == {"walnut": 387_600}


def test_cells_of_the_example_are_as_the_page_counts_them() -> None:
    plan, _ = read(documented())
    assert plan is not None
    rules = plan.woods[0].rules
    grid = lay_out(plan.piece_of["W07"], rules)
    # Along (60 - 1 - 1) / 0.5 = 116; across (7.75 - 0.25 + 0.125) / 0.125 = 61.
    assert (grid.along, grid.across) == (116, 61)
    # The knot, 20 to 22 and 6 to 7: along 19/0.5 = 38 to 21/0.5 = 42; across from
    # (6 - 1/8 + 1/8) / 0.125 = 48 to (7 - 1/8) / 0.125 = 55.
    assert (grid.bare[0].along, grid.bare[0].across) == ((38, 42), (48, 55))
    # With 1/4 in around it: 18.75/0.5 = 37.5 to 21.25/0.5 = 42.5, outward, and 2 cells.
    assert (grid.blocks[0].along, grid.blocks[0].across) == ((37, 43), (46, 57))
    # Fronts (34.625 + 0.125) / 0.5 = 69.5, up to 70; (5.25 + 0.125) / 0.125 = 43.
    assert cells_of(plan.blank_of["k1"], rules) == (70, 43)
    # Rails (12.5 + 0.125) / 0.5 = 25.25, up to 26; (2.125 + 0.125) / 0.125 = 18.
    assert cells_of(plan.blank_of["k2"], rules) == (26, 18)


def test_a_dearer_rail_makes_the_longer_section_count() -> None:
    example = documented()
    example["woods"][0]["bound"]["prices"]["rail"] = 10_000
    plan, _ = read(example)
    assert plan is not None
    # Need 2 x 19.32 + 2 x 1.00 = 40.64. W07 gives fronts and six rails, 44.64, which is
    # 5.88 above its 38.76; W08 four rails, 4.00, below its 12.48. 40.64 - 5.88 = 34.76.
    assert price_out(plan, plan.woods[0]) == 347_600


def test_lengths_and_money_are_said_for_people() -> None:
    plan, _ = read(documented())
    assert plan is not None
    assert plan.say(ticks("19-5/8")) == "19-5/8 in (159512 ticks)"
    assert plan.say(ticks("19-5/8") + 1) == "about 19-5/8 in (159513 ticks)"
    assert plan.say(-ticks("3/4")) == "-3/4 in (-6096 ticks)"
    assert plan.say(1) == "1 tick"
    metric = documented() | {"unit": "mm"}
    plan, _ = read(metric)
    assert plan is not None
    assert plan.say(498 * 320) == "498.0 mm (159360 ticks)"
    assert plan.say(498 * 320 + 40) == "about 498.1 mm (159400 ticks)"
