"""What an earlier search knew: a search of nearly the same problem begins where that one ended."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from yieldplan.packing.filling.first_plan import all_copies, first_plan
from yieldplan.packing.filling.packed import Packed, packed
from yieldplan.packing.filling.refill import refill
from yieldplan.packing.filling.yard import Column, Yard
from yieldplan.packing.grid.pattern import Pattern


@dataclass(frozen=True)
class Known:
    """A plan, patterns and prices to begin with. All patterns must be allowed.

    Parameters
    ----------
    patterns
        The plan's, one for each board; it may make too much or too little.
    columns
        Other patterns worth knowing.
    prices
        What each demand was worth; empty where not known. [money/10,000]
    """

    patterns: Sequence[Pattern] = ()
    columns: Sequence[Column] = ()
    prices: Sequence[int] = ()


def plan_from(known: Known, need: Sequence[int], yard: Yard) -> Packed:
    """The known plan cut to what is needed now.

    What it lacks is laid into what it leaves, and the rest into further boards, those
    that give most for the money.
    """
    plan = packed(known.patterns, need, yard)
    if plan.is_whole:
        return plan
    prices = known.prices or yard.area_prices(list(need))
    left = list(plan.short)
    patterns = []
    for pattern in plan.patterns:
        filled, left = refill(pattern, left, prices, yard)
        patterns.append(filled)
    supply = all_copies(yard)
    for pattern in patterns:
        supply[pattern.bin] -= 1
    unused = {number: count for number, count in supply.items() if count}
    more = first_plan(yard, left, prices, unused)
    return packed([*patterns, *more.patterns], need, yard)
