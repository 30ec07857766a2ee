"""Sheets and sticks come from the job file: as many as it has, or as could ever be cut."""

from __future__ import annotations

import dataclasses
from decimal import Decimal
from fractions import Fraction
from pathlib import Path

from tests.sources.tallies import HERE, make_job, read_text
from yieldplan import sources
from yieldplan.model.blanks import Blank
from yieldplan.model.job import Job, SheetSize, Stick, StickLength
from yieldplan.model.parts import Part
from yieldplan.model.sums import Sum

SIZE = Sum.of(("size", Fraction(20)))
PART = Part(
    id="bottom",
    quantity=3,
    wood="bottom",
    is_sheet=True,
    length=SIZE,
    width=SIZE,
    thickness=SIZE,
    where=HERE,
)
BLANK = Blank(
    id="k1",
    route="plane",
    wood="bottom",
    is_sheet=True,
    length=SIZE,
    width=SIZE,
    thickness=SIZE,
    finished_thickness=Fraction(1, 4),
    makes={"bottom": 1},
    inside=(),
    show_face="sound",
    back_face="sound",
    words="bottom",
)


def test_there_is_a_sheet_for_every_part_that_is_wanted() -> None:
    (sheet,) = sources.sheets_and_sticks(make_job(), [BLANK], [PART])
    assert (sheet.copies, sheet.price) == (3, 380_000)
    assert (sheet.line, sheet.thickness) == ("bottom 5.2 mm", "5.2 mm")
    assert (sheet.length, sheet.width) == (96, 48)
    assert sheet.board_feet is None
    # 1/4 off each edge of a sheet (common practice, no source)
    assert sheet.end_trims == sheet.edge_passes == (Fraction(1, 4), Fraction(1, 4))


def test_the_job_may_say_how_many_there_are() -> None:
    job = make_job()
    two = dataclasses.replace(job.sheets["bottom"], quantity=2)
    job = dataclasses.replace(job, sheets={"bottom": two})
    assert sources.sheets_and_sticks(job, [BLANK], [PART])[0].copies == 2


def test_a_sheet_nothing_is_cut_from_is_not_offered() -> None:
    assert sources.sheets_and_sticks(make_job(), [], []) == ()


def two_sizes() -> Job:
    job = make_job()
    small = SheetSize(
        length=Fraction(60), width=Fraction(60), price=Decimal("25.00"), quantity=1
    )
    both = dataclasses.replace(job.sheets["bottom"], more_sizes=(small,))
    return dataclasses.replace(job, sheets={"bottom": both})


def test_every_size_of_a_sheet_is_a_piece_and_a_line_of_its_own() -> None:
    large, small = sources.sheets_and_sticks(two_sizes(), [BLANK], [PART])
    assert (large.id, small.id) == ("bottom 48 x 96 in", "bottom 60 x 60 in")
    assert large.line == "bottom 5.2 mm 48 × 96"
    assert small.line == "bottom 5.2 mm 60 × 60"
    assert (large.copies, small.copies) == (3, 1)
    assert (large.price, small.price) == (380_000, 250_000)
    assert large.wood == small.wood == "bottom"


def with_edging() -> Job:
    edging = Stick(
        name="edging",
        product="maple edging",
        width=Fraction(3, 4),
        thickness=Fraction(1, 8),
        lengths=(
            StickLength(length=Fraction(96), price=Decimal("6.40")),
            StickLength(length=Fraction(123), price=Decimal("9.10"), quantity=2),
        ),
        where=HERE,
    )
    return dataclasses.replace(make_job(), sticks={"edging": edging})


def test_every_length_of_a_stick_is_a_piece_that_loses_its_ends_and_no_edge() -> None:
    part = dataclasses.replace(PART, wood="edging", is_sheet=False, is_stick=True)
    blank = dataclasses.replace(BLANK, wood="edging", is_sheet=False, is_stick=True)
    short, long = sources.sheets_and_sticks(with_edging(), [blank], [part])
    assert (short.id, long.id) == ("edging 8 ft", "edging 10 ft 3 in")
    assert (short.length, short.width, short.thick) == (96, Fraction(3, 4), Fraction(1, 8))  # fmt: skip
    # 1/2 off each end of a stick (common practice, no source)
    assert short.end_trims == (Fraction(1, 2), Fraction(1, 2))
    assert short.edge_passes == (0, 0)
    assert (short.copies, long.copies) == (3, 2)
    assert short.kind == "stick"
    assert short.board_feet is short.per_foot is None


def test_no_board_is_called_like_a_size_of_a_sheet_or_a_stick(tmp_path: Path) -> None:
    for job, name, kind in (
        (two_sizes(), "bottom 48 x 96 in", "sheet"),
        (with_edging(), "edging 8 ft", "stick"),
    ):
        text = f"id,thickness,length,width,grade\n{name},4/4,96,7,FAS\n"
        _, (fault,) = read_text(tmp_path, text, job)
        assert fault.said == name
        assert fault.wrong == f"a {kind} of the job has this name"


def test_two_products_whose_sizes_would_be_called_alike_are_told_apart(
    tmp_path: Path,
) -> None:
    job = two_sizes()
    other = dataclasses.replace(job.sheets["bottom"], name="bottom 60 x 60 in")
    job = dataclasses.replace(job, sheets={**job.sheets, other.name: other})
    text = "id,thickness,length,width,grade\nW1,4/4,96,7,FAS\n"
    _, (fault,) = read_text(tmp_path, text, job)
    assert fault.said == "bottom 60 x 60 in"
    assert "another name" in fault.remedy
