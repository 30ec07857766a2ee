"""Published cutting instances through the packer: whole rolls, and the best value of one plate."""

from __future__ import annotations

import tomllib
from fractions import Fraction
from pathlib import Path
from typing import Any

import pytest

from tests.packing.plates import ROLL, make_problem
from yieldplan.model.plan import Family
from yieldplan.packing.patterns.pricing import Pricing
from yieldplan.packing.searching.solve import solve
from yieldplan.packing.stop import Stop

INSTANCES = tomllib.loads(
    Path(__file__).with_name("cutting_instances.toml").read_text(encoding="utf-8")
)


def named(instances: list[dict[str, Any]]) -> list[Any]:
    return [pytest.param(instance, id=instance["id"]) for instance in instances]


@pytest.mark.parametrize("instance", named(INSTANCES["one_d"]))
@pytest.mark.parametrize("family", ["R", "C"])
def test_rolls_are_as_few_as_can_be_and_proved(
    instance: dict[str, Any], family: Family
) -> None:
    # A board as wide as the strip. The centimetre grid would do, but ticks are exact.
    scale = 10 if instance["stock"] > 1000 else 1
    problem = make_problem(
        (instance["stock"] // scale, 1),
        [(size // scale, 1) for size in instance["sizes"]],
        instance["demand"],
        family,
        copies=sum(instance["demand"]),
    )
    solution = solve(problem, Stop(gap=Fraction(0), work=4_000_000), lambda _: None)
    assert not any(solution.short)
    assert solution.cost == instance["optimum"] * ROLL
    # Lifted to whole rolls the floor is the same (paper13: 72.92 rolls become 73).
    assert solution.bound.value == solution.cost


@pytest.mark.parametrize("instance", named(INSTANCES["two_d"]))
def test_rip_first_on_a_clear_plate_is_the_two_stage_value(
    instance: dict[str, Any],
) -> None:
    assert value_of(instance, "R") == instance["two_stage_L"]


@pytest.mark.parametrize("instance", named(INSTANCES["two_d"]))
def test_rip_first_on_a_plate_laid_across_is_the_other_two_stage_value(
    instance: dict[str, Any],
) -> None:
    # Length and width changed places, the first cuts run across the plate.
    length, width = instance["plate"]
    across = instance | {
        "plate": [width, length],
        "items": [[w, long, value] for long, w, value in instance["items"]],
    }
    assert value_of(across, "R") == instance["two_stage_W"]


@pytest.mark.parametrize("instance", named(INSTANCES["two_d"]))
def test_crosscut_first_holds_both_two_stage_values_and_no_more_than_any_cuts(
    instance: dict[str, Any],
) -> None:
    # One section is rip first; a piece a strip, trimmed, is two stages the other way.
    best = value_of(instance, "C")
    assert best >= max(instance["two_stage_L"], instance["two_stage_W"])
    assert best <= instance["unlimited"]
    assert value_of(instance, "E") == best


def value_of(instance: dict[str, Any], family: Family) -> int:
    """The greatest value of one plate, by the pricing program."""
    items = instance["items"]
    # The published values are for any number of each.
    any_number = max(instance["plate"])
    problem = make_problem(
        tuple(instance["plate"]),
        [(length, width) for length, width, _ in items],
        [any_number] * len(items),
        family,
        copies=1,
    )
    return int(Pricing(problem).price([value for _, _, value in items])[0])
