"""Gang: short parts left joined in one blank until they are milled, so that machines can take them."""

from __future__ import annotations

import dataclasses
from collections import Counter
from collections.abc import Iterator, Sequence

from yieldplan.blanks.groups import gangs, set_up_group
from yieldplan.blanks.in_line import end_to_end
from yieldplan.blanks.route import Route
from yieldplan.faults import Faults
from yieldplan.model.blanks import Blank
from yieldplan.model.job import Job
from yieldplan.model.parts import Part


class Gang(Route):
    """Several parts, each too short for the machines, end to end with a kerf between.

    One length allowance serves them all. Test pieces for joints are ganged too.
    """

    def blanks(
        self, parts: Sequence[Part], job: Job, faults: Faults
    ) -> Iterator[Blank]:
        for gang in gangs(parts, job):
            blank = end_to_end(gang, "gang", _words(gang), job)
            yield dataclasses.replace(blank, may_spare=True)
        for part in parts:
            count = set_up_group(part, job.shop) if part.set_up else 1
            if count > 1:
                pieces = (part,) * count
                blank = end_to_end(pieces, "gang", f"{count} × {part.id}", job)
                yield dataclasses.replace(blank, may_spare=True)


def _words(gang: Sequence[Part]) -> str:
    counts = Counter(part.id for part in gang)
    return " + ".join(f"{n} × {name}" if n > 1 else name for name, n in counts.items())
