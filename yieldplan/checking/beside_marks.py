"""The most one piece can be worth where narrow parts may lie beside marks: families R+ and C+."""

from __future__ import annotations

from bisect import bisect_right
from operator import add

from yieldplan.checking.grid import Grid
from yieldplan.checking.marked_sections import MarkedSections
from yieldplan.checking.places import Allowed, Places
from yieldplan.checking.sections import set_may_lie
from yieldplan.checking.tables import Tables


def ripped_beside(grid: Grid, tables: Tables) -> list[int]:
    """Family R+: the most from strips over the full length that end at a cell or before it.

    Of a piece that is not straight only the whole: what a straight one gives, and no more
    than clear wood of what crook, twist and taper leave.
    """
    best = _strips(Places(grid, tables.held))
    if grid.uneven:
        height = max(grid.uneven.whole[0] - grid.uneven.whole[1], 0)
        return [min(best[-1], _clear(tables, height, grid.along)[-1])]
    return best


def _strips(places: Places) -> list[int]:
    known: dict[Allowed, int] = {}

    def strip(allowed: Allowed) -> int:
        if allowed not in known:
            row = [0] * (places.along + 1)
            for first, beyond, live in places.live(allowed):
                for end in range(first, beyond):
                    most = row[end - 1]
                    for long, worth in live:
                        if row[end - long] + worth > most:
                            most = row[end - long] + worth
                    row[end] = most
            known[allowed] = row[-1]
        return known[allowed]

    best = [0] * (places.across + 1)
    for bottom in range(places.across + 1):
        if bottom:
            gained = best[bottom] > best[bottom - 1]
            best[bottom] = max(best[bottom], best[bottom - 1])
            # A strip that begins lower holds all that one from here does.
            if not gained:
                continue
        for top, allowed in places.strips_from(bottom):
            best[top] = max(best[top], best[bottom] + strip(allowed))
    return best


def crosscut_beside(grid: Grid, tables: Tables) -> list[int]:
    """Family C+: the most from sections that end at a mark or before it."""
    return SectionsBeside(grid, tables).worths()


class SectionsBeside:
    """The sections of one piece, narrow parts beside its marks."""

    def __init__(self, grid: Grid, tables: Tables) -> None:
        self.grid = grid
        self.tables = tables
        self._clear = _clear(tables, grid.across, grid.along)
        self._marked = MarkedSections(Places(grid, tables.held), self._clear[-1])
        self._under: dict[int, list[int]] = {}

    def worths(self) -> list[int]:
        """The most up to each mark."""
        along = self.grid.along
        best = [0] * (along + 1)
        for first, beyond in self._marked.chunks():
            marked = self._marked.worths(first, beyond)
            for end in range(first + 1, along + 1):
                sections = self._sections(first, min(beyond, end), end, marked[end])
                most = max(map(add, best[first:beyond], sections))
                best[end] = max(best[end], best[end - 1], most)
                for each in self.tables.held.sets:
                    start = end - sum(step.long for step in each.steps)
                    if first <= start < beyond and set_may_lie(
                        each, start, self.grid, self.tables.held
                    ):
                        worth = best[start] + each.worth
                        for step in each.steps:
                            worth += self._in(self.grid.across - step.wide)[step.long]
                        best[end] = max(best[end], worth)
        return best

    def _sections(
        self, first: int, beyond: int, end: int, marked: list[int]
    ) -> list[int]:
        """What sections to `end` are worth, start by start; those with marks come first."""
        clear = self._clear[end - first - len(marked) : end - beyond : -1]
        worths = marked + clear
        if self.grid.uneven:
            limits = (self._limit(start, end) for start in range(first, beyond))
            return list(map(min, worths, limits))
        return worths

    def _limit(self, start: int, end: int) -> int:
        """What clear wood is worth in what crook, twist and taper leave of a section."""
        uneven, long = self.grid.uneven, end - start
        if uneven is None or long >= len(uneven.lost):
            return 0
        height = min(uneven.room[start], uneven.room[end]) - uneven.lost[long]
        return self._in(max(height, 0))[long]

    def _in(self, height: int) -> list[int]:
        """The most from strips in so many clear cells across, by length."""
        if height not in self._under:
            self._under[height] = _clear(self.tables, height, self.grid.along)
        return self._under[height]


def _clear(tables: Tables, height: int, along: int) -> list[int]:
    """The most from strips of any widths beside each other in clear wood, by length."""
    at_lengths = [0, *tables.stack(height, ())]
    return [
        at_lengths[bisect_right(tables.lengths, length)] for length in range(along + 1)
    ]
