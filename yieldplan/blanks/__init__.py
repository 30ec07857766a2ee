"""From part to blank: what the saw must deliver; one route a file."""

from __future__ import annotations

import dataclasses
import sys
from collections.abc import Mapping, Sequence

from yieldplan.blanks.route import Route
from yieldplan.faults import Faults
from yieldplan.model.blanks import Blank
from yieldplan.model.job import Job
from yieldplan.model.parts import Part
from yieldplan.registry import find

__all__ = ["Route", "routes"]


def routes(parts: Sequence[Part], job: Job, faults: Faults) -> tuple[Blank, ...]:
    """Every way to make each part, numbered in the order of the parts.

    Test pieces come last. The number of a blank depends on the job alone.
    """
    offered: list[Blank] = []
    for _, route in sorted(find(sys.modules[__name__], Route).items()):  # type: ignore[type-abstract]
        offered += route().blanks(parts, job, faults)
    place = {part.demand: number for number, part in enumerate(parts)}
    offered.sort(key=lambda blank: _order(blank, place))
    return tuple(
        dataclasses.replace(blank, id=f"k{number}")
        for number, blank in enumerate(offered, start=1)
    )


def _order(blank: Blank, place: Mapping[str, int]) -> tuple[object, ...]:
    made = sorted((place[demand], count) for demand, count in blank.makes.items())
    return (blank.set_up, made[0][0], len(blank.inside), blank.route, made)
