"""Grain match: parts from one board in order; without it each comes from wherever it is cheapest."""

from __future__ import annotations

import dataclasses
from collections.abc import Iterator

from yieldplan.model.job import Job
from yieldplan.wishes.wish import Stated, Wish


class GrainMatch(Wish):
    """One wish for each matched set of the job."""

    def stated(self, job: Job) -> Iterator[Stated]:
        for match in job.grain_matches:
            others = tuple(each for each in job.grain_matches if each is not match)
            yield Stated(
                words=f"{match.name} matched, {match.laid}",
                without=dataclasses.replace(job, grain_matches=others),
            )
