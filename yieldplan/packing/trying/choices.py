"""Which boards to take, before how to cut them: all choices that cost less than a plan, and those still open.

With up to twenty boards every choice is one place of a table: bit n of its number says
whether board n is in it. A choice is out when it costs too much, when some row of prices
proves it too poor, or when it is part of one that was tried in vain.
"""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from yieldplan.packing.grid.crossings import Bools, Ints

MOST_COPIES = 20
"""Boards whose choices are gone through; each one more doubles them."""


class Choices:
    """The choices of some boards.

    Parameters
    ----------
    bins
        Each bin as often as it has copies; equal ones beside each other.
    prices
        Of each of them. [money/10,000]
    """

    def __init__(self, bins: Sequence[int], prices: Sequence[int]) -> None:
        self.bins = tuple(bins)
        self.cost = sums(prices)
        self.open: Bools = np.ones(len(self.cost), np.bool_)
        self._numbers = np.arange(len(self.cost))
        for place in range(1, len(bins)):
            if bins[place] == bins[place - 1]:
                # Of copies the first ones are taken.
                second = self._numbers >> place & 1 == 1
                first = self._numbers >> place - 1 & 1 == 1
                self.open &= first | ~second
        self._is_proper = self.open.copy()

    def below(self, cost: int) -> None:
        """Only what costs less is of use."""
        self.open &= self.cost < cost

    def only_all(self) -> None:
        """Only the choice of all boards is of use."""
        self.open[:-1] = False

    def rule_out(self, worths: Sequence[int], needed: int) -> int:
        """Close the choices that are worth too little together; how many they were.

        Parameters
        ----------
        worths
            Of each board, in the order of `bins`. [money/10,000]
        """
        before = int(self.open.sum())
        self.open &= sums(worths) >= needed
        return before - int(self.open.sum())

    def refute(self, choice: int) -> None:
        """Close a choice that was tried in vain, and every part of it."""
        self.open &= (self._numbers | choice) != choice

    def cheapest(self) -> int | None:
        """The cheapest open choice; None when none is left."""
        places = np.flatnonzero(self.open)
        if not len(places):
            return None
        return int(places[np.argmin(self.cost[places])])

    def largest(self, cost: int) -> list[int]:
        """The choices below a cost to which nothing can be added."""
        below = self._is_proper & (self.cost < cost)
        can_take_more = np.zeros(len(below), np.bool_)
        for place in range(len(self.bins)):
            without = self._numbers[(self._numbers >> place & 1) == 0]
            can_take_more[without] |= below[without | 1 << place]
        return [int(number) for number in np.flatnonzero(below & ~can_take_more)]

    def copies(self, choice: int) -> dict[int, int]:
        """How many copies of each bin a choice takes."""
        bins = [self.bins[place] for place in self.places(choice)]
        return {number: bins.count(number) for number in bins}

    def places(self, choice: int) -> list[int]:
        """The places of a choice's boards."""
        return [place for place in range(len(self.bins)) if choice >> place & 1]


def sums(amounts: Sequence[int]) -> Ints:
    """The sum of every subset; bit n of its place says whether amount n is in it."""
    found = np.zeros(1, np.int64)
    for amount in amounts:
        found = np.concatenate([found, found + amount])
    return found
