"""A board is left out of the plan, and others cut anew, a few at a time, until nothing is unmade.

Of boards that are alike every plan costs a whole number of them, so the money shows no way
down. What a cheaper plan leaves unmade does, where it costs about what the floor's prices
say, a little more: much dearer, and one part would be bought at any loss elsewhere. A part
that stays unmade grows dearer with every try, so that another one must wait (the breakout
method: Morris 1993). Boards that lose most are taken out first.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from yieldplan.packing.filling.first_plan import first_plan
from yieldplan.packing.filling.packed import Packed, packed
from yieldplan.packing.filling.yard import Column, Yard
from yieldplan.packing.grid.pattern import Pattern, left_after, makes_of
from yieldplan.packing.improving.dive import Dive, Question
from yieldplan.packing.stop import Budget, Stop

AT_ONCE = 4
"""Lines of tries that go on side by side."""
_OUT = (2, 5)
"""Boards taken out at once, at least and at most."""
_OTHERS = 0.2
"""Weight of a board that loses nothing, in parts of the mean loss."""
_DEARER = 1.1
"""What an unmade part costs, in prices of the floor."""
_AT_FIRST = 3.0
"""The same for the plan a line begins with."""
_AGAIN, _FORGET, _DEAREST = 1.07, 0.97, 1.6
"""By how much it grows dearer with each try; how much of that stays where it is made; and how dear it gets."""
_WORSE = 0.01
"""How much worse a try may be and still be taken, in the mean, in parts of a board's price."""
_FAR_BEHIND = 2
"""A line that leaves so many times as much unmade as the best one goes on from there."""
_LEAST_PRICE = 4
"""A part the floor's prices count for little costs this part of its area's price."""
_ROUNDS = 3
"""How often prices are asked again before a dive takes its first pattern."""
_NOISE_AT_FIRST, _NOISE = 0.3, 0.1
_DIVES = 3
"""How many of them; the best is taken."""
_KNOWN = 0.6
"""Share of the known patterns that the first plan begins with."""
_NO_LIMIT = 1 << 62


@dataclass(frozen=True)
class Asked:
    """What all lines have in common.

    Parameters
    ----------
    prices
        What each demand is worth, from the floor. [money/10,000]
    most
        What a plan may cost. [money/10,000]
    """

    need: tuple[int, ...]
    copies: Mapping[int, int]
    prices: tuple[int, ...]
    most: int
    columns: tuple[Column, ...]


@dataclass(frozen=True)
class Line:
    """A plan that leaves something unmade, and how much dearer each demand has become.

    Parameters
    ----------
    seed
        Of its next tries.
    work
        Of its next tries, at most.
    """

    patterns: tuple[Pattern, ...]
    dearer: tuple[float, ...]
    seed: tuple[int, ...] = ()
    work: int = 0

    def do(self, yard: Yard, shared: Asked, stop: Stop) -> Tried:
        """Try, one time at least."""
        budget = Budget(stop, self.work)
        tries = _Tries(yard, shared, self)
        if not self.patterns:
            tries.begin(budget)
        while any(tries.left):
            tries.one(budget)
            if budget.done >= self.work or budget.is_over():
                break
        plan = None
        if not any(tries.left):
            plan = packed(tries.patterns, shared.need, yard)
        return Tried(
            tuple(tries.patterns), tries.dearer, plan, tries.found, budget.done
        )


@dataclass(frozen=True)
class Tried:
    """How far a line came; with the plan, where nothing is unmade any more."""

    patterns: tuple[Pattern, ...]
    dearer: tuple[float, ...]
    plan: Packed | None
    columns: list[Column]
    work: int


class _Tries:
    def __init__(self, yard: Yard, asked: Asked, line: Line) -> None:
        self.patterns = list(line.patterns)
        self.left = left_after(self.patterns, asked.need, yard.problem)
        self.found: list[Column] = []
        self._yard = yard
        self._asked = asked
        self._rng = np.random.default_rng(line.seed)
        self._dearer = np.array(line.dearer)
        self._known = list(asked.columns)
        self._makes = np.array([column.makes for column in self._known], np.int64)
        self._prices = np.array(asked.prices, np.int64)
        self._number = 0

    @property
    def dearer(self) -> tuple[float, ...]:
        """How much dearer each demand is now."""
        return tuple(self._dearer.tolist())

    def begin(self, budget: Budget) -> None:
        """A plan for no more money, whatever it leaves unmade: the best of a few dives."""
        prices = self._short(_AT_FIRST)
        question = Question(self._asked.need, self._supply([]), prices, _NO_LIMIT)
        found = []
        for number in range(_DIVES):
            dive = Dive(
                self._yard,
                question,
                [c for c in self._known if self._rng.random() < _KNOWN],
                self._rng,
                _NOISE_AT_FIRST,
                is_careful=number % 2 == 0,
            )
            plan = dive.run(budget)
            self._keep(dive.found)
            self.patterns = self._affordable(plan.patterns if plan is not None else ())
            self._fill_up(budget)
            found.append((self._cost(prices), number, self.patterns, self.left))
            if not any(self.left) or budget.is_over():
                break
        *_, self.patterns, self.left = min(found)

    def one(self, budget: Budget) -> None:
        """Cut some boards anew; keep that where it is better, or hardly worse."""
        self._number += 1
        out = self._out()
        kept = [p for place, p in enumerate(self.patterns) if place not in out]
        freed = [self.patterns[place] for place in sorted(out)]
        need = left_after(kept, self._asked.need, self._yard.problem)
        short_price = self._short(_DEARER)
        old = (self.patterns, self.left)
        before = self._cost(short_price)
        worse = _WORSE * before / (1 + len(self.patterns))
        hope = before - sum(self._yard.cost(pattern) for pattern in kept)
        dive = Dive(
            self._yard,
            Question(
                tuple(need),
                self._supply(kept),
                short_price,
                int(hope + worse) + 1,
                _ROUNDS,
            ),
            self._serving(need, freed),
            self._rng,
            _NOISE,
            is_careful=self._number % 2 == 0,
        )
        plan = dive.run(budget)
        self._keep(dive.found)
        if plan is not None:
            self.patterns = [*kept, *plan.patterns]
            self._fill_up(budget)
            most = before + self._rng.exponential(worse)
            if not self._may_pay() or self._cost(short_price) > most:
                self.patterns, self.left = old
        is_unmade = np.array(self.left) > 0
        self._dearer = 1 + (self._dearer - 1) * _FORGET
        self._dearer[is_unmade] = np.minimum(_DEAREST, self._dearer[is_unmade] * _AGAIN)

    def _short(self, dearer: float) -> list[int]:
        """What each demand costs where it is unmade."""
        return [int(price) + 1 for price in dearer * self._dearer * self._prices]

    def _fill_up(self, budget: Budget) -> None:
        """More boards for what is unmade, while there is money."""
        problem = self._yard.problem
        self.left = left_after(self.patterns, self._asked.need, problem)
        while any(self.left) and (supply := self._supply(self.patterns)):
            before = self._yard.pricing.work
            more = first_plan(self._yard, self.left, self._asked.prices, supply)
            budget.spend(self._yard.pricing.work - before)
            if not more.patterns:
                break
            self.patterns += self._affordable(more.patterns, self.patterns)
            self.left = left_after(self.patterns, self._asked.need, problem)

    def _affordable(
        self, patterns: Sequence[Pattern], others: Sequence[Pattern] = ()
    ) -> list[Pattern]:
        """Those that lose least, as many as may be paid beside the others."""
        money = self._asked.most - sum(self._yard.cost(pattern) for pattern in others)
        loss = self._loss(patterns)
        found = []
        for place in sorted(
            range(len(patterns)), key=lambda place: (loss[place], place)
        ):
            cost = self._yard.cost(patterns[place])
            if cost <= money:
                found.append(patterns[place])
                money -= cost
        return found

    def _loss(self, patterns: Sequence[Pattern]) -> list[int]:
        """What each costs more than its parts are worth."""
        return [
            self._yard.cost(pattern)
            - sum(
                price * count
                for price, count in zip(
                    self._asked.prices,
                    makes_of(pattern, self._yard.problem),
                    strict=True,
                )
            )
            for pattern in patterns
        ]

    def _out(self) -> set[int]:
        """Places of the boards to take out."""
        loss = np.maximum(0, self._loss(self.patterns)).astype(float)
        weight = loss + max(1.0, _OTHERS * float(loss.mean()))
        count = min(len(self.patterns), int(self._rng.integers(_OUT[0], _OUT[1] + 1)))
        picked = self._rng.choice(
            len(self.patterns), size=count, replace=False, p=weight / weight.sum()
        )
        return set(picked.tolist())

    def _supply(self, kept: Sequence[Pattern]) -> dict[int, int]:
        """What may be cut instead: what is there, and not dearer than the money left."""
        used = Counter(pattern.bin for pattern in kept)
        money = self._asked.most - sum(self._yard.cost(pattern) for pattern in kept)
        supply = {}
        for number, copies in self._asked.copies.items():
            price = max(1, self._yard.price[number])
            count = min(copies - used[number], money // price)
            if count > 0:
                supply[number] = count
        return supply

    def _serving(self, need: Sequence[int], freed: Sequence[Pattern]) -> list[Column]:
        """Known patterns that make no more than is needed, with what is cut now."""
        serves: NDArray[np.bool_] = (self._makes <= np.array(need)).all(axis=1)
        return [
            *(self._yard.column(pattern) for pattern in freed),
            *(self._known[place] for place in np.flatnonzero(serves)),
        ]

    def _keep(self, columns: Sequence[Column]) -> None:
        if columns:
            self.found += columns
            self._known += columns
            more = np.array([column.makes for column in columns], np.int64)
            self._makes = np.concatenate([self._makes, more])

    def _cost(self, short_price: Sequence[int]) -> int:
        """Of the plan, with what is unmade."""
        return sum(self._yard.cost(pattern) for pattern in self.patterns) + sum(
            count * price for count, price in zip(self.left, short_price, strict=True)
        )

    def _may_pay(self) -> bool:
        cost = sum(self._yard.cost(pattern) for pattern in self.patterns)
        return cost <= self._asked.most


class OneLess:
    """The lines of one search."""

    def __init__(self, yard: Yard, prices: Sequence[int], need: Sequence[int]) -> None:
        self._yard = yard
        self._need = tuple(need)
        self._prices = tuple(
            max(price, area // _LEAST_PRICE)
            for price, area in zip(prices, yard.area_prices(need), strict=True)
        )
        self._plan: Packed | None = None
        self._lines: list[Line] = []
        self._number = 0

    def asked(
        self,
        plan: Packed,
        copies: Mapping[int, int],
        columns: Sequence[Column],
    ) -> Asked:
        """What the lines are asked, to be cheaper than a plan."""
        return Asked(self._need, copies, self._prices, plan.cost - 1, tuple(columns))

    def lines(self, plan: Packed, work: int) -> list[Line]:
        """The next tries, of so much work each: where the lines have come, or from a better plan."""
        if plan is not self._plan:
            self._plan = plan
            self._lines = [Line((), (1.0,) * len(self._prices))] * AT_ONCE
        self._number += 1
        return [
            Line(line.patterns, line.dearer, (13, self._number, place), work)
            for place, line in enumerate(self._lines)
        ]

    def go_on(self, answers: Sequence[Tried]) -> None:
        """Remember where the lines have come."""
        lines = [Line(answer.patterns, answer.dearer) for answer in answers]
        unmade = [self._unmade(line) for line in lines]
        best, worst = unmade.index(min(unmade)), unmade.index(max(unmade))
        if unmade[worst] > _FAR_BEHIND * unmade[best]:
            lines[worst] = lines[best]
        self._lines[: len(lines)] = lines

    def _unmade(self, line: Line) -> int:
        left = left_after(line.patterns, self._need, self._yard.problem)
        return sum(
            count * price for count, price in zip(left, self._prices, strict=True)
        )
