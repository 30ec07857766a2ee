"""Sentences that more than one sheet says: what is missing, what is bought, how a size is written."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from fractions import Fraction

from yieldplan.measure.gap import counted_for
from yieldplan.measure.money import down_to_the_cent
from yieldplan.measure.packs import left_whole
from yieldplan.model.job import Job
from yieldplan.model.parts import Part
from yieldplan.model.plan import Plan, WoodPlan
from yieldplan.units import Inches, UnitName, tape

UNIT_IN_WORDS: dict[UnitName, str] = {"in": "inches", "mm": "millimetres"}
_MOST_MISSING = 4


def incomplete(plan: Plan) -> str:
    """INCOMPLETE and what is missing; nothing when every part is planned."""
    missing = [each for wood in plan.woods for each in wood.missing]
    if not missing:
        return ""
    said = [
        f"{each.said}: {each.reason}; {each.remedy}."
        for each in missing[:_MOST_MISSING]
    ]
    more = len(missing) - _MOST_MISSING
    rest = [f"And {more} more kinds of parts."] if more > 0 else []
    return "\n".join(["INCOMPLETE. Missing:", *said, *rest])


def is_sheet(job: Job, wood: str) -> bool:
    """Whether a wood is a sheet product."""
    return wood in job.sheets and wood not in job.woods


def wood_in_words(job: Job, wood: str) -> str:
    """A wood as the job calls it, with its species or product where that says more."""
    if is_sheet(job, wood):
        named = job.sheets[wood].product
    elif wood in job.sticks and wood not in job.woods:
        named = job.sticks[wood].product
    else:
        known = job.woods.get(wood)
        named = known.species if known else wood
    return wood if not named or named == wood else f"{wood} ({named})"


def counted(number: int, one: str, many: str = "") -> str:
    """`1 board`, `2 boards`."""
    return f"{number} {one if number == 1 else many or one + 's'}"


def listed(names: Iterable[str]) -> str:
    """`a, b and c`."""
    words = list(names)
    if len(words) < 2:
        return "".join(words)
    return f"{', '.join(words[:-1])} and {words[-1]}"


def what_is_bought(plan: Plan) -> str:
    """`4 boards of walnut, 2 boards of poplar and 1 sheet of birch plywood`."""
    return listed(
        f"{counted(_bought(plan, wood), wood.thing)} of {_made_of(plan.job, wood.wood)}"
        for wood in plan.woods
        if wood.cuttings
    )


def _bought(plan: Plan, wood: WoodPlan) -> int:
    """How many pieces are paid for, cut or not."""
    whole = sum(count for _, count in left_whole(wood, plan.pieces))
    return len(wood.cuttings) + whole


def _made_of(job: Job, wood: str) -> str:
    if wood in job.woods:
        return wood
    if wood in job.sticks:
        return job.sticks[wood].product
    return job.sheets[wood].product if wood in job.sheets else wood


def finished_size(part: Part, unit: UnitName) -> str:
    """Thickness × width × length."""
    return size((part.thickness.value, part.width.value, part.length.value), unit)


def size(inches: Sequence[Inches], unit: UnitName) -> str:
    """Sizes as one reads them off a tape, between multiplication signs."""
    return " × ".join(tape(each, unit) for each in inches)


def floor_in_print(wood: WoodPlan, paid: int, least: int = 0) -> int:
    """The floor of one wood as it may be printed: never above what is paid. [money/10,000]

    Rounded down to the cent; what is paid adds lines rounded to the cent, so that a
    proved plan shows its cost.

    Parameters
    ----------
    least
        What it must come to besides. [money/10,000]
    """
    owed = paid - counted_for([wood])
    if wood.bound.value >= wood.cost:
        return owed
    return min(down_to_the_cent(max(wood.bound.value, least)), owed)


def half_up(value: Fraction, places: int) -> Fraction:
    """Rounded half up to some decimals."""
    scale = 10**places
    return Fraction((value * scale + Fraction(1, 2)).__floor__(), scale)
