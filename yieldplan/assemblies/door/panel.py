"""The panel in a door's frame: its size, the room solid wood needs to move, its hold in the driest season."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from yieldplan.assemblies.door.keys import Panel
from yieldplan.assemblies.movement import coefficient_of, growth
from yieldplan.faults import Faults, Where
from yieldplan.joints.joint import say
from yieldplan.model.job import Job
from yieldplan.model.sums import Sum
from yieldplan.units import Inches

LEAST_HOLD = Fraction(1, 16)
"""What a panel must still stand in its groove; common practice, no source. [in]"""


@dataclass(frozen=True, kw_only=True)
class Size:
    """Length and width of a panel."""

    length: Sum
    width: Sum


def size(
    panel: Panel, wide: Sum, high: Sum, job: Job, where: Where, faults: Faults
) -> Size:
    """The panel, less its play or its room to move.

    Parameters
    ----------
    wide, high
        From groove bottom to groove bottom, across and up the door.
    """
    along, across = (high, wide) if panel.grain == "upright" else (wide, high)
    play = play_of(panel, job)
    less = Sum.of(("play", -play)) if play else Sum(())
    if panel.sheet is not None:
        return Size(length=along + less, width=across + less)
    room = room_to_move(panel, across.value, job, where, faults)
    move = Sum.of(("room to move", -room)) if room else Sum(())
    return Size(length=along + less, width=across + move)


def play_of(panel: Panel, job: Job) -> Inches:
    """What the panel is less than its grooves in the direction it does not move. [in]"""
    return job.shop.panel_play if panel.play is None else panel.play


def room_to_move(
    panel: Panel, across: Inches, job: Job, where: Where, faults: Faults
) -> Inches:
    """What a solid panel that wide would gain by the wettest season. [in]"""
    if panel.room_to_move is not None:
        return panel.room_to_move
    coefficient = coefficient_of(panel.wood or "", job, panel.cut)
    if coefficient is None:
        faults.add(
            where,
            job.woods[panel.wood or ""].species,
            f"how much this species moves is not in the table, so a panel of {panel.wood} cannot be given its room",
            "Write room_to_move on the panel yourself, or a species the table has",
        )
        return Fraction(0)
    shop = job.shop
    return growth(
        across,
        coefficient=coefficient,
        points=max(Fraction(0), shop.moisture_wettest - shop.moisture_today),
        step=shop.movement_step,
    )


def movement_cautions(
    panel: Panel, across: Inches, made: Inches, groove: Inches, job: Job
) -> Iterator[str]:
    """When a solid panel would push its frame apart, or leave its grooves.

    Parameters
    ----------
    across
        From groove bottom to groove bottom across the panel's grain. [in]
    made
        Finished width of the panel. [in]
    groove
        Depth of the grooves. [in]
    """
    coefficient = coefficient_of(panel.wood or "", job, panel.cut)
    if coefficient is None:
        return
    shop, unit = job.shop, job.unit
    change = made * coefficient
    wider = change * max(Fraction(0), shop.moisture_wettest - shop.moisture_today)
    if made + wider > across:
        yield (
            f"at {_per_cent(shop.moisture_wettest)} it grows by {say(wider, unit)} and has {say(across - made, unit)} of room: it would push the frame apart"
        )
    narrower = change * max(Fraction(0), shop.moisture_today - shop.moisture_driest)
    dry = f"at {_per_cent(shop.moisture_driest)} it shrinks by {say(narrower, unit)}"
    sight = across - 2 * groove
    hold = made - narrower - sight
    if hold <= 0:
        yield (
            f"{dry} to {say(made - narrower, unit)} and falls out of its grooves, which are {say(sight, unit)} apart: deepen the grooves, or take quartersawn wood or a sheet"
        )
    elif hold < 2 * LEAST_HOLD:
        yield (
            f"{dry} and stands only {say(hold / 2, unit)} in each groove: deepen the grooves, or take quartersawn wood or a sheet"
        )
    elif hold <= groove:
        yield (
            f"{dry}; pushed to one side it would leave the groove on the other: pin it at the middle of both rails"
            if panel.grain == "upright"
            else f"{dry}; dropped to the lower rail it would leave the upper groove: pin it at the middle of both stiles"
        )


def _per_cent(moisture: Fraction) -> str:
    return f"{float(moisture):g} per cent moisture"
