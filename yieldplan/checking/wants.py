"""What is wanted of a wood as counts side by side, and what counts are worth by every row of prices."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from typing import NamedTuple

from yieldplan.checking.grid import cells_of
from yieldplan.checking.packed import Fields
from yieldplan.checking.values import Prices, Values
from yieldplan.checking.wanted import Blank

MOST_TRIED = 3_000_000
"""Patterns, and beginnings of patterns, that are looked at for one wood."""
MANY = 1_500
"""Of more than so many counts those that others outdo are not sorted out."""


class TooManyError(Exception):
    """There are more ways to cut than are tried."""


class Made(NamedTuple):
    """How often each part is made, at most as often as needed, and what that is worth."""

    makes: int
    worth: int


class Wants:
    """Counts of parts, what they are worth at many prices, and how many have been looked at.

    Parameters
    ----------
    prices
        Every vector of prices the proof speaks of.
    """

    def __init__(self, values: Values, prices: Sequence[Prices]) -> None:
        need = {part: n for part, n in sorted(values.wood.need.items()) if n}
        self.parts = tuple(need)
        blanks = {
            blank.id: blank for each in values.blanks.values() for blank in each
        }.values()
        spared = {part for blank in blanks if blank.may_spare for part in blank.makes}
        most = max(_most_made(values, blanks), *need.values(), 1)
        self.counts = Fields(len(need), 2 * most)
        self.need = self.counts.pack(need.values())
        # Where a blank may bring spares, more than is needed counts for what it is.
        self.caps = self.counts.pack(
            most if p in spared else n for p, n in need.items()
        )
        dearest = max((price for each in prices for price in each.values()), default=0)
        self.worths = Fields(
            len(prices), 4 * most * max(dearest, 1) * max(len(need), 1)
        )
        self._packed = [
            self.worths.pack(each.get(part, 0) for each in prices) for part in need
        ]
        self._known: dict[int, int] = {}
        self.looked_at = 0

    def makes_of(self, blanks: Iterable[Blank]) -> int:
        """What some blanks make together, of what is needed."""
        made: dict[str, int] = {}
        for blank in blanks:
            for part, count in blank.makes.items():
                made[part] = made.get(part, 0) + count
        return self.counts.pack(made.get(part, 0) for part in self.parts)

    def worth(self, makes: int) -> int:
        """What counts are worth by every row. [money/10,000]"""
        known = self._known.get(makes)
        if known is None:
            known = 0
            for count, prices in zip(
                self.counts.unpack(makes), self._packed, strict=True
            ):
                known += count * prices
            self._known[makes] = known
        return known

    def add(self, one: Made, other: Made) -> Made:
        """Both together, at most as often as needed."""
        makes = one.makes + other.makes
        guards = self.counts.guards
        if ((self.caps | guards) - makes) & guards == guards:
            return Made(makes, one.worth + other.worth)
        makes = self.counts.lesser(makes, self.caps)
        return Made(makes, self.worth(makes))

    def look(self, number: int) -> None:
        """Counts what is looked at.

        Raises
        ------
        TooManyError
            When that is more than is tried.
        """
        self.looked_at += number
        if self.looked_at > MOST_TRIED:
            raise TooManyError

    def front(self, made: Mapping[int, int]) -> list[Made]:
        """The counts that no other outdoes; all of them where they are many."""
        # What outdoes another is the greater number too.
        if len(made) > MANY:
            return [Made(*each) for each in sorted(made.items(), reverse=True)]
        guards = self.counts.guards
        best: list[int] = []
        for makes in sorted(made, reverse=True):
            for other in best:
                if ((other | guards) - makes) & guards == guards:
                    break
            else:
                best.append(makes | guards)
        return [Made(each ^ guards, made[each ^ guards]) for each in best]


def _most_made(values: Values, blanks: Iterable[Blank]) -> int:
    """More than one piece can make of any part."""
    rules = values.wood.rules
    sizes = [cells_of(blank, rules) for blank in blanks]
    least = min((long * wide for long, wide in sizes), default=1)
    area = max((g.along * g.across for g in values.grids.values()), default=0)
    each = [n for blank in blanks for n in blank.makes.values()]
    return (area // least + 1) * max(each, default=1) + sum(each)
