"""Resaw: two or three thin parts out of one thicker blank, slice by slice on the bandsaw."""

from __future__ import annotations

import dataclasses
from collections.abc import Iterator, Sequence
from fractions import Fraction

from yieldplan.blanks.groups import planed_singly
from yieldplan.blanks.in_line import strictest
from yieldplan.blanks.plane import plain_blank
from yieldplan.blanks.route import Route
from yieldplan.faults import Faults
from yieldplan.model.blanks import Blank
from yieldplan.model.job import Job
from yieldplan.model.parts import Part
from yieldplan.model.shop import Shop
from yieldplan.model.sums import Sum
from yieldplan.reference.tables import quarters
from yieldplan.units import Inches, UnitName, tape


class Resaw(Route):
    """One blank, as many like parts as it has slices.

    A slice is left a little thicker than its part (`resaw_slice`), the bandsaw takes its
    kerf, and the board is flattened before. Nothing wider than `resaw_height`, nothing
    too short for the machines. Sawing opens new faces: where any face must be clear, the
    wood must be clear through and through.

    Two slices are always offered: where only thick stock lies in the rack nothing else
    saves wood, and where none does the offer costs nothing. Three are offered where by
    the table of quarters they take less board measure a part than two.
    """

    def blanks(
        self, parts: Sequence[Part], job: Job, faults: Faults
    ) -> Iterator[Blank]:
        for part in planed_singly(parts, job):
            plain = plain_blank(part, job)
            if plain.width.value > job.shop.resaw_height:
                continue
            for count in _slices_worth_trying(part, job.shop):
                yield _of_one_part(part, plain, count, job)


def resawn(blank: Blank, parts: Sequence[Part], job: Job) -> Blank:
    """The blank thick enough for a slice to each part, all in the same place of it.

    Parameters
    ----------
    blank
        A blank of one of the parts alone.
    parts
        From the show face on.
    """
    shop = job.shop
    (place,) = blank.inside
    thick = _thickness(parts[0], len(parts), shop)
    flattening = Sum.of(("to flatten it before resawing", shop.resaw_flattening))
    face = strictest(
        [face for part in parts for face in (part.show_face, part.back_face)]
    )
    makes: dict[str, int] = {}
    for part in parts:
        makes[part.demand] = makes.get(part.demand, 0) + 1
    return dataclasses.replace(
        blank,
        thickness=thick + flattening,
        finished_thickness=thick.value,
        makes=makes,
        inside=tuple(
            dataclasses.replace(place, demand=part.demand, slice=number)
            for number, part in enumerate(parts)
        ),
        show_face=face,
        back_face=face,
        cautions=(*blank.cautions, *_cautions(parts[0], shop, job.unit)),
    )


def _of_one_part(part: Part, plain: Blank, count: int, job: Job) -> Blank:
    blank = resawn(plain, [part] * count, job)
    words = f"{part.id} ({count} resawn)"
    return dataclasses.replace(blank, route="resaw", words=words)


def _thickness(part: Part, count: int, shop: Shop) -> Sum:
    return Sum.of(
        ("finished thickness", part.thickness.value, count),
        ("to plane a slice", shop.resaw_slice, count),
        ("bandsaw kerf", shop.resaw_kerf, count - 1),
    )


def _slices_worth_trying(part: Part, shop: Shop) -> Iterator[int]:
    of_two, of_three = (_share_of_a_board(part, count, shop) for count in (2, 3))
    if part.quantity < 2 or of_two is None:
        return
    yield 2
    if part.quantity > 2 and of_three is not None and of_three < of_two:
        yield 3


def _share_of_a_board(part: Part, count: int, shop: Shop) -> Inches | None:
    """Thickness of board measure a part takes; None where no yard sells stock so thick."""
    thick = _thickness(part, count, shop).value + shop.resaw_flattening
    for quarter in quarters().values():
        if quarter.rough >= thick:
            return Fraction(quarter.rough / count)
    return None


def _cautions(part: Part, shop: Shop, unit: UnitName) -> Iterator[str]:
    slice_ = part.thickness.value + shop.resaw_slice
    yield (
        "Resawing: a sharp wide blade with few teeth, a fence as tall as the work, the guide"
        " just above it, a push stick for the last foot; stand beside the blade's path."
    )
    yield (
        f"Resawing: saw each slice {tape(slice_, unit)} {unit} thick, sticker the slices"
        " overnight, then flatten and plane them; a slice that cups is why they are left thick."
    )
