"""Which vectors of counts are of no use, because another one makes as much: exact, and fast among many.

To compare each with each takes most of the time of a walk. Most vectors that are of no use
were met before just as they are, and a look at a sorted list tells. For the others the
vectors to compare with stand in blocks of neighbours: where not even the most of a block
would do, none of the block does.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from yieldplan.packing.grid.crossings import Bools, Ints
from yieldplan.packing.listing.allowance import Allowance
from yieldplan.packing.listing.counts import Counts

_BLOCK = 32
_AT_ONCE = 1 << 16
"""Comparisons made in one go: so many that a core keeps them at hand."""
_ONES, _BY = 128, 512
_TO_A_PAIR = 50
"""Comparisons that take as long as a pair that is only looked at."""
_MIX = np.int64(1_000_003)
"""Makes one number of a few words; two vectors may share it, and then one is not looked at."""


@dataclass(frozen=True)
class Ranked:
    """Vectors of counts with a rank each: what makes at least what another does, ranks no lower.

    Parameters
    ----------
    made
        Packed.
    label
        The smaller the better.
    rank
        What the counts are worth at any prices will do.
    """

    made: Ints
    label: Ints
    rank: Ints

    def at(self, places: Ints) -> Ranked:
        """Some of them."""
        return Ranked(self.made[places], self.label[places], self.rank[places])


def is_covered(counts: Counts, ones: Ranked, by: Ranked, allowance: Allowance) -> Bools:
    """Which of `ones` some row of `by` makes at least, with a label not above theirs.

    Raises
    ------
    TooMany
        When the allowance is used up.
    """
    if not len(by.made) or not len(ones.made):
        return np.zeros(len(ones.made), np.bool_)
    by = by.at(np.lexsort(by.made.T))
    found = _is_known(ones, by)
    blocks = _Blocks(counts, by)
    left = np.flatnonzero(~found)
    chunk = max(1, _AT_ONCE // len(blocks))
    for start in range(0, len(left), chunk):
        part = left[start : start + chunk]
        found[part] = blocks.cover(ones.at(part), allowance)
    return found


def _is_known(ones: Ranked, by: Ranked) -> Bools:
    """Which of `ones` are in `by` as they are; some may be missed."""
    mix = _MIX ** np.arange(1, by.made.shape[1] + 1)
    by_key = by.made @ mix
    order = np.lexsort((by.label, by_key))
    place = np.searchsorted(by_key[order], ones.made @ mix)
    place = order[np.minimum(place, len(order) - 1)]
    is_same: Bools = (by.made[place] == ones.made).all(axis=1)
    return is_same & (by.label[place] <= ones.label)


class _Blocks:
    """Rows in order, in blocks of neighbours, and what each block makes at most."""

    def __init__(self, counts: Counts, by: Ranked) -> None:
        self._counts = counts
        starts = np.arange(0, len(by.made), _BLOCK)
        most = np.maximum.reduceat(counts.unpack(by.made), starts, axis=0)
        self._most = counts.pack(most)
        self._rank = np.maximum.reduceat(by.rank, starts)
        self._label = np.minimum.reduceat(by.label, starts)
        # The last block is filled up with what it has already.
        rows = np.minimum(
            starts[:, None] + np.arange(_BLOCK)[None, :], len(by.made) - 1
        )
        self._made_of, self._label_of = by.made[rows], by.label[rows]

    def __len__(self) -> int:
        return len(self._rank)

    def cover(self, ones: Ranked, allowance: Allowance) -> Bools:
        """Which of `ones` a row of some block makes at least."""
        found = np.zeros(len(ones.made), np.bool_)
        may = self._counts.covers(self._most, ones.made)
        may &= self._rank[:, None] >= ones.rank[None]
        may &= self._label[:, None] <= ones.label[None]
        block, one = np.nonzero(may)
        allowance.take((may.size + _BLOCK * len(one)) // _TO_A_PAIR)
        chunk = _AT_ONCE // _BLOCK
        for start in range(0, len(one), chunk):
            here, there = one[start : start + chunk], block[start : start + chunk]
            is_so = self._counts.covers_each(
                self._made_of[there], ones.made[here, None]
            )
            is_so &= self._label_of[there] <= ones.label[here, None]
            found[here[is_so.any(axis=1)]] = True
        return found


def undominated(counts: Counts, made: Ints, label: Ints, allowance: Allowance) -> Ints:
    """Places of those that no other one makes at least, with a label not above theirs.

    No two rows may be alike.

    Raises
    ------
    TooMany
        When the allowance is used up.
    """
    # What covers another one makes more parts in all: only what was kept before can.
    order = np.argsort(-counts.total(made), kind="stable")
    kept: Ints = order[:0]
    for start in range(0, len(order), _ONES):
        allowance.take(len(kept) * _ONES // _TO_A_PAIR)
        part = order[start : start + _ONES]
        for first in range(0, len(kept), _BY):
            by = kept[first : first + _BY]
            covers = counts.covers(made[by], made[part])
            covers &= label[by, None] <= label[None, part]
            part = part[~covers.any(axis=0)]
        covers = counts.covers(made[part], made[part])
        covers &= label[part, None] <= label[None, part]
        np.fill_diagonal(covers, val=False)
        kept = np.concatenate([kept, part[~covers.any(axis=0)]])
    return np.sort(kept)
