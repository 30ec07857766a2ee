"""Glue up: a wide panel out of strips whose widths the plan chooses, board by board."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from math import ceil

from yieldplan.blanks import allowances
from yieldplan.blanks.cautions import cautions, panel_cautions
from yieldplan.blanks.route import Route
from yieldplan.faults import Faults
from yieldplan.model.blanks import Blank, Inside
from yieldplan.model.job import Job
from yieldplan.model.parts import GlueUp, Part
from yieldplan.model.sums import Sum
from yieldplan.units import Inches, tape

MORE_STRIPS = 3
"""From one board a panel is offered in as few strips as will do, and in up to so many more."""


class StripsOfFreeWidth(Route):
    """Strips of any width between the least and the most, on the fence's step.

    Each is longer, wider and thicker by what the panel is squared, trimmed and flattened
    by, and brings so many steps of the panel's width; the panel is made when they come
    to its width and the trim. Where all must come from one board they lie in it as one
    blank: strips alike end to end, one above the other, or both.
    """

    def blanks(
        self, parts: Sequence[Part], job: Job, faults: Faults
    ) -> Iterator[Blank]:
        for part in parts:
            if part.glue_up is None:
                continue
            if part.glue_up.colour == "one board":
                yield from _from_one_board(part, part.glue_up, job)
            else:
                for steps in _steps_of_a_strip(part, part.glue_up):
                    yield _strip(part, part.glue_up.step, steps, job)


def _steps_of_a_strip(part: Part, glue_up: GlueUp) -> range:
    """Every width a strip may have, in steps; one as wide as the panel is no strip."""
    narrowest = ceil(glue_up.least / glue_up.step)
    widest = min(glue_up.most, part.width.value) // glue_up.step
    if widest * glue_up.step >= part.width.value:
        widest -= 1
    return range(narrowest, widest + 1)


def _strip(part: Part, step: Inches, steps: int, job: Job) -> Blank:
    shop, width = job.shop, steps * step
    return _blank(
        part,
        length=_length(part, job) + _lent(part, job),
        width=Sum.of(("strip", width), ("to joint the strip", shop.strip_width)),
        widest=width,
        makes=steps,
        inside=(_at(part, width, shop.panel_length / 2, shop.strip_width / 2),),
        words=f"strip of {part.id}, {tape(width, job.unit)} wide",
        job=job,
    )


def _from_one_board(part: Part, glue_up: GlueUp, job: Job) -> Iterator[Blank]:
    """The panel's strips in one blank, so that they cannot come from two boards."""
    allowed = _steps_of_a_strip(part, glue_up)
    worth_trying: list[int] = []
    for count in range(2, glue_up.units + 1):
        narrower = glue_up.units // count
        wider = ceil(glue_up.units / count)
        if narrower in allowed and wider in allowed:
            worth_trying.append(count)
    for count in worth_trying[: MORE_STRIPS + 1]:
        for rows in range(1, count + 1):
            if count % rows == 0:
                yield _grid(part, glue_up, count // rows, rows, job)


def _grid(part: Part, glue_up: GlueUp, columns: int, rows: int, job: Job) -> Blank:
    """So many strips along and across, all sawn as wide as the widest of them."""
    shop, count = job.shop, columns * rows
    narrower, over = divmod(glue_up.units, count)
    widest = ceil(glue_up.units / count) * glue_up.step
    length = _length(part, job)
    across = widest + shop.strip_width
    places = []
    for number in range(count):
        row, column = divmod(number, columns)
        width = (narrower + (number < over)) * glue_up.step
        x = column * (length.value + shop.kerf) + shop.panel_length / 2
        y = row * (across + shop.kerf) + shop.strip_width / 2
        places.append(_at(part, width, x, y))
    along = length.times(columns) + _kerfs(columns, job)
    return _blank(
        part,
        length=along + allowances.up_to_machine(along, [part], shop),
        width=Sum.of(
            ("widest strip", widest, rows), ("to joint a strip", shop.strip_width, rows)
        )
        + _kerfs(rows, job),
        widest=widest,
        makes=glue_up.units,
        inside=tuple(places),
        words=f"{part.id}, {count} strips of one board",
        job=job,
    )


def _blank(
    part: Part,
    *,
    length: Sum,
    width: Sum,
    widest: Inches,
    makes: int,
    inside: tuple[Inside, ...],
    words: str,
    job: Job,
) -> Blank:
    shop = job.shop
    flattened = Sum.of(
        ("finished thickness", part.thickness.value),
        ("to flatten the panel", shop.panel_thickness),
    )
    strip = Sum.of(("strip", widest + shop.strip_width))
    return Blank(
        id="",
        route="glue up",
        wood=part.wood,
        length=length,
        width=width,
        thickness=flattened + allowances.on_thickness([part], widest, shop),
        finished_thickness=flattened.value,
        makes={part.demand: makes},
        inside=inside,
        show_face=part.show_face,
        back_face=part.back_face,
        words=words,
        cautions=(
            *cautions(
                length=_length(part, job) + _lent(part, job),
                width=strip,
                finished_thickness=flattened.value,
                comes_to_size=False,
                lent=bool(_lent(part, job).terms),
                shop=shop,
                unit=job.unit,
            ),
            *panel_cautions(part, shop, job.unit),
        ),
        may_spare=len(inside) == 1,
    )


def _length(part: Part, job: Job) -> Sum:
    return Sum.of(
        ("finished length", part.length.value),
        ("to square the panel", job.shop.panel_length),
    )


def _lent(part: Part, job: Job) -> Sum:
    return allowances.up_to_machine(_length(part, job), [part], job.shop)


def _kerfs(places: int, job: Job) -> Sum:
    if places == 1:
        return allowances.NOTHING
    return Sum.of(("kerf", job.shop.kerf, places - 1))


def _at(part: Part, width: Inches, x: Inches, y: Inches) -> Inside:
    return Inside(demand=part.demand, x=x, y=y, length=part.length.value, width=width)
