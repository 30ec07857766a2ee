"""One board: a wide part in one piece, or a panel's strips of one colour; without it strips of any lot will do."""

from __future__ import annotations

import dataclasses
from collections.abc import Iterator

from yieldplan.assemblies.glued import GluedUp
from yieldplan.assemblies.part import PlainPart
from yieldplan.model.job import Job
from yieldplan.wishes.wish import Stated, Wish


class OneBoard(Wish):
    """One wish for each wide part in one piece, and for each panel whose colour must match."""

    def stated(self, job: Job) -> Iterator[Stated]:
        for place, part in enumerate(job.assemblies):
            if not isinstance(part, PlainPart) or part.wood is None or part.strips > 1:
                continue
            if part.glue_up is not None and part.glue_up.colour != "any":
                words = f"{part.name} glued up from {part.glue_up.colour}"
                freely = dataclasses.replace(part.glue_up, colour="any")
            elif part.glue_up is None and (part.width or 0) > job.shop.jointer_width:
                words = f"{part.name} in one board"
                freely = GluedUp()
            else:
                continue
            assemblies = list(job.assemblies)
            assemblies[place] = dataclasses.replace(part, glue_up=freely)
            without = dataclasses.replace(job, assemblies=tuple(assemblies))
            yield Stated(words=words, without=without)
