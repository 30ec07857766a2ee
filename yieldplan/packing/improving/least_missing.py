"""Too little wood: the plan that leaves the least part area unmade, show parts first."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

import numpy as np

from yieldplan.packing.filling.first_plan import all_copies, first_plan
from yieldplan.packing.filling.packed import Packed
from yieldplan.packing.filling.yard import Yard
from yieldplan.packing.floors.column_generation import Generation
from yieldplan.packing.improving.dive import Dive, Question
from yieldplan.packing.improving.neighbourhoods import Repair
from yieldplan.packing.stop import NO_LIMIT, Budget

_SHOW = 40
"""How much more a show part weighs than another of its size."""
_DIVES = 8
_REPAIRS = 24


def least_missing(
    yard: Yard,
    need: Sequence[int],
    plan: Packed,
    budget: Budget,
    rng: np.random.Generator,
) -> Packed:
    """The best plan found, at least as good as the one given.

    What is unmade is weighed by its area, far above any money.
    """
    weights = _weights(yard)
    best = plan
    for prices in (weights, yard.area_prices(need)):
        best = min(best, first_plan(yard, need, prices), key=lambda p: p.key)
    generation = Generation(yard, need, weights)
    for pattern in best.patterns:
        generation.add(yard.column(pattern))
    generation.run(budget, Fraction(1, 2), lambda _: None)
    prices = [
        int(min(price, weight))
        for price, weight in zip(
            generation.shares.prices if generation.shares else weights,
            weights,
            strict=True,
        )
    ]
    best = min(best, first_plan(yard, need, prices), key=lambda p: p.key)
    question = Question(tuple(need), all_copies(yard), weights, NO_LIMIT)
    for number in range(_DIVES):
        if budget.is_over(Fraction(13, 20)) or best.is_whole:
            break
        dive = Dive(yard, question, generation.columns, rng, 0.15 if number else 0.0)
        found = dive.run(budget)
        if found is not None:
            best = min(best, found, key=lambda p: p.key)
        for column in dive.found:
            generation.add(column)
    repair = Repair(yard, need, weights, prices, rng)
    for _ in range(_REPAIRS):
        if budget.is_over(Fraction(7, 10)) or best.is_whole or not best.patterns:
            break
        (place,) = repair.choose(best, generation.columns, 1, NO_LIMIT)
        mended = place.do(yard, None, budget.stop)
        budget.spend(mended.work)
        best = repair.taken(best, [mended])
        for column in mended.columns:
            generation.add(column)
    return best


def _weights(yard: Yard) -> list[int]:
    """What a missing part costs the search: its area, dearer than any wood.

    The program works with floating point, so the weights stay within some powers of
    ten; plans are compared by area and money apart (`Packed.key`).
    """
    demands = yard.problem.demands
    # Twenty times what its area costs on average is dearer than any part can be.
    prices = [max(1, price) for price in yard.area_prices([1] * len(demands))]
    return [
        20 * price * (1 if demand.rank else _SHOW)
        for price, demand in zip(prices, demands, strict=True)
    ]
