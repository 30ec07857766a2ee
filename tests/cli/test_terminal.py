"""Lines fold at the terminal's width, and any terminal can show them."""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.measure.hall_case import make_plan
from yieldplan import plan_file
from yieldplan.cli.table import rows
from yieldplan.cli.terminal import fold


def test_a_long_line_folds_under_its_last_column_and_never_inside_a_size() -> None:
    line = "  length  20 opening depth − 1/4 rear clearance = 19-5/8"
    assert fold(line, 34) == (
        "  length  20 opening depth − 1/4\n          rear clearance = 19-5/8"
    )


def test_a_long_line_without_columns_goes_on_two_deeper() -> None:
    assert fold("  one two three four five", 20) == "  one two three four\n    five"


def test_a_command_to_copy_is_never_broken() -> None:
    line = "    yieldplan plan somewhere/job.toml --stock somewhere/tally.csv"
    assert fold(line, 20) == line


def test_a_line_that_fits_keeps_its_columns() -> None:
    assert fold("  a    b   c", 12) == "  a    b   c"


@given(
    st.lists(st.text("ab-/1 ", min_size=1, max_size=9), max_size=12),
    st.integers(20, 60),
)
def test_folding_loses_no_word_and_goes_over_only_for_long_words(
    words: list[str], columns: int
) -> None:
    line = " ".join(words)
    folded = fold(line, columns)
    assert folded.split() == line.split()
    assert all(len(each) <= columns for each in folded.split("\n"))


def test_columns_line_up_and_empty_ones_go() -> None:
    table = [("oak", "", "9"), ("walnut", "", "12")]
    assert list(rows(table, align="<<>", indent=1)) == [" oak      9", " walnut  12"]


@pytest.mark.parametrize("encoding", ["ascii", "cp1252", "utf-8"])
def test_a_terminal_with_few_letters_still_shows_every_figure(
    tmp_path: Path, encoding: str
) -> None:
    plan = tmp_path / "plan.json"
    plan.write_bytes(plan_file.dump(plan_file.write(make_plan())))
    ran = subprocess.run(
        [sys.executable, "-m", "yieldplan.cli", "explain", str(plan), "upper/front"],
        env={**os.environ, "PYTHONIOENCODING": encoding, "COLUMNS": "120"},
        capture_output=True,
        check=False,
    )
    assert ran.returncode == 0, ran.stderr
    said = ran.stdout.decode(encoding)
    times = "x" if encoding == "ascii" else "×"
    assert f"3/4 {times} 6 {times} 22 finished" in said
    assert "?" not in said


def test_a_reader_that_has_seen_enough_is_no_trouble(tmp_path: Path) -> None:
    plan = tmp_path / "plan.json"
    plan.write_bytes(plan_file.dump(plan_file.write(make_plan())))
    ran = subprocess.run(
        f'"{sys.executable}" -m yieldplan.cli check "{plan}" | true',
        shell=True,
        capture_output=True,
        check=False,
    )
    assert ran.stderr == b""
