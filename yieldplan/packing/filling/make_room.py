"""Makes room for the few parts that a plan at once left unmade: some boards that could hold them are planned anew.

Board after board takes what pays best now, so a large part may find every board that is
wide enough taken by parts that could lie elsewhere.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence

from yieldplan.packing.filling.first_plan import all_copies, first_plan
from yieldplan.packing.filling.packed import Packed, packed
from yieldplan.packing.filling.yard import Yard
from yieldplan.packing.grid.pattern import Pattern, left_after, makes_of

_TRIES = 6
_BOARDS = 3
"""Boards planned anew for each part left unmade, at first."""
_FEW = 10
"""Where more than one in so many parts is unmade, it is not room that is wanted but wood."""
_HARDER = 3
"""By how much a part that was left unmade is worth more the next time."""


def make_room(
    yard: Yard,
    need: Sequence[int],
    plan: Packed,
    prices: Sequence[int],
    is_over: Callable[[], bool] = lambda: False,
    *,
    in_a_hurry: bool = False,
) -> Packed:
    """The plan with more of what it left unmade, where room was found; else as it was.

    Parameters
    ----------
    prices
        What each demand is worth.
    is_over
        Whether to stop now.
    in_a_hurry
        As for `first_plan`.
    """
    now = list(prices)
    boards = _BOARDS
    for _ in range(_TRIES):
        if plan.is_whole or is_over() or _FEW * sum(plan.short) > sum(need) + _FEW:
            break
        now = [
            _HARDER * max(1, price) if short else price
            for price, short in zip(now, plan.short, strict=True)
        ]
        freed = _to_free(yard, plan, now, boards * sum(plan.short))
        kept = [p for place, p in enumerate(plan.patterns) if place not in freed]
        supply = all_copies(yard)
        for pattern in kept:
            supply[pattern.bin] -= 1
        left = left_after(kept, need, yard.problem)
        supply = {number: count for number, count in supply.items() if count}
        more = first_plan(yard, left, now, supply, in_a_hurry=in_a_hurry)
        found = packed((*kept, *more.patterns), need, yard)
        if found.key < plan.key:
            plan = found
        else:
            boards *= 2
    return plan


def _to_free(yard: Yard, plan: Packed, prices: Sequence[int], at_most: int) -> set[int]:
    """Places of patterns whose board could hold what is unmade; first those that pay least."""
    missing = [
        number
        for number, item in enumerate(yard.problem.items)
        if any(plan.short[demand] for demand in item.makes)
    ]

    def pays(pattern: Pattern) -> float:
        made = makes_of(pattern, yard.problem)
        worth = sum(price * count for price, count in zip(prices, made, strict=True))
        return worth / max(1, yard.price[pattern.bin])

    order = sorted(
        (pays(pattern), place)
        for place, pattern in enumerate(plan.patterns)
        if any(yard.can_hold(number, pattern.bin) for number in missing)
    )
    return {place for _, place in order[:at_most]}
