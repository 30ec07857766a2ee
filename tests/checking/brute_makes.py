"""All that tiny pieces can make, by trying everything, written from the format's page word for word.

As `brute`, with sets of counts where that has greatest worths: every stretch is tried,
and every mark is looked at again.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from functools import cache
from itertools import product

from tests.checking.brute import Cells, greatest, sets
from tests.checking.tiny import TinyBlank, TinyPiece, TinyWood

Counts = tuple[int, ...]
"""How often each part is made, in the order of `need`."""
Ways = frozenset[Counts]


class Counted:
    """Counts of a wood's parts; of each at most as many as needed, where none is a spare."""

    def __init__(self, wood: TinyWood, spared: frozenset[str] = frozenset()) -> None:
        self.wood = wood
        self.most = [99 if p in spared else n for p, n in wood.need.items()]
        self.none: Ways = frozenset([(0,) * len(self.most)])

    def of(self, blank: TinyBlank) -> Ways:
        made = (blank.makes.get(part, 0) for part in self.wood.need)
        return frozenset([self._capped(made)])

    def both(self, one: Ways, other: Ways) -> Ways:
        """Every sum of two."""
        if one == self.none or other == self.none:
            return other if one == self.none else one
        return frozenset(
            self._capped(map(sum, zip(a, b, strict=True)))
            for a, b in product(one, other)
        )

    def _capped(self, made: object) -> Counts:
        return tuple(map(min, made, self.most))  # type: ignore[call-overload]


def makes(wood: TinyWood, piece: TinyPiece, counted: Counted) -> Ways:
    """All that a piece can make in one pattern of the family."""
    cells = Cells(wood, piece)
    ways = {"R": (_rip,), "C": (_crosscut,), "E": (_rip, _crosscut)}[wood.family]
    return counted.none.union(*(way(cells, counted) for way in ways))


def lesser_value(
    wood: TinyWood,
    piece: TinyPiece,
    prices: Mapping[str, int],
    lower: list[Mapping[str, int]],
) -> int:
    """V of the page, or what it is replaced by at lower prices."""
    values = [greatest(wood, piece, prices)]
    for each in lower:
        beyond = ((prices[part] - each[part]) * n for part, n in wood.need.items())
        values.append(greatest(wood, piece, each) + sum(beyond))
    return min(values)


def cheapest_choice(wood: TinyWood, counted: Counted) -> int | None:
    """What the cheapest choice costs that can make at least the need, tried one and all."""
    ways = {piece.id: makes(wood, piece, counted) for piece in wood.pieces}
    need = tuple(wood.need.values())
    choices = product(*(range(piece.copies + 1) for piece in wood.pieces))

    def cost(choice: tuple[int, ...]) -> int:
        return sum(n * p.price for n, p in zip(choice, wood.pieces, strict=True))

    for choice in sorted(choices, key=cost):
        made = counted.none
        for number, piece in zip(choice, wood.pieces, strict=True):
            for _ in range(number):
                made = counted.both(made, ways[piece.id])
        if any(all(map(int.__ge__, each, need)) for each in made):
            return cost(choice)
    return None


def outdone(ways: Ways) -> Ways:
    """Those counts that no other is as large as everywhere."""
    return frozenset(
        way
        for way in ways
        if not any(way != o and all(map(int.__ge__, o, way)) for o in ways)
    )


def _rip(cells: Cells, counted: Counted) -> Ways:
    whole = cells.whole()
    if whole is None or not cells.along:
        return counted.none
    across, c = whole

    def strip(u: int, v: int) -> Ways:
        def place(i: int, j: int) -> Ways:
            return counted.none.union(
                *(
                    counted.of(blank)
                    for blank in cells.wood.blanks
                    if not blank.step
                    and cells.may_come(blank)
                    and cells.cells(blank)[0] == j - i
                    and cells.cells(blank)[1] <= v - u
                    and any(cells.ways(blank, (i, j, u, v), c))
                    and cells.zones_clear(blank, (i, j, u, v), c)
                )
            )

        return _stretches(cells.along, place, counted)

    return _stretches(across, strip, counted)


def _crosscut(cells: Cells, counted: Counted) -> Ways:
    @cache
    def stack(i: int, j: int, taken: int) -> Ways:
        shape = cells.section(i, j)
        if shape is None:
            return counted.none
        across, c = shape

        def strip(u: int, v: int) -> Ways:
            if u < taken:
                return counted.none
            fitting = [
                (cells.cells(blank)[0], counted.of(blank))
                for blank in cells.wood.blanks
                if not blank.step
                and cells.cells(blank)[1] <= v - u
                and any(cells.ways(blank, (i, j, u, v), c))
                and cells.strip_clear(blank, (i, j, u, v), c)
            ]

            @cache
            def fill(room: int) -> Ways:
                return counted.none.union(
                    *(
                        counted.both(made, fill(room - long))
                        for long, made in fitting
                        if long <= room
                    )
                )

            return fill(j - i)

        return _stretches(across, strip, counted)

    def set_from(steps: list[TinyBlank], start: int) -> Ways:
        total, faces = counted.none, {"A", "B"}
        for step in steps:
            long, wide = cells.cells(step)
            if start + long > cells.along or wide > cells.across:
                return counted.none
            rect = (start, start + long, 0, wide)
            faces &= {*cells.ways(step, rect)}
            if not cells.strip_clear(step, rect):
                return counted.none
            beside = stack(start, start + long, wide)
            total = counted.both(counted.both(total, counted.of(step)), beside)
            start += long
        return total if faces else counted.none

    rows = [
        (sum(cells.cells(step)[0] for step in each), each) for each in sets(cells.wood)
    ]

    def section(i: int, j: int) -> Ways:
        in_steps = (set_from(each, i) for long, each in rows if long == j - i)
        return stack(i, j, 0).union(*in_steps)

    return _stretches(cells.along, section, counted)


def _stretches(end: int, made: Callable[[int, int], Ways], counted: Counted) -> Ways:
    """All ways to choose stretches that do not overlap."""

    @cache
    def from_(start: int) -> Ways:
        if start >= end:
            return counted.none
        taken = (
            counted.both(made(start, stop), from_(stop))
            for stop in range(start + 1, end + 1)
        )
        return from_(start + 1).union(*taken)

    return from_(0)
