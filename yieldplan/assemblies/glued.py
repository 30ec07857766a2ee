"""A panel glued up from strips of free widths: what a job may say of it, and the parts it comes to."""

from __future__ import annotations

import dataclasses
from collections.abc import Iterator
from dataclasses import dataclass, field
from fractions import Fraction
from math import ceil
from typing import Literal

from yieldplan.faults import Faults
from yieldplan.model.job import Job
from yieldplan.model.parts import GlueUp, Part
from yieldplan.model.shop import Shop
from yieldplan.units import Inches, from_ticks, tape, to_ticks_up

MOST_PANELS = 100
"""Each panel is planned by itself, so there cannot be thousands of one kind."""


@dataclass(frozen=True, kw_only=True)
class GluedUp:
    """How a part may be glued up; `glue_up = true` takes every default.

    Parameters
    ----------
    least, most
        Finished width of a strip; left out, the shop's. [in]
    one_piece
        Whether a board wide enough for the whole panel will do as well.
    """

    least: Inches | None = field(
        default=None,
        metadata={"words": "narrowest strip; left out, the shop's strip_least"},
    )
    most: Inches | None = field(
        default=None,
        metadata={"words": "widest strip; left out, the shop's strip_most"},
    )
    colour: Literal["any", "one lot", "one board"] = field(
        default="any", metadata={"words": "which strips may stand side by side"}
    )
    one_piece: bool = field(
        default=True, metadata={"words": "whether one wide board will do as well"}
    )


def glued_up(part: Part, said: GluedUp, job: Job, faults: Faults) -> Iterator[Part]:
    """The part as one that may be glued up; several of it as a part each.

    So no strip belongs to two panels. What cannot be glued up goes to `faults`.

    Parameters
    ----------
    part
        As it would be without `glue_up`.
    """
    least = job.shop.strip_least if said.least is None else said.least
    most = job.shop.strip_most if said.most is None else said.most
    wrong, remedy = _trouble(part, least, most, job)
    if wrong:
        faults.add(part.where, part.id, wrong, remedy)
        return
    step = strip_step(job.shop)
    glue_up = GlueUp(
        step=step,
        units=ceil((part.width.value + job.shop.panel_width) / step),
        least=least,
        most=most,
        colour=said.colour,
        one_piece=said.one_piece,
    )
    for name in panel_names(part.id, part.quantity):
        yield dataclasses.replace(part, id=name, quantity=1, glue_up=glue_up)


def panel_names(name: str, quantity: int) -> tuple[str, ...]:
    """What each panel is called: the part's name, and its number where there are several."""
    if quantity == 1:
        return (name,)
    return tuple(f"{name} {number}" for number in range(1, quantity + 1))


def strip_step(shop: Shop) -> Inches:
    """What strips differ by: whole fence steps, a quarter inch at the least. [in]"""
    coarse = ceil(Fraction(1, 4) / shop.rip_step) * shop.rip_step
    return from_ticks(to_ticks_up(coarse))


def _trouble(part: Part, least: Inches, most: Inches, job: Job) -> tuple[str, str]:
    def say(inches: Inches) -> str:
        return f"{tape(inches, job.unit)} {job.unit}"

    if part.is_sawn_to_size:
        return "only solid wood is glued up", "Leave glue_up out"
    if part.strips > 1:
        return (
            "it is glued up from equal strips already",
            "Keep strips, or glue_up, not both",
        )
    if least > most:
        return (
            f"its narrowest strip, {say(least)}, is wider than its widest, {say(most)}",
            "Correct least or most under glue_up",
        )
    if part.width.value < least:
        return (
            f"it is {say(part.width.value)} wide, narrower than a strip of {say(least)}",
            "Leave glue_up out, or set a smaller least",
        )
    if part.quantity > MOST_PANELS:
        return (
            f"panels are planned one by one, {MOST_PANELS} at the most",
            "Ask for fewer, or say how many strips: strips = 3",
        )
    return "", ""
