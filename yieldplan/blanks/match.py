"""Match: parts whose grain runs through, cut from one board in order as one blank."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import ClassVar

from yieldplan.blanks.grain_sets import grain_sets
from yieldplan.blanks.in_line import end_to_end, one_above_the_other
from yieldplan.blanks.route import Route
from yieldplan.faults import Faults
from yieldplan.model.blanks import Blank
from yieldplan.model.job import Job
from yieldplan.model.parts import Part


class Match(Route):
    """A grain-matched set: one blank, one face, one direction, a kerf between parts.

    Its parts are made in no other way.
    """

    may_be_left_out: ClassVar[bool] = False

    def blanks(
        self, parts: Sequence[Part], job: Job, faults: Faults
    ) -> Iterator[Blank]:
        for each in grain_sets(parts, job, faults):
            words = f"{each.match.name} ({len(each.parts)} matched)"
            if each.match.laid == "end to end":
                yield end_to_end(each.parts, "match", words, job)
            else:
                yield one_above_the_other(each.parts, "match", words, job)
