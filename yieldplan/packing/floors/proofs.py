"""Further proofs of a floor, by number of demand and bin; `plan_format.md` says what each proves."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True)
class Limited:
    """Lower prices for bins whose best pattern makes more of a demand than is needed.

    Parameters
    ----------
    prices
        Of each demand. [money/10,000]
    """

    bins: tuple[int, ...]
    prices: tuple[int, ...]


@dataclass(frozen=True)
class PriceRow:
    """Prices at which the bins of a plan are worth at least what all demands are.

    Parameters
    ----------
    prices
        Of each demand. [money/10,000]
    """

    prices: tuple[int, ...]
    limited: tuple[Limited, ...] = ()


@dataclass(frozen=True)
class Leaf:
    """Choices of bins that weighted rows together prove too poor below a cost.

    Parameters
    ----------
    weights
        Number of a row and its weight, in parts of `of`.
    """

    weights: tuple[tuple[int, int], ...]
    of: int


@dataclass(frozen=True)
class Branch:
    """At most so many copies of a bin are taken, or more."""

    bin: int
    at_most: int
    no_more: Branch | Leaf
    more: Branch | Leaf


@dataclass(frozen=True)
class SetsProof:
    """No choice of whole bins cheaper than `least` is rich enough. [money/10,000]"""

    least: int
    rows: tuple[PriceRow, ...]
    tree: Branch | Leaf


@dataclass(frozen=True)
class PacksProof:
    """No choice of packs makes a plan cheaper than `least`. [money/10,000]"""

    least: int
    rows: tuple[PriceRow, ...]


@dataclass(frozen=True)
class TriedProof:
    """No choice of whole bins cheaper than `least` makes everything, found by trying. [money/10,000]"""

    least: int
    rows: tuple[PriceRow, ...]
