"""A tally kept as a spreadsheet gives the boards a CSV tally gives, and is never half read."""

from __future__ import annotations

import random
import re
import zipfile
from collections.abc import Callable
from datetime import date, datetime, time
from fractions import Fraction
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from openpyxl import Workbook

from tests.sources.sheets import SHEET, book, members, packed
from tests.sources.tallies import read_raw, read_text
from yieldplan.faults import Fault
from yieldplan.model.pieces import Piece

HEAD = ("id", "thickness", "length", "width", "grade", "marks", "note")
W07 = ("W07", "4/4", "9'", 9.5, "FAS", "knot A 31-1/2 to 32-1/2 x 2 to 3-1/2", "")
W08 = ("W08", "4/4", 98, 7.25, "FAS", None, None)


def read(folder: Path, raw: bytes) -> tuple[tuple[Piece, ...], list[Fault]]:
    return read_raw(folder, raw, name="tally.xlsx")


def test_it_gives_the_boards_that_the_same_table_gives_as_csv(tmp_path: Path) -> None:
    boards, faults = read(tmp_path, book(HEAD, W07, W08))
    assert not faults
    text = (
        ",".join(HEAD) + "\nW07,4/4,9',9-1/2,FAS,knot A 31-1/2 to 32-1/2 x 2 to 3-1/2,"
        "\nW08,4/4,98,7-1/4,FAS,,\n"
    )
    same, _ = read_text(tmp_path, text)
    assert [str(board.where) for board in boards] == [
        "tally.xlsx, row 2",
        "tally.xlsx, row 3",
    ]

    def without_place(pieces: tuple[Piece, ...]) -> list[dict[str, object]]:
        return [{**vars(piece), "where": None} for piece in pieces]

    assert without_place(boards) == without_place(same)


def test_a_number_is_what_was_typed_not_the_binary_one_beside_it(
    tmp_path: Path,
) -> None:
    # 9.1 in binary is 9.0999999999999996447...; typed it is 91/10.
    (board,), faults = read(tmp_path, book(("length", "width"), (96.0, 9.1)))
    assert not faults
    assert board.width == Fraction(91, 10)
    assert board.length == 96


def test_a_number_written_with_all_its_digits_is_the_short_one(tmp_path: Path) -> None:
    files = members(book(("length", "width"), (96, 9.1)))
    files[SHEET] = files[SHEET].replace(b"<v>9.1</v>", b"<v>9.0999999999999996</v>")
    (board,), _ = read(tmp_path, packed(files))
    assert board.width == Fraction(91, 10)


def test_numbers_and_yes_serve_as_ids_and_twist(tmp_path: Path) -> None:
    head = ("id", "length", "width", "twist", "lot")
    rows = ((7, 96, 8, True, 12.0), (8.5, 96, 8, False, None))
    boards, faults = read(tmp_path, book(head, *rows))
    assert not faults
    assert [(b.id, b.twist, b.lot) for b in boards] == [
        ("7", Fraction(1, 64), "12"),
        ("8.5", 0, ""),
    ]


def test_the_mark_that_keeps_a_cell_text_is_not_part_of_it(tmp_path: Path) -> None:
    head = ("thickness", "length", "width")
    (board,), faults = read(tmp_path, book(head, ("'4/4", 96, 8)))
    assert not faults
    assert board.line == "walnut 4/4"


@pytest.mark.parametrize(
    ("column", "value", "wrong", "remedy"),
    [
        # A machine in American English makes month/day of what was typed, a British
        # one day/month; a thickness counts quarters, whichever it was.
        ("thickness", datetime(2026, 5, 4), "turned 5/4 into 4 May", "'5/4"),
        ("thickness", datetime(2026, 4, 5), "turned 5/4 into 5 April", "'5/4"),
        ("thickness", datetime(2026, 8, 4), "turned 8/4 into 4 August", "'8/4"),
        ("thickness", date(2026, 3, 1), "something like 5/4 into 1 March", "'5/4"),
        ("width", datetime(2026, 7, 8), "turned 7/8 into 8 July", "'7/8"),
        ("lot", datetime(2026, 3, 12), "something like 5/4 into 12 March", "as text"),
        ("length", time(9, 30), "time of day", "as text"),
    ],
)
def test_a_date_is_refused_with_what_it_was(
    tmp_path: Path, column: str, value: object, wrong: str, remedy: str
) -> None:
    right = {"thickness": "4/4", "length": 96, "width": 8, "lot": "3", column: value}
    raw = book(tuple(right), tuple(right.values()))
    boards, faults = read(tmp_path, raw)
    assert boards == ()
    (fault,) = faults
    assert (fault.where.row, fault.where.key) == (2, column)
    assert wrong in fault.wrong
    assert remedy in fault.remedy


def test_a_note_may_hold_anything(tmp_path: Path) -> None:
    rows = ((96, 8, date(2026, 5, 4)), (96, 8, "=A1"), (96, 8, time(1)))
    boards, faults = read(tmp_path, book(("length", "width", "note"), *rows))
    assert not faults
    assert len(boards) == 3


def test_a_formula_counts_with_its_value_and_is_refused_without(
    tmp_path: Path,
) -> None:
    raw = book(("length", "width"), ("=8*12+2", 8), (96, 8))
    _, (fault,) = read(tmp_path, raw)
    assert (fault.where.row, fault.where.key, fault.said) == (2, "length", "A2")
    assert "has not been worked out" in fault.wrong
    files = members(raw)
    worked_out = re.sub(rb"(<f>8\*12\+2</f>)<v\s*/>", rb"\1<v>98</v>", files[SHEET])
    assert worked_out != files[SHEET]
    (first, _), faults = read(tmp_path, packed({**files, SHEET: worked_out}))
    assert not faults
    assert first.length == 98


def test_an_error_in_a_cell_is_told(tmp_path: Path) -> None:
    _, (fault,) = read(tmp_path, book(("length", "width"), (96, "#REF!")))
    assert (fault.said, fault.where.key) == ("#REF!", "width")
    assert "shows an error" in fault.wrong


def test_the_sheet_called_tally_goes_before_the_first(tmp_path: Path) -> None:
    def add(made: Workbook) -> None:
        sheet = made.create_sheet("Tally ")
        sheet.append(["length", "width"])
        sheet.append([96, 8])

    raw = book(("what we paid last year",), (3.5,), name="Prices", change=add)
    boards, faults = read(tmp_path, raw)
    assert not faults
    assert len(boards) == 1
    boards, faults = read(tmp_path, book(("length", "width"), (96, 8), name="May"))
    assert not faults
    assert len(boards) == 1


def test_rows_keep_the_sheets_numbers(tmp_path: Path) -> None:
    rows = ((), (), ("length", "width"), (), (96, "wide"))
    _, (fault,) = read(tmp_path, book(*rows))
    assert fault.where.row == 5


def test_hidden_rows_and_merged_cells_are_told(tmp_path: Path) -> None:
    def hide(made: Workbook) -> None:
        made.worksheets[0].row_dimensions[3].hidden = True

    rows = (("grade", "length", "width"), ("FAS", 96, 8), ("FAS", 96, 7))
    _, (fault,) = read(tmp_path, book(*rows, change=hide))
    assert (fault.where.row, fault.wrong[:18]) == (3, "this row is hidden")

    _, (fault,) = read(
        tmp_path, book(*rows, change=lambda made: made.worksheets[0].merge_cells("A2:A3"))
    )  # fmt: skip
    assert (fault.where.row, fault.said) == (2, "A2:A3")
    assert "only the first row has the value" in fault.wrong


def test_a_header_merged_sideways_harms_nothing(tmp_path: Path) -> None:
    rows = (("length", "width", "note", None), (96, 8))
    boards, faults = read(
        tmp_path, book(*rows, change=lambda made: made.worksheets[0].merge_cells("C1:D1"))
    )  # fmt: skip
    assert not faults
    assert len(boards) == 1


def test_all_mistakes_of_a_sheet_are_told_in_one_run(tmp_path: Path) -> None:
    rows = ((96, "wide", "4/4"), (0, 8, "4/4"), (96, 8, "3/4"))
    _, faults = read(tmp_path, book(("length", "width", "thickness"), *rows))
    assert [fault.where.row for fault in faults] == [2, 3, 4]


def test_what_would_unpack_to_too_much_is_refused_before_it_does(
    tmp_path: Path,
) -> None:
    files = members(book(("length", "width"), (96, 8)))
    bomb = packed({**files, "xl/big.xml": b" " * 60_000_000})
    assert len(bomb) < 100_000
    _, (fault,) = read(tmp_path, bomb)
    assert "unpacked it is 61 MB" in fault.wrong
    # 20 MB of nothing pack to 20 kB: a thousand times is more than a hundred.
    _, (fault,) = read(tmp_path, packed({**files, "xl/big.xml": b" " * 20_000_000}))
    assert "100 times its own size" in fault.wrong
    many = {f"xl/{number}.txt": b"x" for number in range(200)}
    _, (fault,) = read(tmp_path, packed({**files, **many}))
    assert "more than 200 files" in fault.wrong


@pytest.mark.parametrize("encoding", ["utf-8", "utf-16"])
@pytest.mark.parametrize("padding", [0, 100_000])
def test_a_sheet_that_names_other_files_is_refused(
    tmp_path: Path, encoding: str, padding: int
) -> None:
    secret = tmp_path / "secret"
    secret.write_text("W99", encoding="utf-8")
    files = members(book(("id", "length", "width"), ("W1", 96, 8)))
    sheet = files[SHEET].decode().partition("?>")[2] or files[SHEET].decode()
    sheet = sheet.replace("W1", "&it;")
    text = (
        f'<?xml version="1.0" encoding="{encoding}"?><!--{" x" * padding}-->'
        f'<!DOCTYPE worksheet [<!ENTITY it SYSTEM "{secret.as_uri()}">]>{sheet}'
    )
    boards, (fault,) = read(tmp_path, packed({**files, SHEET: text.encode(encoding)}))
    assert boards == ()
    assert "names other files" in fault.wrong or "100 times" in fault.wrong


@pytest.mark.parametrize(
    ("raw", "wrong"),
    [
        (b"\xd0\xcf\x11\xe0" + b"\0" * 500, "password, or of the old kind"),
        (b"length,width\n96,8\n", "not a spreadsheet file"),
        (packed({"mimetype": b"text"}), "not a whole spreadsheet"),
        (book(("length", "width"), (96, 8))[:-80], "not a whole spreadsheet"),
        (book(), "first sheet is empty"),
        (book(("length", "width")), "lists no board"),
        (book(("length",), (96,)), "no column width"),
        (book(("length", "width"), *[(96, 8)] * 5_001), "over 5,000 boards"),
        (book(("length", "width"), *[("", 8)] * 10_001), "over 10,000 rows"),
    ],
)  # fmt: skip
def test_a_file_that_is_no_tally_is_told(
    tmp_path: Path, raw: bytes, wrong: str
) -> None:
    boards, (fault,) = read(tmp_path, raw)
    assert boards == ()
    assert wrong in fault.wrong
    assert fault.remedy


def test_a_locked_member_is_told(tmp_path: Path) -> None:
    raw = bytearray(book(("length", "width"), (96, 8)))
    at = raw.rindex(b"PK\x01\x02")
    raw[at + 8] |= 1
    _, (fault,) = read(tmp_path, bytes(raw))
    assert "locked with a password" in fault.wrong


def test_a_row_far_down_the_sheet_takes_no_time(tmp_path: Path) -> None:
    files = members(book(("length", "width"), (96, 8)))
    far = files[SHEET].replace(b'<row r="2"', b'<row r="999999999"')
    assert far != files[SHEET]
    far = far.replace(b'"A2"', b'"A999999999"').replace(b'"B2"', b'"B999999999"')
    boards, (fault,) = read(tmp_path, packed({**files, SHEET: far}))
    assert boards == ()
    assert "over 10,000 rows" in fault.wrong


def test_rows_out_of_order_are_no_sheet(tmp_path: Path) -> None:
    files = members(book(("length", "width"), (96, 8), (96, 7)))
    turned = files[SHEET].replace(b'<row r="3"', b'<row r="1"')
    assert turned != files[SHEET]
    boards, (fault,) = read(tmp_path, packed({**files, SHEET: turned}))
    assert boards == ()
    assert "not a whole spreadsheet" in fault.wrong


CELLS = st.one_of(
    st.none(),
    st.booleans(),
    st.integers(),
    st.floats(),
    st.datetimes(),
    st.times(),
    st.timedeltas(),
    st.text(st.characters(exclude_categories=("Cs", "Cc")), max_size=20),
    st.sampled_from(["4/4", "W1", "96", "knot 1 to 2", "=A1", "#DIV/0!", "length"]),
)


@settings(
    max_examples=30,
    deadline=None,
    suppress_health_check=[HealthCheck.function_scoped_fixture],
)
@given(st.lists(st.lists(CELLS, max_size=8), max_size=6), st.booleans())
def test_any_cells_give_boards_or_faults(
    tmp_path: Path, rows: list[list[object]], with_header: bool
) -> None:
    head: list[tuple[object, ...]] = [HEAD] if with_header else []
    try:
        raw = book(*head, *rows)
    except (ValueError, OverflowError):
        return  # openpyxl writes no such value
    boards, faults = read(tmp_path, raw)
    assert boards or faults
    assert all(fault.wrong and fault.remedy for fault in faults)


CHANGES: list[Callable[[random.Random, bytes], bytes]] = [
    lambda chance, raw: raw[: chance.randrange(len(raw))],
    lambda chance, raw: raw.replace(b'"1"', b'"x"'),
    lambda chance, raw: re.sub(rb"<v>[^<]*</v>", b"<v>99999999</v>", raw, count=3),
    lambda chance, raw: re.sub(rb"<v>[^<]*</v>", b"<v>4e999</v>", raw, count=3),
    lambda chance, raw: re.sub(rb' t="[^"]*"', b' t="d"', raw),
    lambda chance, raw: re.sub(rb' t="[^"]*"', b' t="b"', raw),
    lambda chance, raw: re.sub(rb' r="[A-Z]+', b' r="ZZZZZ', raw),
    lambda chance, raw: re.sub(rb' s="\d+"', b' s="-7"', raw),
    lambda chance, raw: re.sub(rb'Target="[^"]*"', b'Target="../../nowhere.xml"', raw),
    lambda chance, raw: b"<a/>",
    lambda chance, raw: b"",
    lambda chance, raw: bytes(
        byte if chance.random() > 0.01 else chance.randrange(256) for byte in raw
    ),
]


@pytest.mark.parametrize("seed", range(len(CHANGES) * 9))
def test_a_damaged_spreadsheet_gives_boards_or_faults(
    tmp_path: Path, seed: int
) -> None:
    chance = random.Random(seed)
    files = members(book(HEAD, W07, W08, ("W9", datetime(2026, 5, 4), 1, 2.5)))
    name = sorted(files)[seed % len(files)]
    files[name] = CHANGES[seed // 9](chance, files[name])
    boards, faults = read(tmp_path, packed(files))
    assert boards or faults


@pytest.mark.parametrize("seed", range(60))
def test_a_zip_file_with_flipped_bytes_gives_boards_or_faults(
    tmp_path: Path, seed: int
) -> None:
    chance = random.Random(seed)
    raw = bytearray(book(HEAD, W07, W08))
    for _ in range(chance.randrange(1, 12)):
        raw[chance.randrange(len(raw))] = chance.randrange(256)
    boards, faults = read(tmp_path, bytes(raw))
    assert boards or faults


def test_every_file_it_refused_was_a_zip_file_that_python_opens(
    tmp_path: Path,
) -> None:
    # So that the tests above spoil what they mean to spoil, and not the packing.
    raw = packed(members(book(HEAD, W07)))
    (tmp_path / "whole.xlsx").write_bytes(raw)
    with zipfile.ZipFile(tmp_path / "whole.xlsx") as zipped:
        assert zipped.testzip() is None
    boards, faults = read(tmp_path, raw)
    assert boards
    assert not faults
