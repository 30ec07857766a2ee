"""Every filling of a stretch that is worth nearly the most: from its near end on, one content after the other.

A board is a row of sections, a section a stack of strips, a strip a row of blanks; ripped
first, a board is a stack of strips. All of these are walked alike. A state is what was made
so far and where the last content ends; the further states are pushed toward the near end
the better, so waste is left only where a mark makes a content possible that was not
possible one cell before. A state is dropped where another one ends no later and makes as
much, and where what may still follow is not worth enough.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

import numpy as np

from yieldplan.packing.grid.crossings import Bools, Ints
from yieldplan.packing.listing.allowance import PAIRS_OF_A_ROW, Allowance
from yieldplan.packing.listing.counts import Counts, first_of_each
from yieldplan.packing.listing.weeding import Ranked, is_covered, undominated

_PAIRS = 1 << 18
"""Pairs looked at in one go."""


@dataclass
class Fillings:
    """Things to put into a stretch, or what a stretch can be filled with.

    Parameters
    ----------
    made
        What each makes, packed.
    size
        Cells it takes along the stretch. [cells]
    label
        Cells it takes the other way; the largest counts. [cells]
    worth
        At each row of prices. [money/10,000]
    """

    made: Ints
    size: Ints
    label: Ints
    worth: Ints

    def __len__(self) -> int:
        return len(self.size)

    def at(self, places: Ints | Bools) -> Fillings:
        """Some of them."""
        return Fillings(
            self.made[places], self.size[places], self.label[places], self.worth[places]
        )


class Walk:
    """One stretch, walked from its near end.

    Parameters
    ----------
    prices
        A row for each price vector, a column for each demand. [money/10,000]
    valid
        For a cell, which contents may begin there, and which of them could not have
        done so one cell before.
    least
        For cells and labels, the least worth a state there must have at each row.

    Attributes
    ----------
    states
        All states; `parent` and `content` tell how each came about, -1 at the start.
    numbers
        What the layout calls each content.
    """

    def __init__(
        self,
        counts: Counts,
        prices: Ints,
        size: int,
        contents: Fillings,
        valid: Callable[[int], tuple[Bools, Bools]],
        least: Callable[[Ints, Ints], Ints],
        allowance: Allowance,
    ) -> None:
        self._counts = counts
        self._prices = prices
        self._contents = contents
        self._least = least
        self._allowance = allowance
        self.numbers: Ints = np.arange(len(contents))
        self._pending: dict[int, list[tuple[Fillings, Ints, Ints]]] = {}
        none = np.zeros(1, np.int64)
        self.states = Fillings(
            np.zeros((1, counts.words), np.int64),
            none,
            none.copy(),
            np.zeros((1, len(prices)), np.int64),
        )
        self.parent = none - 1
        self.content = none - 1
        self._run(size, valid)

    def _run(self, size: int, valid: Callable[[int], tuple[Bools, Bools]]) -> None:
        for at in range(size + 1):
            now, is_fresh = valid(at)
            old, new = self._arrive(at)
            fresh = np.flatnonzero(is_fresh)
            if len(fresh) and old:
                self._expand(np.arange(old), fresh, at)
            if new > old:
                self._expand(np.arange(old, new), np.flatnonzero(now), at)

    def _arrive(self, at: int) -> tuple[int, int]:
        """Keep what ends here and is not made sooner; number of states before and after."""
        old = len(self.states) if at else 0
        pending = self._pending.pop(at, None)
        if pending is None:
            return old, len(self.states)
        made = np.concatenate([found.made for found, _, _ in pending])
        label = np.concatenate([found.label for found, _, _ in pending])
        kept = first_of_each(made, label)
        worth = np.concatenate([found.worth for found, _, _ in pending])
        arrived = self._ranked(Fillings(made, label, label, worth).at(kept))
        counts, allowance = self._counts, self._allowance
        before = self._ranked(self.states)
        kept = kept[~is_covered(counts, arrived, before, allowance)]
        kept = kept[undominated(counts, made[kept], label[kept], allowance)]
        made, label, worth = made[kept], label[kept], worth[kept]
        parent = np.concatenate([parents for _, parents, _ in pending])[kept]
        content = np.concatenate([contents for _, _, contents in pending])[kept]
        size = np.full(len(kept), at, np.int64)
        self.states = Fillings(
            np.concatenate([self.states.made, made]),
            np.concatenate([self.states.size, size]),
            np.concatenate([self.states.label, label]),
            np.concatenate([self.states.worth, worth]),
        )
        self.parent = np.concatenate([self.parent, parent])
        self.content = np.concatenate([self.content, content])
        return old, len(self.states)

    def _ranked(self, states: Fillings) -> Ranked:
        made = states.made
        is_priced = states.worth.shape[1] > 0
        rank = states.worth[:, 0] if is_priced else self._counts.total(made)
        return Ranked(made, states.label, rank)

    def _expand(self, states: Ints, contents: Ints, at: int) -> None:
        if not len(contents):
            return
        self._allowance.take(len(states) * len(contents))
        chunk = max(1, _PAIRS // len(contents))
        for start in range(0, len(states), chunk):
            self._allowance.take(0)
            self._pairs(states[start : start + chunk], contents, at)

    def _pairs(self, states: Ints, contents: Ints, at: int) -> None:
        ends = at + self._contents.size[contents]
        label = np.maximum(
            self.states.label[states, None], self._contents.label[None, contents]
        )
        enough = np.ones(label.shape, np.bool_)
        if len(self._prices):
            least = self._least(np.broadcast_to(ends, label.shape), label)
            for row in range(len(self._prices)):
                worth = (
                    self.states.worth[states, row, None]
                    + self._contents.worth[None, contents, row]
                )
                enough &= worth >= least[row]
        one, other = np.nonzero(enough)
        if not len(one):
            return
        from_, with_ = states[one], contents[other]
        made, over = self._counts.add(
            self.states.made[from_], self._contents.made[with_]
        )
        worth = self.states.worth[from_] + self._contents.worth[with_]
        label, ends = label[one, other], ends[other]
        is_more = np.ones(len(made), np.bool_)
        if len(over):
            # Only what is capped can be no more than before, or worth less than the sum.
            is_more[over] = (made[over] != self.states.made[from_[over]]).any(axis=1)
            worth[over] = self._counts.unpack(made[over]) @ self._prices.T
            if len(self._prices):
                least = self._least(ends[over], label[over])
                is_more[over] &= (least <= worth[over].T).all(axis=0)
        found = Fillings(made, ends, label, worth)
        order = np.flatnonzero(is_more)
        self._allowance.take(PAIRS_OF_A_ROW * len(order))
        order = order[np.argsort(ends[order], kind="stable")]
        cuts = np.flatnonzero(np.diff(ends[order])) + 1
        for group in np.split(order, cuts):
            if len(group):
                self._pending.setdefault(int(ends[group[0]]), []).append(
                    (found.at(group), from_[group], with_[group])
                )

    def way_to(self, state: int) -> list[tuple[int, int]]:
        """The contents of a state, as (content, cell it begins at), in order."""
        found = []
        while self.parent[state] >= 0:
            content = int(self.content[state])
            begin = int(self.states.size[state]) - int(self._contents.size[content])
            found.append((content, begin))
            state = int(self.parent[state])
        return found[::-1]
