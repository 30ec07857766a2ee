"""Whether the boards of a choice can make everything together: one pattern for each, board after board.

What a choice is worth beyond the need, at each row of prices, is all that its patterns may
lose together. So a pattern that loses more alone is out, and so is a beginning whose
boards have lost more. The boards with the fewest patterns come first.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from yieldplan.packing.grid.crossings import Ints
from yieldplan.packing.listing.allowance import Allowance
from yieldplan.packing.listing.counts import Counts, first_of_each
from yieldplan.packing.listing.weeding import undominated

_PAIRS = 1 << 19
_WEEDED = 3000
"""Beginnings among which those that make less are weeded out; among more it takes too long."""


@dataclass(frozen=True)
class Side:
    """What one board of a choice can make.

    Parameters
    ----------
    made
        Packed, a row for each pattern.
    """

    slot: int
    made: Ints


def near_enough(
    counts: Counts, sides: Sequence[Side], prices: Ints
) -> tuple[list[Ints], Ints] | None:
    """Of each side the patterns that can matter, and what each side is worth at most.

    Less patterns make a side worth less, and then others cannot matter either: it is
    done again until nothing changes.

    Returns
    -------
    tuple
        For each side places of its patterns, and by side and row the most worth; None
        when some row proves that the sides are too poor.
    """
    needed = prices @ counts.need
    worth = [counts.unpack(side.made) @ prices.T for side in sides]
    kept = [np.arange(len(side.made)) for side in sides]
    while True:
        if any(not len(each) for each in kept):
            return None
        most = np.array(
            [each[places].max(axis=0) for each, places in zip(worth, kept, strict=True)]
        ).reshape(len(sides), len(prices))
        slack = most.sum(axis=0) - needed
        if (slack < 0).any():
            return None
        smaller = [
            places[(each[places] >= top - slack).all(axis=1)]
            for each, places, top in zip(worth, kept, most, strict=True)
        ]
        if all(
            len(one) == len(other) for one, other in zip(smaller, kept, strict=True)
        ):
            return kept, most
        kept = smaller


def joined(
    counts: Counts, sides: Sequence[Side], prices: Ints, allowance: Allowance
) -> list[int] | None:
    """For each side the place of its pattern, all together making the need; None if none do.

    Raises
    ------
    TooMany
        When the allowance is used up.
    """
    near = near_enough(counts, sides, prices)
    if near is None:
        return None
    kept, most = near
    needed = prices @ counts.need
    goal = counts.pack(counts.need[None])
    order = sorted(range(len(sides)), key=lambda number: (len(kept[number]), number))
    made = np.zeros((1, counts.words), np.int64)
    ahead = most.sum(axis=0)
    steps: list[tuple[Ints, Ints]] = []
    for turn, number in enumerate(order):
        ahead = ahead - most[number]
        here = sides[number].made[kept[number]]
        allowance.take(len(made) * len(here))
        is_last = turn == len(order) - 1
        found, parents, contents = [], [], []
        chunk = max(1, _PAIRS // len(here))
        for start in range(0, len(made), chunk):
            allowance.take(0)
            part = np.arange(start, min(len(made), start + chunk))
            one = np.repeat(part, len(here))
            other = np.tile(np.arange(len(here)), len(part))
            total, _ = counts.add(made[one], here[other])
            if is_last:
                keep = (total == goal).all(axis=1)
            else:
                worth = counts.unpack(total) @ prices.T
                keep = (worth + ahead >= needed).all(axis=1)
            places = np.flatnonzero(keep)
            places = places[first_of_each(total[places], places * 0)]
            found.append(total[places])
            parents.append(one[places])
            contents.append(other[places])
        made = np.concatenate(found)
        parent, content = np.concatenate(parents), np.concatenate(contents)
        places = first_of_each(made, np.zeros(len(made), np.int64))
        if len(places) <= _WEEDED:
            places = places[undominated(counts, made[places], places * 0, allowance)]
        made = made[places]
        steps.append((parent[places], content[places]))
        if not len(made):
            return None
    chosen = [0] * len(sides)
    at = 0
    for number, (parent, content) in zip(reversed(order), reversed(steps), strict=True):
        chosen[number] = int(kept[number][content[at]])
        at = int(parent[at])
    return chosen
