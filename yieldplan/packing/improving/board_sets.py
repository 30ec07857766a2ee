"""Small jobs: which boards before how to cut them; sets of boards that could hold everything are tried one by one."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from fractions import Fraction

import numpy as np

from yieldplan.packing.filling.first_plan import all_copies, first_plan
from yieldplan.packing.filling.packed import Packed, packed
from yieldplan.packing.filling.refill import refill
from yieldplan.packing.filling.yard import Column, Yard
from yieldplan.packing.grid.crossings import Ints
from yieldplan.packing.grid.pattern import Pattern, Section
from yieldplan.packing.improving.by_pieces import ByPieces
from yieldplan.packing.improving.dive import Dive, Question
from yieldplan.packing.stop import NO_LIMIT, Budget

MOST_BOARDS = 16
"""Boards whose sets are looked through; each one more doubles them."""
_ROUNDS = 40
_DIVES = (0.0, 0.15, 0.15, 0.3, 0.3, 0.5)
"""How freely the dives into one set choose."""
_SPREADS = (0.2, 0.5, 1.0)
"""How far guesses stray from the set's own prices."""
_PLANS = 4
"""Plans built piece by piece, each time."""
_SOON = 16
"""Sets for which plans are built piece by piece and nothing else is tried, before the search goes on."""
_PASSES = 4
"""How often sets that no price rules out are tried."""
_ENOUGH = 1e-6


class BoardSets:
    """Sets of boards, cheaper than a plan, that no price vector rules out.

    Whatever the parts are worth, a set of boards whose best patterns together are worth
    less than all that is needed cannot make it. Each such price vector is a row; a set
    that turns out not to do gives the next one.

    Parameters
    ----------
    plan
        The plan to beat; its boards are among those looked at.
    rows
        Price vectors to begin with.
    """

    def __init__(
        self,
        yard: Yard,
        need: Sequence[int],
        short_price: Sequence[int],
        plan: Packed,
        rows: Sequence[Sequence[int]],
        rng: np.random.Generator,
    ) -> None:
        self.yard = yard
        self.need = tuple(need)
        self.short_price = short_price
        self._guesses = [list(prices) for prices in rows]
        self.found: list[Column] = []
        self._rng = rng
        self._slots = self._best_paying(plan, rows[0])
        self._cost = _sums([yard.price[number] for number in self._slots])
        self._possible = self._cost < plan.cost
        self._passes = 1
        self._worth = self._worths(rows[0])
        self._steps = 0
        for prices in rows:
            self._rule_out(prices)
        self._open = self._possible.copy()

    @property
    def is_small(self) -> bool:
        """Whether all boards of the yard are looked at: then no set is overlooked."""
        return 0 < len(self._slots) == sum(all_copies(self.yard).values())

    def step(self, plan: Packed, columns: Sequence[Column], budget: Budget) -> Packed:
        """Try one set that is still open, the richest and the cheapest in turn; the plan if it did not do."""
        self._open &= self._possible & (self._cost < plan.cost)
        if not self.is_open and self._passes < _PASSES:
            # No price rules these out; other guesses may find how.
            self._passes += 1
            self._open = self._possible & (self._cost < plan.cost)
        chosen = self._chosen()
        if chosen is None:
            return plan
        supply = self._supply(chosen)
        for better in self._tries(supply, plan, columns, budget):
            if better is not None and better.key < plan.key:
                return better
            if budget.is_over():
                break
        self._close(chosen)
        return plan

    def soon(self, plan: Packed, budget: Budget, share: Fraction) -> Packed:
        """A few sets, and for each a few plans built piece by piece; the best of them, or the plan.

        Parameters
        ----------
        share
            Part of all allowed work that may be used up when it ends.
        """
        for _ in range(_SOON):
            self._open &= self._possible & (self._cost < plan.cost)
            chosen = self._chosen()
            if chosen is None:
                break
            # What it lacks was luck perhaps, so the sets within it are not closed.
            self._open[chosen] = False
            supply = self._supply(chosen)
            for better in self._by_pieces(self._builders(supply), plan.cost, budget):
                if better is not None:
                    plan = better
                    break
                if budget.is_over(share):
                    return plan
        return plan

    def _chosen(self) -> int | None:
        """The next set to try, if one is open."""
        if not self.is_open:
            return None
        places = np.flatnonzero(self._open)
        # Turn about: the richest set, whose failure rules out most, and the cheapest.
        self._steps += 1
        is_richest = self._steps % 2 == 1
        order = -self._worth[places] if is_richest else self._cost[places]
        return int(places[np.argmin(order)])

    def _supply(self, chosen: int) -> dict[int, int]:
        """The boards of a set."""
        supply: dict[int, int] = {}
        for place, number in enumerate(self._slots):
            if chosen >> place & 1:
                supply[number] = supply.get(number, 0) + 1
        return supply

    def _close(self, chosen: int) -> None:
        """Nor are smaller sets tried that are part of it."""
        numbers = np.arange(len(self._open))
        self._open &= (numbers | chosen) != chosen

    def _tries(
        self,
        supply: Mapping[int, int],
        plan: Packed,
        columns: Sequence[Column],
        budget: Budget,
    ) -> Iterator[Packed | None]:
        """Plans from one set of boards, until it is known that there is none."""
        for guess in self._guesses:
            yield self._board_by_board(supply, guess, budget)
            yield self._from_nothing(supply, guess)
        # The first dive gives up where prices say so; the others go on, as what looks
        # short on the way can still be found room for.
        limit = plan.cost
        known = [column for column in columns if column.bin in supply]
        pieces = self._builders(supply)
        yield from self._by_pieces(pieces, plan.cost, budget)
        for noise in _DIVES:
            question = Question(self.need, supply, self.short_price, limit, _ROUNDS)
            dive = Dive(self.yard, question, known, self._rng, noise)
            limit = NO_LIMIT
            yield dive.run(budget)
            self.found += dive.found
            known += dive.found
            root = dive.root
            if root is None:
                return
            prices = [max(0, int(price)) for price in root.prices]
            if sum(root.short) > _ENOUGH:
                self._rule_out(prices)
                return
            yield from self._by_pieces(pieces, plan.cost, budget)
            for spread in _SPREADS:
                guess = self._spread(prices, spread)
                yield self._board_by_board(supply, guess, budget)
                yield self._from_nothing(supply, guess)

    def _builders(self, supply: Mapping[int, int]) -> list[ByPieces]:
        return [
            ByPieces(self.yard, self.need, supply, prices, self._rng)
            for prices in self._guesses
        ]

    def _by_pieces(
        self, builders: Sequence[ByPieces], limit: int, budget: Budget
    ) -> Iterator[Packed | None]:
        """Plans built piece by piece; none where parts come in sets."""
        if not self.yard.in_sets:
            for _ in range(_PLANS):
                for each in builders:
                    yield each.one(limit, budget)

    def _spread(self, prices: Sequence[int], spread: float) -> list[int]:
        factors = np.exp(self._rng.normal(0.0, spread, len(prices)))
        return [
            1 + int(price * factor)
            for price, factor in zip(prices, factors, strict=True)
        ]

    def _board_by_board(
        self, supply: Mapping[int, int], prices: Sequence[int], budget: Budget
    ) -> Packed:
        before = self.yard.pricing.work
        plan = first_plan(self.yard, self.need, prices, supply)
        budget.spend(self.yard.pricing.work - before)
        return plan

    def _from_nothing(self, supply: Mapping[int, int], prices: Sequence[int]) -> Packed:
        """The parts laid into whole boards one after the other, the dearest first."""
        left = list(self.need)
        patterns = []
        for number, copies in sorted(supply.items()):
            along = self.yard.grids[number].along
            for _ in range(copies):
                empty = Pattern(number, "C", ())
                if self.yard.problem.family == "R":
                    empty = Pattern(number, "R", (Section(0, along, ()),))
                pattern, left = refill(empty, left, prices, self.yard)
                patterns.append(pattern)
        return packed(patterns, self.need, self.yard)

    @property
    def may_go_on(self) -> bool:
        """Whether a set is left to try, now or in another pass."""
        return self.is_open or (self._passes < _PASSES and bool(self._possible.any()))

    @property
    def is_open(self) -> bool:
        """Whether a set is left to try."""
        return bool((self._open & self._possible).any())

    def _rule_out(self, prices: Sequence[int]) -> None:
        needed = sum(p * n for p, n in zip(prices, self.need, strict=True))
        self._possible &= self._worths(prices) >= needed

    def _worths(self, prices: Sequence[int]) -> Ints:
        """What the best patterns of each set are worth together."""
        values = self.yard.pricing.price(list(prices))
        return _sums([int(values[number]) for number in self._slots])

    def _best_paying(self, plan: Packed, prices: Sequence[int]) -> list[int]:
        """The plan's boards, and those whose best pattern pays most of their price."""
        used = sorted(pattern.bin for pattern in plan.patterns)
        left = all_copies(self.yard)
        for number in used:
            left[number] -= 1
        values = self.yard.pricing.price(list(prices))
        others = sorted(
            (number for number, copies in left.items() for _ in range(copies)),
            key=lambda number: (
                -int(values[number]) / max(1, self.yard.price[number]),
                number,
            ),
        )
        return (used + others)[:MOST_BOARDS] if len(used) < MOST_BOARDS else []


def _sums(amounts: Sequence[int]) -> Ints:
    """The sum of every subset; bit n of its place says whether amount n is in it."""
    sums = np.zeros(1, np.int64)
    for amount in amounts:
        sums = np.concatenate([sums, sums + amount])
    return sums
