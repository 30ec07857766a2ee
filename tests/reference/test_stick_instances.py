"""Published one-dimensional instances as sticks: from parts to a plan, as few as can be and proved."""

from __future__ import annotations

import dataclasses
from decimal import Decimal
from fractions import Fraction
from typing import Any

import pytest

from tests.builders import HERE, make_job, make_part, make_shop
from tests.reference.test_cutting_instances import INSTANCES, named
from yieldplan import blanks, plan_file, sources, stock
from yieldplan.checking import check
from yieldplan.faults import Faults
from yieldplan.measure import purchase
from yieldplan.model.job import Job, Stick, StickLength
from yieldplan.model.parts import Part
from yieldplan.model.plan import Plan, WoodPlan
from yieldplan.packing import Stop, plan_wood
from yieldplan.units import parse_length

EACH = 145_000
"""What one stick costs: 14.50. [money/10,000]"""


def as_sticks(instance: dict[str, Any]) -> tuple[Job, list[Part]]:
    """One unit of the instance is 1 mm; no kerf and no trim, as published."""
    scale = 10 if instance["stock"] > 1000 else 1
    job = make_job(
        unit="mm", shop=make_shop("mm", kerf="0", stick_trim="0", stick_step="1")
    )
    rod = Stick(
        name="rod",
        product="rod",
        width=parse_length("10 mm"),
        thickness=parse_length("10 mm"),
        lengths=(
            StickLength(
                length=parse_length(f"{instance['stock'] // scale} mm"),
                price=Decimal("14.50"),
            ),
        ),
        where=HERE,
    )
    parts = [
        make_part(
            f"p{number}", f"{size // scale} mm", "10 mm", "10 mm",
            wood="rod", is_stick=True, quantity=count,
        )
        for number, (size, count) in enumerate(
            zip(instance["sizes"], instance["demand"], strict=True)
        )
    ]  # fmt: skip
    return dataclasses.replace(job, sticks={"rod": rod}), parts


def planned(job: Job, parts: list[Part]) -> tuple[Plan, WoodPlan]:
    """Planned the way the front door does."""
    faults = Faults()
    routes = blanks.routes(parts, job, faults)
    pieces = sources.sheets_and_sticks(job, routes, parts)
    fits = stock.fits(routes, pieces)
    stop = Stop(gap=Fraction(0), work=4_000_000)
    wood = plan_wood("rod", parts, routes, pieces, fits, job, stop, lambda _: None)
    faults.stop_if_any()
    plan = Plan(
        job=job,
        parts=tuple(parts),
        blanks=routes,
        pieces=pieces,
        fits=fits,
        woods=(wood,),
        purchase=purchase.lines([wood]),
        cautions=(),
    )
    return plan, wood


@pytest.mark.parametrize("instance", named(INSTANCES["one_d"]))
def test_sticks_are_as_few_as_can_be_and_proved(instance: dict[str, Any]) -> None:
    # The data are READ in the source named beside each; the optimum of paper13 is READ,
    # the others are DERIVED (found by exact programs of our own).
    plan, wood = planned(*as_sticks(instance))
    assert not wood.missing
    assert len(wood.cuttings) == instance["optimum"]
    assert wood.bound.value == wood.cost == instance["optimum"] * EACH
    assert check(plan_file.write(plan))["objections"] == []
