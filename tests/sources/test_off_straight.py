"""A tally may say how far a board is off straight, and that it is tapered."""

from __future__ import annotations

from fractions import Fraction
from pathlib import Path

import pytest

from tests.sources.tallies import make_job, read_text
from yieldplan.drawing.found import not_straight
from yieldplan.units import parse_length

HEAD = "id,length,width,far width,crook,bow,twist,lot\n"


def test_crook_bow_and_twist_are_read_off_the_tape(tmp_path: Path) -> None:
    (board,), faults = read_text(tmp_path, HEAD + "W1,96,8,,3/8,1/2,1/4,12\n")
    assert not faults
    assert (board.crook, board.bow, board.twist) == (
        Fraction(3, 8),
        Fraction(1, 2),
        Fraction(1, 4),
    )
    assert board.lot == "12"
    assert board.width_far is None
    assert not board.is_straight


@pytest.mark.parametrize("said", ["", "no", "None", "0", '0"'])
def test_a_board_that_says_nothing_of_it_is_straight(tmp_path: Path, said: str) -> None:
    cell = said.replace('"', '""')
    text = HEAD + f'W1,96,8,,"{cell}","{cell}","{cell}",\n'
    (board,), faults = read_text(tmp_path, text)
    assert not faults
    assert board.is_straight


def test_twist_that_was_seen_and_not_measured_is_said_so(tmp_path: Path) -> None:
    # Ours: any twist shortens what a board gives; a tape shows no 1/64 of it.
    (board,), faults = read_text(tmp_path, HEAD + "W1,96,8,,,,yes,\n")
    assert not faults
    assert board.twist == Fraction(1, 64)
    assert "twisted, not measured" in not_straight(board, "in")


@pytest.mark.parametrize(
    "name", ["width_far", "far width", "Width at far end", "far-end width"]
)
def test_the_far_width_goes_by_several_names(tmp_path: Path, name: str) -> None:
    (board,), faults = read_text(tmp_path, f"length,width,{name}\n96,8,6\n")
    assert not faults
    assert board.ends_wide == (8, 6)


def test_a_tapered_board_is_measured_between_its_ends(tmp_path: Path) -> None:
    # Exact: (9 + 6) / 2 = 7-1/2 wide. 96 x 7-1/2 x 1 / 144 = 5.00 feet.
    text = "length,width,width_far,price_per_foot\n2438.4 mm,9 in,6 in,10\n"
    (board,), faults = read_text(tmp_path, text, make_job("mm"))
    assert not faults
    assert board.board_feet == 5
    # Whole feet (from memory): a third from the narrow end, 6 + (9 - 6) / 3 = 7 wide;
    # 7 x 8 / 12 = 4.67, 5 feet. The narrow end alone would give 4.
    (board,), _ = read_text(tmp_path, "length,width,width_far\n96,9,6\n")
    assert board.board_feet == 5
    # Whichever end is numbered, and unless the yard says another width.
    (board,), _ = read_text(tmp_path, "length,width,width_far\n96,6,9\n")
    assert board.board_feet == 5
    text = "length,width,width_far,tally_width\n96,6,9,6\n"
    (board,), _ = read_text(tmp_path, text)
    assert board.board_feet == 4


def test_marks_may_lie_where_a_tapered_board_is_wide(tmp_path: Path) -> None:
    text = (
        "length,width,width_far,marks\n96,6,9,knot 90 to 92 x 7 to 8 | split 90 to 96\n"
    )
    (board,), faults = read_text(tmp_path, text)
    assert not faults
    assert [(mark.y0, mark.y1) for mark in board.marks] == [(7, 8), (0, 9)]
    # What is not called clear is marked over all the width there is.
    text = "length,width,width_far,clear\n96,6,9,0 to 90\n"
    (board,), _ = read_text(tmp_path, text)
    assert [(mark.y0, mark.y1) for mark in board.marks] == [(0, 9)]


def test_figures_in_millimetres_are_read(tmp_path: Path) -> None:
    text = "length,width,crook,price_for_piece\n2400,180,6,30\n"
    (board,), faults = read_text(tmp_path, text, make_job("mm"))
    assert not faults
    assert board.crook == parse_length("6 mm")


@pytest.mark.parametrize(
    ("column", "said", "wrong", "remedy"),
    [
        ("crook", "8-1/8", "more than the board is wide", "Correct"),
        ("twist", "9", "more than the board is wide", "Correct"),
        ("bow", "10", "more than a tenth of the board's length", "Correct"),
        ("crook", "yes", "how much it is must be known", "string"),
        ("bow", "some", "not a length", "17-3/8"),
        ("twist", "some", "not a length", '"yes"'),
        ("twist", "4-May", "this is a date", "text"),
        ("width_far", "0", "a board's width_far is not 0", "Correct"),
        ("width_far", "wide", "not a length", "17-3/8"),
    ],
)
def test_one_mistake_gives_one_message(
    tmp_path: Path, column: str, said: str, wrong: str, remedy: str
) -> None:
    _, faults = read_text(tmp_path, f'length,width,{column}\n96,8,"{said}"\n')
    (fault,) = faults
    assert (fault.where.row, fault.where.key, fault.said) == (2, column, said)
    assert wrong in fault.wrong
    assert remedy in fault.remedy


def test_the_narrower_end_decides_whether_a_crook_can_be(tmp_path: Path) -> None:
    _, (fault,) = read_text(tmp_path, "length,width,width_far,crook\n96,8,5,6\n")
    assert "more than the board is wide" in fault.wrong


@pytest.mark.parametrize("width", ["80", "61"])
def test_no_board_is_five_feet_wide(tmp_path: Path, width: str) -> None:
    # Ours: 80 for 8.0; the widest slabs a yard sells are narrower than 60 in.
    _, faults = read_text(tmp_path, f"length,width\n96,{width}\n")
    assert any("no board is so wide" in str(fault) for fault in faults)
    boards, none = read_text(tmp_path, "length,width\n96,48\n")
    assert boards
    assert not none
