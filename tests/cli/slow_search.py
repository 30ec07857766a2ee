"""Runs the front door on a search that never ends by itself, for tests that press Ctrl-C.

`python -m tests.cli.slow_search PLANS ARGUMENTS...`: says "searching" once the search
runs, and reports a plan before that when PLANS is "some", never when it is "none". With
"deaf" it reports one and does not listen when asked to stop.
"""

from __future__ import annotations

import sys
import time
from pathlib import Path
from typing import Any

import pytest

from tests.cli.fakes import outcome_of, plans
from tests.measure.hall_case import make_plan
from yieldplan.cli.main import main
from yieldplan.desk.plan_job import Outcome
from yieldplan.packing import Progress


def search(kind: str, **said: Any) -> Outcome:
    """Waits until it is asked to stop; a minute at the most."""
    if kind != "none":
        said["hear"](
            Progress(wood="walnut", stage="dive", cost=400_000, bound=360_000, work=1)
        )
    print("searching", flush=True)
    for _ in range(600):
        if said["stop"].asked.is_set() and kind == "some":
            break
        time.sleep(0.1)
    return outcome_of(make_plan())


if __name__ == "__main__":
    kind, *arguments = sys.argv[1:]
    with pytest.MonkeyPatch.context() as patch:
        plans(patch, lambda **said: search(kind, **said))
        sys.exit(main([*arguments[:1], str(Path(arguments[1])), *arguments[2:]]))
