"""What a thickness name means: rough quarters, surfaced boards, and what must be asked."""

from __future__ import annotations

from fractions import Fraction

import pytest

from yieldplan.measure.thickness import parse_thickness
from yieldplan.units import TapeError


@pytest.mark.parametrize("written", ["4/4", '4/4"', " 4 / 4 ", "4/4 rough"])
def test_quarters_from_four_up_are_rough(written: str) -> None:
    thickness = parse_thickness(written, "in")
    assert (thickness.name, thickness.is_surfaced, thickness.thick) == (
        "4/4",
        False,
        1,
    )


@pytest.mark.parametrize(
    ("written", "measures"),
    [
        # engineeringtoolbox.com and woodbin.com, hardwood lumber dimensions, S2S column
        ("4/4 surfaced", "13/16"),
        ("5/4 surfaced", "17/16"),
        ("6/4 S2S", "21/16"),
        ("8/4 surfaced", "7/4"),
        ("12/4 surfaced", "11/4"),
        ("16/4 surfaced", "15/4"),
    ],
)
def test_a_surfaced_quarter_measures_what_the_trade_planes_it_to(
    written: str, measures: str
) -> None:
    thickness = parse_thickness(written, "in")
    assert thickness.is_surfaced
    assert thickness.thick == Fraction(measures)


@pytest.mark.parametrize("written", ["13/16 surfaced", "surfaced 13/16", 'S2S 13/16"'])
def test_a_surfaced_board_is_measured_on_the_quarter_it_came_from(written: str) -> None:
    thickness = parse_thickness(written, "in")
    assert thickness.name == "13/16 surfaced"
    assert thickness.thick == Fraction(13, 16)
    assert thickness.measured == 1  # 4/4 is the next quarter above 13/16


def test_a_bare_three_quarters_is_asked_about() -> None:
    with pytest.raises(TapeError, match="rough stock or surfaced") as caught:
        parse_thickness("3/4", "in")
    assert '"3/4 surfaced"' in caught.value.remedy


def test_metric_rough_stock_is_measured_as_it_is() -> None:
    thickness = parse_thickness("27 rough", "mm")
    assert thickness.name == "27 mm rough"
    assert thickness.measured == Fraction(270, 254)
    assert parse_thickness("26,5 mm rough", "mm", decimal_comma=True).name == (
        "26.5 mm rough"
    )


@pytest.mark.parametrize("written", ["", "4/4 rough surfaced", "thick", "0 rough"])
def test_what_is_no_thickness_is_refused(written: str) -> None:
    with pytest.raises(TapeError):
        parse_thickness(written, "in")
