"""Dive after dive, several at a time: each goes its own way down, and the patterns they meet are shared."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

import numpy as np

from yieldplan.packing.filling.packed import Packed
from yieldplan.packing.filling.yard import Column, Yard
from yieldplan.packing.improving.dive import Dive, Question
from yieldplan.packing.stop import NO_LIMIT, Budget, Stop

AT_ONCE = 4
"""Tasks handed out together, whatever the number of hands."""
NOISE = 0.3
"""How freely a dive chooses."""
_KNOWN = 0.6
"""Share of the known patterns a dive begins with, drawn anew each time: with all of them
the first steps would always be the same."""
_MOST_FOUND = 1500
"""Of the patterns met in a task, the last so many are offered to its next dive."""


@dataclass(frozen=True)
class Common:
    """What all dives handed out together start from.

    Parameters
    ----------
    enough
        A whole plan that costs no more need not be bettered.
    """

    need: tuple[int, ...]
    copies: Mapping[int, int]
    short_price: tuple[int, ...]
    limit: int
    enough: int
    columns: tuple[Column, ...]


@dataclass(frozen=True)
class Found:
    """What came of a task: the best plan below the limit, patterns met, work done."""

    plan: Packed | None
    columns: list[Column]
    work: int


@dataclass(frozen=True)
class DiveTask:
    """Dives until so much work is done.

    Parameters
    ----------
    seed
        Of its choices.
    is_straight
        Whether the first dive takes the largest share every time.
    is_careful
        Whether each choice is tried first.
    """

    seed: tuple[int, ...]
    work: int
    is_straight: bool = False
    is_careful: bool = False

    def do(self, yard: Yard, shared: Common, stop: Stop) -> Found:
        """Do it."""
        rng = np.random.default_rng(self.seed)
        # One dive at least is gone through, however long it takes.
        budget = Budget(stop, NO_LIMIT)
        columns = list(shared.columns)
        found: list[Column] = []
        best: Packed | None = None
        limit = shared.limit
        noise = 0.0 if self.is_straight else NOISE
        while not budget.is_over() and (budget.done == 0 or budget.done < self.work):
            question = Question(shared.need, shared.copies, shared.short_price, limit)
            known = columns
            if noise:
                is_known = rng.random(len(columns)) < _KNOWN
                known = [c for c, is_so in zip(columns, is_known, strict=True) if is_so]
            dive = Dive(yard, question, known, rng, noise, is_careful=self.is_careful)
            before = budget.done
            plan = dive.run(budget)
            found += dive.found
            columns = [*shared.columns, *found[-_MOST_FOUND:]]
            if plan is not None and (best is None or plan.key < best.key):
                best = plan
                limit = min(limit, plan.cost) if plan.is_whole else limit
                if plan.is_whole and plan.cost <= shared.enough:
                    break
            noise = NOISE
            if budget.done == before:
                # Its program could not be solved; another would not be either.
                break
        return Found(best, found, budget.done)


def wave(number: int, work: int) -> list[DiveTask]:
    """The dives of one round."""
    return [
        DiveTask(
            (7, number, place),
            work,
            is_straight=number == place == 0,
            is_careful=place % 2 == 1,
        )
        for place in range(AT_ONCE)
    ]
