"""Bins that may hold the same items, with those items as shapes in cells.

Items that take the same cells and bear the same marks are one shape: whatever the prices
are, only the dearest of them is worth cutting.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, replace

import numpy as np

from yieldplan.packing.grid.cells import CellBlock, Grid, grid_of, size_of, zones_of
from yieldplan.packing.grid.crossings import Ints
from yieldplan.packing.grid.offcuts import Offcuts
from yieldplan.packing.grid.rooms import Room, Rooms
from yieldplan.packing.problem import Problem

Layers = tuple[tuple[int, int], tuple[int, int]]
Rule = tuple[Layers, int]
"""What an item may not bear, each way up, and what it may not bear in its zones."""


@dataclass(frozen=True)
class Shape:
    """Items alike to the saw.

    Parameters
    ----------
    length, width
        [cells]
    width_index
        Place of its width among the group's widths.
    face_class
        Place of its face rule among the group's rules.
    zones
        Cells at its zero end and at its far end where its joints are cut.
    """

    length: int
    width: int
    width_index: int
    face_class: int
    items: tuple[int, ...]
    zones: tuple[int, int] = (0, 0)


@dataclass(frozen=True)
class Steps:
    """A set that is cut in steps: one item a section, in order, at the near edge.

    Parameters
    ----------
    items
        From the zero end on.
    lengths, widths
        Of each step. [cells]
    layers
        What no step may bear, each way up, its zones among it.
    """

    items: tuple[int, ...]
    lengths: tuple[int, ...]
    widths: tuple[int, ...]
    layers: Layers


@dataclass(frozen=True)
class BinFaces:
    """The marks of one bin that matter to some item of its group.

    Parameters
    ----------
    forbidden
        For each face rule, bit sets of the blocks forbidden with face A up and with B up.
    in_zones
        For each face rule, the bit set of the blocks forbidden in an item's zones.
    rooms
        How wide its stretches are.
    offcuts
        What may be left of it counts for.
    """

    bin: int
    grid: Grid
    blocks: tuple[CellBlock, ...]
    forbidden: tuple[tuple[int, int], ...]
    in_zones: tuple[int, ...]
    rooms: Rooms
    offcuts: Offcuts
    is_straight: bool

    def allowed(self, met: int) -> int:
        """Bit set of the face rules under which a rectangle with these marks will do.

        Wherever in it the zones lie: they may be anywhere.
        """
        return sum(
            1 << rule
            for rule, ((up_a, up_b), zone) in enumerate(
                zip(self.forbidden, self.in_zones, strict=True)
            )
            if not met & zone and not (met & up_a and met & up_b)
        )

    def is_alike(self, met: int, *, anywhere: bool = True) -> bool:
        """Whether all items shun each of these marks, so that only clear runs count.

        Parameters
        ----------
        anywhere
            Whether an item's zones may lie anywhere; else its own place is known.
        """
        if anywhere:
            return all(not self.allowed(1 << number) for number in _bits(met))
        return all(
            up_a >> number & up_b >> number & 1
            for number in _bits(met)
            for up_a, up_b in self.forbidden
        )

    def in_room(self, room: Room) -> BinFaces:
        """The same marks in a room of the bin, counted from its near side."""
        grid = replace(self.grid, across=max(0, room.across - room.near))
        return replace(self, grid=grid, blocks=room.blocks(self.blocks))


@dataclass(frozen=True)
class Group:
    """Bins that hold the same items."""

    bins: tuple[BinFaces, ...]
    shapes: tuple[Shape, ...]
    widths: Ints
    rules: tuple[Rule, ...]
    sets: tuple[Steps, ...] = ()

    @property
    def all_rules(self) -> int:
        """The bit set of every face rule."""
        return (1 << len(self.rules)) - 1

    @property
    def longest(self) -> int:
        """Most cells along. [cells]"""
        return max(faces.grid.along for faces in self.bins)

    @property
    def widest(self) -> int:
        """Most cells across. [cells]"""
        return max(faces.grid.across for faces in self.bins)


def groups_of(problem: Problem) -> list[Group]:
    """The problem's usable bins, by what they may hold."""
    by_holds: dict[tuple[int, ...], list[tuple[int, Grid]]] = {}
    for number, piece in enumerate(problem.bins):
        grid = grid_of(piece, problem)
        if grid.is_usable and piece.holds:
            by_holds.setdefault(tuple(sorted(piece.holds)), []).append((number, grid))
    return [
        group
        for holds, bins in sorted(by_holds.items())
        if (group := _group(holds, bins, problem)) is not None
    ]


def _group(
    holds: Sequence[int], bins: Sequence[tuple[int, Grid]], problem: Problem
) -> Group | None:
    longest = max(grid.along for _, grid in bins)
    widest = max(grid.across for _, grid in bins)
    alike: dict[tuple[int, int, Rule, tuple[int, int]], list[int]] = {}
    in_sets = problem.in_sets()
    for number in holds:
        item = problem.items[number]
        size = size_of(item, problem)
        if size.along <= longest and size.across <= widest:
            zones = zones_of(item, problem)
            rule = (item.layers, item.zone_bits if any(zones) else 0)
            # A step of a set is a shape that nothing makes: only its set is cut.
            key = (size.along, size.across, rule, zones)
            alike.setdefault(key, []).extend([] if number in in_sets else [number])
    if not alike:
        return None
    widths = sorted({width for _, width, _, _ in alike})
    rules = sorted({rule for _, _, rule, _ in alike})
    sets = tuple(
        _steps(steps, problem) for steps in problem.sets if set(steps) <= set(holds)
    )
    return Group(
        bins=tuple(
            _faces(number, grid, rules, [each.layers for each in sets], problem)
            for number, grid in bins
        ),
        shapes=tuple(
            Shape(
                length,
                width,
                widths.index(width),
                rules.index(rule),
                tuple(items),
                zones,
            )
            for (length, width, rule, zones), items in sorted(alike.items())
        ),
        widths=np.array(widths, np.int64),
        rules=tuple(rules),
        sets=sets,
    )


def _steps(steps: Sequence[int], problem: Problem) -> Steps:
    sizes = [size_of(problem.items[number], problem) for number in steps]
    up_a = [0, 0]
    up_b = [0, 0]
    for number in steps:
        item = problem.items[number]
        zone = item.zone_bits if any(zones_of(item, problem)) else 0
        for side in (0, 1):
            up_a[side] |= item.layers[0][side] | zone
            up_b[side] |= item.layers[1][side] | zone
    return Steps(
        items=tuple(steps),
        lengths=tuple(size.along for size in sizes),
        widths=tuple(size.across for size in sizes),
        layers=((up_a[0], up_a[1]), (up_b[0], up_b[1])),
    )


def is_forbidden_up(block: CellBlock, side: tuple[int, int]) -> bool:
    """Whether an item that lies this way up may not bear a mark."""
    return bool(block.on_a & side[0] or block.on_b & side[1])


def _faces(
    number: int,
    grid: Grid,
    rules: Sequence[Rule],
    of_sets: Sequence[Layers],
    problem: Problem,
) -> BinFaces:
    def matters(block: CellBlock) -> bool:
        everyone = [*(layers for layers, _ in rules), *of_sets]
        return any(
            is_forbidden_up(block, side) for layers in everyone for side in layers
        ) or any((block.on_a | block.on_b) & zone for _, zone in rules)

    blocks = tuple(block for block in grid.blocks if matters(block))

    def places(is_meant: Callable[[CellBlock], bool]) -> int:
        return sum(1 << place for place, block in enumerate(blocks) if is_meant(block))

    piece = problem.bins[number]
    return BinFaces(
        bin=number,
        grid=grid,
        blocks=blocks,
        forbidden=tuple(
            (
                places(lambda block, up=up_a: is_forbidden_up(block, up)),  # type: ignore[misc]
                places(lambda block, up=up_b: is_forbidden_up(block, up)),  # type: ignore[misc]
            )
            for (up_a, up_b), _ in rules
        ),
        in_zones=tuple(
            places(lambda block, zone=zone: bool((block.on_a | block.on_b) & zone))  # type: ignore[misc]
            for _, zone in rules
        ),
        rooms=Rooms(piece, grid, problem),
        offcuts=Offcuts(piece, grid, problem),
        is_straight=piece.is_straight,
    )


def _bits(number: int) -> Iterator[int]:
    place = 0
    while number >> place:
        if number >> place & 1:
            yield place
        place += 1
