"""How a board may be cut into stretches, as the walk for its nearly best patterns asks it.

Kinds of stretches have the same marks and room; a layout (`near_crosscut`, `near_rip`)
knows where each may begin, what fills it, and what it is worth at best.
"""

from __future__ import annotations

from abc import ABC, abstractmethod
from collections.abc import Sequence
from dataclasses import dataclass

from yieldplan.packing.grid.crossings import Bools, Ints
from yieldplan.packing.grid.pattern import Pattern
from yieldplan.packing.listing.allowance import Allowance
from yieldplan.packing.listing.counts import Counts
from yieldplan.packing.listing.walk import Walk


@dataclass(frozen=True)
class Joined:
    """Stretches that only stand together (a set in steps), by where they may begin.

    Parameters
    ----------
    size
        Of all of them. [cells]
    made
        By their own parts, packed.
    parts
        For each stretch, its label.
    kinds
        For each cell a stretch may begin at and each of them, its kind; -1 in the first
        where they may not begin.
    """

    size: int
    made: Ints
    parts: tuple[int, ...]
    kinds: Ints


class Layout(ABC):
    """How one board is cut into stretches.

    Attributes
    ----------
    size
        Cells the stretches lie along.
    sizes
        For each label of a stretch, how many cells that is; 0 for none.
    kind
        For each cell and label, which kind of stretch begins there; -1 for none.
    is_fresh
        For each cell, whether a stretch there may do what it could not one cell before.
    """

    counts: Counts
    bin: int
    size: int
    sizes: Ints
    kind: Ints
    is_fresh: Bools
    num_kinds: int
    joined: Sequence[Joined] = ()

    @abstractmethod
    def price(self, prices: Ints) -> Priced:
        """The layout at some rows of prices."""


class Priced(ABC):
    """A layout at rows of prices.

    Attributes
    ----------
    at_best
        What each kind and label is worth at most, by row. [money/10,000]
    """

    at_best: Ints

    @abstractmethod
    def begin(self, slack: Ints, longest: int, allowance: Allowance) -> None:
        """Say how much a pattern may lose at each row, and the largest label wanted.

        Raises
        ------
        TooMany
            When the allowance is used up.
        """

    @abstractmethod
    def fill(self, kind: int, least: Ints, allowance: Allowance) -> Walk:
        """The fillings of a kind worth at least so much, by row and label."""

    @abstractmethod
    def pattern(self, stretches: Sequence[Stretch]) -> Pattern:
        """The pattern of some stretches."""


@dataclass(frozen=True)
class Stretch:
    """One stretch of a pattern, and which state of its walk fills it; None is empty."""

    begin: int
    size: int
    kind: int
    walk: Walk | None
    state: int


def in_order(
    row: Sequence[int], chosen: Sequence[tuple[int, Walk, int]]
) -> tuple[tuple[int, Walk | None, int], ...]:
    """For each kind of the row in turn its walk and state; without a walk it is empty."""
    left = list(chosen)
    found: list[tuple[int, Walk | None, int]] = []
    for kind in row:
        if left and left[0][0] == kind:
            found.append(left.pop(0))
        else:
            found.append((kind, None, 0))
    return tuple(found)
