"""Which boards to buy: whole packs, mixed grades, through to the papers and to planning again."""

from __future__ import annotations

from fractions import Fraction
from pathlib import Path
from typing import Any

import openpyxl
import pytest

from tests.packing.wood_jobs import make_board
from yieldplan import packing, papers, plan_file
from yieldplan.checking import check
from yieldplan.cli.plan_summary import plan_summary
from yieldplan.desk.plan_job import Outcome, plan_job
from yieldplan.faults import FaultsFound
from yieldplan.measure.gap import floor_of
from yieldplan.measure.minimum_feet import enough

JOB = """\
title = "Four rails"
unit = "in"
currency = "USD"
board_measure = "exact"

[wood.ash]
species = "white ash"

[[part]]
name = "rail"
quantity = {quantity}
wood = "ash"
length = "40"
width = "5"
thickness = "3/4"
show_face = "{face}"
"""
HEAD = (
    "id,wood,thickness,length,width,grade,price_for_piece,pack,price_for_pack,marks\n"
)
# Each 8 ft board gives two rails end to end, 50 in boards give one. Pack A gives six rails
# for 90.00, S1 and S2 four for 100.00, pack B two for 50.00: A, and a board of it stays whole.
TALLY = f"""{HEAD}\
A1,ash,4/4,8',6-1/2,,,A,90.00,
A2,ash,4/4,8',6-1/2,,,A,,
A3,ash,4/4,8',6-1/2,,,A,,
B1,ash,4/4,50,6-1/2,,25.00,B,,
B2,ash,4/4,50,6-1/2,,25.00,B,,
S1,ash,4/4,8',6-1/2,,50.00,,,
S2,ash,4/4,8',6-1/2,,50.00,,,
"""


def planned(
    folder: Path,
    tally: str | Path,
    *,
    face: str = "sound",
    quantity: int = 4,
    since: str | None = None,
) -> Outcome:
    job = folder / "job.toml"
    job.write_text(JOB.format(face=face, quantity=quantity), encoding="utf-8")
    stock = tally if isinstance(tally, Path) else folder / "tally.csv"
    if isinstance(tally, str):
        stock.write_text(tally, encoding="utf-8")
    notes = None
    if since is not None:
        notes = folder / "since.txt"
        notes.write_text(since, encoding="utf-8")
    outcome = plan_job(
        job, [stock], stop=packing.Stop(), hear=lambda _: None, since=notes
    )
    written = folder / "plan.json"
    written.write_bytes(plan_file.dump(outcome.document))
    assert check(plan_file.read(written))["objections"] == []
    return outcome


def test_the_pack_is_bought_whole_and_said_so_wherever_money_is(tmp_path: Path) -> None:
    outcome = planned(tmp_path, TALLY)
    plan = outcome.plan
    (wood,) = plan.woods
    assert (wood.cost, wood.bound.value) == (900_000, 900_000)
    (line,) = plan.purchase
    assert (line.pack, line.by, line.per, line.total) == ("A", "pack", 900_000, 900_000)
    assert line.pieces == (("A1", 1), ("A2", 1), ("A3", 1))
    # Four rails come from two of its boards.
    assert len(wood.cuttings) == 2
    uncut = ({"A1", "A2", "A3"} - {cut.piece.id for cut in wood.cuttings}).pop()
    said = f"Bought with the packs and not cut, yours to keep: {uncut}."
    summary = "\n".join(plan_summary(plan, []))
    assert said in summary
    assert "ash 4/4, whole pack A" in summary
    (file,) = papers.write_all(plan, outcome.report, tmp_path, ["workbook"])
    words = texts(file)
    assert {said, "4/4, whole pack A", "ash 4/4, whole pack A"} <= words
    assert f"Take along, uncut, with the packs: {uncut}." in words
    assert "Leave: B1, B2, S1, S2." in words


def texts(file: Path) -> set[Any]:
    book = openpyxl.load_workbook(file)
    return {cell.value for sheet in book for row in sheet.iter_rows() for cell in row}


def test_once_a_board_of_it_is_cut_the_whole_pack_is_paid(tmp_path: Path) -> None:
    planned(tmp_path, TALLY)
    saved = tmp_path / "plan.json"
    document = plan_file.read(saved)
    first = document["woods"][0]["cuttings"][0]["stock"]
    untouched = planned(tmp_path, saved).plan
    assert {p.id: p.pack for p in untouched.pieces}["B1"] == "B"
    assert untouched.total == 900_000
    # The first board is sawn up; its two rails are there, and the rest costs nothing.
    rest = planned(tmp_path, saved, since=f"{first} all cut\n").plan
    prices = {piece.id: (piece.price, piece.pack) for piece in rest.pieces}
    assert {prices[n] for n in ("A1", "A2", "A3") if n in prices} == {(0, "")}
    assert (prices["B1"], prices["S1"]) == ((250_000, "B"), (500_000, ""))
    assert rest.total == 0


MIXED = f"""{HEAD}\
F1,ash,4/4,8',6-1/2,FAS,60.00,,,
F2,ash,4/4,8',6-1/2,FAS,60.00,,,
C1,ash,4/4,8',6-1/2,No. 1 Common,30.00,,,knot 20 to 22 x 2 to 4
C2,ash,4/4,8',6-1/2,No. 1 Common,30.00,,,knot 20 to 22 x 2 to 4 | knot 60 to 62 x 2 to 4
"""


def test_the_mix_of_grades_falls_out_of_the_money(tmp_path: Path) -> None:
    # Sound rails may have knots: four come from the two common boards, for 60.00.
    sound = planned(tmp_path, MIXED, face="sound").plan
    assert [(n.grade, n.total) for n in sound.purchase] == [("No. 1 Common", 600_000)]
    # Clear ones: C2 has no 40-1/2 in between its knots, C1 has one (22 to 94), so with F1's
    # two and C1's one a fourth is missing. Two FAS boards, 120.00, beat F1 and F2 with C1.
    clear = planned(tmp_path, MIXED, face="clear").plan
    assert [(n.grade, n.total) for n in clear.purchase] == [("FAS", 1_200_000)]
    # Three clear rails are what F1 and C1 give together: 90.00, of each grade one.
    fewer = planned(tmp_path, MIXED, face="clear", quantity=3).plan
    assert [(n.grade, n.total) for n in fewer.purchase] == [
        ("FAS", 600_000),
        ("No. 1 Common", 300_000),
    ]


WITH_MINIMUM = JOB.replace(
    'board_measure = "exact"', 'board_measure = "exact"\nminimum_order = "200"'
).replace('species = "white ash"', 'species = "white ash"\nminimum_order = "110"')


def with_minimum(folder: Path, job: str = WITH_MINIMUM) -> Outcome:
    """Two boards of 50.00 each are cut: 10.00 fill up the ash, 90.00 the whole order."""
    tally = "".join(row for row in TALLY.splitlines(True) if row[0] in "iS")
    (folder / "minimum.toml").write_text(job.format(face="sound", quantity=4))
    (folder / "tally.csv").write_text(tally, encoding="utf-8")
    return plan_job(
        folder / "minimum.toml",
        [folder / "tally.csv"],
        stop=packing.Stop(),
        hear=lambda _: None,
    )


def test_minimum_orders_are_filled_up_and_said(tmp_path: Path) -> None:
    outcome = with_minimum(tmp_path)
    plan = outcome.plan
    lines = [(n.by, n.wood, n.per, n.total) for n in plan.purchase]
    assert lines == [
        ("piece", "ash", 500_000, 1_000_000),
        ("minimum", "ash", 1_100_000, 100_000),
        ("minimum", "", 2_000_000, 900_000),
    ]
    # What must be paid in any case is the floor too.
    assert plan.total == floor_of(plan) == 2_000_000
    summary = "\n".join(plan_summary(plan, []))
    assert "It costs 200.00 USD; no plan of this kind costs less." in summary
    assert "minimum order of ash  to fill it up  110.00 at least   10.00" in summary
    (file,) = papers.write_all(plan, outcome.report, tmp_path, ["workbook"])
    said = "The minimum order of ash is 110.00: 10.00 of it buys wood of your choice, to keep for another job."  # fmt: skip
    assert said in texts(file)


def test_an_order_that_is_large_enough_needs_nothing_more(tmp_path: Path) -> None:
    job = WITH_MINIMUM.replace('"200"', '"99.99"').replace('"110"', '"100"')
    plan = with_minimum(tmp_path, job).plan
    assert [(n.by, n.total) for n in plan.purchase] == [("piece", 1_000_000)]


@pytest.mark.parametrize("place", [1, 2])
def test_a_minimum_order_that_is_not_met_is_refused(tmp_path: Path, place: int) -> None:
    document = with_minimum(tmp_path).document
    line = document["money"]["lines"].pop(place)
    document["money"]["total"] -= line["total"]
    objections = check(document)["objections"]
    assert any(said.startswith("To fill up minimum orders") for said in objections)


def test_a_minimum_order_that_is_no_amount_is_told(tmp_path: Path) -> None:
    job = WITH_MINIMUM.replace('"200"', '"much"').replace('"110"', '"-5"')
    with pytest.raises(FaultsFound) as found:
        with_minimum(tmp_path, job)
    keys = [fault.where.key for fault in found.value.faults]
    assert keys == ["minimum_order", "wood.ash.minimum_order"]


def test_what_is_short_of_a_minimum_in_board_feet_is_said_with_boards_that_make_it_up(
    tmp_path: Path,
) -> None:
    # S1 and S2 are 96 x 6-1/2 / 144 = 4.33 bf each (fixed to the hundredth), 8.66 together.
    # Of 20 feet 11.34 are short; the packs are sold whole, so nothing singly makes it up.
    job = WITH_MINIMUM.replace('minimum_order = "110"', 'minimum_feet = "20"')
    (said,) = (
        each for each in with_minimum(tmp_path, job).plan.cautions if "minimum" in each
    )
    assert said == (
        "The minimum order of ash is 20 board feet, and 8.66 are bought: 11.34 more must "
        "be, which is not in the cost. The boards offered do not make it up"
    )


def test_the_cheapest_board_that_is_enough_is_named() -> None:
    # 3 feet are short: 2 + 2 feet at 5.00 cost 20.00, one board of 3 feet 18.00.
    small = [make_board(f"B{n}", "48", "6", price=100_000) for n in (1, 2)]
    large = make_board("B3", "48", "9", price=180_000)
    assert enough(Fraction(3), [*small, large]) == [large]
    # 4 feet: no one board has them, and the two small ones are cheaper than with B3.
    assert enough(Fraction(4), [*small, large]) == small
    assert enough(Fraction(8), [*small, large]) is None
