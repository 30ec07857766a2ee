"""The verdict on a plan file: every rule in turn, and the floor worked out again."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from typing import Any

from yieldplan.checking import (
    bound,
    cuts,
    demands,
    faces,
    floors,
    lesser,
    money,
    names,
    offcuts,
    packs,
    panels,
    resaw,
    steps,
    stock,
    stretches,
    zones,
)
from yieldplan.checking.facts import Plan
from yieldplan.checking.floors import Floor
from yieldplan.checking.reading import read

Rule = Callable[[Plan], Iterator[str]]


def check(document: dict[str, Any]) -> dict[str, Any]:
    """What is wrong with a plan, what its woods cost, and what they cannot cost less than.

    Parameters
    ----------
    document
        A plan file as JSON gives it. Damage of any kind is an objection, never an error.

    Returns
    -------
    dict
        `objections`, sentences, none when the plan holds; `floors` and `costs`, wood to
        what was worked out again [money/10,000], empty where the file cannot be
        followed so far; `checked`, what was looked at, in words.
    """
    plan, objections = read(document)
    if plan is None:
        return _report(objections)
    objections = _run((*names.RULES, *lesser.NAMES), plan)
    if objections:
        return _report(objections)
    objections = _run(
        (
            *cuts.RULES,
            *stock.RULES,
            *stretches.RULES,
            *faces.RULES,
            *zones.RULES,
            *steps.RULES,
            *resaw.RULES,
            *panels.RULES,
            *offcuts.RULES,
            *packs.RULES,
            *demands.RULES,
            *money.RULES,
        ),
        plan,
    )
    costs = {wood.name: money.cost_of(plan, wood) for wood in plan.woods}
    proved, unproved = floors.prove(plan)
    objections += unproved + _run((bound.bound_is_not_above_the_cost,), plan)
    return _report(objections, proved, costs, _looked_at(plan, proved))


def _run(rules: Iterable[Rule], plan: Plan) -> list[str]:
    return [objection for rule in rules for objection in rule(plan)]


def _report(
    objections: list[str],
    proved: dict[str, Floor] | None = None,
    costs: dict[str, int] | None = None,
    checked: list[str] | None = None,
) -> dict[str, Any]:
    return {
        "objections": objections,
        "floors": {name: floor.value for name, floor in (proved or {}).items()},
        "costs": costs or {},
        "checked": checked or [],
    }


def _looked_at(plan: Plan, proved: dict[str, Floor]) -> list[str]:
    """What was looked at, counted, in words."""
    nodes = [
        node
        for wood in plan.woods
        for cutting in wood.cuttings
        for node in cutting.tree.every()
    ]
    num_cuts = sum(bool(node.into) for node in nodes)
    num_blanks = sum(bool(node.blank) for node in nodes)
    # Set-up pieces and the steps of a panel's width are no parts to anyone.
    num_parts = sum(part.quantity for part in plan.parts if not part.set_up)
    num_marks = sum(len(piece.marks) for piece in plan.stock)
    return [
        f"{_count(num_cuts, 'set')} of cuts: each comes apart into its pieces and kerfs",
        f"{_count(num_blanks, 'blank')} sawn: large enough, from stock that serves, "
        f"clear of {_count(num_marks, 'mark')} they may not have",
        f"{_count(num_parts, 'part')} needed: made as often as asked, each inside its "
        "blank, its size the sum of its terms",
        f"{_count(len(plan.purchase), 'purchase line')}: board feet, prices, rounding, "
        "total",
        f"{_count(len(proved), 'floor')} worked out again from its prices, over "
        f"{_count(len(plan.stock), 'piece')} of stock",
        *(
            f"the floor of {name} worked out again {floor.how}"
            for name, floor in proved.items()
            if floor.how
        ),
    ]


def _count(number: int, thing: str) -> str:
    return f"{number} {thing}{'' if number == 1 else 's'}"
