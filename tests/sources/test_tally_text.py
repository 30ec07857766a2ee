"""A tally typed on a phone gives the boards it means, and says back what it took them for."""

from __future__ import annotations

import random
from fractions import Fraction
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from tests.sources.tallies import make_job, read_raw, with_prices
from yieldplan import sources
from yieldplan.faults import Fault, Faults
from yieldplan.model.faces import Mark
from yieldplan.model.job import Job
from yieldplan.model.pieces import Piece

YARD = """\
# at the mill, Tuesday
4/4 walnut, lot 12, 11.50 a foot
W1 9-1/4 10'2" FAS knot 31 to 37
W2: 8 96 #1C crook 3/8 twist knot A 3 to 5 x 1 to 2, split 0 to 4   # fine colour
W3 7 1/2 x 8' 6 FAS far 6-1/2
W4 8 10' 80.00 each
lot 13
W5 6 8' 12.25 a foot clear 6 to 58 clear 66 to 94
5/4 walnut, 14.00 a foot, FAS
W6 7 8' 3 alike
"""


def read(
    folder: Path, text: str, job: Job | None = None
) -> tuple[tuple[Piece, ...], list[Fault]]:
    return read_raw(folder, text.encode(), job, name="yard.txt")


def by_id(folder: Path, text: str) -> dict[str, Piece]:
    boards, faults = read(folder, text)
    assert not faults
    return {board.id: board for board in boards}


def test_a_line_is_number_width_length_and_what_else_there_is(tmp_path: Path) -> None:
    first = by_id(tmp_path, YARD)["W1"]
    assert (first.line, first.grade, first.lot) == ("walnut 4/4", "FAS", "12")
    assert (first.width, first.length) == (Fraction(37, 4), 122)
    # 9-1/4 x 10 / 12 = 7.71: 8 board feet at 11.50 = 92.00
    assert (first.board_feet, first.price) == (8, 920_000)
    assert first.marks == (
        Mark(
            kind="knot", face="through", x0=Fraction(31), x1=Fraction(37), y0=Fraction(0), y1=first.width
        ),
    )  # fmt: skip
    assert str(first.where) == "yard.txt, line 3"


def test_words_come_in_any_order_with_commas_or_without(tmp_path: Path) -> None:
    second = by_id(tmp_path, YARD)["W2"]
    assert (second.grade, second.crook) == ("No. 1 Common", Fraction(3, 8))
    assert second.twist == Fraction(1, 64)  # seen, not measured
    assert [(m.kind, m.face, m.x1, m.y1) for m in second.marks] == [
        ("knot", "A", 5, 2),
        ("split", "through", 4, 8),
    ]


def test_a_grade_may_stand_after_a_crook_or_a_far_width(tmp_path: Path) -> None:
    boards = by_id(
        tmp_path,
        "4/4 walnut, 11.50 a foot\n"
        "W1 8 8' far 6 1/2 FAS\n"
        "W2 8 8' crook 3/8 #1C twist yes split 0 to 4\n",
    )
    assert (boards["W1"].width_far, boards["W1"].grade) == (Fraction(13, 2), "FAS")
    assert (boards["W2"].crook, boards["W2"].grade) == (Fraction(3, 8), "No. 1 Common")
    assert boards["W2"].twist > 0
    assert [mark.kind for mark in boards["W2"].marks] == ["split"]


def test_sizes_may_be_written_with_spaces_and_a_cross(tmp_path: Path) -> None:
    third = by_id(tmp_path, YARD)["W3"]
    assert (third.width, third.width_far) == (Fraction(15, 2), Fraction(13, 2))
    assert third.length == 102  # 8 ft 6 in


def test_a_price_after_the_length_is_not_its_inches(tmp_path: Path) -> None:
    fourth = by_id(tmp_path, YARD)["W4"]
    assert fourth.length == 120
    assert (fourth.per_foot, fourth.price) == (None, 800_000)


def test_a_heading_without_a_thickness_changes_only_what_it_says(
    tmp_path: Path,
) -> None:
    boards = by_id(tmp_path, YARD)
    fifth = boards["W5"]
    assert (fifth.line, fifth.lot) == ("walnut 4/4", "13")
    assert fifth.per_foot == 122_500  # its own goes before the heading's
    assert [(m.x0, m.x1) for m in fifth.marks] == [(0, 6), (58, 66), (94, 96)]


def test_a_heading_with_a_thickness_begins_afresh(tmp_path: Path) -> None:
    sixth = by_id(tmp_path, YARD)["W6-2"]
    assert (sixth.line, sixth.grade, sixth.lot) == ("walnut 5/4", "FAS", "")
    # 7 x 8 / 12 = 4.67: 5 feet of surface x 1-1/4 = 6.25 at 14.00
    assert (sixth.board_feet, sixth.price) == (Fraction(25, 4), 875_000)


def test_every_line_is_said_back_in_full_words(tmp_path: Path) -> None:
    boards, _ = read(tmp_path, YARD)
    said = sources.as_read([tmp_path / "yard.txt"], boards, make_job())
    assert said[:2] == (
        "W1: walnut 4/4, 9-1/4 wide, 10 ft 2 in long, FAS, knot 31 to 37 through, lot 12, "
        "8.00 board feet at 11.50 a foot: 92.00",
        "W2: walnut 4/4, 8 wide, 8 ft long, No. 1 Common, crook 3/8, twisted, not measured, "
        "knot on face A 3 to 5 x 1 to 2, split 0 to 4 through, lot 12, "
        "5.00 board feet at 11.50 a foot: 57.50",
    )
    assert "7-1/2 wide at its number, 6-1/2 at the far end" in said[2]
    assert said[3].endswith("7.00 board feet, 80.00 for it")
    assert len(said) == 8


def test_a_csv_tally_is_not_said_back(tmp_path: Path) -> None:
    file = tmp_path / "tally.csv"
    file.write_text("length,width\n96,8\n", encoding="utf-8")
    boards = sources.read([file], make_job(), Faults())
    assert boards
    assert sources.as_read([file], boards, make_job()) == ()


def test_millimetres_are_read_and_said_back(tmp_path: Path) -> None:
    job = make_job("mm", woods=("oak",))
    text = (
        "27 mm rough oak, 9.80 a foot\nA1 235 3100 bow 12 knot 800 to 825 x 50 to 90\n"
    )
    boards, faults = read(tmp_path, text, job)
    assert not faults
    (said,) = sources.as_read([tmp_path / "yard.txt"], boards, job)
    assert said.startswith(
        "A1: oak 27 mm rough, 235 wide, 3100 long, bow 12, knot 800 to 825 x 50 to 90 through"
    )


@pytest.mark.parametrize(
    "heading",
    [
        "4/4 walnut FAS",
        "walnut, 4/4 , FAS",
        "FAS, walnut",
        "Walnut",
        "4 /4 WALNUT, fas",
    ],
)
def test_headings_may_say_it_in_several_ways(tmp_path: Path, heading: str) -> None:
    job = with_prices(make_job(), ("walnut", "4/4", "FAS", "14.50"))
    (board,), faults = read(tmp_path, f"{heading}\nW1 9 8'\n", job)
    assert not faults
    assert board.line == "walnut 4/4"
    assert board.per_foot == 145_000


@pytest.mark.parametrize(
    ("line", "said", "wrong", "remedy"),
    [
        ("W1 10'2\" 9-1/4", "10'2\" 9-1/4", "wider than it is long", "width comes first"),
        ("W1 9-1/4 8", "8", "another unit", "8' for feet"),
        ("W1 9-1/4", "W1 9-1/4", "not a board's line", "number, width, length"),
        ("W1 9 96 konot 3 to 4", "konot", "nobody can say", 'Did you mean "knot"?'),
        ("W1 9 96 FASS", "FASS", "nobody can say", 'Did you mean "FAS"?'),
        ("W1 9 96 FAS #1C", "FAS #1C", "nobody can say", "FAS"),
        ("W1 9 96 knot 90 to 97", "knot 90 to 97", "runs off the board", "Correct"),
        ("W1 9 96 knot 31", "knot 31", "not a stretch", 'Say "to"'),
        ("W1 9 96 crook", "crook", "nothing follows", "crook 3/8"),
        ("W1 9 96 crook 3/8 crook 1/2", "crook 1/2", "second crook", "Keep one"),
        ("W1 9 96 8.50", "8.50", "nobody can say", "price"),
        ("W1 9 96 8.505 a foot", "8.505", "finer than a cent", "Round"),
        ("3/4 walnut\nW1 9 96", "3/4", "rough stock or surfaced", '"3/4 surfaced"'),
        ("4/4 wallnut\nW1 9 96", "wallnut", "no such wood", 'Did you mean "walnut"?'),
        ("4/4 walnut, crook 3/8\nW1 9 96", "4/4 walnut, crook 3/8", "one board", "W1"),
        ("4/4 walnut, walnut\nW1 9 96", "walnut", "second wood", "Keep one"),
        ("", "", "the file is empty", "a line a board"),
        ("4/4 walnut", "", "lists no board", "a line a board"),
    ],
)  # fmt: skip
def test_one_slip_gives_one_message_with_its_line(
    tmp_path: Path, line: str, said: str, wrong: str, remedy: str
) -> None:
    _, faults = read(tmp_path, f"\n{line}\n" if line else "")
    (fault,) = faults
    assert said in fault.said
    assert wrong in fault.wrong
    assert remedy in fault.remedy
    assert fault.where.row is None
    if line and said:
        assert fault.where.line == 2


def test_a_slip_in_a_heading_is_told_at_the_heading(tmp_path: Path) -> None:
    text = "W0 9 96\n\n3/4 walnut\nW1 9 96\nW2 9 96\nW3 8 96\n"
    _, (fault,) = read(tmp_path, text)
    assert fault.where.line == 3


def test_a_price_that_is_missing_for_many_names_the_lines(tmp_path: Path) -> None:
    _, (fault,) = read(tmp_path, "5/4 walnut\nW1 9 96\nW2 9 96\nW3 9 96\n")
    assert "no price for walnut 5/4 (lines 3, 4 too)" in fault.wrong
    assert fault.where.line == 2


def test_boards_below_a_heading_nobody_can_read_are_not_told_again(
    tmp_path: Path,
) -> None:
    _, faults = read(tmp_path, "9/4 wallnut\nW1 9 96\nW2 9 9x\n4/4 walnut\nW3 9 96\n")
    assert [fault.where.line for fault in faults] == [1, 3]


def test_two_boards_with_one_number_are_told_by_line(tmp_path: Path) -> None:
    _, (fault,) = read(tmp_path, "W1 9 96\nW1 8 96\n")
    assert "yard.txt, line 1" in fault.wrong


WORDS = st.lists(
    st.one_of(
        st.sampled_from(YARD.split()),
        st.text(max_size=8),
        st.sampled_from(
            [",", "|", "\n", "#", "1/0", "9'", "to", "x", "a foot", "each"]
        ),
    ),
    max_size=30,
).map(" ".join)


@settings(
    max_examples=100,
    deadline=None,
    suppress_health_check=[HealthCheck.function_scoped_fixture],
)
@given(WORDS)
def test_any_words_give_boards_or_faults(tmp_path: Path, text: str) -> None:
    file = tmp_path / "yard.txt"
    file.write_text(text, encoding="utf-8", errors="replace")
    faults = Faults()
    boards = sources.read([file], make_job(), faults)
    assert boards or len(faults)
    assert all(fault.wrong and fault.remedy for fault in faults)
    # Whatever was taken for a board can be said back.
    assert len(sources.as_read([file], boards, make_job())) == len(boards)


def test_a_letter_lost_anywhere_gives_boards_or_faults(tmp_path: Path) -> None:
    chance = random.Random(5)
    for _ in range(200):
        at = chance.randrange(len(YARD))
        boards, faults = read(tmp_path, YARD[:at] + YARD[at + 1 :])
        assert boards
        assert all(fault.where.line is not None for fault in faults)
