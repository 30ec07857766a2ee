"""Improves a plan piecemeal: takes some boards out, and looks for a cheaper way to make what they made.

Several such neighbourhoods are looked at side by side (large
neighbourhood search: Shaw 1998; here each is a small plan of its own, found by a dive).
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np

from yieldplan.packing.filling.first_plan import all_copies
from yieldplan.packing.filling.packed import Packed, packed
from yieldplan.packing.filling.yard import Column, Yard
from yieldplan.packing.grid.pattern import Pattern, left_after
from yieldplan.packing.improving.dive import Dive, Question
from yieldplan.packing.improving.losses import drawn_by_loss, worth_of
from yieldplan.packing.stop import Budget, Stop

_LEAST_OUT = 6
_OUT = (8, 60)
"""Most boards taken out at once: of a small plan, of a large one."""
_OTHERS = 0.1
"""Weight of a board that loses nothing, in parts of the mean loss."""
_OUT_SHARE = 5
"""One in so many of the plan's boards."""
_IN = 8
"""Unused boards offered beside them, at least; else as many as are taken out."""
_PAYING = 30
"""How much rather an unused board is offered that pays: the power of its worth over its price."""
_ROUNDS = 5
"""How often prices are asked again before a dive takes its first pattern."""
_DIVES = 3
"""Dives for one neighbourhood, while its program leaves hope."""
_NOISE = 0.1
_MOST_COLUMNS = 2500


@dataclass(frozen=True)
class Neighbourhood:
    """Boards taken out of a plan, and what they must make again for less.

    Parameters
    ----------
    out
        Places of the patterns in the plan.
    known
        Patterns to begin with.
    work
        At most.
    """

    out: tuple[int, ...]
    question: Question
    known: tuple[Column, ...]
    seed: tuple[int, ...]
    work: int

    def do(self, yard: Yard, shared: None, stop: Stop) -> Mended:
        """Look for it."""
        budget = Budget(stop, self.work)
        rng = np.random.default_rng(self.seed)
        known = list(self.known)
        best: Packed | None = None
        question = self.question
        for number in range(_DIVES):
            dive = Dive(yard, question, known, rng, _NOISE, is_careful=number % 2 == 0)
            plan = dive.run(budget)
            known += dive.found
            if plan is not None and (cost := self._cost(plan)) < question.limit:
                best, question = plan, replace(question, limit=cost)
            if dive.root is None or dive.root.cost >= question.limit:
                break
        found = known[len(self.known) :]
        return Mended(
            self.out,
            self.question.limit,
            best.patterns if best else None,
            found,
            budget.done,
        )

    def _cost(self, plan: Packed) -> int:
        """With what is unmade in it."""
        return plan.cost + sum(
            short * int(price)
            for short, price in zip(plan.short, self.question.short_price, strict=True)
        )


@dataclass(frozen=True)
class Mended:
    """What came of a neighbourhood: patterns instead of the old ones, if cheaper.

    Parameters
    ----------
    out
        Places of the old ones in the plan.
    limit
        What those cost. [money/10,000]
    """

    out: tuple[int, ...]
    limit: int
    patterns: tuple[Pattern, ...] | None
    columns: list[Column]
    work: int

    def key(self, yard: Yard) -> tuple[int, tuple[int, ...]]:
        """Less is better: what it costs more than what it stands for."""
        if self.patterns is None:
            return (0, self.out)
        cost = sum(yard.cost(pattern) for pattern in self.patterns)
        return (cost - self.limit, self.out)


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
        self._values = [int(value) for value in yard.pricing.price(prices)]
        self._pays = {
            number: self._values[number] / max(1, yard.price[number])
            for number in yard.pricing.bins
        }

    def choose(
        self, plan: Packed, columns: Sequence[Column], most: int, work: int
    ) -> list[Neighbourhood]:
        """So many neighbourhoods; they may share boards.

        Parameters
        ----------
        work
            For each of them, at most.
        """
        supply = all_copies(self.yard)
        for pattern in plan.patterns:
            supply[pattern.bin] -= 1
        chosen: list[Neighbourhood] = []
        while len(chosen) < most:
            out = self._badly_paying(plan)
            freed = [plan.patterns[place] for place in sorted(out)]
            copies = self._supply(freed, supply)
            question = self._question(plan, out, copies)
            known = [self.yard.column(pattern) for pattern in freed]
            known += [column for column in columns if column.bin in copies]
            self._made += 1
            chosen.append(
                Neighbourhood(
                    tuple(sorted(out)),
                    question,
                    tuple(known[:_MOST_COLUMNS]),
                    (11, self._made),
                    work,
                )
            )
        # The largest take longest: begun first, they are not waited for.
        return sorted(chosen, key=lambda place: -len(place.out))

    def taken(self, plan: Packed, answers: Sequence[Mended]) -> Packed:
        """The plan with those of them that go together, the best first."""
        best = plan
        gone: set[int] = set()
        more: list[Pattern] = []
        for answer in sorted(answers, key=lambda answer: answer.key(self.yard)):
            out = gone | set(answer.out)
            if answer.patterns is None or gone & set(answer.out):
                continue
            patterns = [p for place, p in enumerate(plan.patterns) if place not in out]
            patterns += [*more, *answer.patterns]
            if self._is_too_often(patterns):
                continue
            better = packed(patterns, self.need, self.yard)
            if better.key < best.key:
                best, gone = better, out
                more += answer.patterns
        return best

    def _is_too_often(self, patterns: Sequence[Pattern]) -> bool:
        """Whether a board would be cut more often than there are copies of it."""
        times = Counter(pattern.bin for pattern in patterns)
        supply = all_copies(self.yard)
        return any(count > supply[number] for number, count in times.items())

    def _question(
        self, plan: Packed, out: set[int], copies: dict[int, int]
    ) -> Question:
        kept = [p for place, p in enumerate(plan.patterns) if place not in out]
        need = left_after(kept, self.need, self.yard.problem)
        freed = [plan.patterns[place] for place in out]
        # What the plan left unmade, it pays for until now.
        limit = sum(self.yard.cost(pattern) for pattern in freed) + sum(
            short * int(price)
            for short, price in zip(plan.short, self.short_price, strict=True)
        )
        return Question(tuple(need), copies, self.short_price, limit, _ROUNDS)

    def _badly_paying(self, plan: Packed) -> set[int]:
        """Places of boards to take out: some of those that lose most, and others at random."""
        patterns = plan.patterns
        high = min(_OUT[1], max(_OUT[0], len(patterns) // _OUT_SHARE + _LEAST_OUT))
        # Small ones as often as large ones, on the scale of doubling.
        size = np.exp(self._rng.uniform(np.log(_LEAST_OUT), np.log(high)))
        count = min(len(patterns), int(size))
        losses = [self._loss(pattern) for pattern in patterns]
        return drawn_by_loss(losses, count, _OTHERS, self._rng)

    def _loss(self, pattern: Pattern) -> int:
        """What the board costs more than its parts are worth, or could be worth."""
        price = self.yard.price[pattern.bin]
        worth = worth_of(pattern, self.prices, self.yard.problem)
        return max(0, max(price, self._values[pattern.bin]) - worth)

    def _supply(
        self, freed: Sequence[Pattern], supply: dict[int, int]
    ) -> dict[int, int]:
        """The freed boards, and a few unused ones that pay."""
        own: dict[int, int] = {}
        for pattern in freed:
            own[pattern.bin] = own.get(pattern.bin, 0) + 1
        copies = dict(sorted(own.items()))
        unused = [number for number in sorted(supply) if supply[number]]
        if unused:
            count = min(len(unused), max(_IN, len(freed)))
            weight = np.array([self._pays[number] for number in unused]) ** _PAYING
            weight += 1e-9
            picked = self._rng.choice(
                len(unused), size=count, replace=False, p=weight / weight.sum()
            )
            for place in picked:
                number = unused[int(place)]
                copies[number] = own.get(number, 0) + min(supply[number], len(freed))
        return dict(sorted(copies.items()))
