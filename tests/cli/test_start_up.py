"""The program opens at once: help and version load click and nothing heavy."""

from __future__ import annotations

import json
import os
import statistics
import subprocess
import sys
import time

import pytest

HEAVY = ("pandas", "numpy", "ortools", "pydantic", "pint", "openpyxl", "PIL")
HELP = "from yieldplan.cli.main import main; main(['--help'])"


def loaded_after(program: str) -> set[str]:
    """Names of all modules loaded once the program has run."""
    tell = "import sys, json; sys.stderr.write(json.dumps(sorted(sys.modules)))"
    ran = subprocess.run(
        [sys.executable, "-c", f"{program}\n{tell}"],
        capture_output=True,
        check=True,
    )
    return set(json.loads(ran.stderr.splitlines()[-1]))


@pytest.mark.parametrize(
    "arguments",
    [["--help"], ["--version"], ["plan", "--help"], ["start", "--help"], []],
)
def test_help_loads_nothing_heavy(arguments: list[str]) -> None:
    loaded = loaded_after(f"from yieldplan.cli.main import main; main({arguments!r})")
    assert "click" in loaded
    assert loaded.isdisjoint(HEAVY)
    # Nor any room of the house behind the front door.
    rooms = {name.split(".")[1] for name in loaded if name.startswith("yieldplan.")}
    assert rooms <= {"cli"}


def test_checking_a_plan_needs_none_of_the_heavy_ones_either() -> None:
    loaded = loaded_after(
        "from yieldplan.desk.check_plan import check_plan\n"
        "from yieldplan.desk.explain import explain"
    )
    assert loaded.isdisjoint(HEAVY)


def run_time(*arguments: str) -> float:
    began = time.perf_counter()
    subprocess.run([sys.executable, *arguments], capture_output=True, check=True)
    return time.perf_counter() - began


@pytest.mark.skipif(
    bool(os.environ.get("YIELDPLAN_NO_TIMING")), reason="timing switched off"
)
def test_help_is_there_within_eight_bare_python_starts() -> None:
    # Taken in turns, so that a busy machine slows both; the module test above is the
    # strict one, this one tells when start-up grew for another reason.
    for _ in range(3):
        pairs = [(run_time("-c", "pass"), run_time("-c", HELP)) for _ in range(5)]
        bare, shown = (statistics.median(times) for times in zip(*pairs, strict=True))
        if shown <= 8 * bare:
            return
    pytest.fail(f"help took {shown:.3f} s, bare Python {bare:.3f} s")
