"""Match: parts whose grain runs through, cut from one board in order, or the two halves of one board opened."""

from __future__ import annotations

import dataclasses
from collections.abc import Iterator, Sequence
from typing import ClassVar

from yieldplan.blanks.grain_sets import MIRRORED, GrainSet, grain_sets
from yieldplan.blanks.in_line import end_to_end, one_above_the_other, strictest
from yieldplan.blanks.plane import plain_blank
from yieldplan.blanks.resaw import resawn
from yieldplan.blanks.route import Route
from yieldplan.faults import Faults
from yieldplan.model.blanks import Blank, Step
from yieldplan.model.job import Job
from yieldplan.model.parts import Part


class Match(Route):
    """A grain-matched set: from one board, one face, one direction, in order.

    It is one blank with a kerf between parts. Parts of different widths laid end to end
    are also offered in steps: a section of the board for each, side by side along it,
    every one as wide as its part, so that the wood beside the narrow ones stays stock.
    Book-matched and slip-matched pairs come from one blank that is resawn. A set's
    parts are made in no other way.
    """

    may_be_left_out: ClassVar[bool] = False

    def blanks(
        self, parts: Sequence[Part], job: Job, faults: Faults
    ) -> Iterator[Blank]:
        for each in grain_sets(parts, job, faults):
            words = f"{each.match.name} ({len(each.parts)} matched)"
            if each.match.laid in MIRRORED:
                yield _mirrored(each, job)
            elif each.match.laid == "end to end":
                yield end_to_end(each.parts, "match", words, job)
                yield from _in_steps(each, job)
            else:
                yield one_above_the_other(each.parts, "match", words, job)


def _in_steps(each: GrainSet, job: Job) -> Iterator[Blank]:
    """A blank a part; the step's number is its place from the zero end."""
    parts, name = each.parts, each.match.name
    if parts[0].is_sawn_to_size or job.shop.breakdown == "rip first":
        return
    if len({part.width.value for part in parts}) == 1:
        return
    own = [plain_blank(part, job) for part in parts]
    # All from one board: where one of them takes the most planing the others do too.
    thickest = max(own, key=lambda blank: blank.thickness.value).thickness
    for number, blank in enumerate(own, start=1):
        yield dataclasses.replace(
            blank,
            route="match",
            thickness=thickest,
            show_face=strictest([part.show_face for part in parts]),
            back_face=strictest([part.back_face for part in parts]),
            words=f"{parts[number - 1].id}, step {number} of {len(parts)} of {name}",
            step=Step(set=name, number=number, of=len(parts)),
        )


_HOW = {
    "book-matched": "open the two slices like a book: the two sawn faces show,"
    " side by side at the edge they were hinged on",
    "slip-matched": "slide one slice off the other without turning it: the same face"
    " of both shows",
}


def _mirrored(each: GrainSet, job: Job) -> Blank:
    """Two parts from the two slices of one blank, at the same place of it."""
    first, name, laid = each.parts[0], each.match.name, each.match.laid
    blank = resawn(plain_blank(first, job), each.parts, job)
    return dataclasses.replace(
        blank,
        route="match",
        words=f"{name} ({laid})",
        cautions=(*blank.cautions, f"{name}, {laid}: {_HOW[laid]}."),
    )
