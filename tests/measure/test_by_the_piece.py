"""In a bid sheets and sticks are bought whole, in the size that costs least."""

from __future__ import annotations

import dataclasses
from decimal import Decimal
from fractions import Fraction

import pytest

from tests.builders import HERE, inches, make_job, make_part, make_piece
from yieldplan import blanks
from yieldplan.faults import Faults
from yieldplan.measure.bid import bid
from yieldplan.measure.purchase import running_length, say_run
from yieldplan.model.bid import BidLine
from yieldplan.model.job import Job, SheetSize, Stick, StickLength
from yieldplan.model.parts import Part
from yieldplan.model.plan import PurchaseLine
from yieldplan.units import UnitName


def stick(*lengths: tuple[str, str]) -> Stick:
    return Stick(
        name="edging",
        product="maple edging",
        width=inches("3/4"),
        thickness=inches("1/8"),
        lengths=tuple(
            StickLength(length=inches(length), price=Decimal(price), quantity=4)
            for length, price in lengths
        ),
        where=HERE,
    )


def edges(length: str, quantity: int) -> Part:
    return make_part(
        "edge", length, "3/4", "1/8", wood="edging", is_stick=True, quantity=quantity
    )


def lines(job: Job, *parts: Part) -> tuple[BidLine, ...]:
    faults = Faults()
    made = bid(job, parts, blanks.routes(parts, job, faults))
    faults.stop_if_any()
    assert not made.must_find  # what lies in a shop need not be looked for
    return made.lines


def with_sticks(*lengths: tuple[str, str]) -> Job:
    return dataclasses.replace(make_job(), sticks={"edging": stick(*lengths)})


def test_sticks_are_bought_by_their_run_and_fifteen_more() -> None:
    (line,) = lines(with_sticks(("96", "6.40"), ("144", "9.10")), edges("30", 9))
    # 9 × 30-1/8 = 271-1/8, × 1.15 = 311.8. Of 8 ft 95 are left: four, 25.60; of 12 ft
    # 143: three, 27.30.
    assert (line.line, line.buy, line.amount) == ("maple edging 8 ft", 4, "4 sticks")
    assert (line.per, line.total) == (64_000, 256_000)
    assert (line.net, line.rough, line.sold_by) == (None, None, "stick")


def test_a_length_that_no_part_fits_is_not_bought() -> None:
    (line,) = lines(with_sticks(("96", "6.40"), ("144", "9.10")), edges("100", 2))
    # 2 × 100-1/8 × 1.15 = 230.3 of 143: two.
    assert (line.line, line.buy) == ("maple edging 12 ft", 2)


def test_a_bid_says_when_there_are_too_few() -> None:
    (line,) = lines(with_sticks(("96", "6.40")), edges("90", 5))
    # 5 × 90-1/8 × 1.15 = 518.2 of 95: six; the job has four.
    assert (line.buy, line.price_note) == (6, "the job offers only 4")


def test_of_two_sizes_of_a_sheet_the_cheaper_is_bought() -> None:
    job = make_job()
    small = SheetSize(length=Fraction(48), width=Fraction(48), price=Decimal("21.00"))
    ply = dataclasses.replace(job.sheets["ply"], more_sizes=(small,))
    job = dataclasses.replace(job, sheets={"ply": ply})
    part = make_part("base", "40", "20", "1/4", wood="ply", is_sheet=True)
    (line,) = lines(job, part)
    # 40 × 20 × 1.15 = 920 of 48 × 48: one, 21.00; 48 × 96 costs 38.00.
    assert (line.line, line.buy, line.total) == ("birch plywood 48 × 48", 1, 210_000)
    # 60 × 20 does not lie on 48 × 48.
    long = dataclasses.replace(part, length=part.length + part.width)
    (line,) = lines(job, long)
    assert (line.line, line.buy, line.total) == ("birch plywood 48 × 96", 1, 380_000)


@pytest.mark.parametrize(
    ("quantity", "line", "buy", "note"),
    [
        # Two 17-1/2 × 17 lie on 24 × 48, by area nearly three would: six take three.
        (3, "birch plywood 24 × 48", 3, "as many as its large parts take"),
        # There are two of them, so a whole sheet is bought.
        (2, "birch plywood 48 × 96", 1, ""),
    ],
)
def test_of_large_parts_no_more_are_counted_on_a_sheet_than_go_on_it(
    quantity: int, line: str, buy: int, note: str
) -> None:
    job = make_job()
    small = SheetSize(
        length=Fraction(48),
        width=Fraction(24),
        price=Decimal("10.00"),
        quantity=quantity,
    )
    ply = dataclasses.replace(job.sheets["ply"], more_sizes=(small,))
    job = dataclasses.replace(job, sheets={"ply": ply})
    # 6 × 17-1/2 × 17 × 1.15 = 2,053 of 1,152 would be two.
    part = make_part(
        "bottom", "17-1/2", "17", "1/4", wood="ply", is_sheet=True, quantity=6
    )
    (found,) = lines(job, part)
    assert (found.line, found.buy, found.price_note) == (line, buy, note)


@pytest.mark.parametrize(("may_turn", "buy"), [(True, 2), (False, 3)])
def test_a_large_part_is_counted_across_a_sheet_only_where_it_may_turn(
    buy: int, *, may_turn: bool
) -> None:
    job = make_job()
    small = SheetSize(length=Fraction(48), width=Fraction(24), price=Decimal("10.00"))
    ply = dataclasses.replace(job.sheets["ply"], more_sizes=(small,))
    job = dataclasses.replace(job, sheets={"ply": ply})
    part = make_part(
        "bottom", "17", "12-1/2", "1/4", wood="ply", is_sheet=True, quantity=6, may_turn=may_turn,
    )  # fmt: skip
    # Along 24 × 48 one beside the other is too wide: two; across three of 12-1/2 in 47-1/2.
    (found,) = lines(job, part)
    assert (found.line, found.buy) == ("birch plywood 24 × 48", buy)


def test_of_long_parts_no_more_are_counted_on_a_stick_than_go_on_it() -> None:
    # Of 95 one 50 can be cut: three sticks, though 3 × 50-1/8 × 1.15 = 172.9 is less than two.
    (line,) = lines(with_sticks(("96", "6.40")), edges("50", 3))
    assert line.buy == 3


def bought(*pieces: tuple[str, int]) -> PurchaseLine:
    return PurchaseLine(
        wood="edging", line="edging", grade="", pieces=pieces, board_feet=None,
        by="piece", per=64_000, total=64_000 * sum(count for _, count in pieces),
    )  # fmt: skip


def test_how_far_the_sticks_of_a_line_run() -> None:
    eight = make_piece("edging 8 ft", kind="stick", is_stick=True)
    board = make_piece("W1")
    pieces = {"edging 8 ft": eight, "W1": board}
    # 3 × 96
    assert running_length(bought(("edging 8 ft", 3)), pieces) == 288
    assert running_length(bought(("W1", 1)), pieces) is None


@pytest.mark.parametrize(
    ("inches_", "unit", "said"),
    [
        ("288", "in", "24 running feet"),
        # 20.04 ft: rounded up, never less than there is to carry.
        ("240-1/2", "in", "20.1 running feet"),
        ("7200 mm", "mm", "7.2 metres"),
    ],
)
def test_a_run_is_said_in_feet_or_metres(
    inches_: str, unit: UnitName, said: str
) -> None:
    assert say_run(inches(inches_), unit) == said
