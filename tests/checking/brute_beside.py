"""The wider families, a narrow part beside a mark: the best true pattern, and V of the page.

Nothing here is shared with `yieldplan.checking`: every strip of every section is tried,
and in it every blank at every place along and across where its own cells are clear.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import replace
from functools import cache

from tests.checking.brute import Cells, sets
from tests.checking.tiny import TinyBlank, TinyPiece, TinyWood


def greatest_true(wood: TinyWood, piece: TinyPiece, prices: Mapping[str, int]) -> int:
    """The most one piece can give in one pattern of R+, C+ or E+."""
    true = Beside(Cells(wood, piece), prices)
    values = {
        "R+": (true.rip,),
        "C+": (true.crosscut,),
        "E+": (true.rip, true.crosscut),
    }
    return max(value() for value in values[wood.family])


def greatest(wood: TinyWood, piece: TinyPiece, prices: Mapping[str, int]) -> int:
    """V of the page: the same, or what it puts in its place."""
    if piece.is_straight:
        paged = PageSets(Cells(wood, piece), prices)
        values = {"R+": (paged.rip,), "C+": (paged.crosscut,)}
        both = (paged.rip, paged.crosscut)
        return max(value() for value in values.get(wood.family, both))
    return _straightened(wood, piece, prices)


def priced(wood: TinyWood, prices: Mapping[str, int]) -> int:
    """What the page says the prices prove."""
    return sum(prices.get(part, 0) * n for part, n in wood.need.items()) + sum(
        piece.copies * min(0, piece.price - greatest(wood, piece, prices))
        for piece in wood.pieces
    )


def _straightened(wood: TinyWood, piece: TinyPiece, prices: Mapping[str, int]) -> int:
    """A straight piece in its place, no section worth more than clear wood of its height."""
    real = Cells(wood, piece)
    # Single steps are no blanks of their own, and sets come from straight pieces only.
    blanks = tuple(
        blank for blank in wood.blanks if real.may_come(blank) and not blank.step
    )
    straight = replace(piece, crook=0, bow=0, twist=0, widths=None)
    beside = Beside(Cells(replace(wood, blanks=blanks), straight), prices)
    along = real.along

    def in_clear(shape: tuple[int, int] | None, long: int) -> int:
        return 0 if shape is None else beside.in_clear(shape[0], long)

    def section(i: int, j: int) -> int:
        return min(beside.stack(i, j, 0), in_clear(real.section(i, j), j - i))

    values = []
    if wood.family in ("R+", "E+"):
        values.append(min(beside.stack(0, along, 0), in_clear(real.whole(), along)))
    if wood.family in ("C+", "E+"):
        values.append(_stretches(along, section))
    return max(values)


class Beside:
    """Patterns of one piece, its blanks beside marks."""

    def __init__(self, cells: Cells, prices: Mapping[str, int]) -> None:
        self.cells = cells
        self.worths = {
            blank.id: sum(prices.get(part, 0) * n for part, n in blank.makes.items())
            for blank in cells.wood.blanks
        }
        self.blanks = [
            blank
            for blank in cells.wood.blanks
            if blank.step is None and cells.may_come(blank)
        ]
        self.lies = cache(self._lies)
        self.strip = cache(self._strip)

    def rip(self) -> int:
        """Rip first: strips over the full length."""
        whole = self.cells.whole()
        if whole is None or not self.cells.along:
            return 0
        across, c = whole
        along = self.cells.along
        return _stretches(
            across, lambda u, v: self.strip(0, along, u, v, c), self.cells.keep_beside
        )

    def crosscut(self) -> int:
        """Crosscut first: strips in sections, sets in steps from section to section."""
        rows = [
            (sum(self.cells.cells(step)[0] for step in each), each)
            for each in sets(self.cells.wood)
        ]

        def section(i: int, j: int) -> int:
            in_steps = (self._set_from(each, i) for long, each in rows if long == j - i)
            return max(self.stack(i, j, 0), *in_steps, 0)

        return _stretches(self.cells.along, section, self.cells.keep_beyond)

    def stack(self, i: int, j: int, taken: int) -> int:
        """Strips beside each other in a section, above the cells that are taken."""
        shape = self.cells.section(i, j)
        if shape is None:
            return 0
        across, c = shape
        return _stretches(
            across, lambda u, v: 0 if u < taken else self.strip(i, j, u, v, c)
        )

    def _strip(self, i: int, j: int, u: int, v: int, c: int) -> int:
        """The best row of blanks in a strip, each ripped out where its own cells are clear."""

        @cache
        def best(start: int) -> int:
            if start >= j:
                return 0
            return max(
                0,
                best(start + 1),
                *(
                    self.worths[blank.id] + best(start + self.cells.cells(blank)[0])
                    for blank in self.blanks
                    if start + self.cells.cells(blank)[0] <= j
                    and self._lies_within(blank, start, u, v, c)
                ),
            )

        return best(i)

    def in_clear(self, height: int, long: int) -> int:
        """Strips beside each other in so many clear cells across."""

        @cache
        def row(wide: int, room: int) -> int:
            return max(
                (
                    self.worths[blank.id] + row(wide, room - cells[0])
                    for blank in self.blanks
                    if (cells := self.cells.cells(blank))[0] <= room
                    and cells[1] <= wide
                ),
                default=0,
            )

        return _stretches(max(height, 0), lambda u, v: row(v - u, long))

    def beside_step(self, start: int, long: int, wide: int) -> int:
        """What lies beside a step of a set."""
        return self.stack(start, start + long, wide)

    def _lies_within(
        self, blank: TinyBlank, start: int, u: int, v: int, c: int
    ) -> bool:
        wide = self.cells.cells(blank)[1]
        return any(self.lies(blank.id, start, at, c) for at in range(u, v - wide + 1))

    def _lies(self, name: str, start: int, at: int, c: int) -> bool:
        """Whether a blank is allowed on its own cells, its joint zones too."""
        (blank,) = (each for each in self.blanks if each.id == name)
        long, wide = self.cells.cells(blank)
        rect = start, start + long, at, at + wide
        return any(self.cells.ways(blank, rect, c)) and self.cells.zones_clear(
            blank, rect, c
        )

    def _set_from(self, steps: list[TinyBlank], start: int) -> int:
        """A set in steps at the near edge, and what lies beside its steps."""
        total, faces = 0, {"A", "B"}
        for step in steps:
            long, wide = self.cells.cells(step)
            if start + long > self.cells.along or wide > self.cells.across:
                return 0
            rect = (start, start + long, 0, wide)
            faces &= {*self.cells.ways(step, rect)}
            if not self.cells.strip_clear(step, rect):
                return 0
            total += self.worths[step.id] + self.beside_step(start, long, wide)
            start += long
        return total if faces else 0


class PageSets(Beside):
    """The same, counting as clear what lies beside the steps of a set."""

    def beside_step(self, start: int, long: int, wide: int) -> int:
        """Strips in all cells above the step."""
        return self.in_clear(self.cells.across - wide, long)


def _stretches(
    end: int,
    worth: Callable[[int, int], int],
    keep: Callable[[int], int] = lambda _: 0,
) -> int:
    """The best of all ways to choose stretches that do not overlap, and to keep the rest."""
    # Crook may take more than there is.
    end = max(end, 0)
    best = [0] * (end + 1)
    for start in range(end, -1, -1):
        best[start] = max(
            keep(start),
            best[start + 1] if start < end else 0,
            *(worth(start, stop) + best[stop] for stop in range(start + 1, end + 1)),
            0,
        )
    return best[0]
