"""A plan at once: board after board, each time the one that gives most for its money."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from yieldplan.packing.packed import Packed, packed
from yieldplan.packing.pattern import Pattern, cut_to_demand, makes_of
from yieldplan.packing.refill import refill
from yieldplan.packing.yard import Yard

_AT_ONCE = 6
"""Boards looked at together."""
_LOOKS = 2
"""How often to look at that many more before choosing."""


def first_plan(
    yard: Yard,
    need: Sequence[int],
    prices: Sequence[int],
    copies: Mapping[int, int] | None = None,
) -> Packed:
    """Take boards until all is made or none is left.

    Parameters
    ----------
    prices
        What each demand is worth; a demand that is made is worth nothing more.
    copies
        Bins that may be taken, with how often; all of them without.
    """
    supply = dict(copies) if copies is not None else all_copies(yard)
    left = list(need)
    chosen: list[Pattern] = []
    worth: dict[int, int] = {}
    while any(left):
        now = [price if count else 0 for price, count in zip(prices, left, strict=True)]
        best = _most_for_the_money(yard, left, now, supply, worth)
        if best is None:
            break
        pattern, after = best
        made = makes_of(pattern, yard.problem)
        # Many alike: take as many as are wanted whole, without looking again.
        times = max(
            1,
            min(
                supply[pattern.bin],
                *(count // n for count, n in zip(left, made, strict=True) if n),
            ),
        )
        left = (
            after
            if times == 1
            else [count - times * n for count, n in zip(left, made, strict=True)]
        )
        chosen.extend([pattern] * times)
        supply[pattern.bin] -= times
        if not supply[pattern.bin]:
            del supply[pattern.bin]
    return packed(chosen, need, yard)


def all_copies(yard: Yard) -> dict[int, int]:
    """Every bin that can be cut, with its copies."""
    return {
        number: yard.problem.bins[number].copies
        for number in yard.pricing.bins
        if yard.problem.bins[number].copies
    }


def _most_for_the_money(
    yard: Yard,
    left: Sequence[int],
    prices: Sequence[int],
    supply: Mapping[int, int],
    worth: dict[int, int],
) -> tuple[Pattern, list[int]] | None:
    """The best next board, cut to demand, and what is left then.

    Values only fall while demands are made, so the last known value of a board tells
    whether it is worth another look.
    """
    total = sum(price * count for price, count in zip(prices, left, strict=True))

    def hope(number: int) -> float:
        return min(worth.get(number, total), total) / max(yard.price[number], 1)

    best: tuple[float, Pattern, list[int]] | None = None
    asked: set[int] = set()
    for _ in range(_LOOKS):
        order = sorted(set(supply) - asked, key=lambda number: (-hope(number), number))
        batch = order[:_AT_ONCE] if worth else order
        if not batch or (best is not None and hope(batch[0]) <= best[0]):
            break
        values = yard.pricing.price(prices, batch)
        asked.update(batch)
        for number in batch:
            worth[number] = int(values[number])
        for number in sorted(batch, key=lambda number: (-hope(number), number))[
            : 2 * _AT_ONCE
        ]:
            if not values[number] or (best is not None and hope(number) <= best[0]):
                continue
            pattern, after = cut_to_demand(
                yard.pricing.pattern(number), left, yard.problem
            )
            pattern, after = refill(pattern, after, prices, yard)
            gain = total - sum(p * n for p, n in zip(prices, after, strict=True))
            ratio = gain / max(yard.cost(pattern), 1)
            if gain and (best is None or ratio > best[0]):
                best = (ratio, pattern, after)
    return (best[1], best[2]) if best is not None else None
