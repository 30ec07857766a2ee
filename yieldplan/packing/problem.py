"""What the packer is asked: demands, items that serve them, bins to cut them from; integers only."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

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
    """

    name: str
    need: int
    rank: int
    area: int


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
    """

    name: str
    length: int
    width: int
    makes: Mapping[int, int]
    layers: tuple[tuple[int, int], tuple[int, int]]
    may_spare: bool = False


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


@dataclass(frozen=True, kw_only=True)
class Problem:
    """One wood's question to the packer. Distances in ticks, money in 1/10,000."""

    demands: tuple[Demand, ...]
    items: tuple[Item, ...]
    bins: tuple[Bin, ...]
    family: Family
    kerf: int
    step_along: int
    step_across: int
    marks_from: MarksFrom
