"""The whole way through the front door with nothing stood in: plan, check, explain, bid."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from tests.desk.test_quick_bid import JOB, job_file
from yieldplan.cli.main import main

TALLY = """\
id,wood,thickness,length,width,grade,marks
W1,walnut,4/4,8',9-1/2,FAS,knot A 40 to 42 x 2 to 4
W2,walnut,4/4,6',9,FAS,
"""
Said = pytest.CaptureFixture[str]


@pytest.fixture
def folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.setenv("COLUMNS", "100")
    job_file(tmp_path, JOB)
    (tmp_path / "tally.csv").write_text(TALLY, encoding="utf-8")
    return tmp_path


def plan(folder: Path, *options: str) -> int:
    job, tally = str(folder / "job.toml"), str(folder / "tally.csv")
    return main(["plan", job, "--stock", tally, *options])


def test_two_shelves_from_a_tally(folder: Path, capsys: Said) -> None:
    assert plan(folder, "--json") == 0
    found = json.loads(capsys.readouterr().out)
    # Two blanks of 31 and their kerfs need 2 + 31-1/2 + 31-1/2 + 2 = 67 of length: W2
    # has 72 and is 9 wide for 8-1/4. It measures 9 x 6 / 12 = 4-1/2: a tie, the first
    # of its wood, up to 5 (NHLA rule). W1 is 9-1/2 x 8 / 12 = 6-1/3, 6 board feet.
    assert found["cost"] == found["floor"] == "60.00"
    assert found["woods"][0]["pieces"] == [["W2", 1]]
    written = {Path(file).name for file in found["files"]}
    assert {"cutting_sheets.pdf", "plan.json", "workbook.xlsx"} <= written

    assert main(["check", str(folder / "job_plan")]) == 0
    assert "no plan of this kind costs less." in capsys.readouterr().out
    assert main(["explain", str(folder / "job_plan"), "shelf"]) == 0
    said = " ".join(capsys.readouterr().out.split())
    # Whichever lies first, it lies between 2 and 33-1/2, blade right of the mark.
    assert "from mark 2 to mark 33-1/2, blade right of the mark" in said


def test_the_same_question_gives_the_same_bytes(folder: Path) -> None:
    assert plan(folder) == 0
    first = {f.name: f.read_bytes() for f in (folder / "job_plan").iterdir()}
    assert plan(folder) == 0
    assert {f.name: f.read_bytes() for f in (folder / "job_plan").iterdir()} == first


def test_too_little_wood_is_incomplete_and_one(folder: Path, capsys: Said) -> None:
    short = TALLY.replace("8',9-1/2", "3',9-1/2").replace("6',9", "2',9")
    short = short.replace("knot A 40 to 42 x 2 to 4", "")
    (folder / "tally.csv").write_text(short, encoding="utf-8")
    assert plan(folder) == 1
    said = " ".join(capsys.readouterr().out.split())
    assert "INCOMPLETE. Missing: walnut, 1 of shelf:" in said


def test_a_bid_writes_its_workbook(folder: Path) -> None:
    assert main(["plan", str(folder / "job.toml")]) == 0
    assert (folder / "job_bid" / "workbook.xlsx").stat().st_size > 0


def test_mistakes_of_both_files_come_in_one_run(folder: Path, capsys: Said) -> None:
    job_file(folder, JOB.replace('"8"', '"10-4"'))
    (folder / "tally.csv").write_text(TALLY.replace("FAS,\n", "FAS,rot\n"), "utf-8")
    assert plan(folder) == 1
    said = capsys.readouterr().err
    assert "job.toml, line" in said
    assert "tally.csv, row 3" in said
    assert not (folder / "job_plan").exists()


STICKS = """
title = "Edges"
unit = "in"
currency = "USD"
[stick.edging]
product = "maple edging"
width = "3/4"
thickness = "1/8"
lengths = [{ length = "8'", price = "6.40" }]
[[part]]
name = "edge"
stick = "edging"
length = "30"
quantity = 4
"""


def test_a_job_of_sticks_is_planned_without_a_tally(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: Said
) -> None:
    monkeypatch.setenv("COLUMNS", "100")
    job = job_file(tmp_path, STICKS)
    assert main(["plan", str(job), "--gap", "0"]) == 0
    said = " ".join(capsys.readouterr().out.split())
    # 95 of 96 are left: three times 30 and two kerfs are 90-1/4. Four edges: two sticks.
    assert "It costs 12.80 USD; no plan of this kind costs less." in said
    assert "edging 8 ft 2 sticks 6.40 each 12.80" in said
    assert "Boards to pull" not in said
    assert "tally" not in said
    assert main(["explain", str(tmp_path / "job_plan"), "edge"]) == 0
    said = " ".join(capsys.readouterr().out.split())
    assert "stick 1 of its kind" in said
    assert "3/4 × 30 (width × length) as it lies, makes 1 edge, nothing to mill" in said


def test_what_is_wrong_with_a_job_of_sticks_is_told_once(
    tmp_path: Path, capsys: Said
) -> None:
    job = job_file(tmp_path, STICKS.replace('"edging"', '"edgin"'))
    assert main(["plan", str(job)]) == 1
    assert capsys.readouterr().err.count('Did you mean "edging"?') == 1
