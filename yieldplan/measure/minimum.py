"""Minimum orders: what a wood, or all that is bought, must come to, and what fills it up."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from yieldplan.measure.money import from_units, say_money
from yieldplan.model.job import Job
from yieldplan.model.plan import Plan, PurchaseLine


def minimum_orders(job: Job) -> Iterator[tuple[str, int]]:
    """Each wood that has one, and what it must come to; last the whole order, under no name.

    [money/10,000]
    """
    for name, wood in sorted(job.woods.items()):
        if wood.minimum_order is not None:
            yield name, from_units(wood.minimum_order)
    if job.minimum_order is not None:
        yield "", from_units(job.minimum_order)


def filled_up(lines: Sequence[PurchaseLine], job: Job) -> tuple[PurchaseLine, ...]:
    """The purchase lines, with a line for each minimum order they do not reach.

    Where nothing is bought there is nothing to fill up.
    """
    all_lines = list(lines)
    for wood, least in minimum_orders(job):
        paid = sum(line.total for line in all_lines if wood in ("", line.wood))
        if 0 < paid < least:
            all_lines.append(
                PurchaseLine(
                    wood=wood,
                    line="minimum order",
                    grade="",
                    pieces=(),
                    board_feet=None,
                    by="minimum",
                    per=least,
                    total=least - paid,
                )
            )
    return tuple(all_lines)


def least_for(plan: Plan, wood: str) -> int:
    """The minimum order of a wood that is bought; 0 where it has none. [money/10,000]

    Parameters
    ----------
    wood
        Its name; nothing for the whole order.
    """
    bought = any(wood in ("", line.wood) and line.total for line in plan.purchase)
    return dict(minimum_orders(plan.job)).get(wood, 0) if bought else 0


def say_minimum(plan: Plan) -> list[str]:
    """For each minimum order that is filled up, how much wood may still be chosen for it."""
    return [
        f"The minimum order{f' of {line.wood}' if line.wood else ''} is "
        f"{say_money(line.per)}: {say_money(line.total)} of it buys wood of your choice, "
        "to keep for another job."
        for line in plan.purchase
        if line.by == "minimum"
    ]
