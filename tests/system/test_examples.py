"""Every folder under example_jobs plans as its `expected/` says: sizes to the tick, money within reach of the best known."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest

from tests.system.runs import example_folders, outcome_of
from yieldplan.checking import check

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
    units = {outcome(folder)["unit"] for folder in FOLDERS}
    assert units == {"in", "mm"}


def outcome(folder: Path) -> dict[str, object]:
    return outcome_of(folder / "job.toml", folder / "tally.csv").document


@pytest.mark.parametrize("folder", FOLDERS, ids=lambda folder: folder.name)
def test_parts_and_blanks_are_as_expected(folder: Path) -> None:
    document = outcome(folder)
    sizes = expected(folder, "sizes.json")
    parts, blanks = document["parts"], document["blanks"]
    assert isinstance(parts, list)
    assert isinstance(blanks, list)
    assert {part["id"]: part["size"] for part in parts} == sizes["parts"]
    assert sorted(map(said, blanks)) == sizes["blanks"]


@pytest.mark.parametrize("folder", FOLDERS, ids=lambda folder: folder.name)
def test_cost_is_near_the_best_known_and_no_floor_above_it(folder: Path) -> None:
    """Other versions of the libraries may find another plan, never a floor that is wrong."""
    document = outcome(folder)
    assert document["complete"] is True
    assert check(document)["objections"] == []
    woods = document["woods"]
    assert isinstance(woods, list)
    best_known = expected(folder, "best_known.json")
    for wood in woods:
        best = best_known[wood["wood"]]
        assert isinstance(best, int)
        assert wood["bound"]["value"] <= best
        # A short search finds a little less than the best known.
        assert wood["cost"] <= best * 108 // 100
