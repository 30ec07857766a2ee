"""Board measure against published examples; ties alternate in the order of the boards."""

from __future__ import annotations

from fractions import Fraction

import pytest

from yieldplan.measure.board_feet import (
    Measured,
    board_feet,
    exact_feet,
    surface_measure,
)
from yieldplan.model.job import BoardMeasure

AHEC = "American Hardwood Export Council, grading sawn lumber: measurement"
IMPORTER = "importer's restatement of NHLA measurement, gophuongdong.com"
S_AND_W = "S&W Report 1998, Understanding hardwood lumber grading and terms"
KING = "C. A. King, Elements of Woodwork, 1911, lumber scale"
NOYES = "W. Noyes, Handwork in Wood, 1910"
OURS = "arithmetic ours, rule as above"


def feet_of(
    thickness: str, width: str, feet_long: str, rule: BoardMeasure = "nhla"
) -> Fraction:
    board = Measured(
        group="walnut",
        thickness=Fraction(thickness),
        length=12 * Fraction(feet_long),
        width=Fraction(width),
    )
    return board_feet({"W1": board}, rule)["W1"]


@pytest.mark.parametrize(
    ("thickness", "width", "feet_long", "board_feet", "source"),
    [
        # 6-1/4 x 8 / 12 = 4.17, so 4; 8/4 doubles it.
        ("2", "6.25", "8", "8", AHEC),
        # 6-1/2 x 8 / 12 = 4.33
        ("1", "6.5", "8", "4", IMPORTER),
        ("1", "8", "12", "8", IMPORTER),
        # 10 x 13 / 12 = 10.83
        ("1", "10", "13", "11", IMPORTER),
        # 10 ft 9 in falls back to 10 ft: 6-7/16 x 10 / 12 = 5.36
        ("1", "6.4375", "10.75", "5", S_AND_W),
        # 8-3/4 x 12 / 12 = 8.75; 9-1/4 gives 9.25
        ("1", "8.75", "12", "9", KING),
        ("1", "9.25", "12", "9", KING),
        # Under 1 in counts as 1 in.
        ("0.75", "6", "8", "4", OURS),
        # 7-1/2 x 10 / 12 = 6.25, so 6; x 1-1/4 is not rounded again.
        ("1.25", "7.5", "10", "7.5", OURS),
    ],
)
def test_surface_measure_is_rounded_for_each_board(
    thickness: str, width: str, feet_long: str, board_feet: str, source: str
) -> None:
    assert feet_of(thickness, width, feet_long) == Fraction(board_feet), source


@pytest.mark.parametrize(
    ("thickness", "width", "feet_long", "board_feet", "source"),
    [
        ("1", "11", "14", "77/6", NOYES),  # 12 ft 10 in on the steel square
        ("1", "9", "5", "3.75", NOYES),
        ("1", "13", "23", "299/12", NOYES),  # 24 ft 11 in
        ("1", "6", "15", "7.5", NOYES),
        ("0.875", "6", "12", "6", NOYES),  # 7/8 dressed stock measured as 1 in
        ("1.25", "6", "6", "3.75", "hardwood sizing page, mikestools.com"),
        ("1", "12", "8", "8", "yard page, gpshardwoods.com"),
        ("2", "10", "14", "70/3", "newspaper glossary, inman.com, 2008"),
        ("1", "8", "14", "28/3", "US Army, Subcourse EN5155, p. 1-28"),
        ("1.5", "8", "5", "5", "Woodworker's Journal, Calculating board feet"),
        ("6", "12", "8.75", "52.5", "Building Construction, vol. 4"),
    ],
)
def test_exact_measure_is_volume_over_144_cubic_inches(
    thickness: str, width: str, feet_long: str, board_feet: str, source: str
) -> None:
    board = Measured(
        group="",
        thickness=Fraction(thickness),
        length=12 * Fraction(feet_long),
        width=Fraction(width),
    )
    assert exact_feet(board) == Fraction(board_feet), source


def test_exact_feet_are_kept_to_a_hundredth() -> None:
    # 8 x 60 / 144 = 3.333 (Woodworker's Journal prints 3.33)
    assert feet_of("1", "8", "5", "exact") == Fraction(333, 100)


def test_two_boards_of_eight_and_a_half_feet_make_seventeen() -> None:
    # C. A. King, Elements of Woodwork, 1911: exact halves take the lower and the higher
    # figure on different boards; the total is our arithmetic.
    board = Measured(
        group="walnut 4/4",
        thickness=Fraction(1),
        length=Fraction(144),
        width=Fraction(17, 2),
    )
    assert surface_measure(length=board.length, width=board.width) == Fraction(17, 2)
    feet = board_feet({"W2": board, "W1": board}, "nhla")
    assert feet == {"W1": 9, "W2": 8}


def test_ties_alternate_in_the_order_people_count_within_wood_and_thickness() -> None:
    # Ours: W2 is counted before W10, and poplar has a count of its own.
    def tie(group: str) -> Measured:
        return Measured(
            group=group,
            thickness=Fraction(1),
            length=Fraction(96),
            width=Fraction(27, 4),  # 6-3/4 x 8 / 12 = 4-1/2
        )

    boards = {
        "W10": tie("walnut 4/4"),
        "W2": tie("walnut 4/4"),
        "P3": tie("poplar 4/4"),
        "W11": tie("walnut 4/4"),
    }
    feet = board_feet(boards, "nhla")
    assert feet == {"W2": 5, "W10": 4, "W11": 5, "P3": 5}
    backwards = dict(reversed(boards.items()))
    assert board_feet(backwards, "nhla") == feet
