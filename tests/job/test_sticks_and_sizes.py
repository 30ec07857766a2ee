"""Sticks and sheets of several sizes are read as written, and every slip in them is told once."""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction
from pathlib import Path

import pytest

from tests.job.toys import FRAME, HEAD, WALNUT, read_text

STICK = """[stick.edging]
product = "maple edging"
width = "3/4"
thickness = "3 mm"
lengths = [
  { length = "8'", price = "6.40" },
  { length = "12'", price = "9.10", quantity = 4 },
]
"""
SHEET = """[sheet.back]
product = "hardboard"
thickness = "1/8 in"
grain = false
sizes = [
  { size = ["48", "96"], price = "21.00" },
  { size = ["60", "60"], price = "23.50", quantity = 3 },
]
"""
WHOLE = HEAD + WALNUT + FRAME + STICK + SHEET


def test_a_stick_has_its_cross_section_and_every_length_its_price(
    tmp_path: Path,
) -> None:
    job, faults = read_text(tmp_path, WHOLE)
    assert not faults
    assert job is not None
    stick = job.sticks["edging"]
    assert (stick.width, stick.thickness) == (Fraction(3, 4), Fraction(30, 254))
    assert [(e.length, e.price, e.quantity) for e in stick.lengths] == [
        (96, Decimal("6.40"), None),
        (144, Decimal("9.10"), 4),
    ]


def test_a_width_off_the_tick_grid_is_kept_just_under(tmp_path: Path) -> None:
    job, faults = read_text(tmp_path, WHOLE.replace('"3/4"\nthick', '"0.7"\nthick'))
    assert not faults
    assert job is not None
    # 0.7 × 8128 = 5689.6 ticks.
    assert job.sticks["edging"].width == Fraction(5689, 8128)


def test_a_sheet_has_every_size_across_and_along_its_grain(tmp_path: Path) -> None:
    job, faults = read_text(tmp_path, WHOLE)
    assert not faults
    assert job is not None
    sheet = job.sheets["back"]
    assert not sheet.has_grain
    assert [(e.width, e.length, e.price, e.quantity) for e in sheet.sizes] == [
        (48, 96, Decimal("21.00"), None),
        (60, 60, Decimal("23.50"), 3),
    ]


def test_one_size_is_written_as_before_and_its_face_has_a_grain(tmp_path: Path) -> None:
    text = SHEET.partition("grain")[0] + 'size = ["48", "96"]\nprice = "21.00"\n'
    job, faults = read_text(tmp_path, HEAD + WALNUT + FRAME + text)
    assert not faults
    assert job is not None
    sheet = job.sheets["back"]
    assert sheet.has_grain
    (size,) = sheet.sizes
    assert (size.width, size.length, size.price) == (48, 96, Decimal("21.00"))


@pytest.mark.parametrize(
    ("right", "spoilt", "line", "said", "wrong", "remedy"),
    [
        ('"12\'", price', '"8 ft", price', 17, "", "length stands here already", "one of the two"),
        ('"12\'", price', '"12\'", prize', 17, "prize", "not known", '"price"'),
        ('width = "3/4"\nthickness = "3 mm"', 'thickness = "3 mm"', 11, "", '"width" is missing', "describe stick"),
        ('"6.40"', '"6.4x"', 16, "6.4x", "not an amount", "14.50"),
        ("[stick.edging]", "[stick.walnut]", 11, "walnut", "a wood and a stick have the same name", "another"),
        ("[sheet.back]", "[sheet.walnut]", 19, "walnut", "a wood and a sheet have the same name", "another"),
        ("[sheet.back]", "[sheet.edging]", 11, "edging", "a sheet and a stick have the same name", "another"),
        ('["60", "60"]', '["48", "96"]', 25, "", "size stands here already", "one of the two"),
        ("grain = false", 'price = "1.00"', 22, "1.00", "price stands beside sizes", "inside sizes"),
        ("grain = false", "grain = 0", 22, "0", "neither yes nor no", "true or false"),
    ],
)  # fmt: skip
def test_one_slip_gives_one_message(
    tmp_path: Path,
    right: str,
    spoilt: str,
    line: int,
    said: str,
    wrong: str,
    remedy: str,
) -> None:
    assert WHOLE.count(right) == 1
    _, faults = read_text(tmp_path, WHOLE.replace(right, spoilt))
    (fault,) = faults
    assert (fault.where.line, fault.said) == (line, said)
    assert wrong in fault.wrong
    assert remedy in fault.remedy


def test_a_sheet_without_any_size_is_told_what_is_missing(tmp_path: Path) -> None:
    text = HEAD + WALNUT + FRAME + SHEET.partition("sizes")[0]
    _, faults = read_text(tmp_path, text)
    assert [fault.wrong for fault in faults] == ['"size" is missing', '"price" is missing']  # fmt: skip
