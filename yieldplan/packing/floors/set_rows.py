"""Rows of the board-set program: at any prices, the boards of a plan are worth at least what it makes.

Whether a choice of boards is rich enough to make everything (in shares of patterns) is
asked by a column generation of its own; where it is not, the prices it ends with are the
next row.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace

from yieldplan.packing.filling.yard import Column, Yard
from yieldplan.packing.floors.limited import limited_values
from yieldplan.packing.floors.limiting import Limiting, Off, may_be_limited
from yieldplan.packing.floors.proofs import Limited, PriceRow
from yieldplan.packing.grid.crossings import Ints
from yieldplan.packing.stop import Budget

_ROUNDS = 60
"""Askings of prices for one choice, at most."""


@dataclass(frozen=True)
class Row:
    """A price vector worked out.

    Parameters
    ----------
    values
        Of each bin, never more than `need`. [money/10,000]
    need
        What all that is needed is worth. [money/10,000]
    """

    row: PriceRow
    values: Ints
    need: int


def row_of(
    yard: Yard,
    need: Sequence[int],
    prices: Sequence[int],
    off: Off,
    budget: Budget,
) -> Row | None:
    """The row of these prices; None where they say nothing.

    Parameters
    ----------
    off
        What is taken off them for bins that would make too much.
    """
    asked = _asked(prices, need)
    if asked <= 0:
        return None
    before = yard.pricing.work
    values = yard.pricing.price(prices)
    lesser, limited = limited_values(yard, need, prices, values, off, [])
    budget.spend(yard.pricing.work - before)
    may = may_be_limited(yard.problem)
    rich = [number for number, value in enumerate(lesser) if value > asked]
    if rich and all(ok or not price for ok, price in zip(may, prices, strict=True)):
        # All its patterns make no more than is needed: then none is worth more.
        others = (
            replace(each, bins=tuple(n for n in each.bins if n not in rich))
            for each in limited
        )
        limited = (
            *(each for each in others if each.bins),
            Limited(tuple(rich), (0,) * len(need)),
        )
        lesser = lesser.clip(max=asked)
    return Row(PriceRow(tuple(prices), limited), lesser, asked)


def row_against(
    yard: Yard,
    need: Sequence[int],
    chosen: Mapping[int, int],
    columns: Sequence[Column],
    budget: Budget,
) -> Row | None:
    """Prices at which a choice of bins is too poor; None where none were found.

    Parameters
    ----------
    chosen
        Bins with how many copies.
    columns
        Patterns known already.
    """
    short = [max(1, price) for price in yard.area_prices(need)]
    program = Limiting(yard, need, short, chosen)
    for column in columns:
        if column.bin in chosen:
            program.add(replace(column, cost=0))
    bins = sorted(chosen)
    for _ in range(_ROUNDS):
        answer = None if budget.is_over() else program.solve()
        budget.spend(program.work)
        if answer is None or answer.cost < 1e-9:
            return None
        prices = [
            max(0, int(price)) if count else 0
            for price, count in zip(answer.prices, need, strict=True)
        ]
        before = yard.pricing.work
        values = yard.pricing.price(prices, bins)
        met = [
            yard.column(yard.pricing.pattern(number))
            for number in bins
            if values[number] > answer.rents[number]
        ]
        lesser, _ = limited_values(yard, need, prices, values, answer.off, met)
        budget.spend(yard.pricing.work - before)
        worth = sum(int(lesser[number]) * chosen[number] for number in bins)
        if worth < _asked(prices, need):
            return row_of(yard, need, prices, _for_all(yard, answer.off), budget)
        added = sum(
            program.add(replace(column, cost=0))
            for column in met
            if answer.gain(column, need) > 1
        )
        if not added:
            return None
    return None


def _asked(prices: Sequence[int], need: Sequence[int]) -> int:
    return sum(price * count for price, count in zip(prices, need, strict=True))


def _for_all(yard: Yard, off: Off) -> Off:
    """What is taken off for some bins, and for the others the most of it."""
    if not off:
        return off
    most: dict[int, float] = {}
    for less in off.values():
        for demand, amount in less.items():
            most[demand] = max(most.get(demand, 0.0), amount)
    return {number: off.get(number, most) for number in yard.pricing.bins}
