"""A plan that leaves something unmade: a few of its boards at a time are cut anew, to leave less.

An unmade part costs about what the floor's prices say, a little more: much dearer, and it
would be made at any loss elsewhere. A part that stays unmade grows dearer with every try, so
that another one must wait (the breakout method: Morris 1993). Boards that lose most are taken
out first.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

import numpy as np

from yieldplan.packing.filling.first_plan import first_plan
from yieldplan.packing.filling.yard import Column, Yard
from yieldplan.packing.grid.crossings import Ints
from yieldplan.packing.grid.pattern import Pattern, left_after
from yieldplan.packing.improving.dive import Dive, Question
from yieldplan.packing.improving.losses import drawn_by_loss, worth_of
from yieldplan.packing.stop import NO_LIMIT, Budget

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
_ROUNDS = 3
"""How often prices are asked again before a dive takes its first pattern."""
_NOISE_AT_FIRST, _NOISE = 0.3, 0.1
_DIVES = 3
"""How many of them; the best is taken."""
_KNOWN = 0.6
"""Share of the known patterns that the first plan begins with."""


@dataclass(frozen=True)
class Asked:
    """What is asked of all lines.

    Parameters
    ----------
    prices
        What each demand is worth, from the floor. [money/10,000]
    """

    need: tuple[int, ...]
    copies: Mapping[int, int]
    prices: tuple[int, ...]
    columns: tuple[Column, ...]


class CutAnew:
    """A plan that leaves something unmade, and tries to leave less.

    Parameters
    ----------
    most
        What it may cost. [money/10,000]
    patterns
        To go on from; without any it begins anew.
    dearer
        How much dearer each demand has become.
    """

    def __init__(
        self,
        yard: Yard,
        asked: Asked,
        most: int,
        patterns: Sequence[Pattern],
        dearer: Sequence[float],
        seed: Sequence[int],
    ) -> None:
        self.patterns = list(patterns)
        self.left = left_after(self.patterns, asked.need, yard.problem)
        self.found: list[Column] = []
        self._yard = yard
        self._asked = asked
        self._most = most
        self._rng = np.random.default_rng(list(seed))
        self._dearer = np.array(dearer)
        self._known = list(asked.columns)
        self._makes = _makes(self._known, asked)
        self._prices = np.array(asked.prices, np.int64)
        self._number = 0

    @property
    def dearer(self) -> tuple[float, ...]:
        """How much dearer each demand is now."""
        return tuple(self._dearer.tolist())

    def begin(self, budget: Budget) -> None:
        """Go on from the patterns, as far as there is money for them; or from a plan of its own."""
        if self.patterns:
            self.patterns = self._affordable(self.patterns)
            self._fill_up(budget)
        elif self._supply([]):
            self._dive(budget)

    def _dive(self, budget: Budget) -> None:
        """A plan for no more money, whatever it leaves unmade: the best of a few dives."""
        prices = self._short(_AT_FIRST)
        question = Question(self._asked.need, self._supply([]), prices, NO_LIMIT)
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
        hope = before - self._paid(kept)
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
            if self._paid(self.patterns) > self._most or self._cost(short_price) > most:
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
        money = self._most - self._paid(others)
        loss = self._losses(patterns)
        found = []
        for place in sorted(
            range(len(patterns)), key=lambda place: (loss[place], place)
        ):
            cost = self._yard.cost(patterns[place])
            if cost <= money:
                found.append(patterns[place])
                money -= cost
        return found

    def _losses(self, patterns: Sequence[Pattern]) -> list[int]:
        return losses_of(patterns, self._asked.prices, self._yard)

    def _out(self) -> set[int]:
        """Places of the boards to take out."""
        losses = [max(0, loss) for loss in self._losses(self.patterns)]
        count = min(len(losses), int(self._rng.integers(_OUT[0], _OUT[1] + 1)))
        return drawn_by_loss(losses, count, _OTHERS, self._rng)

    def _supply(self, kept: Sequence[Pattern]) -> dict[int, int]:
        """What may be cut instead: what is there, and not dearer than the money left."""
        used = Counter(pattern.bin for pattern in kept)
        money = self._most - self._paid(kept)
        supply = {}
        for number, copies in self._asked.copies.items():
            price = max(1, self._yard.price[number])
            count = min(copies - used[number], money // price)
            if count > 0:
                supply[number] = count
        return supply

    def _serving(self, need: Sequence[int], freed: Sequence[Pattern]) -> list[Column]:
        """Known patterns that make no more than is needed, with what is cut now."""
        serves = np.all(self._makes <= np.array(need), axis=1)
        return [
            *(self._yard.column(pattern) for pattern in freed),
            *(self._known[place] for place in np.flatnonzero(serves)),
        ]

    def _keep(self, columns: Sequence[Column]) -> None:
        if columns:
            self.found += columns
            self._known += columns
            self._makes = np.concatenate([self._makes, _makes(columns, self._asked)])

    def _cost(self, short_price: Sequence[int]) -> int:
        """Of the plan, with what is unmade."""
        return self._paid(self.patterns) + sum(
            count * price for count, price in zip(self.left, short_price, strict=True)
        )

    def _paid(self, patterns: Sequence[Pattern]) -> int:
        return sum(self._yard.cost(pattern) for pattern in patterns)


def _makes(columns: Sequence[Column], asked: Asked) -> Ints:
    """What the columns make, one a row."""
    makes = np.array([column.makes for column in columns], np.int64)
    return makes.reshape(len(columns), len(asked.need))


def losses_of(
    patterns: Sequence[Pattern], prices: Sequence[int], yard: Yard
) -> list[int]:
    """What each costs more than its parts are worth."""
    return [
        yard.cost(pattern) - worth_of(pattern, prices, yard.problem)
        for pattern in patterns
    ]
