"""Set-up pieces: test pieces on which each joint is tried before the work is cut."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from yieldplan.model.job import Job
from yieldplan.model.parts import Meeting, Part
from yieldplan.model.sums import Sum
from yieldplan.units import Inches


@dataclass(frozen=True)
class _Setting:
    """A joint as the machine is set for it: between which woods, how thick, how deep."""

    joint: str
    depth: object
    housed: tuple[object, ...]
    housing: tuple[object, ...]


def set_up_pieces(
    meetings: Sequence[Meeting], parts: Mapping[str, Part], job: Job
) -> tuple[Part, ...]:
    """Pieces to try each joint on, one setting for each pair of woods and thicknesses.

    Of each of the two parts the shop's number, as wide as the narrowest part the
    setting serves (a wide one would say no more) and no wider than long, any face. They
    are cut from what the plan leaves over; no board is opened for them.
    """
    settings: dict[_Setting, list[list[Part]]] = {}
    for meeting in meetings:
        pair = [parts[each] for each in (meeting.housed, meeting.housing) if each]
        if not meeting.needs_set_up:
            continue
        kinds = [(part.wood, part.thickness.value) for part in pair]
        setting = _Setting(
            meeting.joint, meeting.depth.value, kinds[0], kinds[1] if pair[1:] else ()
        )
        settings.setdefault(setting, []).append(pair)

    made: dict[str, Part] = {}
    for setting, pairs in settings.items():
        for place in range(len(pairs[0])):
            narrowest = min((pair[place] for pair in pairs), key=_width_and_id)
            piece = _piece(setting.joint, narrowest, job, taken=made)
            if piece.quantity:
                made[piece.id] = piece
    return tuple(made.values())


def _piece(joint: str, like: Part, job: Job, *, taken: Mapping[str, Part]) -> Part:
    shop = job.shop
    name = f"set-up/{joint}, {like.id.rpartition('/')[2]}"
    number = 1
    while (name if number == 1 else f"{name} {number}") in taken:
        number += 1
    return Part(
        id=name if number == 1 else f"{name} {number}",
        quantity=shop.set_up_pieces,
        wood=like.wood,
        is_sheet=like.is_sheet,
        is_stick=like.is_stick,
        length=Sum.of(("set-up piece", shop.set_up_length)),
        width=_width(like, shop.set_up_length),
        thickness=Sum.of((f"as {like.id}", like.thickness.value)),
        show_face="any",
        back_face="any",
        set_up=True,
        note=f"to set up the {joint}",
        where=like.where,
    )


def _width(like: Part, long: Inches) -> Sum:
    """As its part, but no wider than the piece is long: a corner of a wide panel will do."""
    if like.width.value > long:
        return Sum.of(("no wider than it is long", long))
    return Sum.of((f"as {like.id}", like.width.value))


def _width_and_id(part: Part) -> tuple[object, str]:
    return part.width.value, part.id
