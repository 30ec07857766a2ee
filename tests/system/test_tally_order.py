"""Property 4: the order of a tally's rows is the yard's business, not the plan's."""

from __future__ import annotations

import random
from pathlib import Path

import pytest

from tests.system.runs import EXAMPLES, plan_bytes

INCH_JOB = EXAMPLES / "bank_of_drawers"


@pytest.mark.parametrize("seed", [1])
def test_shuffled_rows_give_the_same_bytes(tmp_path: Path, seed: int) -> None:
    job, tally = INCH_JOB / "job.toml", INCH_JOB / "tally.csv"
    head, *rows = tally.read_text(encoding="utf-8").splitlines()
    assert all(row.split(",")[0] for row in rows), "every row needs an id here"
    random.Random(seed).shuffle(rows)
    shuffled = tmp_path / "tally.csv"
    shuffled.write_text("\n".join([head, *rows]) + "\n", encoding="utf-8")
    assert plan_bytes(job, shuffled) == plan_bytes(job, tally)
