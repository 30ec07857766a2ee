"""`yieldplan plan` without boards, and `yieldplan parts`."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from tests.cli.fakes import no_papers
from tests.desk.test_quick_bid import JOB, job_file
from yieldplan.cli.main import main

Said = pytest.CaptureFixture[str]


@pytest.fixture
def shelves(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.setenv("COLUMNS", "100")
    no_papers(monkeypatch)
    return job_file(tmp_path)


def test_a_bid_prints_what_to_add_and_the_waste_it_means(
    shelves: Path, capsys: Said
) -> None:
    assert main(["plan", str(shelves)]) == 0
    said = " ".join(capsys.readouterr().out.split())
    assert "The wood should cost about 60.00 USD." in said
    # 5 board feet at 12.00; 30 of 130 is 23.1 %.
    assert "walnut 4/4 FAS 5 board feet 12.00 a foot 60.00" in said
    assert (
        "parts 3.33 board feet, rough 3.55, add 30 % (of what is bought, 23.1 % is waste)"
        in said
    )
    assert "at least 8-1/2 in wide and 2 ft 11 1/2 in long" in said
    folder = shelves.parent / "job_bid"
    assert sorted(f.name for f in folder.iterdir()) == [
        ".yieldplan-files",
        "workbook.xlsx",
    ]


def test_a_bid_as_json_has_no_floor(shelves: Path, capsys: Said) -> None:
    assert main(["plan", str(shelves), "--json"]) == 0
    found = json.loads(capsys.readouterr().out)
    assert (found["cost"], found["floor"], found["gap"]) == ("60.00", None, None)
    (line,) = found["purchase"]
    assert (line["buy"], line["add_percent"], line["waste_percent"]) == (5, 30, "23.1")
    (piece,) = found["must_find"]
    assert (piece["count"], piece["width"], piece["length"]) == (2, "8-1/2", "35-1/2")


def test_a_price_that_is_not_there_is_said(
    shelves: Path, tmp_path: Path, capsys: Said
) -> None:
    start, end = JOB.index("[[price]]"), JOB.index("[[part]]")
    job_file(tmp_path, JOB[:start] + JOB[end:])
    assert main(["plan", str(shelves)]) == 0
    said = " ".join(capsys.readouterr().out.split())
    assert "5 board feet no price" in said
    assert "no price for walnut 4/4" in said


def test_parts_lists_sizes_and_on_request_their_sums(
    shelves: Path, capsys: Said
) -> None:
    assert main(["parts", str(shelves)]) == 0
    plain = capsys.readouterr().out
    assert "Two shelves: 2 parts to make" in plain
    assert "shelf  2  3/4 × 8 × 30" in plain
    assert "length" not in plain.split("inches.")[1]
    assert main(["parts", str(shelves), "--sums"]) == 0
    assert "length     30" in capsys.readouterr().out


def test_a_bad_job_is_told_and_the_answer_is_one(
    shelves: Path, tmp_path: Path, capsys: Said
) -> None:
    job_file(tmp_path, JOB.replace('"8"', '"10-4"'))
    for command in (["parts", str(shelves)], ["plan", str(shelves)]):
        assert main(command) == 1
        said = capsys.readouterr()
        assert said.out == ""
        assert "10-4" in said.err
        assert "job.toml, line" in said.err


def test_parts_says_when_a_size_is_larger_than_wood_comes(
    tmp_path: Path, capsys: Said
) -> None:
    file = job_file(tmp_path, JOB.replace('length = "30"', 'length = "890"'))
    assert main(["parts", str(file)]) == 0
    said = " ".join(capsys.readouterr().out.split())
    assert "Look for a lost point or another unit in the job." in said


def test_parts_tells_a_grain_match_of_a_part_there_is_not(
    tmp_path: Path, capsys: Said
) -> None:
    match = '[[grain_match]]\nname = "a"\nparts = ["shelff", "shelf"]\nlaid = "end to end"\n'
    assert main(["parts", str(job_file(tmp_path, JOB + match))]) == 1
    assert "no part of the job is called this" in capsys.readouterr().err
