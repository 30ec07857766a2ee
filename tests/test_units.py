"""Property 1: what people read off a tape is read exactly, written back, or refused."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from yieldplan.units import (
    TapeError,
    cubic_metres_per_board_foot,
    feet_and_inches,
    from_ticks,
    parse_length,
    tape,
    to_ticks_down,
    to_ticks_up,
)

tape_sizes = st.integers(min_value=0, max_value=32 * 1200).map(
    lambda marks: Fraction(marks, 32)
)
tenths_of_mm = st.integers(min_value=0, max_value=300_000)


@given(
    tape_sizes, st.sampled_from([" ", "-"]), st.sampled_from(["", '"', " in", "in."])
)
def test_inches_are_read_back_as_they_are_written(
    size: Fraction, join: str, mark: str
) -> None:
    assert parse_length(tape(size, join=join) + mark) == size


@given(tape_sizes)
def test_feet_and_inches_are_read_back_as_a_yard_says_them(size: Fraction) -> None:
    assert parse_length(feet_and_inches(size)) == size


@given(tenths_of_mm, st.sampled_from(["mm", "in"]))
def test_tenths_of_a_millimetre_are_read_back_exactly(tenths: int, unit: str) -> None:
    size = Fraction(tenths, 254)
    written = tape(size, "mm")
    assert parse_length(f"{written} mm", "in" if unit == "in" else "mm") == size
    assert parse_length(written, "mm") == size


@given(tenths_of_mm)
def test_a_decimal_comma_is_read_where_the_file_says_so(tenths: int) -> None:
    written = f"{tenths // 10},{tenths % 10}"
    assert parse_length(written, "mm", decimal_comma=True) == Fraction(tenths, 254)


@given(tape_sizes)
def test_sizes_on_the_tape_lie_on_the_tick_grid(size: Fraction) -> None:
    assert to_ticks_up(size) == to_ticks_down(size)
    assert from_ticks(to_ticks_up(size)) == size


@given(st.text(max_size=40))
def test_any_text_is_a_length_or_a_reason(text: str) -> None:
    try:
        size = parse_length(text)
    except TapeError as refused:
        told = refused.wrong and refused.remedy
    else:
        told = size >= 0
    assert told


@pytest.mark.parametrize(
    ("written", "inches"),
    [
        ("17 3/8", "139/8"),
        ('17-3/8"', "139/8"),
        ("1' 5-3/8\"", "139/8"),
        ("17⅜", "139/8"),
        ("17.375", "139/8"),
        ("1 ft 5 3/8 in", "139/8"),
        # 441 / 25.4 = 4410 / 254
        ("441 mm", "4410/254"),
        ("44.1 cm", "4410/254"),
        ("0.441 m", "4410/254"),
        ("9'", "108"),
        ("3/4", "3/4"),
    ],
)
def test_a_length_may_be_written_many_ways(written: str, inches: str) -> None:
    assert parse_length(written) == Fraction(inches)


@pytest.mark.parametrize(
    "written",
    [
        "10-4",  # 10 ft 4 in at a yard, nothing in a shop
        "5/4",  # the name of a thickness
        "17 9/8",
        "1' 13\"",
        "49,8 cm",
        "17,5",
        "3/0",
        "1/2 mm",
        "-3",
        "1e3",
        "1_000",
        "nan",
        "١٧",  # digits of another script
        "",
        "17 3/8 3/8",
        "about 17",
    ],
)
def test_what_could_mean_two_things_is_refused_with_a_remedy(written: str) -> None:
    with pytest.raises(TapeError) as caught:
        parse_length(written)
    assert caught.value.remedy


def test_a_fraction_that_reads_as_a_thickness_says_how_to_write_the_length() -> None:
    with pytest.raises(TapeError, match="1-1/4"):
        parse_length("5/4")


def test_a_board_foot_is_144_cubic_inches() -> None:
    # An inch is 25.4 mm: (144 x 25.4^3) mm3 = 2,359,737.216 mm3.
    assert cubic_metres_per_board_foot() == Fraction(2359737216, 10**12)


def test_a_size_off_the_tape_says_about() -> None:
    # 1/3 in is 10.67/32: the nearest mark is 11/32.
    assert tape(Fraction(1, 3)) == "about 11/32"
