"""Small jobs proved by trying: no choice of boards that costs less than the plan can make everything.

Rows of prices rule most choices out (`tried_rows`). For the boards of the others all that
they can make is found, as far as it could be part of a cheaper plan (`near_best`). From
then on everything is exact: how poor a choice is, is a small program over what its boards
can make (`binding`), and whether it does is tried by joining the boards one after the other
(`join`). The cheapest choice still open comes first: one that does is the cheapest plan
there is, one that does not takes every part of it with it.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from fractions import Fraction

import numpy as np

from yieldplan.packing.filling.first_plan import all_copies
from yieldplan.packing.filling.packed import Packed, packed
from yieldplan.packing.filling.yard import Column, Yard
from yieldplan.packing.floors.bound import Certificate
from yieldplan.packing.floors.proofs import TriedProof
from yieldplan.packing.grid.crossings import Ints
from yieldplan.packing.listing.allowance import PAIRS_TO_A_UNIT, Allowance, TooMany
from yieldplan.packing.listing.ways import Ways, WaysOf
from yieldplan.packing.problem import Problem
from yieldplan.packing.stop import Budget
from yieldplan.packing.trying.binding import Binding
from yieldplan.packing.trying.choices import MOST_COPIES, Choices
from yieldplan.packing.trying.join import Side, joined
from yieldplan.packing.trying.tried_rows import TriedRows

_PAIRS_OF_A_BOARD = 30_000_000
_PAIRS_OF_A_CHOICE = 100_000_000
_SOUGHT = 12
"""Rows sought before any board is looked at, and again for the proof."""
_ROWS_AT_ONCE = 6
"""Rows of prices that a choice is tried with: those at which it is poorest."""


class Tried:
    """The search for a cheaper plan among all choices of boards, and its proof.

    Parameters
    ----------
    takes_all
        Whether to try one choice only, that of all boards: whether there is wood enough
        at all. Then the plan need not be whole.

    Attributes
    ----------
    given_up
        Why there will be no proof; empty while there may be one.
    """

    def __init__(
        self,
        yard: Yard,
        need: Sequence[int],
        plan: Packed,
        certificate: Certificate,
        columns: Sequence[Column],
        *,
        takes_all: bool = False,
    ) -> None:
        self.yard = yard
        self.need = tuple(need)
        self.given_up = ""
        copies = all_copies(yard)
        bins = [number for number, n in sorted(copies.items()) for _ in range(n)]
        if yard.problem.offcut_percent:
            self.given_up = "offcuts count"
        elif not (plan.is_whole or takes_all) or not any(need):
            self.given_up = "parts are missing"
        elif len(bins) > MOST_COPIES:
            self.given_up = "too many boards"
        if self.given_up:
            return
        self._certificate = certificate
        problem = _without_useless(yard.problem, need) if takes_all else yard.problem
        self._ways_of = WaysOf(problem, need)
        self.counts = self._ways_of.counts
        self._choices = Choices(bins, [yard.price[number] for number in bins])
        self._rows = TriedRows(yard, need, self._choices, columns)
        self._takes_all = takes_all
        self._cost = plan.cost
        if takes_all:
            self._cost = 1 + int(self._choices.cost[-1])
            self._choices.only_all()
        # The small ones first: what they lose leaves less for the large ones to lose.
        self._to_look_at = sorted(
            copies, key=lambda n: (-self._size(n), -n), reverse=False
        )
        self.ways: dict[int, Ways] = {}
        self._made: dict[int, Ints] = {}
        self._prices: list[tuple[int, ...]] = []
        self._is_begun = False
        self._binding: Binding | None = None

    def _size(self, number: int) -> int:
        grid = self.yard.grids[number]
        return grid.along * grid.across

    @property
    def is_open(self) -> bool:
        """Whether there is something left to try."""
        return not self.given_up and bool(self._choices.open.any())

    def step(self, plan: Packed, budget: Budget, share: Fraction) -> Packed:
        """Seek rows, look at one more board, or try one more choice.

        Parameters
        ----------
        share
            Part of all allowed work that may be used up when it ends.

        Returns
        -------
        Packed
            A better plan, or the same.
        """
        if self.given_up:
            return plan
        if not self._takes_all:
            self._cost = min(self._cost, plan.cost)
        self._choices.below(self._cost)
        if not self.is_open:
            return plan
        budget.spend(len(self._choices.open) // 20)
        try:
            if not self._is_begun:
                self._is_begun = True
                self._rows.begin(self._certificate, budget)
                self._rows.seek(_SOUGHT, budget)
            elif self._to_look_at:
                self._look_at(self._to_look_at.pop(), budget, share)
            else:
                return self._try_one(plan, budget, share)
        except TooMany:
            self.given_up = "too much to try"
        return plan

    def proof(self, budget: Budget) -> TriedProof | None:
        """What proves that no plan costs less than the last one; None without a proof."""
        if self.given_up or self.is_open:
            return None
        return self._rows.proof(self._cost, _SOUGHT, budget)

    def _look_at(self, number: int, budget: Budget, share: Fraction) -> None:
        """Find all that a board can make in a plan that costs less."""
        asked = self._rows.least_of(number)
        if asked is None:
            return
        prices, least = asked
        pairs = min(_PAIRS_OF_A_BOARD, PAIRS_TO_A_UNIT * budget.work_left(share))
        allowance = Allowance(pairs, budget.is_over)
        try:
            ways = self._ways_of.ways(number, prices, least, allowance)
        finally:
            budget.spend(20_000 + allowance.used // PAIRS_TO_A_UNIT)
        self.ways[number] = ways
        self._made[number] = self.counts.unpack(ways.made)
        self._rows.know(number, self._made[number])

    def _try_one(self, plan: Packed, budget: Budget, share: Fraction) -> Packed:
        choices = self._choices
        choice = choices.cheapest()
        if choice is None:
            return plan
        if self._binding is None:
            self._binding = Binding(self.need, self._made)
        bins = [choices.bins[place] for place in choices.places(choice)]
        copies = choices.copies(choice)
        before = self._binding.work
        prices = self._binding.prices(copies)
        budget.spend(self._binding.work - before)
        if prices is not None:
            self._prices.append(prices)
            self._rule_out(prices)
            if not choices.open[choice]:
                return plan
        sides = [Side(place, self.ways[n].made) for place, n in enumerate(bins)]
        pairs = min(_PAIRS_OF_A_CHOICE, PAIRS_TO_A_UNIT * budget.work_left(share))
        allowance = Allowance(pairs, budget.is_over)
        try:
            found = joined(self.counts, sides, self._poorest(copies), allowance)
        finally:
            budget.spend(1000 + allowance.used // PAIRS_TO_A_UNIT)
        if found is None:
            choices.refute(choice)
            return plan
        patterns = [
            pattern
            for number, place in zip(bins, found, strict=True)
            if (pattern := self.ways[number].pattern(place)) is not None
        ]
        better = packed(patterns, self.need, self.yard)
        if better.key >= plan.key or not better.is_whole:
            # It makes too much of a part, which a plan may not.
            self.given_up = "a choice makes enough, but not exactly"
            return plan
        self._cost = better.cost
        choices.below(better.cost)
        return better

    def _worth(self, prices: Sequence[int]) -> dict[int, int]:
        row = np.array(prices, np.int64)
        return {
            number: int((made @ row).max(initial=0))
            for number, made in self._made.items()
        }

    def _needed(self, prices: Sequence[int]) -> int:
        return sum(p * n for p, n in zip(prices, self.need, strict=True))

    def _rule_out(self, prices: Sequence[int]) -> None:
        worth = self._worth(prices)
        # A board that was not looked at is in no open choice.
        self._choices.rule_out(
            [worth.get(number, 0) for number in self._choices.bins],
            self._needed(prices),
        )

    def _poorest(self, copies: dict[int, int]) -> Ints:
        """The rows at which a choice is poorest."""
        richness = []
        vectors = [*self._prices, *(row.row.prices for row in self._rows.rows)]
        for number, prices in enumerate(vectors):
            worth = self._worth(prices)
            have = sum(count * worth[n] for n, count in copies.items())
            richness.append((have / max(1, self._needed(prices)), number))
        chosen = [number for _, number in sorted(richness)[:_ROWS_AT_ONCE]]
        return np.array([vectors[number] for number in chosen], np.int64)


def _without_useless(problem: Problem, need: Sequence[int]) -> Problem:
    """The problem without items that always make more of a part than is needed.

    Only where a plan is sought: whoever checks a proof counts such an item as enough.
    """
    useful = frozenset(
        number
        for number, item in enumerate(problem.items)
        if item.may_spare
        or all(need[demand] >= count for demand, count in item.makes.items())
    )
    bins = tuple(replace(piece, holds=piece.holds & useful) for piece in problem.bins)
    return replace(problem, bins=bins)
