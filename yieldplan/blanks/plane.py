"""Plane: one blank, one part (or one strip of a glued-up part), milled from thicker or surfaced stock."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction
from typing import ClassVar

from yieldplan.blanks import allowances
from yieldplan.blanks.cautions import cautions, panel_cautions
from yieldplan.blanks.grain_sets import matched
from yieldplan.blanks.groups import set_up_group
from yieldplan.blanks.route import Route
from yieldplan.faults import Faults
from yieldplan.model.blanks import Blank, Inside
from yieldplan.model.job import Job
from yieldplan.model.parts import GlueUp, Part
from yieldplan.model.shop import Shop
from yieldplan.model.sums import Sum


class Plane(Route):
    """A part by itself, larger by its rough allowances.

    A part too short for the machines is left on a blank just long enough for them and
    cut off after milling. A part glued up from equal strips is delivered strip by strip;
    one that may be glued up from any strips is also offered whole, where the planer takes
    it.
    """

    may_be_left_out: ClassVar[bool] = False

    def blanks(
        self, parts: Sequence[Part], job: Job, faults: Faults
    ) -> Iterator[Blank]:
        in_sets = matched(parts, job)
        for part in parts:
            if part.is_sawn_to_size or part.id in in_sets:
                continue
            if part.set_up and set_up_group(part, job.shop) > 1:
                continue
            blank = plain_blank(part, job)
            if part.glue_up is None or _may_be_whole(part.glue_up, blank, job.shop):
                yield blank


def _may_be_whole(glue_up: GlueUp, blank: Blank, shop: Shop) -> bool:
    return glue_up.one_piece and blank.width.value <= shop.planer_width


def plain_blank(part: Part, job: Job) -> Blank:
    """The blank of one part, or of one strip of it."""
    shop = job.shop
    on_length = allowances.on_length([part], shop)
    length = Sum.of(("finished length", part.length.value)) + on_length
    lent = allowances.up_to_machine(length, [part], shop)
    width = part.width.value / part.strips
    if part.strips > 1:
        on_width = allowances.on_strip_width(part, shop)
        wide = Sum.of((f"finished width, 1 of {part.strips} strips", width)) + on_width
    else:
        on_width = allowances.on_width([part], width, shop)
        wide = Sum.of(("finished width", width)) + on_width
    finished = part.thickness.value + allowances.on_panel([part], shop).value
    thickness = Sum.of(("finished thickness", part.thickness.value))
    return Blank(
        id="",
        route="plane",
        wood=part.wood,
        length=length + lent,
        width=wide,
        thickness=thickness + allowances.on_thickness([part], width, shop),
        finished_thickness=finished,
        makes={part.demand: 1 if part.glue_up is None else part.glue_up.units},
        inside=(
            Inside(
                demand=part.demand,
                x=allowances.half(on_length),
                y=allowances.half(on_width),
                length=part.length.value,
                width=Fraction(width),
            ),
        ),
        show_face=part.show_face,
        back_face=part.back_face,
        set_up=part.set_up,
        words=part.demand if part.glue_up is None else f"{part.id} in one piece",
        cautions=(
            *cautions(
                length=length + lent,
                width=wide,
                finished_thickness=finished,
                comes_to_size=False,
                lent=bool(lent.terms),
                shop=shop,
                unit=job.unit,
            ),
            *(panel_cautions(part, shop, job.unit) if part.strips > 1 else ()),
        ),
    )
