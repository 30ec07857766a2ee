"""What the packer is asked: demands, items that serve them, bins to cut them from; integers only."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace

from yieldplan.model.pieces import MarksFrom
from yieldplan.model.plan import Family


@dataclass(frozen=True, kw_only=True)
class Demand:
    """So many of one thing.

    Parameters
    ----------
    rank
        0 for show parts, 1 for others: when wood is short, lower ranks are made first.
    area
        Finished area of one, to weigh what is missing. [ticks^2]
    whole
        So many of it make one part (the strips of a panel): fewer are of no use.
    """

    name: str
    need: int
    rank: int
    area: int
    whole: int = 1


@dataclass(frozen=True, kw_only=True)
class Item:
    """A rectangle that serves demands when it is cut.

    Parameters
    ----------
    length, width
        [ticks]
    makes
        Demand index to how many one item gives.
    layers
        Bit masks of `Block.kinds` bits the item cannot bear on the side of face A and of
        face B, first with face A showing, then with face B showing.
    may_spare
        Whether more of a demand than needed may be made by it (gangs).
    zones
        How far from its two ends, at zero and at the far one, it bears no mark of
        `zone_bits` on either face. [ticks]
    """

    name: str
    length: int
    width: int
    makes: Mapping[int, int]
    layers: tuple[tuple[int, int], tuple[int, int]]
    may_spare: bool = False
    zones: tuple[int, int] = (0, 0)
    zone_bits: int = 0


@dataclass(frozen=True, kw_only=True)
class Block:
    """A mark on a bin.

    Parameters
    ----------
    box
        x0, y0, x1, y1 in the frame of the bin. [ticks]
    on_a, on_b
        Bit of its kind where it shows on face A, on face B (both for a mark through).
    """

    box: tuple[int, int, int, int]
    on_a: int
    on_b: int


@dataclass(frozen=True, kw_only=True)
class Bin:
    """A piece that may be bought and cut.

    Parameters
    ----------
    length, width, trims, edges
        [ticks]
    price
        Of one copy. [money/10,000]
    holds
        Indices of the items that may be cut from it.
    widths
        Clear width at the numbered end and at the far one, where they differ. [ticks]
    crook
        [ticks]
    is_twisted
        Whether only short stretches may be cut from it.
    found
        Boxes of the marks as they were found, without what is kept clear around them.
    """

    name: str
    length: int
    width: int
    trims: tuple[int, int]
    edges: tuple[int, int]
    blocks: tuple[Block, ...]
    price: int
    copies: int
    holds: frozenset[int]
    widths: tuple[int, int] | None = None
    crook: int = 0
    is_twisted: bool = False
    found: tuple[tuple[int, int, int, int], ...] = ()

    @property
    def is_straight(self) -> bool:
        """Whether every stretch of it is as wide as the whole."""
        return self.widths is None and not self.crook and not self.is_twisted


@dataclass(frozen=True, kw_only=True)
class Problem:
    """One wood's question to the packer. Distances in ticks, money in 1/10,000.

    Parameters
    ----------
    crook_at_most
        Most crook of a stretch that is ripped; None takes any.
    twisted_at_most
        Longest stretch of a twisted bin, to within a step.
    sets
        Items that are cut as the steps of one set, in order from the zero end; they are
        cut in no other way.
    offcut_percent
        What an offcut worth keeping counts for, of its share of the price.
    offcut_sizes
        Least (length, width) of an offcut worth keeping; any of them will do. [ticks]
    packs
        Bins that are bought only together, all copies of them.
    """

    demands: tuple[Demand, ...]
    items: tuple[Item, ...]
    bins: tuple[Bin, ...]
    family: Family
    kerf: int
    step_along: int
    step_across: int
    marks_from: MarksFrom
    crook_at_most: int | None = None
    twisted_at_most: int = 0
    sets: tuple[tuple[int, ...], ...] = ()
    offcut_percent: int = 0
    offcut_sizes: tuple[tuple[int, int], ...] = ()
    packs: tuple[tuple[int, ...], ...] = ()

    def sold_alone(self) -> tuple[int, ...]:
        """Bins that are in no pack."""
        packed = {number for pack in self.packs for number in pack}
        return tuple(n for n in range(len(self.bins)) if n not in packed)

    def sold_together(self) -> tuple[tuple[int, ...], ...]:
        """Every bin once: the packs, then each bin that is sold by itself."""
        return (*self.packs, *((number,) for number in self.sold_alone()))

    def in_sets(self) -> frozenset[int]:
        """Items that are steps of a set."""
        return frozenset(number for steps in self.sets for number in steps)


def is_alike(one: Problem, other: Problem) -> bool:
    """Whether two problems ask the same, whatever their blanks are called."""

    def nameless(problem: Problem) -> Problem:
        items = tuple(replace(item, name="") for item in problem.items)
        return replace(problem, items=items)

    return nameless(one) == nameless(other)
