"""`python -m yieldplan.checking plan.json` needs Python and nothing else, and says what it found."""

from __future__ import annotations

import json
import os
import subprocess
import sys
from pathlib import Path

import pytest

import yieldplan
from tests.checking.examples import documented, full

HOUSE = Path(yieldplan.__file__).parents[1]


def run(*arguments: str | Path) -> subprocess.CompletedProcess[str]:
    """Runs the checker on a Python without any package: -S leaves site-packages out."""
    return subprocess.run(
        [sys.executable, "-S", *arguments],
        capture_output=True,
        text=True,
        encoding="utf-8",
        env={"PYTHONPATH": str(HOUSE), "PATH": os.environ["PATH"], "PYTHONUTF8": "1"},
        check=False,
    )


def check(path: Path) -> subprocess.CompletedProcess[str]:
    """Runs the checker on a file."""
    return run("-m", "yieldplan.checking", path)


def written(folder: Path, content: bytes) -> Path:
    """A file with this content."""
    path = folder / "plan.json"
    path.write_bytes(content)
    return path


def test_plan_that_holds(tmp_path: Path) -> None:
    done = check(written(tmp_path, json.dumps(documented()).encode()))
    assert done.stderr == ""
    assert "Two drawer fronts and their rails holds." in done.stdout
    assert (
        "walnut: 38.76 USD; crosscut first, marks every 1/2 in, no plan costs less.\n"
        in (done.stdout)
    )
    assert done.returncode == 0


def test_incomplete_plan_holds_and_says_what_is_missing(tmp_path: Path) -> None:
    done = check(written(tmp_path, json.dumps(full()).encode()))
    assert "INCOMPLETE" in done.stdout
    assert "- 1 shelf" in done.stdout
    assert "poplar: 25.0055 USD; crosscut first" in done.stdout
    assert "costs less than 0.00" in done.stdout
    assert done.returncode == 0


def test_plan_that_does_not_hold(tmp_path: Path) -> None:
    plan = documented()
    plan["woods"][0]["bound"]["value"] += 1
    done = check(written(tmp_path, json.dumps(plan).encode()))
    assert "REFUSED" in done.stdout
    assert "(387600 and 387601 units)" in done.stdout
    assert done.returncode == 1


def test_key_that_stands_twice_is_refused(tmp_path: Path) -> None:
    content = json.dumps(documented()).replace(
        '"copies": 1', '"copies": 1, "copies": 1'
    )
    done = check(written(tmp_path, content.encode()))
    assert "'copies' stands twice" in done.stdout
    assert done.returncode == 1


@pytest.mark.parametrize(
    "content",
    [
        b"",
        b"not json",
        b'{"title": "\xff"}',
        b"[" * 100_000,
        b'{"yieldplan_plan": ' + b"9" * 10_000 + b"}",
    ],
)
def test_file_that_cannot_be_read(tmp_path: Path, content: bytes) -> None:
    done = check(written(tmp_path, content))
    assert "cannot be read" in done.stdout
    assert done.stderr == ""
    assert done.returncode == 3


def test_file_that_is_not_there(tmp_path: Path) -> None:
    done = check(tmp_path / "no such plan.json")
    assert "cannot be read" in done.stdout
    assert done.returncode == 3


def test_json_that_is_no_plan_is_refused(tmp_path: Path) -> None:
    done = check(written(tmp_path, b"[NaN, 1e999]"))
    assert "the plan file should be an object and is a list of 2." in done.stdout
    assert done.returncode == 1


def test_no_plan_named() -> None:
    done = run("-m", "yieldplan.checking")
    assert "Say which plan to check" in done.stdout
    assert done.returncode == 2


def test_checker_loads_the_standard_library_and_itself_only() -> None:
    done = run(
        "-c",
        "import sys, yieldplan.checking.__main__\n"
        "print(*sorted({name for name in sys.modules"
        " if name.split('.')[0] not in sys.stdlib_module_names}))",
    )
    loaded = set(done.stdout.split()) - {"__main__", "yieldplan", "yieldplan.checking"}
    assert "yieldplan.checking.bound" in loaded
    assert {
        name for name in loaded if not name.startswith("yieldplan.checking.")
    } == set()
