"""A shop without the compiler plans all it ever did: nothing asks for it unasked."""

from __future__ import annotations

import subprocess
import sys

CODE = """
import sys

sys.modules["numba"] = None  # as if it were not installed
from tests.packing.wood_jobs import make_blank, make_board, make_part, objections, plan_of

part = make_part("shelf", "20", "3", 2)
for breakdown in ("crosscut first", "rip first", "either"):
    plan, wood = plan_of(
        [part], [make_blank([part])], [make_board("W1", "72", "5")], breakdown=breakdown
    )
    assert objections(plan) == []
    assert wood.bound.value == wood.cost > 0
assert "yieldplan.packing.patterns.beside_marks" not in sys.modules
"""


def test_plain_plans_need_no_compiler() -> None:
    done = subprocess.run(
        [sys.executable, "-c", CODE], check=False, capture_output=True, text=True
    )
    assert done.returncode == 0, done.stderr
