"""Which packs could be bought together, and what each choice of them must cost at the least.

Whatever the parts are worth, what a choice of packs cannot make must come from pieces that
are sold singly: each price vector is a row that says how much that costs at the least, for
every choice at once.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from math import gcd
from typing import Any

import numpy as np
import numpy.typing as npt

from yieldplan.packing.floors.bound import Certificate, certificate_of
from yieldplan.packing.floors.proofs import PacksProof, PriceRow
from yieldplan.packing.grid.crossings import Ints
from yieldplan.packing.patterns.pricing import Pricing
from yieldplan.packing.problem import Problem

MOST_CHOICES = 20_000
"""Choices that are looked through one by one."""
_MOST_ROWS = 400
_AMPLE = (100, 104, 110, 125, 150)
"""How rich likely choices of packs are, in parts of a hundred of what is needed."""
NEVER = 1 << 60
"""What a choice costs that cannot make everything."""

Choices = npt.NDArray[np.bool_]
"""A row a choice, a column a pack."""


@dataclass(frozen=True)
class _Row:
    """What one price vector proves.

    Parameters
    ----------
    asked
        What all that is needed is worth, less what pieces sold singly give beyond their
        price.
    worth
        Of each pack, what it can give at the most.
    """

    prices: tuple[int, ...]
    asked: int
    worth: Ints


class PackChoices:
    """Choices of packs and the rows that bound what each of them must cost."""

    def __init__(self, problem: Problem, need: Sequence[int], pricing: Pricing) -> None:
        self.problem = problem
        self.need = tuple(need)
        self._pricing = pricing
        bins = problem.bins
        self.price = np.array(
            [sum(bins[n].price * bins[n].copies for n in p) for p in problem.packs],
            np.int64,
        )
        self._alone = problem.sold_alone()
        self._step = gcd(*(bins[number].price for number in self._alone))
        self.rows: list[_Row] = []
        self.best: Certificate | None = None

    def add_row(self, prices: Sequence[int]) -> None:
        """What these prices prove, for every choice and for the whole."""
        asked = [p if n else 0 for p, n in zip(prices, self.need, strict=True)]
        values = self._pricing.price(asked)
        found = certificate_of(asked, self.need, values, self.problem)
        if self.best is None or found.priced > self.best.priced:
            self.best = found
        if len(self.rows) == _MOST_ROWS:
            return
        bins = self.problem.bins
        needed = sum(p * n for p, n in zip(asked, self.need, strict=True))
        saved = sum(
            bins[number].copies * min(0, bins[number].price - int(values[number]))
            for number in self._alone
        )
        worth = [
            sum(int(values[number]) * bins[number].copies for number in pack)
            for pack in self.problem.packs
        ]
        self.rows.append(_Row(tuple(asked), needed + saved, np.array(worth, np.int64)))

    def rest(self, choices: Choices) -> Ints:
        """What pieces sold singly must cost beside each choice. [money/10,000]"""
        most = np.zeros(len(choices), np.int64)
        for row in self.rows:
            np.maximum(most, row.asked - choices @ row.worth, out=most)
        if self._step:
            return -(-most // self._step) * self._step
        return np.where(most > 0, NEVER, 0)

    def least(self, choices: Choices) -> Ints:
        """What a plan of each choice must cost. [money/10,000]"""
        return choices @ self.price + self.rest(choices)

    def likely(self) -> list[frozenset[int]]:
        """The packs that give most for their price, as many as are about needed; fewest first."""
        row = next((r for r in self.rows if r.prices == self._best_prices), None)
        if row is None:
            return []
        worth = [int(each) for each in row.worth]
        order = sorted(
            range(len(worth)),
            key=lambda k: (int(self.price[k]) / max(1, worth[k]), k),
        )
        needed, found = self.rows[-1].asked, set()
        for ample in _AMPLE:
            opened, rich = [], 0
            for place in order:
                if rich * 100 >= needed * ample:
                    break
                opened.append(place)
                rich += worth[place]
            found.add(frozenset(opened))
        return sorted(found, key=lambda each: (len(each), sorted(each)))

    @property
    def _best_prices(self) -> tuple[int, ...] | None:
        """Those with the highest floor."""
        return None if self.best is None else tuple(self.best.prices)

    def cheaper_than(self, cost: int) -> Choices | None:
        """Every choice of packs that costs less; None where there are too many."""
        order = np.argsort(self.price, kind="stable")
        found: list[tuple[int, ...]] = []
        stack: list[tuple[int, int, tuple[int, ...]]] = [(0, 0, ())]
        while stack:
            place, paid, taken = stack.pop()
            if len(found) + len(stack) > MOST_CHOICES:
                return None
            if place == len(order) or paid + int(self.price[order[place]]) >= cost:
                # The packs still to come are as dear or dearer: none can be added.
                if paid < cost:
                    found.append(taken)
                continue
            number = int(order[place])
            stack.append((place + 1, paid, taken))
            stack.append((place + 1, paid + int(self.price[number]), (*taken, number)))
        return self.as_choices(found)

    def as_choices(self, taken: Sequence[Sequence[int]]) -> Choices:
        """Numbers of packs as rows of a table."""
        choices = np.zeros((len(taken), len(self.price)), np.bool_)
        for row, numbers in enumerate(taken):
            choices[row, list(numbers)] = True
        return choices

    def neighbours(self, opened: frozenset[int]) -> Choices:
        """One pack less than these, one for another, one more."""
        closed = sorted(set(range(len(self.price))) - opened)
        taken = [sorted(opened - {one}) for one in sorted(opened)]
        taken += [
            sorted((opened - {one}) | {other})
            for one in sorted(opened)
            for other in closed
        ]
        taken += [sorted(opened | {other}) for other in closed]
        return self.as_choices(taken)

    def certificate(self, cost: int) -> Certificate:
        """The highest floor under plans of this cost that the rows prove."""
        if self.best is None:
            raise ValueError("no prices were added")
        choices = self.cheaper_than(cost)
        if choices is None or not self.rows:
            return self.best
        # Of choices that cost as much or more nothing needs to be shown.
        least = min(cost, int(self.least(choices).min(initial=cost)))
        paid = choices @ self.price
        to_show = choices[paid < least]
        return self.best.with_packs(PacksProof(least, self._needed(to_show, least)))

    def _needed(self, choices: Choices, least: int) -> tuple[PriceRow, ...]:
        """Few of the rows that show it of every choice."""
        open_ = np.ones(len(choices), np.bool_)
        paid = choices @ self.price
        shown_by = []
        for row in self.rows:
            most = np.maximum(0, row.asked - choices @ row.worth)
            rest: Any = (
                -(-most // self._step) * self._step
                if self._step
                else np.where(most > 0, NEVER, 0)
            )
            shown_by.append(paid + rest >= least)
        kept: list[int] = []
        while open_.any():
            counts = [int((shown & open_).sum()) for shown in shown_by]
            number = int(np.argmax(counts))
            kept.append(number)
            open_ &= ~shown_by[number]
        return tuple(PriceRow(self.rows[number].prices) for number in sorted(kept))


def numbers_of(choices: Choices, row: int) -> frozenset[int]:
    """The packs of one choice."""
    return frozenset(int(place) for place in np.flatnonzero(choices[row]))


def parts_of(choice: frozenset[int], choices: Choices) -> Iterator[frozenset[int]]:
    """The choices whose packs are all among these."""
    for row in range(len(choices)):
        other = numbers_of(choices, row)
        if other < choice:
            yield other
