"""A plan that costs no more than the floor, if there is one: made of patterns that lose next to nothing.

At the prices of the floor a plan can cost more than the floor only by what its patterns
lose. Where the floor is nearly reached by the prices alone, few patterns lose so little,
and they can all be listed (`near_best`); a program in whole numbers then tries whether they
make everything. Parts that fill their sticks without any waste (triplets, as in
E. Falkenauer, Journal of Heuristics 2 (1996) 5-30) are the case that dives fail at.
"""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

import numpy as np

from yieldplan.packing.filling.yard import Column, Yard
from yieldplan.packing.floors.bound import Certificate, certify
from yieldplan.packing.listing.allowance import PAIRS_TO_A_UNIT, Allowance, TooMany
from yieldplan.packing.listing.ways import WaysOf
from yieldplan.packing.stop import Budget

_PAIRS = 1_500_000
"""Looked at, for all boards together."""
_MOST_BINS = 12
"""Each takes its time, whatever there is to list."""


def nearly_lossless(
    yard: Yard, need: Sequence[int], floor: Certificate, enough: int, budget: Budget
) -> list[Column] | None:
    """Every pattern that can be part of a plan that costs no more than enough.

    Parameters
    ----------
    enough
        Cost asked for. [money/10,000]

    Returns
    -------
    list of Column or None
        None where there are too many of them, or where offcuts count.
    """
    if yard.problem.offcut_percent or yard.problem.family.endswith("+"):
        return None
    if len(yard.pricing.bins) > _MOST_BINS:
        return None
    priced = certify(floor.prices, need, yard.pricing).priced
    values = yard.pricing.price(floor.prices)
    ways_of = WaysOf(yard.problem, need)
    pairs = min(_PAIRS, PAIRS_TO_A_UNIT * budget.work_left(Fraction(1, 2)))
    allowance = Allowance(pairs, budget.is_over)
    prices = np.array([floor.prices], np.int64)
    found: list[Column] = []
    try:
        for number in yard.pricing.bins:
            rent = max(int(values[number]), yard.price[number])
            least = np.array([rent - (enough - priced)], np.int64)
            if int(values[number]) < int(least[0]):
                continue
            ways = ways_of.ways(number, prices, least, allowance)
            patterns = map(ways.pattern, range(len(ways.made)))
            found += [yard.column(pattern) for pattern in patterns if pattern]
    except TooMany:
        return None
    finally:
        budget.spend(1000 + allowance.used // PAIRS_TO_A_UNIT)
    return found
