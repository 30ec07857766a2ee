"""From part to blank: what the saw must deliver; one route a file."""

from __future__ import annotations

import dataclasses
import sys
from collections.abc import Mapping, Sequence

from yieldplan.blanks.left_out import routes_taken
from yieldplan.blanks.route import Route
from yieldplan.faults import Faults
from yieldplan.model.blanks import Blank
from yieldplan.model.job import Job
from yieldplan.model.parts import Part
from yieldplan.registry import find

__all__ = ["Route", "routes"]


def routes(parts: Sequence[Part], job: Job, faults: Faults) -> tuple[Blank, ...]:
    """Every way the shop takes to make each part, numbered in the order of the parts.

    Test pieces come last. The number of a blank depends on the job alone.
    """
    known = find(sys.modules[__name__], Route)  # type: ignore[type-abstract]
    offered: list[Blank] = []
    for route in routes_taken(known, job, faults).values():
        offered += route().blanks(parts, job, faults)
    _note_unmade(parts, offered, job, faults)
    place = {part.demand: number for number, part in enumerate(parts)}
    offered.sort(key=lambda blank: _order(blank, place))
    return tuple(
        dataclasses.replace(blank, id=f"k{number}")
        for number, blank in enumerate(offered, start=1)
    )


def _note_unmade(
    parts: Sequence[Part], offered: Sequence[Blank], job: Job, faults: Faults
) -> None:
    made = {demand for blank in offered for demand in blank.makes}
    for part in parts:
        if part.demand not in made:
            faults.add(
                part.where,
                part.id,
                "no way this shop takes can make it",
                "Ask for it otherwise"
                + (
                    f", or take out of `without` under [shop]: {', '.join(job.shop.without)}"
                    if job.shop.without
                    else ""
                ),
            )


def _order(blank: Blank, place: Mapping[str, int]) -> tuple[object, ...]:
    made = sorted((place[demand], count) for demand, count in blank.makes.items())
    return (blank.set_up, made[0][0], len(blank.inside), blank.route, made)
