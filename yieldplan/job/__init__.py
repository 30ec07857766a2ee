"""The job file: read into a `Job`, every mistake with its line."""

from __future__ import annotations

from pathlib import Path

from yieldplan.faults import Faults
from yieldplan.model.job import Job


def read(path: Path, faults: Faults) -> Job | None:
    """The job of a file; every mistake goes to `faults`, None when it is not TOML at all.

    With faults noted the job is only as much as could be read: enough to read a tally
    against it, never enough to plan.
    """
    from yieldplan.job.reading import read_job  # pydantic loads here, not before

    return read_job(path, faults)
