"""Where one board will do, no second one is bought: jobs on which an early version paid too much."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.system.runs import outcome_of
from yieldplan.packing import Stop

IN_FULL = Stop()
JOB = """
title = "Few boards"
unit = "in"
currency = "USD"
board_measure = "exact"
[shop]
set_up_pieces = 0
[wood.walnut]
species = "black walnut"
[sheet.ply]
product = "birch plywood"
thickness = "1/4"
size = ["48", "96"]
price = "38.00"
[[price]]
wood = "walnut"
thickness = "4/4"
per_foot = "14.50"
"""
WALNUT = """
[[part]]
name = "rail"
wood = "walnut"
width = "2-1/4"
thickness = "3/4"
length = "18-1/2"
[[part]]
name = "shelf"
wood = "walnut"
width = "5"
thickness = "3/4"
strips = 2
length = "20-3/4"
[[part]]
name = "side"
wood = "walnut"
width = "3"
thickness = "1/2"
length = "18"
quantity = 4
show_face = "clear"
[[part]]
name = "end"
wood = "walnut"
width = "3"
thickness = "1/2"
length = "12"
quantity = 4
show_face = "clear"
"""
BOTTOMS = [("13-7/16", "19-3/16", 2), ("12-7/16", "19-11/16", 1), ("12-25/32", "17-13/16", 1)]  # fmt: skip


def cost_of(folder: Path, parts: str, tally: str) -> dict[str, int]:
    job, file = folder / "job.toml", folder / "tally.csv"
    job.write_text(JOB + parts, encoding="utf-8")
    file.write_text("id,wood,thickness,length,width\n" + tally, encoding="utf-8")
    document = outcome_of(job, file, IN_FULL).document
    assert document["complete"]
    return {wood["wood"]: wood["cost"] for wood in document["woods"]}


@pytest.mark.parametrize("rows", ["W7,walnut,4/4,9',9-1/2\nW8,walnut,4/4,8',7\n"])
def test_a_second_board_offered_does_not_make_the_plan_dearer(
    tmp_path: Path, rows: str
) -> None:
    # W7 alone makes everything: 9-1/2 x 9 / 12 = 7.125, kept as 7.13; x 14.50 = 103.385.
    assert cost_of(tmp_path, WALNUT, rows)["walnut"] == 1_033_850


def test_four_small_bottoms_come_from_one_sheet(tmp_path: Path) -> None:
    # End to end along one strip: 13-7/16 x 2 + 12-7/16 + 12-25/32 and three kerfs make
    # 52-15/32, of 96 less two trims.
    parts = "".join(
        f'[[part]]\nname = "bottom {number}"\nsheet = "ply"\nlength = "{length}"\n'
        f'width = "{width}"\nquantity = {quantity}\n'
        for number, (length, width, quantity) in enumerate(BOTTOMS)
    )
    assert cost_of(tmp_path, parts, "W7,walnut,4/4,9',9-1/2\n")["ply"] == 380_000


def test_what_to_buy_is_large_enough_with_its_trims(tmp_path: Path) -> None:
    part = '[[part]]\nname = "shelf"\nwood = "walnut"\nlength = "40"\nwidth = "5"\nthickness = "3/4"\nquantity = 2\n'
    job, file = tmp_path / "job.toml", tmp_path / "tally.csv"
    job.write_text(JOB + part, encoding="utf-8")
    head = "id,wood,thickness,length,width\nW1,walnut,4/4,48 in,6\n"
    file.write_text(head, encoding="utf-8")
    (walnut,) = outcome_of(job, file, IN_FULL).plan.woods
    (missing,) = walnut.missing
    # 40 + 1 rough = 41, a kerf and up to the half inch 41-1/2, between trims of 2: 45-1/2.
    # 5 + 1/4 rough = 5-1/4 between edge passes of 1/8: 5-1/2.
    assert "3 ft 9 1/2 in long and 5-1/2 in wide" in missing.remedy
    bought = tmp_path / "bought.csv"
    bought.write_text(head + "W2,walnut,4/4,45.5 in,5-1/2\n", encoding="utf-8")
    assert outcome_of(job, bought, IN_FULL).document["complete"]
