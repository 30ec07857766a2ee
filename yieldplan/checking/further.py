"""What a plan file says beyond its prices, so that its floor is higher: fuller boards, sets of boards, trials."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass


@dataclass(frozen=True)
class Limited:
    """Lower prices for some pieces, whose best patterns make more of a part than is needed.

    Parameters
    ----------
    prices
        Part to price. [money/10,000]
    """

    stock: tuple[str, ...]
    prices: Mapping[str, int]


@dataclass(frozen=True)
class Row:
    """Prices of the parts, and lesser values of some pieces at them. [money/10,000]"""

    prices: Mapping[str, int]
    limited: tuple[Limited, ...] = ()


@dataclass(frozen=True)
class Branch:
    """At most so many copies of a piece are taken, or at least one more; two nodes follow."""

    stock: str
    at_most: int


@dataclass(frozen=True)
class Leaf:
    """Rows and their weights, whose sum shows that what is left here is too poor.

    Parameters
    ----------
    weights
        Number of the row, and its weight.
    of
        What the weights are parts of.
    """

    weights: tuple[tuple[int, int], ...]
    of: int


@dataclass(frozen=True)
class Sets:
    """That no choice of whole pieces that costs less is rich enough. [money/10,000]

    Parameters
    ----------
    tree
        Its nodes, each followed by all that is below "no more", then all below "more".
    """

    least: int
    rows: tuple[Row, ...]
    tree: tuple[Branch | Leaf, ...]


@dataclass(frozen=True)
class Packs:
    """That no choice of whole packs makes a plan that costs less. [money/10,000]"""

    least: int
    rows: tuple[Row, ...]


@dataclass(frozen=True)
class Tried:
    """That no choice of whole pieces that costs less can make everything. [money/10,000]"""

    least: int
    rows: tuple[Row, ...]
