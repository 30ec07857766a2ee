"""A plan file is read and gone over again; what is no plan says so."""

from __future__ import annotations

import copy
import json
from pathlib import Path

import pytest

from tests.measure.hall_case import make_plan
from yieldplan import plan_file
from yieldplan.desk.check_plan import check_plan
from yieldplan.plan_file import NotAPlan

DOCUMENT = plan_file.write(make_plan())


def written(folder: Path, content: bytes) -> Path:
    file = folder / "plan.json"
    file.write_bytes(content)
    return file


def test_a_sound_plan_passes_with_its_floor_and_cost(tmp_path: Path) -> None:
    checked = check_plan(written(tmp_path, plan_file.dump(DOCUMENT)))
    assert checked.report.passed
    # One board of 3 board feet at 12.00, and it is proved.
    assert checked.report.floors == checked.costs == {"walnut": 360_000}
    assert checked.report.checked


def test_a_floor_raised_by_one_unit_is_refused(tmp_path: Path) -> None:
    raised = copy.deepcopy(DOCUMENT)
    raised["woods"][0]["bound"]["priced"] += 1
    checked = check_plan(written(tmp_path, plan_file.dump(raised)))
    assert not checked.report.passed


def test_a_file_that_says_the_same_thing_twice_is_refused(tmp_path: Path) -> None:
    text = json.dumps(DOCUMENT)
    doubled = text.replace(
        '{"yieldplan_plan": 1,', '{"mark": "X", "yieldplan_plan": 1,'
    )
    checked = check_plan(written(tmp_path, doubled.encode()))
    assert checked.report.objections == ("The key 'mark' stands twice in one object.",)


@pytest.mark.parametrize(
    "content",
    [
        b"",
        b"{",
        b"[]",
        b'"plan"',
        b"{}",
        b'{"yieldplan_plan": 2}',
        b"\xff",
        b"[" * 99_999,
    ],
)
def test_what_is_no_plan_says_so(tmp_path: Path, content: bytes) -> None:
    with pytest.raises(NotAPlan, match=r"plan\.json"):
        check_plan(written(tmp_path, content))


def test_a_file_that_is_not_there_is_an_error_of_the_disk(tmp_path: Path) -> None:
    with pytest.raises(FileNotFoundError):
        check_plan(tmp_path / "plan.json")
