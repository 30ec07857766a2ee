"""The quick bid's story: from a job file alone to what to buy, and the list of parts."""

from __future__ import annotations

from pathlib import Path
from typing import NamedTuple

from yieldplan import assemblies, blanks, job
from yieldplan.faults import Faults
from yieldplan.measure import bid
from yieldplan.model.bid import Bid
from yieldplan.model.job import Job
from yieldplan.model.parts import Built


class Commission(NamedTuple):
    """A job as read, and the parts it is built of."""

    job: Job
    built: Built


def quick_bid(job_file: Path) -> Bid:
    """What to buy for a job whose boards are not known yet.

    Raises
    ------
    FaultsFound
        With every mistake of the job.
    """
    faults = Faults()
    commission, built = _built(job_file, faults)
    routes = blanks.routes(built.parts, commission, faults)
    faults.stop_if_any()
    return bid.bid(commission, built.parts, routes, built.cautions)


def needs_no_tally(job_file: Path) -> bool:
    """Whether all its parts come from sheets and sticks, which the job file itself offers.

    Not so for a job with mistakes: whoever reads it next tells them.
    """
    faults = Faults()
    commission = job.read(job_file, faults)
    if commission is None:
        return False
    parts = assemblies.parts_of(commission, faults).parts
    return not len(faults) and bool(parts) and all(p.is_sawn_to_size for p in parts)


def parts_of(job_file: Path) -> Commission:
    """The job's parts, every size with its sum.

    Raises
    ------
    FaultsFound
        With every mistake of the job, of grain matches and glue-ups too.
    """
    faults = Faults()
    commission, built = _built(job_file, faults)
    blanks.routes(built.parts, commission, faults)
    faults.stop_if_any()
    return Commission(job=commission, built=built)


def _built(job_file: Path, faults: Faults) -> Commission:
    commission = job.read(job_file, faults)
    if commission is None:
        faults.stop_if_any()
        raise ValueError(f"{job_file} was not read and no fault says why")
    return Commission(job=commission, built=assemblies.parts_of(commission, faults))
