"""Opening: the last 1/4 in (6 mm) of an opening's width or height, where the design leaves a choice."""

from __future__ import annotations

import dataclasses
from collections.abc import Iterator
from fractions import Fraction
from typing import Any

from yieldplan.model.job import Job
from yieldplan.units import Inches
from yieldplan.wishes.wish import Stated, Wish, named, named_by

_LESS: dict[str, tuple[Inches, str]] = {
    "in": (Fraction(1, 4), "1/4 in"),
    "mm": (Fraction(60, 254), "6 mm"),
}


class Opening(Wish):
    """One wish for the width and one for the height of all openings that are alike."""

    def stated(self, job: Job) -> Iterator[Stated]:
        less, words = _LESS[job.unit]
        alike: dict[tuple[str, Any], list[int]] = {}
        for place, assembly in enumerate(job.assemblies):
            opening = getattr(assembly, "opening", None)
            if opening is not None and dataclasses.is_dataclass(opening):
                alike.setdefault((type(assembly).__name__, opening), []).append(place)
        for (_, opening), places in alike.items():
            for side in ("width", "height"):
                size = getattr(opening, side, None)
                if not isinstance(size, Fraction) or size <= 4 * less:
                    continue
                smaller = dataclasses.replace(opening, **{side: size - less})
                assemblies: list[Any] = list(job.assemblies)
                for place in places:
                    assemblies[place] = dataclasses.replace(
                        assemblies[place], opening=smaller
                    )
                names = [named_by(assemblies[place]) for place in places]
                yield Stated(
                    words=f"the last {words} of opening {side}: {named(names)}",
                    without=dataclasses.replace(job, assemblies=tuple(assemblies)),
                )
