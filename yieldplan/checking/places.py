"""The places of a piece: where each blank is clear of marks on its own cells, beside them or between."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import pairwise
from typing import NamedTuple

from yieldplan.checking.asks import Asks
from yieldplan.checking.grid import Block, Grid
from yieldplan.checking.worths import Held, Item

Allowed = tuple[int, ...]
"""For each item which of its stretches of starts a strip leaves it, as bits."""


class Live(NamedTuple):
    """Marks of a strip at which the same items may end. [cells; money/10,000]

    Parameters
    ----------
    first, beyond
        The first mark, and the one after the last.
    items
        Length and worth, shorter ones first and each worth more.
    """

    first: int
    beyond: int
    items: tuple[tuple[int, int], ...]


class Starts(NamedTuple):
    """A stretch of marks at which an item may begin at the same heights. [cells]

    Parameters
    ----------
    first, beyond
        The first mark, and the one after the last.
    bottoms
        The cells across at which it may begin, as bits.
    """

    first: int
    beyond: int
    bottoms: int


class Places:
    """Where the items of a piece may lie, each on its own cells.

    Parameters
    ----------
    grid
        The piece; crook and taper are left aside.
    held
        The blanks that may come from it.
    """

    def __init__(self, grid: Grid, held: Held) -> None:
        self.along = grid.along
        self.across = grid.across
        self.items = [
            item
            for item in worth_placing(held)
            if item.long <= grid.along and item.wide <= grid.across
        ]
        self.blocks = [
            block
            for block in grid.blocks
            if _is_on(block, grid)
            and any(
                way for item in self.items for way in _in_the_way([block], held, item)
            )
        ]
        self.starts = [self._starts(held, item) for item in self.items]
        self._widths = sorted({item.wide for item in self.items})
        self._tops = sorted({block.across[1] for block in self.blocks})

    def strips_from(self, bottom: int) -> Iterator[tuple[int, Allowed]]:
        """Each top worth ripping at, and what a strip from the bottom to it leaves the items.

        A strip is as wide as the item that reaches highest in it; that one lies on the
        strip's bottom or, slid down as far as it goes, on a mark.
        """
        tops = {bottom + wide for wide in self._widths} | {
            top + wide for top in self._tops if top > bottom for wide in self._widths
        }
        last: Allowed = (0,) * len(self.items)
        for top in sorted(each for each in tops if each <= self.across):
            allowed = self.allowed(bottom, top)
            # Higher up than need be is no better.
            if allowed != last:
                last = allowed
                yield top, allowed

    def allowed(self, bottom: int, top: int) -> Allowed:
        """What a strip leaves the items."""
        found = []
        for item, stretches in zip(self.items, self.starts, strict=True):
            left = 0
            highest = top - item.wide
            if highest >= bottom:
                within = (1 << highest + 1) - (1 << bottom)
                for number, stretch in enumerate(stretches):
                    if stretch.bottoms & within:
                        left |= 1 << number
            found.append(left)
        return tuple(found)

    def live(self, allowed: Allowed) -> tuple[Live, ...]:
        """What may end in a strip, from the zero end to the far end."""
        turns = {1, self.along + 1}
        ends = list(self._ends(allowed))
        turns |= {turn for _, *between in ends for turn in between}
        found: list[Live] = []
        for first, beyond in pairwise(sorted(turns)):
            items: list[tuple[int, int]] = []
            # They come by length: a longer one must be worth more.
            for item, from_, until in ends:
                if (
                    from_ <= first
                    and beyond <= until
                    and (not items or item.worth > items[-1][1])
                ):
                    items.append((item.long, item.worth))
            if found and found[-1].items == tuple(items):
                first = found.pop().first
            found.append(Live(first, beyond, tuple(items)))
        return tuple(found)

    def _ends(self, allowed: Allowed) -> Iterator[tuple[Item, int, int]]:
        """Each item with where it may end: the first mark, and the one beyond the last."""
        for number, (item, left) in enumerate(zip(self.items, allowed, strict=True)):
            first = beyond = -1
            for bit, stretch in enumerate(self.starts[number]):
                if not left >> bit & 1:
                    continue
                if stretch.first != beyond:
                    if beyond > first:
                        yield item, first + item.long, beyond + item.long
                    first = stretch.first
                beyond = stretch.beyond
            if beyond > first:
                yield item, first + item.long, beyond + item.long

    def _starts(self, held: Held, item: Item) -> list[Starts]:
        """Every stretch of starts at which the same marks are in an item's way."""
        last = self.along - item.long
        ways = list(_in_the_way(self.blocks, held, item))
        turns = {0, last + 1}
        turns |= {turn for way in ways for turn in way[:2] if 0 < turn <= last}
        in_order = sorted(turns)
        everywhere = (1 << self.across - item.wide + 1) - 1
        found = []
        for first, beyond in pairwise(in_order):
            barred_a = barred_b = 0
            for from_, until, heights, (with_a_up, with_b_up) in ways:
                if from_ < beyond and until > first:
                    barred_a |= heights if with_a_up else 0
                    barred_b |= heights if with_b_up else 0
            bottoms = everywhere & ~(barred_a & barred_b)
            found.append(Starts(first, beyond, bottoms))
        return found


def _in_the_way(
    blocks: Sequence[Block], held: Held, item: Item
) -> Iterator[tuple[int, int, int, tuple[bool, bool]]]:
    """From which start to before which, at which heights, and with which face up a mark bars an item."""
    asks = held.faces[item.face]
    near, far = item.zones
    for block in blocks:
        (start, end), (low, high) = block.along, block.across
        heights = (1 << max(high, 0)) - (1 << max(low - item.wide + 1, 0))
        barred = asks.barred(block)
        if any(barred):
            yield start - item.long + 1, end, heights, barred
        if held.is_in_zones(block):
            if near:
                yield start - near + 1, end, heights, (True, True)
            if far:
                begins = item.long - far
                yield start - item.long + 1, end - begins, heights, (True, True)


def worth_placing(held: Held) -> list[Item]:
    """The items, shorter ones first, without those whose own cells a row of others fills for as much."""
    kept: list[Item] = []
    for item in sorted(held.items, key=lambda each: (each.long, each.wide)):
        others = [
            (other.long, other.worth)
            for other in kept
            if other.wide <= item.wide
            and other.zones == (0, 0)
            and _asks_no_more(held.faces[other.face], held.faces[item.face])
        ]
        best = [0] * (item.long + 1)
        for length in range(1, item.long + 1):
            best[length] = max(
                best[length - 1],
                *(
                    best[length - long] + worth
                    for long, worth in others
                    if long <= length
                ),
                0,
            )
        if best[-1] < item.worth:
            kept.append(item)
    return kept


def _asks_no_more(other: Asks, asks: Asks) -> bool:
    """Whether any wood that will do for the one will do for the other, zones aside."""
    return (
        other.shown <= asks.shown
        and other.back <= asks.back
        and other.shows <= asks.shows
    )


def _is_on(block: Block, grid: Grid) -> bool:
    return (
        block.along[0] < grid.along
        and block.along[1] > 0
        and block.across[0] < grid.across
        and block.across[1] > 0
    )
