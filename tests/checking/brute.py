"""The bound of tiny pieces by trying everything, written from the format's page word for word.

Nothing here is shared with `yieldplan.checking`: no table, no splitting at marks, no
face classes; every stretch is tried, and every mark is looked at again.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from fractions import Fraction
from functools import cache
from math import ceil, floor

from tests.checking.tiny import FACES, TinyBlank, TinyPiece, TinyWood, places

IN_ZONES = ("knot", "split")
"""What `tiny.document` writes under `zones`."""
Rect = tuple[int, int, int, int]
"""From mark i to mark j along, from u to v across. [cells]"""


class Cells:
    """A piece of a tiny wood on its grid."""

    def __init__(self, wood: TinyWood, piece: TinyPiece) -> None:
        self.wood, self.piece = wood, piece
        self._known: dict[Rect, Rect] = {}
        self._zones = {blank.id: self._zones_of(blank) for blank in wood.blanks}
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

    def may_come(self, blank: TinyBlank) -> bool:
        """Whether a blank may come from the piece; blanks are 7 thick, pieces 8."""
        piece = self.piece
        off = ceil(Fraction(piece.bow * blank.size[0] ** 2, piece.size[0] ** 2))
        return (
            piece.line in blank.lines
            and not (piece.twist and blank.size[0] > self.wood.twisted_at_most)
            # To within a tick.
            and not (piece.bow and 8 - off + 1 < 7)
            and (blank.step is None or piece.is_straight)
        )

    def section(self, i: int, j: int) -> tuple[int, int] | None:
        """Cells across of a stretch and how far marks reach down; None when it may not be ripped."""
        (length, width), (sx, _), k = self.piece.size, self.wood.step, self.wood.kerf
        m = (j - i) * sx
        w0, w1 = self.piece.widths or (width, width)
        ends = [min(max(self.first + n * sx, 0), length) for n in (i, j)]
        w = min(floor(w0 + Fraction((w1 - w0) * x, length)) for x in ends)
        return self._ripped(m, w, too_twisted=m - k > self.wood.twisted_at_most + sx)

    def whole(self) -> tuple[int, int] | None:
        """The same of the whole board, for family R."""
        length, width = self.piece.size
        limit = self.wood.twisted_at_most + self.wood.step[0]
        w = min(self.piece.widths or (width,))
        return self._ripped(length, w, too_twisted=length > limit)

    def _ripped(self, m: int, w: int, *, too_twisted: bool) -> tuple[int, int] | None:
        piece, wood = self.piece, self.wood
        bent = Fraction(piece.crook * m * m, piece.size[0] ** 2)
        if wood.crook_at_most is not None and ceil(bent) > wood.crook_at_most:
            return None
        if piece.twist and too_twisted:
            return None
        c = ceil(bent / wood.step[1])
        return floor((w - sum(piece.edges) + wood.kerf) / wood.step[1]) - c, c

    def wood_of(self, i: int, j: int, u: int, v: int) -> tuple[int, int, int, int]:
        """The wood of a rectangle of cells. [ticks]"""
        (sx, sy), k, e0 = self.wood.step, self.wood.kerf, self.piece.edges[0]
        m = self.first
        return m + i * sx + k, e0 + u * sy, m + j * sx, e0 + v * sy - k

    def ways(self, blank: TinyBlank, rect: Rect, c: int = 0) -> Iterator[str]:
        """The faces a blank may have up in a rectangle of cells, zones aside.

        Marks reach c cells further down.
        """
        if self.may_come(blank):
            show, back = (FACES[word] for word in blank.faces)
            for face_up, on_a, on_b in (("A", show, back), ("B", back, show)):
                if not any(
                    self._meets(self.reach(kind, box, blank), rect, c)
                    and (
                        (face in ("A", "through") and kind in on_a)
                        or (face in ("B", "through") and kind in on_b)
                    )
                    for kind, face, box in self.piece.marks
                ):
                    yield face_up

    def reach(self, kind: str, box: Rect, blank: TinyBlank | None) -> Rect:
        """A mark's box with its reach; without a blank, as joint zones see it."""
        x0, y0, x1, y1 = box
        if kind == "knot":
            g = self.wood.around_knots
            return x0 - g, y0 - g, x1 + g, y1 + g
        if kind == "split" and blank is not None and blank.faces[0] == "clear":
            g = self.wood.short_of_checks
            return x0 - g, y0, x1 + g, y1
        return box

    def zones(self, blank: TinyBlank) -> tuple[int, int]:
        """Its joint zones. [ticks]"""
        return self._zones[blank.id]

    def _zones_of(self, blank: TinyBlank) -> tuple[int, int]:
        row = places(self.wood, blank)
        zone = max(self.wood.zones.get(part, 0) for part, _, _ in row)
        if not zone:
            return 0, 0
        if len(row) > 1:
            return blank.size[0], blank.size[0]
        ((_, x, long),) = row
        return x + zone, blank.size[0] - x - long + zone

    def zones_clear(self, blank: TinyBlank, rect: Rect, c: int = 0) -> bool:
        """Family R: whether no mark lies in the zones of a blank that begins a stretch."""
        i, j, u, v = rect
        sx, n = self.wood.step[0], self.cells(blank)[0]
        z0, z1 = self.zones(blank)
        near = min(n, ceil((z0 + self.wood.kerf) / sx)) if z0 else 0
        far = min(n, ceil((z1 + n * sx - blank.size[0]) / sx)) if z1 else 0
        return not (
            (near and self.holds_zone_mark((i, i + near, u, v), c))
            or (far and self.holds_zone_mark((i + n - far, j, u, v), c))
        )

    def strip_clear(self, blank: TinyBlank, rect: Rect, c: int = 0) -> bool:
        """Family C: whether no mark lies in the strip, for a blank that has zones."""
        return self.zones(blank) == (0, 0) or not self.holds_zone_mark(rect, c)

    def holds_zone_mark(self, rect: Rect, c: int) -> bool:
        """Whether a mark that no joint zone may hold meets these cells."""
        return any(
            kind in IN_ZONES and self._meets(self.reach(kind, box, None), rect, c)
            for kind, _, box in self.piece.marks
        )

    def _meets(self, box: Rect, rect: Rect, c: int) -> bool:
        i, j, u, v = rect
        before, after, below, above = self._blocked(box)
        return i < before and j > after and u < below and v > above - c

    def _blocked(self, box: Rect) -> Rect:
        """What a stretch that meets a box begins before and ends after, along and across."""
        if box not in self._known:
            (x0, y0, x1, y1), (sx, sy), k = box, self.wood.step, self.wood.kerf
            m, e0 = self.first, self.piece.edges[0]
            u0, u1 = floor((y0 - e0 + k) / sy), ceil((y1 - e0) / sy)
            self._known[box] = (
                ceil((x1 - m) / sx),
                floor((x0 - m) / sx),
                u1,
                min(u0, u1 - 1),
            )
        return self._known[box]

    def keep_beyond(self, j: int) -> int:
        """What is left counts for when the last section ends at mark j."""
        a = (self.along - j) * self.wood.step[0] - self.wood.kerf
        b = self.piece.size[1] - sum(self.piece.edges)
        return self._keep(a, b, (j, self.along, 0, self.across))

    def keep_beside(self, v: int) -> int:
        """What is left counts for when the last strip ends at v."""
        a = self.along * self.wood.step[0] - self.wood.kerf
        b = (self.across - v) * self.wood.step[1] - self.wood.kerf
        return self._keep(a, b, (0, self.along, v, self.across))

    def _keep(self, a: int, b: int, rect: Rect) -> int:
        whole = self.piece.size[0] * self.piece.size[1]
        if (
            not self.piece.is_straight
            or not any(a >= long and b >= wide for long, wide in self.wood.sizes)
            or 10 * a * b < 3 * whole
            or any(self._meets(box, rect, 0) for _, _, box in self.piece.marks)
        ):
            return 0
        share = Fraction(self.wood.percent * a * b, 100 * whole)
        return floor(self.piece.price * share)


def sets(wood: TinyWood) -> list[list[TinyBlank]]:
    """The sets in steps, each in its order."""
    found: dict[str, list[TinyBlank]] = {}
    for blank in wood.blanks:
        if blank.step:
            found.setdefault(blank.step[0], []).append(blank)
    return [sorted(each, key=lambda b: b.step or ()) for each in found.values()]


def greatest(wood: TinyWood, piece: TinyPiece, prices: Mapping[str, int]) -> int:
    """V of the page: the most one piece can give in one pattern of the family."""
    cells = Cells(wood, piece)
    values = {"R": (_rip,), "C": (_crosscut,), "E": (_rip, _crosscut)}[wood.family]
    return max(value(cells, prices) for value in values)


def priced(wood: TinyWood, prices: Mapping[str, int]) -> int:
    """What the page says the prices prove."""
    return sum(prices.get(part, 0) * n for part, n in wood.need.items()) + sum(
        piece.copies * min(0, piece.price - greatest(wood, piece, prices))
        for piece in wood.pieces
    )


def _worth(blank: TinyBlank, prices: Mapping[str, int]) -> int:
    return sum(prices.get(part, 0) * n for part, n in blank.makes.items())


def _rip(cells: Cells, prices: Mapping[str, int]) -> int:
    whole = cells.whole()
    if whole is None or not cells.along:
        return 0
    across, c = whole
    blanks = [
        blank for blank in cells.wood.blanks if not blank.step and cells.may_come(blank)
    ]
    worths = {blank.id: _worth(blank, prices) for blank in blanks}

    def strip(u: int, v: int) -> int:
        def place(i: int, j: int) -> int:
            return max(
                (
                    worths[blank.id]
                    for blank in blanks
                    if cells.cells(blank)[0] <= j - i
                    and cells.cells(blank)[1] <= v - u
                    and any(cells.ways(blank, (i, j, u, v), c))
                    and cells.zones_clear(blank, (i, j, u, v), c)
                ),
                default=0,
            )

        return _stretches(cells.along, place)

    return _stretches(across, strip, cells.keep_beside)


def _crosscut(cells: Cells, prices: Mapping[str, int]) -> int:
    def stack(i: int, j: int, taken: int) -> int:
        shape = cells.section(i, j)
        if shape is None:
            return 0
        across, c = shape

        def strip(u: int, v: int) -> int:
            if u < taken:
                return 0
            fitting = [
                (cells.cells(blank)[0], _worth(blank, prices))
                for blank in cells.wood.blanks
                if not blank.step
                and cells.cells(blank)[1] <= v - u
                and any(cells.ways(blank, (i, j, u, v), c))
                and cells.strip_clear(blank, (i, j, u, v), c)
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

        return _stretches(across, strip)

    def set_from(steps: list[TinyBlank], start: int) -> int:
        total, faces = 0, {"A", "B"}
        for step in steps:
            long, wide = cells.cells(step)
            if start + long > cells.along or wide > cells.across:
                return 0
            rect = (start, start + long, 0, wide)
            faces &= {*cells.ways(step, rect)}
            if not cells.strip_clear(step, rect):
                return 0
            total += _worth(step, prices) + stack(start, start + long, wide)
            start += long
        return total if faces else 0

    rows = [
        (sum(cells.cells(step)[0] for step in each), each) for each in sets(cells.wood)
    ]

    def section(i: int, j: int) -> int:
        in_steps = (set_from(each, i) for long, each in rows if long == j - i)
        return max(stack(i, j, 0), *in_steps, 0)

    return _stretches(cells.along, section, cells.keep_beyond)


def _stretches(
    end: int,
    worth: Callable[[int, int], int],
    keep: Callable[[int], int] = lambda _: 0,
) -> int:
    """The best of all ways to choose stretches that do not overlap, and to keep the rest."""

    @cache
    def best(start: int) -> int:
        if start >= end:
            return keep(end)
        taken = (worth(start, stop) + best(stop) for stop in range(start + 1, end + 1))
        return max(keep(start), best(start + 1), *taken)

    return best(0)
