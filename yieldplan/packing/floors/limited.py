"""No board needs to make more of a part than is needed: lower prices for the boards that would.

The best pattern of a board at given prices may hold a part more often than anybody asked
for it. Then a little is taken off the part's price for this board, and what is taken off
is added for as many as are needed: no pattern that holds no more than is needed is worth
more than both together (Lagrangian relaxation of the limits). How much to take off comes
from the program over patterns itself: a board's shares of patterns may together hold no
more of a part than is needed for the board's share, and the price of that row is it.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import replace
from fractions import Fraction

from yieldplan.packing.filling.first_plan import all_copies
from yieldplan.packing.filling.yard import Column, Yard
from yieldplan.packing.floors.bound import Certificate, lifted
from yieldplan.packing.floors.limiting import Asked, Limiting, Off, may_be_limited
from yieldplan.packing.floors.proofs import Limited
from yieldplan.packing.grid.crossings import Ints
from yieldplan.packing.stop import Budget

_ROUNDS = 60
_SMOOTH = 0.3
"""How much of the best prices so far stays in the prices asked next."""
_CLOSED = 0.0003
"""Share of the program's cost at which the floor counts as reached."""


def limited_floor(
    yard: Yard,
    need: Sequence[int],
    short_price: Sequence[int],
    certificate: Certificate,
    columns: Iterable[Column],
    budget: Budget,
    share: Fraction = Fraction(1),
) -> Certificate:
    """A certificate with lower prices for some bins, where that lifts the floor.

    Parameters
    ----------
    columns
        Patterns known already.
    share
        Part of all allowed work that may be used up when it ends.
    """
    limiting = Limiting(yard, need, short_price, all_copies(yard))
    for column in columns:
        limiting.add(column)
    best = certificate
    centre: tuple[list[float], Off] | None = None
    for _ in range(_ROUNDS):
        if budget.is_over(share):
            break
        answer = limiting.solve()
        budget.spend(limiting.work)
        if answer is None:
            break
        asked = answer if centre is None else _between(centre, answer)
        found, columns_met = _priced(yard, need, asked, budget)
        if found.priced > best.priced:
            best, centre = found, (asked.prices, asked.off)
        added = sum(
            limiting.add(column)
            for column in columns_met
            if answer.gain(column, need) > 0.5 + column.cost
        )
        if answer.cost - best.priced <= _CLOSED * answer.cost:
            break
        if not added:
            if centre is None:
                break
            centre = None
    if best is certificate:
        return certificate
    return replace(
        best,
        sets=certificate.sets,
        tried=certificate.tried,
        value=max(best.value, certificate.value),
    )


def off_of(certificate: Certificate) -> Off:
    """What a certificate takes off its prices, by bin."""
    return {
        number: {
            demand: float(price - lower)
            for demand, (price, lower) in enumerate(
                zip(certificate.prices, each.prices, strict=True)
            )
            if lower < price
        }
        for each in certificate.limited
        for number in each.bins
    }


def _between(centre: tuple[list[float], Off], answer: Asked) -> Asked:
    """The program's prices, drawn toward those that were best so far."""
    prices, off = centre
    keep, move = _SMOOTH, 1 - _SMOOTH
    return replace(
        answer,
        prices=[
            keep * old + move * new
            for old, new in zip(prices, answer.prices, strict=True)
        ],
        off={
            number: {
                demand: keep * off.get(number, {}).get(demand, 0.0)
                + move * answer.off.get(number, {}).get(demand, 0.0)
                for demand in sorted(
                    {*off.get(number, {}), *answer.off.get(number, {})}
                )
            }
            for number in sorted({*off, *answer.off})
        },
    )


def _priced(
    yard: Yard, need: Sequence[int], asked: Asked, budget: Budget
) -> tuple[Certificate, list[Column]]:
    """What these prices prove, in whole numbers, and the patterns behind it."""
    problem, pricing = yard.problem, yard.pricing
    before = pricing.work
    # Where nothing is needed a price would only raise the boards' values.
    prices = [
        max(0, int(price)) if count else 0
        for price, count in zip(asked.prices, need, strict=True)
    ]
    values = pricing.price(prices)
    columns = [
        yard.column(pricing.pattern(number))
        for number in pricing.bins
        if values[number] > 0.97 * (yard.price[number] + asked.rents.get(number, 0))
    ]
    lesser, limited = limited_values(yard, need, prices, values, asked.off, columns)
    budget.spend(pricing.work - before)
    priced = sum(
        price * count for price, count in zip(prices, need, strict=True)
    ) + sum(
        piece.copies * min(0, piece.price - int(value))
        for piece, value in zip(problem.bins, lesser, strict=True)
    )
    kept = tuple(
        each
        for each in (
            replace(one, bins=tuple(n for n in one.bins if values[n] > yard.price[n]))
            for one in limited
        )
        if each.bins
    )
    return (
        Certificate(tuple(prices), priced, lifted(priced, problem), limited=kept),
        columns,
    )


def limited_values(
    yard: Yard,
    need: Sequence[int],
    prices: Sequence[int],
    values: Ints,
    off: Off,
    columns: list[Column],
) -> tuple[Ints, tuple[Limited, ...]]:
    """The lesser values of bins at prices with something taken off.

    Parameters
    ----------
    values
        Of all bins at the full prices. [money/10,000]
    columns
        The patterns met are added here.
    """
    may = may_be_limited(yard.problem)
    lesser = values.copy()
    lower_of: dict[tuple[int, ...], list[int]] = {}
    for number in sorted(off):
        less = off[number]
        lower = tuple(
            max(0, min(price, price - int(less.get(demand, 0)))) if ok else price
            for demand, (price, ok) in enumerate(zip(prices, may, strict=True))
        )
        if lower != tuple(prices):
            lower_of.setdefault(lower, []).append(number)
    limited = []
    for lower, bins in lower_of.items():
        found = yard.pricing.price(lower, bins)
        columns.extend(yard.column(yard.pricing.pattern(n)) for n in bins if found[n])
        added = sum(
            (price - lowered) * count
            for price, lowered, count in zip(prices, lower, need, strict=True)
        )
        better = [n for n in bins if int(found[n]) + added < values[n]]
        for number in better:
            lesser[number] = int(found[number]) + added
        if better:
            limited.append(Limited(tuple(better), lower))
    return lesser, tuple(limited)
