"""Every mistake in a tally is told once, with its row, its text and a remedy."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.sources.tallies import make_job, read_raw, read_text, with_prices

HEAD = "id,wood,thickness,length,width,grade,price_per_foot,quantity,board_feet,marks,clear,kind\n"
COLUMNS = HEAD.strip().split(",")


def row(**cells: str) -> str:
    """A row that is right but for the cells given."""
    right = {"id": "W1", "wood": "walnut", "thickness": "4/4", "length": "96"}
    right |= {"width": "7", "grade": "FAS", **cells}
    return ",".join(f'"{right.get(name, "")}"' for name in COLUMNS) + "\n"


def test_the_row_these_tests_spoil_is_right(tmp_path: Path) -> None:
    boards, faults = read_text(tmp_path, HEAD + row())
    assert not faults
    assert len(boards) == 1


@pytest.mark.parametrize(
    ("column", "said", "wrong", "remedy"),
    [
        ("wood", "wallnut", "no such wood", 'Did you mean "walnut"?'),
        ("wood", "bottom", "this is a sheet", "job file"),
        ("thickness", "3/4", "rough stock or surfaced", '"3/4 surfaced"'),
        ("thickness", "4-May", "turned something like 5/4 into 4 May", "as text"),
        ("thickness", "May-04", "turned something like 5/4 into 4 May", "as text"),
        ("thickness", "2026-05-04 00:00:00", "into 4 May", "as text"),
        ("thickness", "4. Mai", "into 4 May", "as text"),
        ("thickness", "46146", "into 4 May", "as text"),
        ("width", "7/1/16", "into 4 May", "as text"),
        ("kind", "ruff board", "no such kind", 'Did you mean "rough board"?'),
        ("kind", "sheet", "this is a sheet", "job file"),
        ("kind", "surfaced board", "4/4, is that of a rough board", "after the thickness"),
        ("width", "", "no width", "Measure it"),
        ("width", "7 9/8", "not less than one", "Correct"),
        ("width", "0", "is not 0", "Correct"),
        ("length", "10-4", "could be feet and inches", "10' 4\""),
        ("length", "9", "another unit", "9' for feet"),
        ("length", "120'", "over 100 ft", "Correct"),
        ("length", "98,5", "a comma", "point"),
        ("price_per_foot", "14,50", "a comma", "without thousands"),
        ("price_per_foot", "n/a", "not an amount", "14.50"),
        ("quantity", "0", "whole number from 1", "Correct"),
        ("quantity", "2.5", "whole number from 1", "Correct"),
        ("board_feet", "seven", "not a number of board feet", "7.25"),
        ("grade", "FASS", "no price for walnut 4/4 FASS", 'Did you mean "FAS"?'),
        ("grade", "1C", "no price for walnut 4/4 No. 1 Common", "add a [[price]]"),
        ("id", "a\u202eb", "direction character", "plain letters"),
        ("id", "bottom", "a sheet of the job has this name", "another number"),
        ("marks", "nkot 1 to 2", '"nkot" is no kind', 'Did you mean "knot"?'),
        ("marks", "knot 1 - 2", "not a stretch", 'Say "to"'),
        ("marks", "knot 2 to 1", "is reversed", "lesser first"),
        ("marks", "knot 2 to 2", "has no length", "lesser first"),
        ("marks", "knot 90 to 97", "runs off the board, which is 96 in long", "Correct"),
        ("marks", "knot 1 to 2 x 6 to 7-1/8", "which is 7 in wide", "Correct"),
        ("marks", "knot 1 to 5/4", "name of a thickness", "1-1/4"),
        ("marks", "31 to 32", "not a mark", "knot A 31-1/2"),
        ("clear", "58 to 6", "is reversed", "lesser first"),
        ("clear", "6 to 97", "runs off", "Correct"),
    ],
)  # fmt: skip
def test_one_mistake_gives_one_message(
    tmp_path: Path, column: str, said: str, wrong: str, remedy: str
) -> None:
    text = HEAD + row(id="W0") + row(**{column: said})
    _, faults = read_text(tmp_path, text)
    (fault,) = faults
    assert fault.where.row == 3
    assert fault.said == said
    assert wrong in fault.wrong
    assert remedy in fault.remedy


def test_seven_and_a_sixteenth_is_no_date(tmp_path: Path) -> None:
    _, faults = read_text(tmp_path, HEAD + row(width="7-1/16"))
    assert not faults


def test_two_boards_with_one_number_are_told(tmp_path: Path) -> None:
    _, (fault,) = read_text(tmp_path, HEAD + row() + row())
    assert (fault.where.row, fault.said) == (3, "W1")
    assert "tally.csv, row 2" in fault.wrong


def test_a_number_that_looks_like_a_cut_piece_is_told(tmp_path: Path) -> None:
    _, (fault,) = read_text(tmp_path, HEAD + row() + row(id="W1.2"))
    assert fault.said == "W1.2"
    boards, faults = read_text(tmp_path, HEAD + row(id="12.5"))
    assert not faults
    assert boards[0].id == "12.5"


def test_a_price_that_is_missing_for_many_is_told_once(tmp_path: Path) -> None:
    rows = "".join(row(id=f"W{n}", thickness="5/4") for n in range(3))
    _, (fault,) = read_text(tmp_path, HEAD + rows)
    assert "no price for walnut 5/4 FAS (rows 3, 4 too)" in fault.wrong
    assert "[[price]]" in fault.remedy


def test_a_wrong_word_in_the_header_is_one_mistake_not_one_a_row(
    tmp_path: Path,
) -> None:
    job = with_prices(
        make_job(), ("walnut", "4/4", "FAS", "1"), ("walnut", "5/4", "FAS", "1")
    )
    text = HEAD.replace("thickness", "thicknes") + row(id="W1") + row(id="W2")
    _, (fault,) = read_text(tmp_path, text, job)
    assert (fault.said, fault.remedy) == ("thicknes", 'Did you mean "thickness"?')


@pytest.mark.parametrize(
    ("text", "wrong"),
    [
        ("", "empty"),
        ("\n \n", "empty"),
        ("id,width\nW1,7\n", "no column length"),
        ("length,width\n", "lists no board"),
        ("length,width,length\n96,7,96\n", "there twice"),
        ("length,width\n96,7,knot\n", "more cells than the header"),
        ('length,width\n"96,7\n', "never closed"),
        ("length,width\n" + "96,7\n" * 5_001, "over 5,000 boards"),
        ("length,width,quantity\n96,7,3000\n96,7,3000\n", "over 5,000 boards"),
        ("length,width\n" + " " * 1_000_000, "at most 1 MB"),
    ],
)
def test_a_file_that_is_no_tally_is_told(tmp_path: Path, text: str, wrong: str) -> None:
    _, (fault,) = read_text(tmp_path, text)
    assert wrong in fault.wrong
    assert fault.remedy


def test_a_workbook_and_other_binaries_are_told(tmp_path: Path) -> None:
    for raw in (b"PK\x03\x04rest", b"\x00\x01\x02length,width", b"\x81\x8d\x8f"):
        _, (fault,) = read_raw(tmp_path, raw)
        assert fault.wrong == "this is not a text file"
    _, (fault,) = read_raw(tmp_path, b"", name="tally.pdf")
    assert ".csv" in fault.remedy


def test_several_woods_must_be_told_apart(tmp_path: Path) -> None:
    job = make_job(woods=("walnut", "poplar"))
    _, (fault,) = read_text(tmp_path, HEAD + row(wood=""), job)
    assert fault.remedy == "Write which: poplar, walnut"


def test_a_thickness_left_out_must_be_clear(tmp_path: Path) -> None:
    job = with_prices(
        make_job(), ("walnut", "4/4", "FAS", "1"), ("walnut", "5/4", "FAS", "1")
    )
    _, (fault,) = read_text(tmp_path, HEAD + row(thickness=""), job)
    assert "no thickness" in fault.wrong


def test_a_board_of_no_measured_feet_needs_a_price_of_its_own(tmp_path: Path) -> None:
    # Ours: 2 x 2 / 12 = 0.33, by the rule of whole feet 0.
    _, (fault,) = read_text(tmp_path, HEAD + row(length="2'", width="2"))
    assert "measures 0 board feet" in fault.wrong
    assert "price_for_piece" in fault.remedy


def test_decimal_commas_are_refused_where_commas_separate(tmp_path: Path) -> None:
    _, (fault,) = read_text(tmp_path, 'length,width\n96,"7,5"\n')
    assert "a comma" in fault.wrong


def test_the_same_slip_in_many_rows_is_told_once(tmp_path: Path) -> None:
    rows = "".join(row(id=f"W{n}", wood="wallnut") for n in range(3))
    _, (fault,) = read_text(tmp_path, HEAD + rows)
    assert fault.where.row == 2
    assert fault.wrong == "the job has no such wood (rows 3, 4 too)"


def test_a_header_that_lost_a_name_is_one_mistake(tmp_path: Path) -> None:
    _, (fault,) = read_text(tmp_path, "length,width\n96,7,FAS\n96,8,FAS\n")
    assert (fault.where.row, fault.wrong) == (1, "rows have more cells than the header")
