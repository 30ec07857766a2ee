"""Plans a job the way the front door does, for tests that look at the whole."""

from __future__ import annotations

from functools import lru_cache
from pathlib import Path

from yieldplan import packing, plan_file
from yieldplan.desk.plan_job import Outcome, plan_job

EXAMPLES = Path(__file__).parents[2] / "example_jobs"


def example_folders() -> list[Path]:
    """Every folder under example_jobs that holds a job."""
    return sorted(file.parent for file in EXAMPLES.glob("*/job.toml"))


SHORT = packing.Stop(share=5)
"""A fifth of the search a person gets: the tests look at what is right, not at what is best."""
BRIEF = packing.Stop(share=20)
"""Enough for every stage to begin, where a job is planned more than once."""


@lru_cache
def outcome_of(job: Path, tally: Path, stop: packing.Stop = SHORT) -> Outcome:
    """The plan of a job, made once for all tests that ask."""
    return plan_job(job, [tally], stop=stop, hear=lambda _: None)


def plan_bytes(job: Path, tally: Path) -> bytes:
    """plan.json as it would be written after a brief search, planned afresh."""
    outcome = plan_job(job, [tally], stop=BRIEF, hear=lambda _: None)
    return plan_file.dump(outcome.document)
