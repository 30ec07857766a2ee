"""Banks of drawers worked by hand: their heights fill the opening to the last fraction. Common practice, no source."""

from __future__ import annotations

from fractions import Fraction

import pytest

from tests.builders import inches, make_bank, make_drawer, make_job, make_shop
from tests.builders import parts_by_id as by_id
from yieldplan.assemblies.drawer.keys import Front
from yieldplan.assemblies.drawer_bank import DrawerBank
from yieldplan.assemblies.drawer_bank.keys import Frame, Graduated, Rail
from yieldplan.joints.dado import Dado
from yieldplan.model.parts import Part

SLIDES = {"runs": "side-mounted slides", "slide_length": inches("18")}
RAIL = Rail(
    wood="walnut",
    thickness=inches("3/4"),
    width=inches("2"),
    case_side=inches("3/4"),
    joint=Dado(),
)


def front(**over: Fraction) -> Front:
    return Front(wood="walnut", thickness=inches("3/4"), **over)


def parts(bank: DrawerBank, unit: str = "in") -> dict[str, Part]:
    shop = make_shop(unit, front_gap="3/32 in")  # type: ignore[arg-type]
    made = by_id(make_job(bank, shop=shop, unit=unit))  # type: ignore[arg-type]
    return {name.removeprefix("bank/"): part for name, part in made.items()}


def fronts(bank: DrawerBank) -> list[Fraction]:
    made = parts(bank)
    return [made[f"{n + 1}/front"].width.value for n in range(bank.num_drawers)]


def sizes(*texts: str) -> list[Fraction]:
    return [inches(each) for each in texts]


def test_equal_drawers_share_what_the_rails_leave() -> None:
    # 30 - 3 x 3/4 = 27-3/4; a quarter of it is 6-15/16.
    bank = make_bank(drawers=4, rail=RAIL)
    assert fronts(bank) == sizes("6-15/16", "6-15/16", "6-15/16", "6-15/16")
    assert parts(bank)["rail"].quantity == 3


def test_what_does_not_come_out_in_sixteenths_goes_to_the_lowest() -> None:
    # 29 / 3 = 9-2/3, down to 9-5/8; the lowest has 29 - 2 x 9-5/8 = 9-3/4.
    bank = make_bank(height="29", drawers=3)
    assert fronts(bank) == sizes("9-5/8", "9-5/8", "9-3/4")
    made = parts(bank)
    assert str(made["1/front"].width) == "9-5/8 opening, 3 share 29"
    assert str(made["3/front"].width) == (
        "29 opening height − 19-1/4 openings above = 9-3/4"
    )


def test_another_step_brings_them_down_to_it() -> None:
    # 29 / 3 = 9-2/3, down to 9-1/2; 29 - 2 x 9-1/2 = 10.
    bank = make_bank(height="29", drawers=3, rounded_to=inches("1/2"))
    assert fronts(bank) == sizes("9-1/2", "9-1/2", "10")


def test_each_is_a_step_higher_than_the_one_above() -> None:
    # (30 - 6 x 1) / 4 = 6, so 6, 7, 8, 9 = 30.
    bank = make_bank(drawers=4, graduated=Graduated(step=inches("1")))
    assert fronts(bank) == sizes("6", "7", "8", "9")
    made = parts(bank)
    assert str(made["1/front"].width) == "6 top opening"
    assert str(made["4/front"].width) == "6 top opening + 3 × 1 step = 9"


def test_in_a_ratio_each_is_so_many_times_the_one_above() -> None:
    # 1 + 2 + 4 = 7; 28 / 7 = 4: 4, 8, 16.
    bank = make_bank(height="28", drawers=3, graduated=Graduated(ratio=Fraction(2)))
    assert fronts(bank) == sizes("4", "8", "16")
    # 1 + 1.2 + 1.44 = 3.64; 30 / 3.64 = 8.24 down to 8-3/16, x 1.2 = 9.89 down to 9-7/8;
    # 30 - 18-1/16 = 11-15/16.
    bank = make_bank(drawers=3, graduated=Graduated(ratio=Fraction(6, 5)))
    assert fronts(bank) == sizes("8-3/16", "9-7/8", "11-15/16")


def test_heights_are_taken_as_they_are_given() -> None:
    bank = make_bank(height="19-1/2", heights=tuple(sizes("5", "6", "7")), rail=RAIL)
    # 5 + 6 + 7 + 2 x 3/4 = 19-1/2.
    assert fronts(bank) == sizes("5", "6", "7")


def test_fronts_over_the_case_fill_it_with_one_gap_between_two() -> None:
    # 30 + 2 x 1/2 overlay - 3 x 3/32 = 30-23/32; less 6 steps of 1: 24-23/32 / 4 = 6.18,
    # down to 6-1/8; 7-1/8; 8-1/8; and 30-23/32 - 21-3/8 = 9-11/32.
    bank = make_bank(
        drawers=4,
        graduated=Graduated(step=inches("1")),
        front=front(overlay=inches("1/2")),
        **SLIDES,
    )
    assert fronts(bank) == sizes("6-1/8", "7-1/8", "8-1/8", "9-11/32")
    made = parts(bank)
    assert str(made["4/front"].width) == (
        "30 opening height − 3 × 3/32 between fronts + 1/2 overlay above + "
        "1/2 overlay below − 21-3/8 fronts above = 9-11/32"
    )
    # The box of the second: its opening begins and ends with its front: 7-1/8 - 1/2.
    assert made["2/side"].width.value == inches("6-5/8")
    # The top one's opening is less by the overlay: 6-1/8 - 1/2 - 1/2.
    assert made["1/side"].width.value == inches("5-1/8")


def test_fronts_inside_the_case_share_the_gaps_between_them() -> None:
    # 30 - 2 x 3/32 at the edges - 2 x 1/8 between = 29-9/16; a third 9.85, down to 9-13/16;
    # 29-9/16 - 2 x 9-13/16 = 9-15/16.
    bank = make_bank(drawers=3, gap_between=inches("1/8"), front=front(), **SLIDES)
    assert fronts(bank) == sizes("9-13/16", "9-13/16", "9-15/16")


def test_fronts_in_openings_with_rails_have_their_gap_above_and_below_each() -> None:
    # 30 - 2 x 3/4 - 6 x 3/32 = 27-15/16; a third 9-5/16 exactly.
    bank = make_bank(drawers=3, rail=RAIL, front=front(), **SLIDES)
    assert fronts(bank) == sizes("9-5/16", "9-5/16", "9-5/16")
    # Opening 9-5/16 + 2 x 3/32 = 9-1/2, slides 1/2 less: 9.
    assert parts(bank)["1/side"].width.value == inches("9")


def test_fronts_over_the_rails_lie_over_each_of_them_twice() -> None:
    # 30 - 2 x 1-1/2 rail + 6 x 1/2 overlay = 30, a third 10; between two on a rail of
    # 1-1/2 stays 1/2.
    rail = Rail(
        wood="walnut",
        thickness=inches("1-1/2"),
        width=inches("2"),
        case_side=inches("3/4"),
    )
    bank = make_bank(drawers=3, rail=rail, front=front(overlay=inches("1/2")), **SLIDES)
    assert fronts(bank) == sizes("10", "10", "10")


def test_a_drawer_of_a_bank_is_the_drawer_of_its_opening() -> None:
    # One of three in 30 high is a drawer made for 30 x 10 x 20.
    bank, alone = parts(make_bank(drawers=3)), by_id(make_job(make_drawer("30", "10")))
    for what in ("front", "side", "back", "bottom"):
        one, other = bank[f"2/{what}"], alone[f"upper/{what}"]
        assert one.length.value == other.length.value
        assert one.width.value == other.width.value
        assert one.quantity == other.quantity


def test_a_rail_enters_both_sides_of_the_case() -> None:
    rail = parts(make_bank(drawers=2, rail=RAIL))["rail"]
    assert str(rail.length) == "30 opening width + 2 × 1/4 dado = 30-1/2"


def test_a_web_frame_is_as_deep_as_the_opening_less_what_stays_free() -> None:
    # 20 - 1/8 - 2 rail - 3 back rail + 2 x 1 tenon = 16-7/8.
    frame = Frame(wood="ash", width=inches("3"), behind=inches("1/8"))
    made = parts(make_bank(drawers=3, rail=RAIL, frame=frame))
    assert made["runner"].length.value == inches("16-7/8")
    assert made["runner"].quantity == 4
    assert made["back rail"].quantity == 2


@pytest.mark.parametrize("drawers", [1, 2, 3, 7])
def test_in_millimetres_they_come_down_to_whole_ones(drawers: int) -> None:
    # 700 mm among 3: 233, 233, 234.
    bank = make_bank("800 mm", "700 mm", "500 mm", drawers=drawers)
    made = parts(bank, "mm")
    mm = inches("1 mm")
    heights = [made[f"{n + 1}/front"].width.value / mm for n in range(drawers)]
    assert sum(heights) == 700
    assert heights[:-1] == [700 // drawers] * (drawers - 1)


def test_one_drawer_has_the_whole_opening_and_no_rail() -> None:
    made = parts(make_bank(drawers=1, rail=RAIL))
    assert made["1/front"].width.value == inches("30")
    assert "rail" not in made
