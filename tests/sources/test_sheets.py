"""Sheets come from the job file: as many as the job has, or as could ever be cut."""

from __future__ import annotations

import dataclasses
from fractions import Fraction

from tests.sources.tallies import HERE, make_job
from yieldplan import sources
from yieldplan.model.blanks import Blank
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
