"""Which parts are too short for the machines by themselves, and which of them can be milled as one blank."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import product

from yieldplan.blanks import allowances
from yieldplan.blanks.grain_sets import matched
from yieldplan.blanks.left_out import is_left_out
from yieldplan.model.job import Job
from yieldplan.model.parts import Part
from yieldplan.model.shop import Shop

MIXES_WITH_NEXT = 4
"""A short part is ganged with the next few in length; more would only add near-copies."""


def is_short(part: Part, shop: Shop) -> bool:
    """Whether the part's own blank is shorter than machines may take."""
    length = part.length + allowances.on_length([part], shop)
    return bool(allowances.up_to_machine(length, [part], shop).terms)


def planed_singly(parts: Sequence[Part], job: Job) -> Iterator[Part]:
    """Solid parts that are milled from a blank of their own, unless a route joins them.

    Neither sawn to size, nor test pieces, nor panels, nor matched, nor too short for the
    machines by themselves.
    """
    in_sets = matched(parts, job)
    for part in parts:
        if part.is_sawn_to_size or part.set_up or part.strips > 1 or part.glue_up:
            continue
        if part.id not in in_sets and not is_short(part, job.shop):
            yield part


def set_up_group(part: Part, shop: Shop) -> int:
    """How many test pieces are cut as one, to be long enough for the machines."""
    if part.is_sawn_to_size or is_left_out("gang", shop):
        return 1
    most = max(1, min(part.quantity, shop.gang_at_most))
    for count in range(1, most):
        whole = count * part.length.value + (count - 1) * shop.kerf
        if whole >= shop.machine_length:
            return count
    return most


def gangs(parts: Sequence[Part], job: Job) -> Iterator[tuple[Part, ...]]:
    """Every gang worth offering, its parts in order, the longest first.

    Same wood, thickness, width and faces; at most the shop's number; never more of a
    part than the job asks for.
    """
    in_sets = matched(parts, job)
    alike: dict[tuple[object, ...], list[Part]] = {}
    for part in parts:
        if (
            part.is_sawn_to_size
            or part.set_up
            or part.strips > 1
            or part.glue_up
            or part.id in in_sets
        ):
            continue
        if is_short(part, job.shop):
            alike.setdefault(_kind(part), []).append(part)
    for group in alike.values():
        group.sort(key=lambda part: (-part.length.value, part.id))
        yield from _of_group(group, job.shop.gang_at_most)


def _of_group(group: Sequence[Part], most: int) -> Iterator[tuple[Part, ...]]:
    for place, first in enumerate(group):
        for count in range(2, min(most, first.quantity) + 1):
            yield (first,) * count
        for second in group[place + 1 : place + 1 + MIXES_WITH_NEXT]:
            for one, two in product(range(1, most), repeat=2):
                enough = one <= first.quantity and two <= second.quantity
                if enough and one + two <= most:
                    yield (first,) * one + (second,) * two
        for count in range(3, most + 1):
            run = tuple(group[place : place + count])
            if len(run) == count:
                yield run


def _kind(part: Part) -> tuple[object, ...]:
    return (
        part.wood,
        part.thickness.value,
        part.width.value,
        part.show_face,
        part.back_face,
        part.flat,
        part.leg,
    )
