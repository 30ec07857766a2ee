"""Every folder under example_jobs plans as its `expected/` says: sizes to the tick, money within reach of the best known."""

from __future__ import annotations

import json
import tomllib
from pathlib import Path
from typing import Any

import pytest

from tests.system.runs import example_folders, outcome_of
from yieldplan.checking import check
from yieldplan.packing import Stop

FOLDERS = example_folders()


def expected(folder: Path, name: str) -> dict[str, object]:
    """What stands in the folder's `expected/`."""
    text = (folder / "expected" / name).read_text(encoding="utf-8")
    return json.loads(text)  # type: ignore[no-any-return]


def said(blank: dict[str, Any]) -> list[object]:
    """Its route, what it makes, its length, width and thickness."""
    makes = " and ".join(f"{n} × {part}" for part, n in sorted(blank["makes"].items()))
    return [blank["route"], makes, *blank["size"], blank["thickness"]]


def test_there_are_an_inch_job_and_a_metric_one() -> None:
    jobs = [(folder / "job.toml").read_bytes() for folder in FOLDERS]
    units = {tomllib.loads(job.decode())["unit"] for job in jobs}
    assert units == {"in", "mm"}


# One test a job: each of two workers would otherwise plan it again.
@pytest.mark.parametrize("folder", FOLDERS, ids=lambda folder: folder.name)
def test_it_plans_as_expected(folder: Path) -> None:
    """Other versions of the libraries may find another plan, never a floor that is wrong."""
    document = outcome_of(
        folder / "job.toml", folder / "tally.csv", Stop(share=2)
    ).document
    sizes = expected(folder, "sizes.json")
    assert {part["id"]: part["size"] for part in document["parts"]} == sizes["parts"]
    assert sorted(map(said, document["blanks"])) == sizes["blanks"]

    assert document["complete"] is True
    assert check(document)["objections"] == []
    best_known = expected(folder, "best_known.json")
    for wood in document["woods"]:
        best = best_known[wood["wood"]]
        assert isinstance(best, int)
        assert wood["bound"]["value"] <= best
        assert wood["cost"] <= best * 105 // 100
