"""Rows of the board-set program: at any prices, the boards of a plan are worth at least what it makes.

Whether a choice of boards is rich enough to make everything (in shares of patterns) is
asked by a column generation of its own; where it is not, the prices it ends with are the
next row.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace

from yieldplan.packing.crossings import Ints
from yieldplan.packing.limited import may_be_limited
from yieldplan.packing.master import Master, Unsolved
from yieldplan.packing.proofs import Limited, PriceRow
from yieldplan.packing.stop import Budget
from yieldplan.packing.yard import Column, Yard

_ROUNDS = 60
"""Askings of prices for one choice, at most."""
_UNCUT = 10**9


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
    yard: Yard, need: Sequence[int], prices: Sequence[int], budget: Budget
) -> Row | None:
    """The row of these prices; None where they say nothing."""
    before = yard.pricing.work
    values = yard.pricing.price(prices)
    budget.spend(yard.pricing.work - before)
    return row_from(yard, need, prices, values)


def row_from(
    yard: Yard, need: Sequence[int], prices: Sequence[int], values: Ints
) -> Row | None:
    """The same where the best patterns' values are known."""
    total = sum(price * count for price, count in zip(prices, need, strict=True))
    if total <= 0:
        return None
    may = may_be_limited(yard.problem)
    limited: tuple[Limited, ...] = ()
    rich = [number for number, value in enumerate(values) if value > total]
    if rich and all(ok or not price for ok, price in zip(may, prices, strict=True)):
        # All its patterns make no more than is needed: then none is worth more.
        limited = (Limited(tuple(rich), (0,) * len(need)),)
        values = values.clip(max=total)
    return Row(PriceRow(tuple(prices), limited), values, total)


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
    master = Master(
        yard.problem, need, chosen, [max(1, a) for a in yard.area_prices(need)]
    )
    for column in columns:
        if column.bin in chosen:
            master.add(replace(column, cost=0), [_UNCUT] * len(need))
    bins = sorted(chosen)
    for _ in range(_ROUNDS):
        if budget.is_over():
            return None
        before = yard.pricing.work
        try:
            shares = master.solve()
        except Unsolved:
            return None
        if sum(shares.short) < 1e-9:
            return None
        prices = [
            max(0, int(price)) if count else 0
            for price, count in zip(shares.prices, need, strict=True)
        ]
        values = yard.pricing.price(prices, bins)
        worth = sum(int(values[number]) * chosen[number] for number in bins)
        asked = sum(price * count for price, count in zip(prices, need, strict=True))
        is_found = worth < asked
        added = 0
        for number in bins:
            if not is_found and values[number] > shares.rents[number] + 1:
                column = yard.column(yard.pricing.pattern(number))
                master.add(replace(column, cost=0), [_UNCUT] * len(need))
                added += 1
        budget.spend(yard.pricing.work - before + master.work)
        if is_found:
            return row_of(yard, need, prices, budget)
        if not added:
            return None
    return None
