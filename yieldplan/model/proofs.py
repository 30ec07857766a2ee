"""Further proofs of a floor: what whole boards, and parts nobody asked for twice, say beyond the prices."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass


@dataclass(frozen=True, kw_only=True)
class Limited:
    """Lower prices of parts for pieces that could make more of a part than is needed.

    Parameters
    ----------
    stock
        Ids of the pieces.
    prices
        Demand id to price. [money/10,000]
    """

    stock: tuple[str, ...]
    prices: Mapping[str, int]


@dataclass(frozen=True, kw_only=True)
class PriceRow:
    """Prices at which the pieces of a plan are worth at least what all parts are.

    Parameters
    ----------
    prices
        Demand id to price. [money/10,000]
    """

    prices: Mapping[str, int]
    limited: tuple[Limited, ...] = ()


@dataclass(frozen=True, kw_only=True)
class Leaf:
    """Choices of pieces that weighted rows together prove too cheap to be rich enough.

    Parameters
    ----------
    weights
        Number of a row and its weight, in parts of `of`.
    """

    weights: tuple[tuple[int, int], ...]
    of: int


@dataclass(frozen=True, kw_only=True)
class Branch:
    """Choices of pieces told apart by how many copies of one are taken.

    Parameters
    ----------
    stock
        Id of the piece.
    at_most
        So many copies or fewer in `no_more`, more than that in `more`.
    """

    stock: str
    at_most: int
    no_more: Branch | Leaf
    more: Branch | Leaf


@dataclass(frozen=True, kw_only=True)
class SetsProof:
    """No choice of whole pieces cheaper than `least` is rich enough. [money/10,000]"""

    least: int
    rows: tuple[PriceRow, ...]
    tree: Branch | Leaf


@dataclass(frozen=True, kw_only=True)
class PacksProof:
    """No choice of packs makes a plan cheaper than `least`. [money/10,000]"""

    least: int
    rows: tuple[PriceRow, ...]


@dataclass(frozen=True, kw_only=True)
class TriedProof:
    """No choice of whole pieces cheaper than `least` makes everything, found by trying.

    Parameters
    ----------
    least
        [money/10,000]
    rows
        Pass over choices that are too poor, and patterns that leave too little.
    """

    least: int
    rows: tuple[PriceRow, ...]
