"""The bound of tiny pieces by trying everything, written from the format's page word for word.

Nothing here is shared with `yieldplan.checking`: no table, no splitting at marks, no
face classes; every stretch is tried, and every mark is looked at again.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from functools import cache
from math import ceil, floor

from tests.checking.tiny import FACES, TinyBlank, TinyPiece, TinyWood


class Cells:
    """A piece of a tiny wood on its grid."""

    def __init__(self, wood: TinyWood, piece: TinyPiece) -> None:
        self.wood, self.piece = wood, piece
        (length, width), (sx, sy), k = piece.size, wood.step, wood.kerf
        t0, t1 = piece.trims
        self.first = ceil(t0 / sx) * sx if wood.marks_from == "zero end" else t0 - k
        self.along = max(0, floor((length - t1 - self.first) / sx))
        self.across = max(0, floor((width - sum(piece.edges) + k) / sy))
        if not (self.along and self.across):
            self.along = self.across = 0

    def cells(self, blank: TinyBlank) -> tuple[int, int]:
        """How many cells a blank takes along and across."""
        (length, width), (sx, sy), k = blank.size, self.wood.step, self.wood.kerf
        return ceil((length + k) / sx), ceil((width + k) / sy)

    def wood_of(self, i: int, j: int, u: int, v: int) -> tuple[int, int, int, int]:
        """The wood of a rectangle of cells. [ticks]"""
        (sx, sy), k, e0 = self.wood.step, self.wood.kerf, self.piece.edges[0]
        m = self.first
        return m + i * sx + k, e0 + u * sy, m + j * sx, e0 + v * sy - k

    def ways(self, blank: TinyBlank, i: int, j: int, u: int, v: int) -> Iterator[str]:
        """The faces a blank may have up in a rectangle of cells."""
        if self.piece.line in blank.lines:
            show, back = (FACES[word] for word in blank.faces)
            for face_up, on_a, on_b in (("A", show, back), ("B", back, show)):
                if not any(
                    self._meets(box, i, j, u, v)
                    and (
                        (face in ("A", "through") and kind in on_a)
                        or (face in ("B", "through") and kind in on_b)
                    )
                    for kind, face, box in self.piece.marks
                ):
                    yield face_up

    def _meets(
        self, box: tuple[int, int, int, int], i: int, j: int, u: int, v: int
    ) -> bool:
        (x0, y0, x1, y1), (sx, sy), k = box, self.wood.step, self.wood.kerf
        m, e0 = self.first, self.piece.edges[0]
        u0, u1 = floor((y0 - e0 + k) / sy), ceil((y1 - e0) / sy)
        return (
            i < ceil((x1 - m) / sx)
            and j > floor((x0 - m) / sx)
            and u < u1
            and v > min(u0, u1 - 1)
        )


def greatest(wood: TinyWood, piece: TinyPiece, prices: Mapping[str, int]) -> int:
    """V of the page: the most one piece can give in one pattern of the family."""
    cells = Cells(wood, piece)
    worths = [
        (blank, sum(prices.get(part, 0) * n for part, n in blank.makes.items()))
        for blank in wood.blanks
    ]
    values = {"R": (_rip,), "C": (_crosscut,), "E": (_rip, _crosscut)}[wood.family]
    return max(value(cells, worths) for value in values)


def priced(wood: TinyWood, prices: Mapping[str, int]) -> int:
    """What the page says the prices prove."""
    return sum(prices.get(part, 0) * n for part, n in wood.need.items()) + sum(
        piece.copies * min(0, piece.price - greatest(wood, piece, prices))
        for piece in wood.pieces
    )


def _rip(cells: Cells, worths: list[tuple[TinyBlank, int]]) -> int:
    def strip(u: int, v: int) -> int:
        def place(i: int, j: int) -> int:
            return max(
                (
                    worth
                    for blank, worth in worths
                    if cells.cells(blank)[0] <= j - i
                    and cells.cells(blank)[1] <= v - u
                    and any(cells.ways(blank, i, j, u, v))
                ),
                default=0,
            )

        return _stretches(cells.along, place)

    return _stretches(cells.across, strip)


def _crosscut(cells: Cells, worths: list[tuple[TinyBlank, int]]) -> int:
    def section(i: int, j: int) -> int:
        def strip(u: int, v: int) -> int:
            fitting = [
                (cells.cells(blank)[0], worth)
                for blank, worth in worths
                if cells.cells(blank)[1] <= v - u and any(cells.ways(blank, i, j, u, v))
            ]

            @cache
            def fill(room: int) -> int:
                return max(
                    (
                        worth + fill(room - long)
                        for long, worth in fitting
                        if long <= room
                    ),
                    default=0,
                )

            return fill(j - i)

        return _stretches(cells.across, strip)

    return _stretches(cells.along, section)


def _stretches(end: int, worth: Callable[[int, int], int]) -> int:
    """The best of all ways to choose stretches that do not overlap."""

    @cache
    def best(start: int) -> int:
        if start >= end:
            return 0
        taken = (worth(start, stop) + best(stop) for stop in range(start + 1, end + 1))
        return max(best(start + 1), *taken)

    return best(0)
