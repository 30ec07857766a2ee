"""One part, one blank: the allowances of the table worked by hand. Common practice, no source."""

from __future__ import annotations

from fractions import Fraction

import pytest

from tests.builders import inches, make_job, make_part, make_shop
from yieldplan.blanks import routes
from yieldplan.faults import Faults
from yieldplan.model.blanks import Blank
from yieldplan.model.job import Job
from yieldplan.model.parts import Part


def blank_of(part: Part, job: Job | None = None) -> Blank:
    (blank,) = routes([part], job or make_job(), Faults())
    return blank


@pytest.mark.parametrize(
    ("length", "width", "rough_length", "rough_width"),
    [
        ("22", "6", "22-1/2", "6-1/4"),  # up to 24 long: + 1/2; over 3 wide: + 1/4
        ("24", "3", "24-1/2", "3-1/8"),  # 3 wide and up to 36 long: + 1/8
        ("36", "3", "37", "3-1/8"),  # over 24 long: + 1
        ("36-1/4", "3", "37-1/4", "3-1/4"),  # over 36 long a narrow part takes 1/4 too
        ("60", "5", "61", "5-1/4"),
        ("61", "2", "62", "2-3/8"),  # over 60 long: + 3/8
    ],
)
def test_rough_length_and_width(
    length: str, width: str, rough_length: str, rough_width: str
) -> None:
    blank = blank_of(make_part("rail", length, width))
    assert blank.length.value == inches(rough_length)
    assert blank.width.value == inches(rough_width)


def test_a_leg_takes_two_inches() -> None:
    leg = make_part("leg", "28", "1-3/4", "1-3/4", leg=True)
    assert blank_of(leg).length.value == 30


@pytest.mark.parametrize(
    ("thickness", "least"),
    [
        ("3/4", "15/16"),  # 4/4 will do
        ("7/8", "1-1/16"),  # 5/4
        ("1", "1-3/16"),  # 5/4
        ("1-1/4", "1-7/16"),  # 6/4
        ("1-3/4", "1-15/16"),  # 8/4
    ],
)
def test_planing_takes_three_sixteenths(thickness: str, least: str) -> None:
    blank = blank_of(make_part("rail", "22", "4", thickness))
    assert blank.thickness.value == inches(least)
    assert blank.finished_thickness == inches(thickness)


@pytest.mark.parametrize(
    ("length", "width", "flat", "planed"),
    [
        ("48", "8", False, "3/16"),
        ("48-1/8", "4", False, "1/4"),  # over 48 long
        ("22", "8-1/8", False, "1/4"),  # over 8 wide
        ("24", "4", True, "1/8"),  # the job says flat, up to 24 long
        ("24-1/8", "4", True, "3/16"),  # flat, but too long to count on it
    ],
)
def test_how_much_is_planed_away(
    length: str, width: str, flat: bool, planed: str
) -> None:
    blank = blank_of(make_part("rail", length, width, flat=flat))
    assert blank.thickness.value == inches("3/4") + inches(planed)


def test_every_size_is_a_sum_that_says_its_reasons() -> None:
    blank = blank_of(make_part("rail", "22", "6"))
    assert str(blank.length) == "22 finished length + 1/2 rough length = 22-1/2"
    assert str(blank.width) == "6 finished width + 1/4 rough width = 6-1/4"
    assert str(blank.thickness) == "3/4 finished thickness + 3/16 planing = 15/16"


def test_the_part_lies_in_the_middle_of_its_blank() -> None:
    (inside,) = blank_of(make_part("rail", "22", "6")).inside
    assert (inside.x, inside.y) == (inches("1/4"), inches("1/8"))
    assert (inside.length, inside.width) == (22, 6)


def test_a_part_glued_up_from_three_strips() -> None:
    # Length 30 + 1 panel. Each strip 21 / 3 + 1/2 / 3 + 1/8 = 7-7/24.
    # Thickness 3/4 + 1/16 panel + 3/16 planing = 1: still 4/4.
    blank = blank_of(make_part("top", "30", "21", strips=3))
    assert blank.length.value == 31
    assert blank.width.value == 7 + Fraction(7, 24)
    assert blank.thickness.value == 1
    assert dict(blank.makes) == {"top strip": 1}
    assert blank.inside[0].width == 7
    # Surfaced strips must leave something to flatten the panel.
    assert blank.finished_thickness == inches("13/16")


def test_a_short_part_is_left_long_until_it_is_milled() -> None:
    # 9 + 1/2 = 9-1/2, and 4-1/2 more to the machines' 14.
    blank = blank_of(make_part("stop", "9", "2"))
    assert blank.length.value == 14
    assert str(blank.length).endswith("+ 4-1/2 to the machines' shortest = 14")
    assert "cut the part off" in blank.cautions[0]


def test_a_part_whose_blank_is_long_enough_is_not_short() -> None:
    # 13-1/2 + 1/2 = 14.
    blank = blank_of(make_part("stop", "13-1/2", "2"))
    assert blank.length.value == 14
    assert blank.cautions == ()


def test_a_sheet_part_has_no_allowance() -> None:
    sheet = make_part("bottom", "9", "16", "1/4", wood="ply", is_sheet=True)
    blank = blank_of(sheet)
    assert (blank.route, blank.is_sheet) == ("saw", True)
    assert (blank.length.value, blank.width.value) == (9, 16)
    assert blank.thickness.value == inches("1/4")


@pytest.mark.parametrize(
    ("length", "width", "thickness", "says"),
    [
        ("22", "8", "3/4", "Wider than the jointer (8 in)"),  # 8 + 1/4
        ("22", "15", "3/4", "Wider than the planer (15 in)"),
        ("22", "1/2", "3/4", "Under 3/4 in wide"),  # 1/2 + 1/8
        ("22", "4", "3/16", "Under 1/4 in thick"),
    ],
)
def test_what_a_machine_cannot_take_is_said(
    length: str, width: str, thickness: str, says: str
) -> None:
    (caution,) = blank_of(make_part("rail", length, width, thickness)).cautions
    assert says in caution


def test_a_blank_too_short_to_rip_is_said() -> None:
    job = make_job(shop=make_shop(machine_length="6"))
    (caution,) = blank_of(make_part("stop", "8", "2"), job).cautions
    assert "Under 12 in long" in caution


def test_cautions_speak_the_jobs_unit() -> None:
    (caution,) = blank_of(make_part("rail", "22", "9"), make_job(unit="mm")).cautions
    assert "200 mm" in caution
