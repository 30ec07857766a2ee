"""Sections with marks in them, narrow parts beside the marks: what all of them are worth, worked out at once.

For every pair of marks along the piece the strips between them and the stacks of strips
are the same few sums over and over. They stand in lanes side by side, so that each sum
is made once for all pairs.
"""

from __future__ import annotations

from collections.abc import Iterator

from yieldplan.checking.lanes import Lanes
from yieldplan.checking.places import Allowed, Live, Places

MOST_PAIRS = 200_000
"""No more pairs of marks are worked out at once; it keeps a long fine grid in memory."""


class MarkedSections:
    """The sections of one piece that marks lie in.

    Parameters
    ----------
    places
        Where its blanks may lie.
    largest
        No section is worth more. [money/10,000]
    """

    def __init__(self, places: Places, largest: int) -> None:
        self._places = places
        self._along = places.along
        marked_to = max((block.along[1] for block in places.blocks), default=0)
        self._at_once = min(max(MOST_PAIRS // (self._along + 1), 1), self._along)
        self._lanes = Lanes(largest, min(marked_to, self._at_once, self._along) + 1)
        self._reach = [
            min(
                max((b.along[1] for b in places.blocks if b.along[0] < end), default=0),
                end,
            )
            for end in range(self._along + 1)
        ]
        """Before which start a section to this mark has marks in it, by its end."""

    def chunks(self) -> Iterator[tuple[int, int]]:
        """The starts to be worked out at once: the first, and the one beyond the last."""
        for first in range(0, self._along, self._at_once):
            yield first, min(first + self._at_once, self._along)

    def worths(self, first: int, beyond: int) -> list[list[int]]:
        """By its end what each section is worth that has marks in it, from these starts on."""
        counts = [
            max(min(reach, beyond) - first, 0) if end > first else 0
            for end, reach in enumerate(self._reach)
        ]
        total = sum(counts)
        if not total:
            return [[] for _ in counts]
        chunk = _Chunk(self._places, self._lanes, first, counts)
        worths = self._lanes.apart(chunk.stacks(), total)
        found, at = [], 0
        for count in counts:
            found.append([*worths[at : at + count]])
            at += count
        return found


class _Chunk:
    """The sections from some starts on: by their ends in a row, all of them in lanes.

    Parameters
    ----------
    counts
        How many starts count, by the end.
    """

    def __init__(
        self, places: Places, lanes: Lanes, first: int, counts: list[int]
    ) -> None:
        self._places = places
        self._lanes = lanes
        self._first = first
        self._counts = counts
        self._starts = max(counts)
        self._guards = lanes.many_guards(sum(counts))
        self._guards_by_end = [
            lanes.guards(max(min(end - first, self._starts), 0))
            for end in range(len(counts))
        ]
        self._strips: dict[Allowed, int] = {}
        self._joined: dict[tuple[Live, ...], int] = {}

    def stacks(self) -> int:
        """The most from strips beside each other, in every section."""
        greater, guards = self._lanes.greater, self._guards
        best: dict[int, int] = {0: 0}
        below = -1
        for bottom in range(self._places.across + 1):
            if bottom not in best:
                continue
            if below >= 0:
                best[bottom] = greater(best[below] | guards, best[bottom], guards)
            # A strip that begins lower holds all that one from here does.
            gained = below < 0 or best[bottom] != best[below]
            below = bottom
            if not gained:
                continue
            for top, allowed in self._places.strips_from(bottom):
                stack = best[bottom] + self._strip(allowed)
                best[top] = greater(stack, best.get(top, 0), guards)
        return best[below]

    def _strip(self, allowed: Allowed) -> int:
        """The most from one strip, in every section, with all guards set."""
        if allowed not in self._strips:
            live = self._places.live(allowed)
            if live not in self._joined:
                rows = map(self._lanes.first, self._rows(live), self._counts)
                self._joined[live] = int.from_bytes(b"".join(rows), "little")
            self._strips[allowed] = self._joined[live] | self._guards
        return self._strips[allowed]

    def _rows(self, live: tuple[Live, ...]) -> list[int]:
        """The most from one strip by its end, the starts in lanes."""
        first, starts, shift = self._first, self._starts, self._lanes.shift
        ones, guards_by_end = self._lanes.ones, self._guards_by_end
        rows = [0] * len(self._counts)
        for from_, until, items in live:
            added = [
                (long, worth, (worth + (1 << shift)) * ones[starts])
                for long, worth in items
            ]
            for end in range(max(from_, first + 1), until):
                row, guards = rows[end - 1], guards_by_end[end]
                for long, worth, to_all in added:
                    before = end - long - first + 1
                    if before >= starts:
                        more = rows[end - long] + to_all - row
                    elif before > 0:
                        more = rows[end - long] + worth * ones[before] + guards - row
                    else:
                        break
                    # `Lanes.greater` in place: this is where the time goes.
                    won = more & guards
                    if won:
                        row += more & (won - (won >> shift))
                rows[end] = row
        return rows
