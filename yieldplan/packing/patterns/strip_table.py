"""What a strip of a given width and length can hold at given prices, no blank in it oftener than the job asks for.

The knapsack every strip of every board shares; it is made once a round of prices. Items
come in order of their width, so that one pass through them gives the strips of every
width. A strip is *led* by the last of its items in that order: it is as wide as that one,
and in a stack of strips no item leads oftener than it is asked for (`stack_table`).
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction

import numpy as np

from yieldplan.packing.grid.crossings import Bools, Ints
from yieldplan.packing.patterns.group import Group
from yieldplan.packing.patterns.values import LOW, ShapeValues, Sums, at_a_time

_NEARLY = Fraction(995, 1000)
"""Of the dearest filling, what others must be worth at the least."""


@dataclass(frozen=True)
class Good:
    """An item that is worth something. [cells; money/10,000]

    Parameters
    ----------
    at_most
        How often it may lie in a strip, and lead strips beside each other.
    """

    item: int
    length: int
    width_index: int
    face_class: int
    worth: int
    at_most: int


@dataclass(frozen=True)
class Led:
    """Strips led by one item: the most each is worth, by the place of its length."""

    good: Good
    worth: Ints


@dataclass(frozen=True)
class _Pass:
    """How an item was put into strips: so many at a time, and where, by length, that was worth it."""

    good: Good
    further: tuple[tuple[int, Bools], ...]
    first: Bools


class StripTable:
    """Best value of a strip, for every width of the group and every length that is a sum.

    Parameters
    ----------
    masks
        Bit sets of face rules; there is one table for each.
    """

    def __init__(self, group: Group, lengths: Sums, masks: Sequence[int]) -> None:
        self.group = group
        self.lengths = lengths
        self.masks = tuple(masks)
        self._order = sorted(
            (
                (shape.width_index, shape.length, item, place)
                for place, shape in enumerate(group.shapes)
                for item in shape.items
            ),
        )
        steps = sum(
            len(at_a_time(min(group.at_most[item], group.longest // length)))
            for _, length, item, _ in self._order
        )
        each = len(self.masks) * (100 + group.longest // 20) // 8
        self.work = 1000 + (1 + steps) * each
        self.value: Ints = np.zeros((0, 0, 0), np.int64)
        self.led: tuple[Led, ...] = ()
        """Of the first face rules, the strips that each item leads."""
        self._values: ShapeValues | None = None
        self._goods: tuple[Good, ...] = ()
        self._passes: dict[int, list[_Pass]] = {}
        self._number_of: dict[int, int] = {}
        self._traced: dict[tuple[int, int, int], list[tuple[int, int]]] = {}

    def reprice(self, values: ShapeValues) -> None:
        """Work the table out for new prices.

        `value[mask, width, length]` is in the unit of the prices.
        """
        if values is self._values:
            # Two saws share the table; its work is counted for both.
            return
        self._values = values
        self._goods = tuple(self._worth_having(values))
        self._passes = {}
        self._number_of = {}
        self._traced = {}
        totals, num_widths = self.lengths.totals, len(self.group.widths)
        self.value = np.zeros((len(self.masks), num_widths, len(totals)), np.int64)
        led: list[Led] = []
        for number, mask in enumerate(self.masks):
            passes = self._passes[number] = []
            row = np.zeros(self.group.longest + 1, np.int64)
            done = 0
            for good in self._goods:
                if not mask >> good.face_class & 1:
                    continue
                if good.width_index > done:
                    self.value[number, done : good.width_index] = row[totals]
                    done = good.width_index
                each, first, row = _put_in(row, good)
                passes.append(each)
                if number == 0:
                    self._number_of[good.item] = len(led)
                    led.append(Led(good, first[totals]))
            self.value[number, done:] = row[totals]
        self.led = tuple(led)

    def _worth_having(self, values: ShapeValues) -> list[Good]:
        found = []
        for width_index, length, item, place in self._order:
            worth = values.of_item[item]
            at_most = values.at_most[item]
            if worth > 0 and at_most > 0:
                face = self.group.shapes[place].face_class
                found.append(Good(item, length, width_index, face, worth, at_most))
        return found

    def trace(self, mask: int, width: int, place: int) -> list[tuple[int, int]]:
        """A best filling, as (length in cells, item) from the start of the strip.

        Parameters
        ----------
        mask, width, place
            Places in the table.
        """
        key = (mask, width, place)
        if key not in self._traced:
            passes = self._passes[mask]
            last = len(passes) - 1
            while last >= 0 and passes[last].good.width_index > width:
                last -= 1
            length = int(self.lengths.totals[place])
            self._traced[key] = _longest_first(_filled(passes, last, length))
        return self._traced[key]

    def trace_led(self, good: Good, place: int) -> list[tuple[int, int]]:
        """A best filling of a strip that an item leads."""
        passes, number = self._passes[0], self._number_of[good.item]
        length = int(self.lengths.totals[place]) - good.length
        found = [(good.length, good.item)]
        length = _further(passes[number], length, found)
        return _longest_first(found + _filled(passes, number - 1, length))

    def with_each(
        self, mask: int, width: int, place: int, most: int
    ) -> list[list[tuple[int, int]]]:
        """Of the best fillings with each item in them, so many of the dearest; those worth much less are left out.

        An item may be in one once oftener than it is asked for.
        """
        row, longest = self.value[mask, width], int(self.lengths.totals[place])
        goods = [
            good
            for good in self._goods
            if self.masks[mask] >> good.face_class & 1
            and good.width_index <= width
            and good.length <= longest
        ]
        rests = [int(self.lengths.floor[longest - good.length]) for good in goods]
        worths = [
            good.worth + int(row[rest]) for good, rest in zip(goods, rests, strict=True)
        ]
        found = []
        by_worth = sorted(range(len(goods)), key=lambda n: (-worths[n], goods[n].item))
        for number in by_worth[:most]:
            if worths[number] < _NEARLY * max(worths):
                break
            good, rest = goods[number], self.trace(mask, width, rests[number])
            found.append(_longest_first([(good.length, good.item), *rest]))
        return found


def _put_in(row: Ints, good: Good) -> tuple[_Pass, Ints, Ints]:
    """An item put into the strips of those before it.

    How it was put in, the strips with at least one of it by length, and the best of all.
    """
    steps = []
    further = row
    for take in at_a_time(good.at_most - 1):
        long = take * good.length
        if long >= len(row):
            break
        more = further.copy()
        np.maximum(further[long:], further[:-long] + take * good.worth, out=more[long:])
        steps.append((take, more > further))
        further = more
    first = np.full_like(row, LOW)
    np.add(further[: len(row) - good.length], good.worth, out=first[good.length :])
    return _Pass(good, tuple(steps), first > row), first, np.maximum(row, first)


def _filled(passes: Sequence[_Pass], last: int, length: int) -> list[tuple[int, int]]:
    """What lies in a best strip of the items up to one."""
    found: list[tuple[int, int]] = []
    for number in range(last, -1, -1):
        each = passes[number]
        if each.first[length]:
            found.append((each.good.length, each.good.item))
            length = _further(each, length - each.good.length, found)
    return found


def _further(each: _Pass, length: int, found: list[tuple[int, int]]) -> int:
    """Add what lies there of an item beside its first one; what is left of the length."""
    good = each.good
    for take, is_in in reversed(each.further):
        if is_in[length]:
            found += [(good.length, good.item)] * take
            length -= take * good.length
    return length


def _longest_first(cuts: list[tuple[int, int]]) -> list[tuple[int, int]]:
    """So that what is left over lies together at the far end."""
    return sorted(cuts, key=lambda cut: (-cut[0], cut[1]))
