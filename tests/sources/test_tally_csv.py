"""A yard's tally becomes boards, whatever spreadsheet saved it."""

from __future__ import annotations

import random
from collections.abc import Callable
from fractions import Fraction
from pathlib import Path

import pytest

from tests.sources.tallies import make_job, read_raw, read_text, with_prices
from yieldplan import sources
from yieldplan.faults import Faults
from yieldplan.model.faces import Mark
from yieldplan.units import parse_length

TALLY = """id,wood,thickness,length,width,grade,price_per_foot,price_for_piece,marks
W07,walnut,4/4,9',9-1/2,FAS,,,knot A 31-1/2 to 32-1/2 x 2 to 3-1/2 | split 0 to 7
W08,walnut,4/4,8' 2",7-1/4,#1C,11.00,,wane B 0 to 40 x 6-3/4 to 7-1/4
W09,walnut,5/4,8' 2",7-1/4,FAS,,60,
"""


def test_boards_are_measured_priced_and_trimmed(tmp_path: Path) -> None:
    (first, second, third), faults = read_text(tmp_path, TALLY)
    assert not faults
    assert (first.id, first.line, first.kind) == ("W07", "walnut 4/4", "rough board")
    assert (first.length, first.width) == (108, Fraction(19, 2))
    # 9-1/2 x 9 / 12 = 7.125: 7 board feet at 14.50 = 101.50
    assert (first.board_feet, first.per_foot, first.price) == (7, 145_000, 1_015_000)
    # Rough ends lose 2 in, rough edges 1/8 (common practice, no source).
    assert first.end_trims == (2, 2)
    assert first.edge_passes == (Fraction(1, 8), Fraction(1, 8))
    # 7-1/4 x 8 / 12 = 4.83: 5 feet at the board's own 11.00
    assert (second.grade, second.price) == ("No. 1 Common", 550_000)
    # A price for the piece goes before any price of a foot; 5 x 1-1/4 feet.
    assert (third.per_foot, third.price) == (None, 600_000)
    assert third.board_feet == Fraction(25, 4)


def test_marks_lie_where_the_tape_says(tmp_path: Path) -> None:
    (first, second, _), _ = read_text(tmp_path, TALLY)
    knot, split = first.marks
    assert knot == Mark(
        kind="knot",
        face="A",
        x0=Fraction(63, 2),
        x1=Fraction(65, 2),
        y0=Fraction(2),
        y1=Fraction(7, 2),
    )
    # No face: through the board. No width: the full width.
    assert (split.face, split.x0, split.x1) == ("through", 0, 7)
    assert (split.y0, split.y1) == (0, first.width)
    assert second.marks[0].face == "B"


def test_only_length_and_width_are_needed_where_the_rest_is_clear(
    tmp_path: Path,
) -> None:
    (first, second), faults = read_text(tmp_path, "Length,Width\n9',7\n10',8\n")
    assert not faults
    assert (first.id, second.id) == ("B1", "B2")
    assert first.line == "walnut 4/4"  # the one wood, the one thickness it is sold in
    assert first.per_foot == 145_000  # the only price there is


def test_clear_runs_leave_marks_over_all_between(tmp_path: Path) -> None:
    text = "length,width,clear\n98,7,6 to 58 | clear 66 to 94\n"
    (board,), faults = read_text(tmp_path, text)
    assert not faults
    assert [(m.kind, m.face, m.x0, m.x1) for m in board.marks] == [
        ("check", "through", 0, 6),
        ("check", "through", 58, 66),
        ("check", "through", 94, 98),
    ]
    assert all((m.y0, m.y1) == (0, 7) for m in board.marks)


def test_boards_alike_are_boards_of_their_own(tmp_path: Path) -> None:
    # 6-3/4 x 8 / 12 = 4-1/2: the three ties give 5, 4, 5.
    text = "id,length,width,quantity\nW1,96,6-3/4,3\n"
    boards, faults = read_text(tmp_path, text)
    assert not faults
    assert [board.id for board in boards] == ["W1-1", "W1-2", "W1-3"]
    assert [board.board_feet for board in boards] == [5, 4, 5]
    assert all(board.copies == 1 for board in boards)


def test_the_yards_own_figure_and_width_go_before_ours(tmp_path: Path) -> None:
    text = "length,width,tally_width,board_feet\n96,6,7,\n96,6,,5.5\n"
    (wide, said), faults = read_text(tmp_path, text)
    assert not faults
    assert wide.board_feet == 5  # 7 x 8 / 12 = 4.67
    assert wide.width == 6
    assert said.board_feet == Fraction(11, 2)


def test_surfaced_boards_lose_less_and_measure_what_they_were(tmp_path: Path) -> None:
    text = "thickness,length,width,price_per_foot\n13/16 surfaced,96,6,9.00\n"
    (board,), faults = read_text(tmp_path, text)
    assert not faults
    assert (board.kind, board.thick) == ("surfaced board", Fraction(13, 16))
    assert board.board_feet == 4  # 6 x 8 / 12, measured as the 4/4 it was
    assert board.end_trims == (Fraction(1, 2), Fraction(1, 2))


SEMICOLONS = 'id;length;width;price_per_foot;marks\r\nA1;2450;150,5;14,50;"knot A 100,5 to 120"\r\n'


@pytest.mark.parametrize(
    "save",
    [
        lambda text: text.encode("utf-8"),
        lambda text: text.encode("utf-8-sig"),
        lambda text: text.encode("utf-16"),
        lambda text: text.encode("cp1252"),
        lambda text: ("sep=;\r\n" + text).encode("utf-8"),
        lambda text: ("\r\n" + text + ";;;;\r\n").encode("utf-8"),
    ],
)
def test_semicolons_bring_decimal_commas_in_every_encoding(
    tmp_path: Path, save: Callable[[str], bytes]
) -> None:
    job = with_prices(make_job("mm"), ("walnut", "4/4", "", "1.00"))
    raw = save(SEMICOLONS.replace("A1", "Käte 1"))
    (board,), faults = read_raw(tmp_path, raw, job)
    assert not faults
    assert board.id == "Käte 1"
    assert board.width == Fraction(1505, 254)
    assert board.per_foot == 145_000
    assert board.marks[0].x0 == Fraction(1005, 254)


def test_tabs_and_doubled_quotes_are_read(tmp_path: Path) -> None:
    tabs, faults = read_raw(tmp_path, b"length\twidth\n9'\t7\n", name="tally.tsv")
    assert not faults
    assert tabs[0].length == 108
    quoted, faults = read_text(tmp_path, 'length,width\n"8\' 2""",7\n8\' 2",7\n')
    assert not faults
    assert [board.length for board in quoted] == [98, 98]


def test_the_order_of_the_rows_changes_no_board(tmp_path: Path) -> None:
    head, *rows = ["id,length,width"] + [f"W{n},96,6-3/4" for n in range(1, 12)]
    straight, _ = read_text(tmp_path, "\n".join([head, *rows]))
    random.Random(3).shuffle(rows)
    shuffled, _ = read_text(tmp_path, "\n".join([head, *rows]))
    feet = {board.id: board.board_feet for board in straight}
    assert {board.id: board.board_feet for board in shuffled} == feet
    # Eleven ties: six up, five down.
    assert sum(feet.values()) == 6 * 5 + 5 * 4


def test_a_price_without_a_grade_holds_for_grades_that_have_none(
    tmp_path: Path,
) -> None:
    job = with_prices(
        make_job(), ("walnut", "4/4", "", "9.00"), ("walnut", "4/4", "FAS", "14.50")
    )
    boards, faults = read_text(
        tmp_path, "length,width,grade\n96,6,fas\n96,6,Rustic\n96,6,\n", job
    )
    assert not faults
    assert [board.per_foot for board in boards] == [145_000, 90_000, 90_000]


def test_own_wood_costs_nothing(tmp_path: Path) -> None:
    (board,), faults = read_text(tmp_path, "length,width,price_per_foot\n96,6,0\n")
    assert not faults
    assert board.price == 0


def test_two_tallies_are_one_pile(tmp_path: Path) -> None:
    for name, row in (("a.csv", "A1,96,6"), ("b.csv", "A1,96,7")):
        (tmp_path / name).write_text(f"id,length,width\n{row}\n", encoding="utf-8")
    faults = Faults()
    sources.read([tmp_path / "a.csv", tmp_path / "b.csv"], make_job(), faults)
    (fault,) = faults
    assert str(fault.where) == "b.csv, row 2"
    assert "a.csv, row 2" in fault.wrong


def test_lengths_in_feet_and_millimetres_may_stand_side_by_side(tmp_path: Path) -> None:
    (board,), _ = read_text(tmp_path, "length,width\n9',184 mm\n")
    assert board.width == parse_length("184 mm")
