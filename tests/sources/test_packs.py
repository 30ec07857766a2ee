"""Packs in a tally: their boards, their price shared out, and every mistake told at its row."""

from __future__ import annotations

from pathlib import Path

from tests.sources.tallies import make_job
from yieldplan import sources
from yieldplan.faults import Fault, Faults
from yieldplan.model.pieces import Piece


def read(folder: Path, name: str, text: str) -> tuple[list[Piece], list[Fault]]:
    file = folder / name
    file.write_text(text)
    faults = Faults()
    return list(
        sources.read([file], make_job(woods=("walnut", "poplar")), faults)
    ), list(faults)


def test_boards_of_one_pack_keep_their_own_prices_where_the_pack_has_none(
    tmp_path: Path,
) -> None:
    text = (
        "id,wood,thickness,length,width,price_per_foot,board_feet,pack\n"
        "W1,walnut,4/4,8',8,11,5,7\nW2,walnut,4/4,8',8,12,5,7\nW3,walnut,4/4,8',8,11,5,\n"
    )
    pieces, faults = read(tmp_path, "tally.csv", text)
    assert faults == []
    assert [(piece.pack, piece.price) for piece in pieces] == [
        ("7", 550_000),
        ("7", 600_000),
        ("", 550_000),
    ]


def test_the_price_of_a_pack_is_shared_out_by_board_feet_to_the_last_unit(
    tmp_path: Path,
) -> None:
    # 100.00 over 3 + 3 + 1 feet: 3/7 is 42.857142..., 1/7 14.285714...; rounded down they
    # add up to 99.9999, and the first board takes what is left.
    text = (
        "id,wood,thickness,length,width,board_feet,bundle,price for pack\n"
        "W1,walnut,4/4,8',8,3,7,100\nW2,walnut,4/4,8',8,3,7,\nW3,walnut,4/4,8',8,1,7,\n"
    )
    pieces, faults = read(tmp_path, "tally.csv", text)
    assert faults == []
    assert [piece.price for piece in pieces] == [428_572, 428_571, 142_857]
    assert all(piece.per_foot is None for piece in pieces)


def test_a_heading_names_a_pack_and_its_price_until_another_does(
    tmp_path: Path,
) -> None:
    text = (
        "4/4 walnut, pack 7 for 212.40\nW1 8 8'\nW2 8 8'\n"
        "pack 8, 11.50 a foot\nW3 8 8'\nW4 8 8' pack 9 at 20\n"
    )
    pieces, faults = read(tmp_path, "tally.txt", text)
    assert faults == []
    assert [piece.pack for piece in pieces] == ["7", "7", "8", "9"]
    assert pieces[0].price + pieces[1].price == 2_124_000
    assert pieces[2].per_foot == 115_000
    assert pieces[3].price == 200_000


def test_every_mistake_about_packs_is_told_in_one_run(tmp_path: Path) -> None:
    text = (
        "id,wood,thickness,length,width,price_per_foot,pack,price_for_pack\n"
        "W1,walnut,4/4,8',8,,7,212.40\n"
        "W2,walnut,4/4,8',8,,7,213\n"
        "W3,walnut,8/4,8',8,12,7,\n"
        "W4,walnut,4/4,8',8,12,,40\n"
        "W5,poplar,4/4,8',8,12,7,\n"
    )
    _, faults = read(tmp_path, "tally.csv", text)
    said = [(fault.where.row, fault.where.key, fault.wrong) for fault in faults]
    assert said == [
        (3, "price_for_pack", "pack 7 has another price in row 2"),
        (4, "pack", "pack 7 holds walnut 4/4 (row 2) and walnut 8/4"),
        (5, "price_for_pack", "this is the price of a pack, and the board is in none"),
        (6, "pack", "pack 7 holds walnut 4/4 (row 2) and poplar 4/4"),
    ]


def test_a_pack_that_stands_in_two_files_is_told(tmp_path: Path) -> None:
    files = []
    for name, board in (("one.csv", "W1"), ("two.csv", "W2")):
        files.append(tmp_path / name)
        head = "id,wood,thickness,length,width,price_per_foot,pack"
        files[-1].write_text(f"{head}\n{board},walnut,4/4,8',8,12,7\n")
    faults = Faults()
    sources.read(files, make_job(), faults)
    (fault,) = faults
    assert fault.where.file == "two.csv"
    assert fault.wrong == "a pack of this name stands in one.csv too"
