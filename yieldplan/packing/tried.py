"""Small jobs proved by trying: no choice of boards that costs less than the plan can make everything.

First, for each board, all it can make that could be part of a cheaper plan (`near_best`).
From then on everything is exact: which boards to take is a table (`choices`), how poor a
choice is a small program over what its boards can make (`binding`), and whether it does is
tried by joining the boards one after the other (`join`). The cheapest choice still open
comes first: a choice that does is the cheapest plan there is, one that does not takes
every part of it with it.
"""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from yieldplan.packing.binding import Binding
from yieldplan.packing.bound import Certificate, certificate_of
from yieldplan.packing.choices import MOST_COPIES, Choices
from yieldplan.packing.crossings import Ints
from yieldplan.packing.first_plan import all_copies
from yieldplan.packing.join import Side, joined
from yieldplan.packing.packed import Packed, packed
from yieldplan.packing.proofs import TriedProof
from yieldplan.packing.stop import Budget
from yieldplan.packing.tried_proof import Rows
from yieldplan.packing.walk import Allowance, TooMany
from yieldplan.packing.ways import Ways, WaysOf
from yieldplan.packing.yard import Column, Yard

_PAIRS_OF_A_BOARD = 3_000_000
_PAIRS_OF_A_CHOICE = 20_000_000
_ROWS_AT_ONCE = 6
"""Rows of prices that a choice is tried with: those at which it is poorest."""


class Tried:
    """The search for a cheaper plan among all choices of boards, and its proof."""

    def __init__(
        self,
        yard: Yard,
        need: Sequence[int],
        short_price: Sequence[int],
        plan: Packed,
        certificate: Certificate,
        columns: Sequence[Column],
        rng: np.random.Generator,
    ) -> None:
        self.yard = yard
        self.need = tuple(need)
        self.given_up = ""
        """Why there will be no proof; empty while there may be one."""
        copies = all_copies(yard)
        self._bins = [
            number for number, count in sorted(copies.items()) for _ in range(count)
        ]
        if yard.problem.offcut_percent:
            self.given_up = "offcuts count"
        elif not plan.is_whole or len(self._bins) > MOST_COPIES or not any(need):
            self.given_up = "too many boards"
        if self.given_up:
            return
        self._of = WaysOf(yard.problem, need)
        self.counts = self._of.counts
        self.ways: dict[int, Ways] = {}
        self._made: dict[int, Ints] = {}
        first = tuple(
            price if count else 0
            for price, count in zip(certificate.prices, need, strict=True)
        )
        self._first = first
        self._values = yard.pricing.price(first)
        self._floor = certificate_of(first, need, self._values, yard.problem).priced
        self.rows: list[tuple[int, ...]] = []
        self._worth: list[dict[int, int]] = []
        self._choices: Choices | None = None
        self._certificate = certificate
        self._columns = list(columns)
        self._cost = plan.cost

    @property
    def is_open(self) -> bool:
        """Whether there is something left to try."""
        if self.given_up:
            return False
        return self._choices is None or bool(self._choices.open.any())

    def step(self, plan: Packed, budget: Budget) -> Packed:
        """Look at one more board, or try one more choice; a better plan, or the same."""
        if not self.is_open:
            return plan
        try:
            for number in sorted(set(self._bins)):
                if number not in self.ways:
                    self._look_at(number, plan, budget)
                    return plan
            return self._try_one(plan, budget)
        except TooMany:
            self.given_up = "too much to try"
            return plan

    def proof(self, budget: Budget) -> TriedProof | None:
        """What proves that the plan of the last step is the cheapest; None while it is open."""
        if self.is_open or self.given_up or self._choices is None:
            return None
        rows = Rows(
            self.yard,
            self.need,
            self._certificate,
            self._columns,
            self._choices,
            self._cost,
        )
        rows.find(budget)
        return rows.proof()

    def _look_at(self, number: int, plan: Packed, budget: Budget) -> None:
        """Find all that a board can make in a plan that costs less."""
        value, price = int(self._values[number]), self.yard.price[number]
        # By so much less than the most a pattern may be worth, as all losses together
        # lift the cost from the floor.
        least = max(value, price) - (plan.cost - self._floor)
        prices = np.array([self._first], np.int64)
        allowance = Allowance(_PAIRS_OF_A_BOARD)
        ways = self._of.ways(number, prices, np.array([least], np.int64), allowance)
        budget.spend(30_000 + 2 * allowance.used)
        self.ways[number] = ways
        self._made[number] = self.counts.unpack(ways.made)

    def _start(self, plan: Packed) -> Choices:
        prices = [self.yard.price[number] for number in self._bins]
        self._choices = Choices(self._bins, prices)
        self._binding = Binding(self.need, self._made)
        self._choices.below(plan.cost)
        self._add_row(self._first)
        return self._choices

    def _add_row(self, prices: tuple[int, ...]) -> int:
        """Rule choices out by what their boards are worth; how many."""
        assert self._choices is not None
        row = np.array(prices, np.int64)
        worth = {
            number: int((made @ row).max()) for number, made in self._made.items()
        }
        needed = sum(p * n for p, n in zip(prices, self.need, strict=True))
        self.rows.append(prices)
        self._worth.append(worth)
        return self._choices.rule_out([worth[n] for n in self._bins], needed)

    def _try_one(self, plan: Packed, budget: Budget) -> Packed:
        choices = self._choices or self._start(plan)
        choices.below(plan.cost)
        self._cost = plan.cost
        choice = choices.cheapest()
        if choice is None:
            return plan
        budget.spend(len(choices.open) // 20)
        bins = [self._bins[place] for place in choices.places(choice)]
        copies = {number: bins.count(number) for number in bins}
        before = self._binding.work
        prices = self._binding.prices(copies)
        budget.spend(self._binding.work - before)
        if prices is not None and self._add_row(prices) and not choices.open[choice]:
            return plan
        sides = [Side(place, self.ways[n].made) for place, n in enumerate(bins)]
        allowance = Allowance(_PAIRS_OF_A_CHOICE)
        found = joined(self.counts, sides, self._poorest(copies), allowance)
        budget.spend(1000 + allowance.used // 5)
        if found is None:
            choices.refute(choice)
            return plan
        patterns = [
            pattern
            for n, place in zip(bins, found, strict=True)
            if (pattern := self.ways[n].pattern(place)) is not None
        ]
        better = packed(patterns, self.need, self.yard)
        if not better.is_whole or better.cost >= plan.cost:
            # It makes too much of a part, which a plan may not.
            self.given_up = "a choice makes enough, but not exactly"
            return plan
        self._cost = better.cost
        choices.below(better.cost)
        return better

    def _poorest(self, copies: dict[int, int]) -> Ints:
        """The rows at which a choice is poorest."""
        richness = []
        for number, (prices, worth) in enumerate(
            zip(self.rows, self._worth, strict=True)
        ):
            needed = sum(p * n for p, n in zip(prices, self.need, strict=True))
            have = sum(count * worth[n] for n, count in copies.items())
            richness.append((have / max(1, needed), number))
        chosen = [number for _, number in sorted(richness)[:_ROWS_AT_ONCE]]
        return np.array([self.rows[number] for number in chosen], np.int64)
