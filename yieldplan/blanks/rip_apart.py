"""Rip apart: slats side by side in one wide blank, milled flat as one and ripped off one by one."""

from __future__ import annotations

import dataclasses
from collections.abc import Iterator, Sequence
from fractions import Fraction

from yieldplan.blanks.groups import planed_singly
from yieldplan.blanks.in_line import one_above_the_other
from yieldplan.blanks.route import Route
from yieldplan.faults import Faults
from yieldplan.model.blanks import Blank
from yieldplan.model.job import Job
from yieldplan.model.parts import Part
from yieldplan.model.sums import Sum
from yieldplan.units import tape

NAME = "rip apart"
WIDEST_SLAT = Fraction(3, 2)
"""Wider parts are as well milled by themselves. Common practice, no source. [in]"""
FEWEST, MOST = 3, 6
"""Two are milled together already; more than six are a wide board to keep flat."""
JOINTED = Fraction(1, 32)
"""One pass over the jointer takes the saw marks off the edge before the next rip.
Common practice, no source. [in]"""


class RipApart(Route):
    """Three to six like slats in a blank as wide as all of them, no wider than the jointer.

    The blank is jointed and planed as one board, which is safer than feeding slats one
    by one. Then a slat is ripped off, the blank's edge jointed again, and so on: between
    two slats lie a kerf and one pass of the jointer.
    """

    def blanks(
        self, parts: Sequence[Part], job: Job, faults: Faults
    ) -> Iterator[Blank]:
        for part in planed_singly(parts, job):
            if part.width.value > WIDEST_SLAT:
                continue
            for count in range(FEWEST, min(MOST, part.quantity) + 1):
                blank = _side_by_side(part, count, job)
                is_long_enough = blank.length.value >= job.shop.shortest_rip
                if is_long_enough and blank.width.value <= job.shop.jointer_width:
                    yield blank


def _side_by_side(part: Part, count: int, job: Job) -> Blank:
    words = f"{part.id} ({count} ripped apart)"
    blank = one_above_the_other((part,) * count, NAME, words, job)
    # A kerf lies between them already; the jointer takes its pass off each sawn edge.
    upward = sorted(blank.inside, key=lambda place: place.y)
    apart = tuple(
        dataclasses.replace(place, y=place.y + number * JOINTED)
        for number, place in enumerate(upward)
    )
    passes = Sum.of(("to joint the edge before the next rip", JOINTED, count - 1))
    off = f"{tape(part.width.value, job.unit)} {job.unit}"
    return dataclasses.replace(
        blank,
        width=blank.width + passes,
        inside=apart,
        cautions=(
            *blank.cautions,
            f"{words}: joint an edge, rip a slat of {off} off it, joint again; a push "
            "block reaches across a narrow slat, and nobody reaches for it while the "
            "blade turns.",
        ),
    )
