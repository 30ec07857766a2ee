"""A tally kept as an OpenDocument spreadsheet gives the boards a CSV tally gives, and is never half read."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.sources.sheets import packed
from tests.sources.tallies import read_raw, read_text
from yieldplan.faults import Fault
from yieldplan.model.pieces import Piece

SPACES = " ".join(
    f'xmlns:{name}="urn:oasis:names:tc:opendocument:xmlns:{name}:1.0"'
    for name in ("office", "table", "text")
)


def words(text: str, more: str = "") -> str:
    """A cell of words, as the format writes it."""
    return f'<table:table-cell office:value-type="string"{more}><text:p>{text}</text:p></table:table-cell>'


def number(value: str) -> str:
    """A cell with a number, shown shorter than it is."""
    return f'<table:table-cell office:value-type="float" office:value="{value}"><text:p>7</text:p></table:table-cell>'


def row(*cells: str, more: str = "") -> str:
    return f"<table:table-row{more}>{''.join(cells)}</table:table-row>"


def table(*rows: str, name: str = "Sheet1") -> str:
    return f'<table:table table:name="{name}">{"".join(rows)}</table:table>'


def file_of(*tables: str) -> bytes:
    content = (
        f"<office:document-content {SPACES}><office:body><office:spreadsheet>"
        f"{''.join(tables)}</office:spreadsheet></office:body></office:document-content>"
    )
    return packed({"content.xml": content.encode()})


def read(folder: Path, *tables: str) -> tuple[tuple[Piece, ...], list[Fault]]:
    return read_raw(folder, file_of(*tables), name="tally.ods")


HEAD = row(words("id"), words("thickness"), words("length"), words("width"))
W07 = row(words("W07"), words("4/4"), words("9'"), number("9.5"))
REST = row(
    '<table:table-cell table:number-columns-repeated="16384"/>',
    more=' table:number-rows-repeated="1048573"',
)


def test_it_gives_the_boards_that_the_same_table_gives_as_csv(tmp_path: Path) -> None:
    boards, faults = read(tmp_path, table(HEAD, W07, REST))
    assert not faults
    same, _ = read_text(tmp_path, "id,thickness,length,width\nW07,4/4,9',9-1/2\n")
    assert str(boards[0].where) == "tally.ods, row 2"

    def without_place(pieces: tuple[Piece, ...]) -> list[dict[str, object]]:
        return [{**vars(piece), "where": None} for piece in pieces]

    assert without_place(boards) == without_place(same)


def test_the_sheet_called_tally_is_read_else_the_first(tmp_path: Path) -> None:
    other = table(HEAD, W07.replace("W07", "X1"), name="prices")
    (board,), _ = read(tmp_path, other, table(HEAD, W07, name="Tally"))
    assert board.id == "W07"
    (board,), _ = read(tmp_path, other, table(HEAD, W07, name="old"))
    assert board.id == "X1"


def test_rows_keep_their_numbers_over_repeated_empty_ones(tmp_path: Path) -> None:
    empty = row("<table:table-cell/>", more=' table:number-rows-repeated="3"')
    (board,), faults = read(tmp_path, table(HEAD, empty, W07))
    assert not faults
    # The header is row 1, empty are 2 to 4.
    assert str(board.where) == "tally.ods, row 5"


def test_cells_that_are_repeated_or_empty_keep_their_columns(tmp_path: Path) -> None:
    gap = '<table:table-cell table:number-columns-repeated="2"/>'
    twice = number("16").replace(
        "<table:table-cell", '<table:table-cell table:number-columns-repeated="2"'
    )
    head = row(words("id"), words("lot"), words("note"), words("length"), words("width"))  # fmt: skip
    (board,), faults = read_raw(
        tmp_path, file_of(table(head, row(words("7"), gap, twice))), name="tally.ods"
    )
    assert not faults
    assert (board.length, board.width) == (16, 16)


def test_a_comment_pinned_to_a_cell_is_not_read(tmp_path: Path) -> None:
    pinned = words("W07").replace(
        "<text:p>",
        "<office:annotation><text:p>ask Ines</text:p></office:annotation><text:p>",
    )
    (board,), _ = read(tmp_path, table(HEAD, W07.replace(words("W07"), pinned)))
    assert board.id == "W07"


@pytest.mark.parametrize(
    ("cell", "said"),
    [
        (
            '<table:table-cell office:value-type="date" office:date-value="2026-05-04"><text:p>4 May</text:p></table:table-cell>',
            "turned",
        ),
        (
            '<table:table-cell office:value-type="time" office:time-value="PT05H04M00S"><text:p>5:04</text:p></table:table-cell>',
            "time of day",
        ),
        (words("4/4", ' table:number-rows-spanned="2"'), "merged"),
        ('<table:table-cell table:formula="of:=[.A1]"/>', "not been worked out"),
        (
            '<table:table-cell office:value-type="float" office:value="0"><text:p>#DIV/0!</text:p></table:table-cell>',
            "shows an error",
        ),
        (
            '<table:table-cell office:value-type="float" office:value="x"><text:p>1</text:p></table:table-cell>',
            "damaged",
        ),
    ],
    ids=["a date", "a time", "merged", "a formula", "an error", "damaged"],
)
def test_a_cell_that_is_not_what_was_typed_is_told_once(
    cell: str, said: str, tmp_path: Path
) -> None:
    spoilt = W07.replace(words("4/4"), cell)
    boards, (fault,) = read(tmp_path, table(HEAD, spoilt))
    assert boards == ()
    assert said in fault.wrong
    assert str(fault.where).startswith("tally.ods, row 2")


def test_a_hidden_row_is_told(tmp_path: Path) -> None:
    hidden = W07.replace("<table:table-row", '<table:table-row table:visibility="filter"')  # fmt: skip
    boards, (fault,) = read(tmp_path, table(HEAD, hidden))
    assert boards == ()
    assert "hidden" in fault.wrong


def test_a_board_repeated_a_million_times_is_told_not_read(tmp_path: Path) -> None:
    many = W07.replace("<table:table-row", '<table:table-row table:number-rows-repeated="1000000"')  # fmt: skip
    boards, (fault,) = read(tmp_path, table(HEAD, many))
    assert boards == ()
    assert "over 10,000 rows" in fault.wrong


@pytest.mark.parametrize(
    "content", [b"", b"<a", b"<a/>", b'<!DOCTYPE a [<!ENTITY b "c">]><a>&b;</a>']
)
def test_a_damaged_file_is_told(content: bytes, tmp_path: Path) -> None:
    raw = packed({"content.xml": content})
    boards, faults = read_raw(tmp_path, raw, name="tally.ods")
    assert boards == ()
    assert len(faults) == 1


def test_a_zipped_file_of_another_kind_is_told(tmp_path: Path) -> None:
    boards, (fault,) = read_raw(tmp_path, packed({"a.txt": b"a"}), name="tally.ods")
    assert boards == ()
    assert "not a whole spreadsheet" in fault.wrong
