"""How much wood moves across the grain between today and the seasons it will live in."""

from __future__ import annotations

from fractions import Fraction
from math import ceil
from typing import Literal

from yieldplan.faults import Faults, Where
from yieldplan.model.job import Job
from yieldplan.reference.tables import find_species
from yieldplan.units import Inches

Cut = Literal["flatsawn", "quartersawn"]
"""How a board was sawn from the log: its growth rings along its width, or through it."""


def coefficient_of(wood: str, job: Job, cut: Cut = "flatsawn") -> Fraction | None:
    """How much one of the job's woods moves; None where its species is unknown.

    As a share of the width for each per cent of moisture. Flatsawn is the wider mover,
    and the one to go by where nobody knows yet how a board was sawn. [1/per cent]
    """
    known = find_species(job.woods[wood].species)
    if known is None:
        return None
    return known.tangential if cut == "flatsawn" else known.radial


def growth(
    width: Inches, *, coefficient: Fraction, points: Fraction, step: Inches
) -> Inches:
    """What a width gains, up to the next step.

    Width × coefficient × points of moisture: the dimensional change coefficients of the
    Wood Handbook (USDA Forest Products Laboratory, FPL-GTR-190, 2010, ch. 13).

    Parameters
    ----------
    width
        Across the grain. [in]
    coefficient
        Change for each per cent of moisture, as a share of the width. [1/per cent]
    points
        Moisture of the wettest season less today's. [per cent]
    step
        What the gain is rounded up to; 0 leaves it as it is. [in]
    """
    gain = width * coefficient * points
    return ceil(gain / step) * step if step > 0 else gain


def growth_of(
    width: Inches, wood: str, job: Job, where: Where, faults: Faults
) -> Inches:
    """What a width of one of the job's woods gains; a fault where its species is unknown."""
    coefficient = coefficient_of(wood, job)
    if coefficient is None:
        faults.add(
            where,
            job.woods[wood].species,
            f"how much this species moves is not in the table, so {wood} cannot be made net to its opening",
            "Give clearance = { height = ... } yourself, or plane it to fit, or write a species the table has",
        )
        return Fraction(0)
    shop = job.shop
    return growth(
        width,
        coefficient=coefficient,
        points=shop.moisture_wettest - shop.moisture_today,
        step=shop.movement_step,
    )
