"""The quick bid from a job file: read, built, routed and reckoned; faults stop it."""

from __future__ import annotations

from fractions import Fraction
from pathlib import Path

import pytest

from yieldplan.desk.quick_bid import parts_of, quick_bid
from yieldplan.faults import FaultsFound

JOB = """
title = "Two shelves"
unit = "in"
currency = "USD"

[wood.walnut]
species = "black walnut"

[[price]]
wood = "walnut"
thickness = "4/4"
grade = "FAS"
per_foot = "12.00"

[[part]]
name = "shelf"
wood = "walnut"
length = "30"
width = "8"
thickness = "3/4"
quantity = 2
"""


def job_file(folder: Path, text: str = JOB) -> Path:
    file = folder / "job.toml"
    file.write_text(text, encoding="utf-8")
    return file


def test_two_shelves_from_job_to_money(tmp_path: Path) -> None:
    bid = quick_bid(job_file(tmp_path))
    (line,) = bid.lines
    # Net 2 x 30 x 8 / 144. Rough: over 24 long takes 1, 8 wide takes 1/4: 31 x 8-1/4;
    # 3/4 and 3/16 to plane off is 15/16, so 4/4 (the defaults table; common practice,
    # no source).
    assert line.net == Fraction(2 * 30 * 8, 144)
    assert line.rough == 2 * 31 * Fraction(33, 4) / 144
    # 3.55 x 1.30 = 4.62, up to 5 board feet; 5 x 12.00.
    assert (line.add_percent, line.buy, line.total) == (30, 5, 600_000)
    # Width: 8-1/4 + 1/8 kerf on eighths less the kerf, and two 1/8 edges. Length: first
    # mark 2, 31 + 1/8 up to 31-1/2, and 2.
    (found,) = bid.must_find
    assert (found.width, found.length) == (Fraction(17, 2), Fraction(71, 2))
    assert found.count == 2


def test_the_list_of_parts_has_their_sums(tmp_path: Path) -> None:
    commission, built = parts_of(job_file(tmp_path))
    assert commission.title == "Two shelves"
    (shelf,) = [part for part in built.parts if not part.set_up]
    assert (shelf.id, shelf.quantity, shelf.length.value) == ("shelf", 2, 30)


def test_what_is_wrong_with_the_job_stops_the_bid(tmp_path: Path) -> None:
    wrong = JOB.replace('"30"', '"30-40"').replace("quantity = 2", "quantty = 2")
    with pytest.raises(FaultsFound) as found:
        quick_bid(job_file(tmp_path, wrong))
    assert len(found.value.faults) == 2


def test_a_job_that_is_not_toml_stops_it_too(tmp_path: Path) -> None:
    with pytest.raises(FaultsFound):
        parts_of(job_file(tmp_path, "title = "))
