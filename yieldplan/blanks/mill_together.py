"""Mill together: two or three like parts in one blank, milled as one and cut apart afterwards."""

from __future__ import annotations

import dataclasses
from collections.abc import Iterator, Sequence
from itertools import pairwise

from yieldplan.blanks.groups import planed_singly
from yieldplan.blanks.in_line import end_to_end, one_above_the_other
from yieldplan.blanks.route import Route
from yieldplan.faults import Faults
from yieldplan.model.blanks import Blank
from yieldplan.model.job import Job
from yieldplan.model.parts import Part

NAME = "mill together"
MOST_END_TO_END = 3
"""More than three gain little: each further part saves one rough length less a kerf."""


class MillTogether(Route):
    """Parts alike in wood, thickness, width and faces, end to end, one rough length for all.

    The blank is no longer than `very_long_over`: a longer one is more trouble on the
    jointer than the wood is worth. Its whole length decides what is jointed and planed
    away. Two narrow parts (up to `small_up_to_width`) also go one above the other, where
    the jointer takes both at once.
    """

    def blanks(
        self, parts: Sequence[Part], job: Job, faults: Faults
    ) -> Iterator[Blank]:
        for group in _alike(parts, job):
            for part in group:
                yield from _of_one_part(part, job)
            for longer, shorter in pairwise(group):
                # A part that has its like in itself needs no other beside it.
                if longer.quantity == 1 or shorter.quantity == 1:
                    words = f"{longer.id} + {shorter.id}"
                    yield from _in_a_row((longer, shorter), words, job)


def _of_one_part(part: Part, job: Job) -> Iterator[Blank]:
    for count in range(2, min(MOST_END_TO_END, part.quantity) + 1):
        yield from _in_a_row((part,) * count, f"{count} × {part.id}", job)
    if part.quantity > 1 and part.width.value <= job.shop.small_up_to_width:
        pair = one_above_the_other((part, part), NAME, f"2 × {part.id}", job)
        if pair.width.value <= job.shop.jointer_width:
            # There is a kerf between the two and nothing to joint the sawn edges by.
            apart = f"{pair.words}: rip them apart with a clean blade, those edges are finished."
            yield dataclasses.replace(pair, cautions=(*pair.cautions, apart))


def _in_a_row(row: Sequence[Part], words: str, job: Job) -> Iterator[Blank]:
    blank = end_to_end(row, NAME, words, job, by_whole_run=True)
    if blank.length.value <= job.shop.very_long_over:
        yield blank


def _alike(parts: Sequence[Part], job: Job) -> list[list[Part]]:
    """Parts that can share a blank, the longest first."""
    alike: dict[tuple[object, ...], list[Part]] = {}
    for part in planed_singly(parts, job):
        kind = (
            part.wood, part.thickness.value, part.width.value, part.show_face,
            part.back_face, part.flat, part.leg,
        )  # fmt: skip
        alike.setdefault(kind, []).append(part)
    for group in alike.values():
        group.sort(key=lambda part: (-part.length.value, part.id))
    return list(alike.values())
