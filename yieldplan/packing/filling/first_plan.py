"""A plan at once: board after board, each time the one that gives most for its money."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

from yieldplan.packing.filling.packed import Packed, packed
from yieldplan.packing.filling.refill import refill
from yieldplan.packing.filling.yard import Yard
from yieldplan.packing.grid.pattern import Pattern, cut_to_demand, makes_of

_AT_ONCE = 6
"""Boards looked at together, at least."""
_SHARE, _SHARE_IN_A_HURRY = 20, 12
"""Of many boards, one in so many is looked at."""
_LOOKS = 2
"""How often to look at that many more before choosing."""
_AS_GOOD, _AS_GOOD_IN_A_HURRY = 0.97, 0.84
"""Of many boards, those that give nearly as much for their money are taken at once."""


@dataclass(frozen=True)
class _Offer:
    """A board with a pattern, and what that gives for the money."""

    ratio: float
    pattern: Pattern
    left: list[int]


def first_plan(
    yard: Yard,
    need: Sequence[int],
    prices: Sequence[int],
    copies: Mapping[int, int] | None = None,
    *,
    in_a_hurry: bool = False,
) -> Packed:
    """Take boards until all is made or none is left.

    Parameters
    ----------
    prices
        What each demand is worth; a demand that is made is worth nothing more.
    copies
        Bins that may be taken, with how often; all of them without.
    in_a_hurry
        Whether to rip first only, and of many boards to take more together: a plan
        sooner, and a little dearer.
    """
    supply = dict(copies) if copies is not None else all_copies(yard)
    share = _SHARE_IN_A_HURRY if in_a_hurry else _SHARE
    at_once = max(_AT_ONCE, len(supply) // share)
    left = list(need)
    chosen: list[Pattern] = []
    is_many = at_once > _AT_ONCE
    as_good = _AS_GOOD_IN_A_HURRY if in_a_hurry else _AS_GOOD
    is_quick = in_a_hurry and yard.may_rip_only
    worth = _by_area(yard, supply, prices) if in_a_hurry and is_many else {}
    while any(left):
        now = [price if count else 0 for price, count in zip(prices, left, strict=True)]
        offers, others = _most_for_the_money(
            yard, left, now, supply, worth, at_once, as_good, is_quick
        )
        if not offers:
            break
        best = offers[0]
        times = _times(best, left, supply, yard)
        left = (
            best.left
            if times == 1
            else [
                count - times * n
                for count, n in zip(
                    left, makes_of(best.pattern, yard.problem), strict=True
                )
            ]
        )
        _take(best.pattern, times, chosen, supply)
        if not is_many:
            continue
        for pattern in (*(offer.pattern for offer in offers[1:]), *others):
            again = _offer(pattern, left, now, yard)
            if again is not None and again.ratio >= as_good * best.ratio:
                left = again.left
                _take(again.pattern, 1, chosen, supply)
    return packed(chosen, need, yard)


def _by_area(
    yard: Yard, supply: Iterable[int], prices: Sequence[int]
) -> dict[int, int]:
    """What each bin is worth at most: as much of it as there is, in the dearest item."""
    dearest = max(
        sum(prices[demand] * count for demand, count in item.makes.items())
        / (size.along * size.across)
        for item, size in zip(yard.problem.items, yard.sizes, strict=True)
    )
    grids = yard.grids
    return {n: int(dearest * grids[n].along * grids[n].across) + 1 for n in supply}


def _times(
    offer: _Offer, left: Sequence[int], supply: Mapping[int, int], yard: Yard
) -> int:
    """How many alike to take: as many as are wanted whole, without looking again."""
    made = makes_of(offer.pattern, yard.problem)
    return max(
        1,
        min(
            supply[offer.pattern.bin],
            *(count // n for count, n in zip(left, made, strict=True) if n),
        ),
    )


def _take(
    pattern: Pattern, times: int, chosen: list[Pattern], supply: dict[int, int]
) -> None:
    chosen.extend([pattern] * times)
    supply[pattern.bin] -= times
    if not supply[pattern.bin]:
        del supply[pattern.bin]


def _offer(
    pattern: Pattern, left: Sequence[int], prices: Sequence[int], yard: Yard
) -> _Offer | None:
    """A pattern cut to demand and filled up again; None when it gives nothing."""
    cut, after = cut_to_demand(pattern, left, yard.problem)
    cut, after = refill(cut, after, prices, yard)
    gain = sum(
        price * (before - then)
        for price, before, then in zip(prices, left, after, strict=True)
    )
    return _Offer(gain / max(yard.cost(cut), 1), cut, after) if gain else None


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
    at_once: int,
    as_good: float,
    is_quick: bool,
) -> tuple[list[_Offer], list[Pattern]]:
    """The best next boards, cut to demand, the best of them first; and others that may be as good.

    Values only fall while demands are made, so the last known value of a board tells
    whether it is worth another look.
    """
    total = sum(price * count for price, count in zip(prices, left, strict=True))

    def hope(number: int) -> float:
        return min(worth.get(number, total), total) / max(yard.price[number], 1)

    found: list[_Offer] = []
    others: list[Pattern] = []
    highest = 0.0
    asked: set[int] = set()
    for _ in range(_LOOKS):
        order = sorted(set(supply) - asked, key=lambda number: (-hope(number), number))
        batch = order[:at_once] if worth else order
        if not batch or (found and hope(batch[0]) <= highest):
            break
        values = yard.pricing.price(prices, batch, left=left, is_quick=is_quick)
        asked.update(batch)
        for number in batch:
            worth[number] = int(values[number])
        batch.sort(key=lambda number: (-hope(number), number))
        for number in batch[: 2 * at_once]:
            if not values[number] or (found and hope(number) <= as_good * highest):
                continue
            pattern = yard.pricing.pattern(number)
            if len(found) >= 2 * _AT_ONCE:
                others.append(pattern)
                continue
            offer = _offer(pattern, left, prices, yard)
            if offer is not None:
                found.append(offer)
                highest = max(highest, offer.ratio)
    found.sort(key=lambda offer: (-offer.ratio, offer.pattern.bin))
    return found, others[: at_once // 2]
