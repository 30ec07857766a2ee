"""Improves a plan piecemeal: takes some boards out, and looks for a cheaper way to make what they made.

Several such neighbourhoods that share no board are looked at side by side (large
neighbourhood search: Shaw 1998; here each is a small plan of its own, found by a dive).
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from yieldplan.packing.dive import Dive, Question
from yieldplan.packing.first_plan import all_copies
from yieldplan.packing.packed import Packed, packed
from yieldplan.packing.pattern import Pattern, makes_of
from yieldplan.packing.stop import Budget, Stop
from yieldplan.packing.yard import Column, Yard

_LEAST_OUT = 2
_OUT = (7, 60)
"""Most boards taken out at once: of a small plan, of a large one."""
_OUT_SHARE = 5
"""One in so many of the plan's boards."""
_IN = (8, 30)
"""Most unused boards offered beside them."""
_ROUNDS = 5
_NOISE = 0.1
_MOST_COLUMNS = 2500
_NO_WORK = 1 << 62


@dataclass(frozen=True)
class Neighbourhood:
    """Boards taken out of a plan, and what they must make again for less.

    Parameters
    ----------
    out
        Places of the patterns in the plan.
    known
        Patterns to begin with.
    """

    out: tuple[int, ...]
    question: Question
    known: tuple[Column, ...]
    seed: tuple[int, ...]

    def do(self, yard: Yard, shared: None, stop: Stop) -> Mended:
        """Look for it."""
        budget = Budget(stop, _NO_WORK)
        rng = np.random.default_rng(self.seed)
        dive = Dive(yard, self.question, self.known, rng, _NOISE)
        plan = dive.run(budget)
        return Mended(self, plan.patterns if plan else None, dive.found, budget.done)


@dataclass(frozen=True)
class Mended:
    """What came of a neighbourhood: patterns instead of the old ones, if cheaper."""

    place: Neighbourhood
    patterns: tuple[Pattern, ...] | None
    columns: list[Column]
    work: int


class Repair:
    """Neighbourhoods of plans for one set of needs.

    Parameters
    ----------
    prices
        What each demand is worth, from the floor; tells which boards pay badly.
    """

    def __init__(
        self,
        yard: Yard,
        need: Sequence[int],
        short_price: Sequence[int],
        prices: Sequence[int],
        rng: np.random.Generator,
    ) -> None:
        self.yard = yard
        self.need = list(need)
        self.short_price = tuple(short_price)
        self.prices = prices
        self._rng = rng
        self._made = 0
        values = yard.pricing.price(prices)
        self._pays = {
            number: int(values[number]) / max(1, yard.price[number])
            for number in yard.pricing.bins
        }

    def choose(
        self, plan: Packed, columns: Sequence[Column], most: int
    ) -> list[Neighbourhood]:
        """Neighbourhoods that share no board, at most so many."""
        left = list(range(len(plan.patterns)))
        supply = all_copies(self.yard)
        for pattern in plan.patterns:
            supply[pattern.bin] -= 1
        chosen: list[Neighbourhood] = []
        while len(chosen) < most and (len(left) >= _LEAST_OUT or not chosen):
            out = self._badly_paying(plan, left, most)
            left = [place for place in left if place not in out]
            freed = [plan.patterns[place] for place in sorted(out)]
            copies = self._supply(freed, supply)
            for number, count in copies.items():
                own = sum(pattern.bin == number for pattern in freed)
                supply[number] -= max(0, count - own)
            question = self._question(plan, freed, copies, is_first=not chosen)
            known = [self.yard.column(pattern) for pattern in freed]
            known += [column for column in columns if column.bin in copies]
            self._made += 1
            chosen.append(
                Neighbourhood(
                    tuple(sorted(out)),
                    question,
                    tuple(known[-_MOST_COLUMNS:]),
                    (11, self._made),
                )
            )
        return chosen

    def taken(self, plan: Packed, answers: Sequence[Mended]) -> Packed:
        """The plan with all of them, or else the first that makes it better."""
        found = [answer for answer in answers if answer.patterns is not None]
        for together in (found, *([answer] for answer in found)):
            out = {place for answer in together for place in answer.place.out}
            patterns = [p for place, p in enumerate(plan.patterns) if place not in out]
            for answer in together:
                patterns += answer.patterns or ()
            better = packed(patterns, self.need, self.yard)
            if better.key < plan.key:
                return better
        return plan

    def _question(
        self,
        plan: Packed,
        freed: Sequence[Pattern],
        copies: dict[int, int],
        *,
        is_first: bool,
    ) -> Question:
        need = [0] * len(self.need)
        for pattern in freed:
            for demand, count in enumerate(makes_of(pattern, self.yard.problem)):
                need[demand] += count
        limit = sum(self.yard.cost(pattern) for pattern in freed)
        if is_first:
            # What spares or a short plan left open belongs to it too.
            need = [
                count + short for count, short in zip(need, plan.short, strict=True)
            ]
            limit += sum(
                short * int(price)
                for short, price in zip(plan.short, self.short_price, strict=True)
            )
        need = [min(count, asked) for count, asked in zip(need, self.need, strict=True)]
        return Question(tuple(need), copies, self.short_price, limit, _ROUNDS)

    def _badly_paying(self, plan: Packed, left: Sequence[int], most: int) -> set[int]:
        """Boards to take out: at random, rather those whose parts pay little of them."""
        problem = self.yard.problem
        loss = []
        for place in left:
            pattern = plan.patterns[place]
            made = makes_of(pattern, problem)
            worth = sum(p * n for p, n in zip(self.prices, made, strict=True))
            loss.append(1 - worth / max(1, self.yard.price[pattern.bin]))
        weight = np.exp(2.0 * np.clip(np.array(loss), 0.0, 1.0))
        high = min(_OUT[1], max(_OUT[0], len(plan.patterns) // _OUT_SHARE))
        # Small ones as often as large ones, on the scale of doubling.
        size = np.exp(self._rng.uniform(np.log(_LEAST_OUT), np.log(high + 1)))
        count = min(len(left), int(size))
        picked = self._rng.choice(
            len(left), size=count, replace=False, p=weight / weight.sum()
        )
        return {left[int(place)] for place in picked}

    def _supply(
        self, freed: Sequence[Pattern], supply: dict[int, int]
    ) -> dict[int, int]:
        """The freed boards (half the time less one), and a few unused ones that pay."""
        own: dict[int, int] = {}
        for pattern in freed:
            own[pattern.bin] = own.get(pattern.bin, 0) + 1
        copies = dict(sorted(own.items()))
        unused = [
            number for number in sorted(supply) if supply[number] and number not in own
        ]
        if len(own) > 1 and unused and self._rng.random() < 0.5:
            del copies[sorted(own)[int(self._rng.integers(len(own)))]]
        if unused:
            high = min(_IN[1], max(_IN[0], len(freed) // 2))
            count = min(len(unused), int(self._rng.integers(1, high + 1)))
            weight = np.array([self._pays[number] for number in unused]) ** 8 + 1e-9
            picked = self._rng.choice(
                len(unused), size=count, replace=False, p=weight / weight.sum()
            )
            for place in picked:
                number = unused[int(place)]
                copies[number] = supply[number]
        return dict(sorted(copies.items()))
