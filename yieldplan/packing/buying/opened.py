"""Problems in which some packs are opened: their boards cost next to nothing, the others are out of reach."""

from __future__ import annotations

from collections.abc import Collection
from dataclasses import dataclass, replace

from yieldplan.packing.grid.crossings import Ints
from yieldplan.packing.problem import Problem
from yieldplan.packing.searching.solution import Solution

_WORTHLESS = 1000
"""Boards of opened packs cost their price divided by this."""


@dataclass(frozen=True)
class Found:
    """A plan with the packs it opens; its cost is all that is bought. [money/10,000]"""

    solution: Solution
    opened: frozenset[int]
    cost: int

    @property
    def key(self) -> tuple[int, int]:
        """Less is better: money, then boards cut."""
        return self.cost, len(self.solution.patterns)


def with_opened(problem: Problem, opened: Collection[int], *, singly: bool) -> Problem:
    """The problem with these packs paid for and no packs left to choose.

    A thousandth of its price is enough to leave a whole board whole, and too little to
    decide what is bought besides.

    Parameters
    ----------
    opened
        Numbers of packs.
    singly
        Whether pieces that are in no pack may be bought too.
    """
    pack_of = {n: place for place, pack in enumerate(problem.packs) for n in pack}
    bins = []
    for number, piece in enumerate(problem.bins):
        place = pack_of.get(number)
        is_there = singly if place is None else place in opened
        if not is_there:
            bins.append(replace(piece, holds=frozenset(), price=0))
        elif place is None:
            bins.append(piece)
        else:
            bins.append(replace(piece, price=max(1, piece.price // _WORTHLESS)))
    return replace(problem, packs=(), bins=tuple(bins))


def shared_out(problem: Problem, values: Ints) -> Problem:
    """The problem with each pack's price falling to its bins by their values, as if sold singly."""
    bins = list(problem.bins)
    for pack in problem.packs:
        worth = {number: int(values[number]) * bins[number].copies for number in pack}
        total = sum(worth.values())
        price = sum(bins[number].price * bins[number].copies for number in pack)
        for number in pack if total else ():
            share = price * worth[number] // (total * bins[number].copies)
            bins[number] = replace(bins[number], price=share)
    return replace(problem, packs=(), bins=tuple(bins))
