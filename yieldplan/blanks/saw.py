"""Saw: a part of a sheet or of a stick, cut straight to its finished size; nothing is planed and nothing added."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction
from typing import ClassVar

from yieldplan.blanks.cautions import cautions
from yieldplan.blanks.grain_sets import matched
from yieldplan.blanks.route import Route
from yieldplan.faults import Faults
from yieldplan.model.blanks import Blank, Inside
from yieldplan.model.job import Job
from yieldplan.model.parts import Part
from yieldplan.model.sums import Sum


class Saw(Route):
    """A part of plywood or the like, or of a stick: blank and part are the same size.

    A part of a sheet whose face shows no grain is offered twice, along the sheet and
    across it.
    """

    may_be_left_out: ClassVar[bool] = False

    def blanks(
        self, parts: Sequence[Part], job: Job, faults: Faults
    ) -> Iterator[Blank]:
        in_sets = matched(parts, job)
        for part in parts:
            if not part.is_sawn_to_size or part.id in in_sets:
                continue
            yield _blank(part, job, is_turned=False)
            if _may_turn(part, job) and part.length.value != part.width.value:
                yield _blank(part, job, is_turned=True)


def _may_turn(part: Part, job: Job) -> bool:
    sheet = job.sheets.get(part.wood)
    if not part.is_sheet or sheet is None:
        return False
    # What the part says overrules the sheet: nobody sees which way a bottom runs.
    return not sheet.has_grain if part.may_turn is None else part.may_turn


def _blank(part: Part, job: Job, *, is_turned: bool) -> Blank:
    length = Sum.of(("finished length", part.length.value))
    width = Sum.of(("finished width", part.width.value))
    if is_turned:
        length, width = width, length
    whole = Inside(
        demand=part.demand,
        x=Fraction(0),
        y=Fraction(0),
        length=length.value,
        width=width.value,
    )
    return Blank(
        id="",
        route="saw",
        wood=part.wood,
        is_sheet=part.is_sheet,
        is_stick=part.is_stick,
        length=length,
        width=width,
        thickness=part.thickness,
        finished_thickness=part.thickness.value,
        makes={part.demand: 1},
        inside=(whole,),
        show_face=part.show_face,
        back_face=part.back_face,
        set_up=part.set_up,
        words=f"{part.demand} (turned)" if is_turned else part.demand,
        turned=is_turned,
        cautions=tuple(
            cautions(
                length=length,
                width=width,
                finished_thickness=part.thickness.value,
                comes_to_size=True,
                is_crosscut_only=part.is_stick,
                lent=False,
                shop=job.shop,
                unit=job.unit,
            )
        ),
    )
