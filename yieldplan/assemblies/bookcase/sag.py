"""How far a loaded shelf sags, whether that shows, and what would help."""

from __future__ import annotations

from fractions import Fraction
from math import ceil, floor

from yieldplan.joints.joint import say
from yieldplan.model.job import Job
from yieldplan.reference.tables import find_stiffness
from yieldplan.units import Inches, UnitName

KILOGRAMS_PER_POUND = Fraction(45_359_237, 100_000_000)
METRES_PER_FOOT = Fraction(3048, 10_000)
"""Both exact by definition (international yard and pound agreement, 1959)."""


def sag(
    *,
    span: Inches,
    width: Inches,
    thickness: Inches,
    pounds_per_foot: Fraction,
    modulus: Fraction,
) -> Inches:
    """What a shelf sinks in its middle under an even load: 5 w L⁴ / (384 E I). [in]

    A beam on two simple supports, I = width × thickness³ / 12 (USDA Forest Products
    Laboratory, Wood Handbook, FPL-GTR-190, 2010, ch. 9). A dado holds its shelf a little
    better than that, and shear makes a thin shelf sag hardly more.

    Parameters
    ----------
    span
        Between the sides. [in]
    width
        Front to back. [in]
    pounds_per_foot
        Load on each foot of the shelf. [lb/ft]
    modulus
        Modulus of elasticity along the grain. [lb/in²]
    """
    load = pounds_per_foot / 12
    inertia = width * thickness**3 / 12
    return 5 * load * span**4 / (384 * modulus * inertia)


def sag_caution(
    what: str,
    *,
    made_of: str,
    span: Inches,
    width: Inches,
    thickness: Inches,
    load: Fraction | None,
    job: Job,
) -> str:
    """What to mind about a shelf that sags more than the shop allows; else nothing.

    Parameters
    ----------
    what
        The shelf: `den/shelf`.
    made_of
        A wood or a sheet of the job.
    load
        On each foot [lb/ft], in a job in millimetres on each metre [kg/m]; None is
        the shop's.
    """
    load = job.shop.shelf_load if load is None else load
    modulus = _modulus(made_of, job)
    if not load:
        return ""
    if modulus is None:
        return (
            f"{what}: how stiff {made_of} is is not in the table; how far "
            f"{say(span, job.unit)} of it sag under books was not looked at."
        )
    pounds = load if job.unit == "in" else load * METRES_PER_FOOT / KILOGRAMS_PER_POUND
    sinks = sag(
        span=span,
        width=width,
        thickness=thickness,
        pounds_per_foot=pounds,
        modulus=modulus,
    )
    most = job.shop.shelf_sag * span
    if sinks <= most:
        return ""
    # The sag goes with 1 / thickness³, and its share of the span with span³.
    thicker, shorter = (
        _step_up(thickness, sinks, most, job.unit),
        _shorter(span, sinks, most, job.unit),
    )
    per = "lb a foot" if job.unit == "in" else "kg a metre"
    return (
        f"{what}: loaded with {_number(load)} {per} it sags {say(sinks, job.unit)} "
        f"over its {say(span, job.unit)}; {say(most, job.unit)} "
        f"({job.shop.shelf_sag} of the span) is the most the shop allows, and years of "
        f"load about double a sag. Make it {say(thicker, job.unit)} thick or at most "
        f"{say(shorter, job.unit)} between its supports, or glue a strip on edge under "
        "its front."
    )


def _step_up(thickness: Inches, sinks: Inches, most: Inches, unit: UnitName) -> Inches:
    """The least thickness on the step that sags no more than allowed."""
    step = _STEPS[unit][0]
    tried = ceil(thickness / step) * step
    while sinks * thickness**3 > most * tried**3:
        tried += step
    return tried


def _shorter(span: Inches, sinks: Inches, most: Inches, unit: UnitName) -> Inches:
    """The longest span on the step that sags no more of itself than allowed."""
    step = _STEPS[unit][1]
    tried = floor(span / step) * step
    while tried > step and sinks * tried**3 > most * span**3:
        tried -= step
    return tried


_STEPS: dict[UnitName, tuple[Inches, Inches]] = {
    "in": (Fraction(1, 8), Fraction(1, 2)),
    "mm": (Fraction(10, 254), Fraction(100, 254)),
}
"""Steps of thickness and of span that are worth proposing. [in]"""


def _modulus(made_of: str, job: Job) -> Fraction | None:
    wood = job.woods.get(made_of)
    written = wood.species if wood is not None else job.sheets[made_of].product
    found = find_stiffness(written)
    return found.modulus if found is not None else None


def _number(value: Fraction) -> str:
    return str(value) if value.denominator == 1 else f"{float(value):g}"
