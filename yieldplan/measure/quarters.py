"""The thickness a blank is bought in: the thinnest the yard sells that is thick enough."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from yieldplan.measure.thickness import Thickness, parse_thickness
from yieldplan.model.blanks import Blank
from yieldplan.model.job import Job
from yieldplan.reference import tables
from yieldplan.units import Inches, TapeError, tape


@dataclass(frozen=True, kw_only=True)
class Quarter:
    """A thickness of lumber to ask for.

    Parameters
    ----------
    name
        `4/4`, or as the job's price list has it; thicker than any: `4 1/2 rough`.
    measured
        What its board feet are counted by. [in]
    is_sold
        Whether a yard can be expected to have it.
    """

    name: str
    measured: Inches
    is_sold: bool = True


def quarter_for(blank: Blank, job: Job) -> Quarter:
    """The least standard quarter that is thick enough.

    Where the job's price list names other thicknesses for this wood, the yard sells by
    those (27 mm rough, 13/16 surfaced) and the least of the list is taken.
    """
    listed = list(_listed(blank.wood, job))
    if any(each.name not in tables.quarters() for each in listed):
        serving = [each for each in listed if _serves(each, blank)]
        if serving:
            least = min(serving, key=lambda t: (t.measured, t.thick, t.name))
            return Quarter(name=least.name, measured=least.measured)
    for name, quarter in tables.quarters().items():
        if quarter.rough >= blank.thickness.value:
            return Quarter(name=name, measured=quarter.rough)
    thick = blank.thickness.value
    suffix = " mm" if job.unit == "mm" else ""
    name = f"{tape(thick, job.unit)}{suffix} rough"
    return Quarter(name=name, measured=thick, is_sold=False)


def _listed(wood: str, job: Job) -> Iterator[Thickness]:
    for price in job.prices:
        if price.wood == wood:
            try:
                yield parse_thickness(price.thickness, job.unit)
            except TapeError:
                # The reader of the job file has said so already.
                continue


def _serves(offered: Thickness, blank: Blank) -> bool:
    if offered.is_surfaced:
        return offered.thick >= blank.finished_thickness
    return offered.thick >= blank.thickness.value
