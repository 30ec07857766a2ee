"""Saw: a sheet part, cut straight to its finished size; nothing is planed and nothing added."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from yieldplan.blanks.cautions import cautions
from yieldplan.blanks.grain_sets import matched
from yieldplan.blanks.route import Route
from yieldplan.faults import Faults
from yieldplan.model.blanks import Blank, Inside
from yieldplan.model.job import Job
from yieldplan.model.parts import Part
from yieldplan.model.sums import Sum


class Saw(Route):
    """A part of plywood or the like: blank and part are the same size."""

    def blanks(
        self, parts: Sequence[Part], job: Job, faults: Faults
    ) -> Iterator[Blank]:
        in_sets = matched(parts, job)
        for part in parts:
            if part.is_sheet and part.id not in in_sets:
                yield _blank(part, job)


def _blank(part: Part, job: Job) -> Blank:
    length = Sum.of(("finished length", part.length.value))
    width = Sum.of(("finished width", part.width.value))
    whole = Inside(
        demand=part.demand,
        x=length.value * 0,
        y=width.value * 0,
        length=length.value,
        width=width.value,
    )
    return Blank(
        id="",
        route="saw",
        wood=part.wood,
        is_sheet=True,
        length=length,
        width=width,
        thickness=part.thickness,
        finished_thickness=part.thickness.value,
        makes={part.demand: 1},
        inside=(whole,),
        show_face=part.show_face,
        back_face=part.back_face,
        set_up=part.set_up,
        words=part.demand,
        cautions=tuple(
            cautions(
                length=length,
                width=width,
                finished_thickness=part.thickness.value,
                is_sheet=True,
                lent=False,
                shop=job.shop,
                unit=job.unit,
            )
        ),
    )
