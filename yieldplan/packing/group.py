"""Bins that may hold the same items, with those items as shapes in cells.

Items that take the same cells and bear the same marks are one shape: whatever the prices
are, only the dearest of them is worth cutting.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from yieldplan.packing.cells import CellBlock, Grid, grid_of, size_of
from yieldplan.packing.crossings import Ints
from yieldplan.packing.problem import Problem

Layers = tuple[tuple[int, int], tuple[int, int]]


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
    """

    length: int
    width: int
    width_index: int
    face_class: int
    items: tuple[int, ...]


@dataclass(frozen=True)
class BinFaces:
    """The marks of one bin that matter to some item of its group.

    Parameters
    ----------
    forbidden
        For each face rule, bit sets of the blocks forbidden with face A up and with B up.
    """

    bin: int
    grid: Grid
    blocks: tuple[CellBlock, ...]
    forbidden: tuple[tuple[int, int], ...]

    def allowed(self, met: int) -> int:
        """Bit set of the face rules under which a rectangle with these marks will do."""
        return sum(
            1 << rule
            for rule, (up_a, up_b) in enumerate(self.forbidden)
            if not (met & up_a and met & up_b)
        )

    def is_alike(self, met: int) -> bool:
        """Whether all items shun each of these marks, so that only clear runs count."""
        return all(
            not self.allowed(1 << number)
            for number in range(len(self.blocks))
            if met >> number & 1
        )


@dataclass(frozen=True)
class Group:
    """Bins that hold the same items."""

    bins: tuple[BinFaces, ...]
    shapes: tuple[Shape, ...]
    widths: Ints
    rules: tuple[Layers, ...]

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
    alike: dict[tuple[int, int, Layers], list[int]] = {}
    for number in holds:
        size = size_of(problem.items[number], problem)
        if size.along <= longest and size.across <= widest:
            key = (size.along, size.across, problem.items[number].layers)
            alike.setdefault(key, []).append(number)
    if not alike:
        return None
    widths = sorted({width for _, width, _ in alike})
    rules = sorted({layers for _, _, layers in alike})
    return Group(
        bins=tuple(_faces(number, grid, rules) for number, grid in bins),
        shapes=tuple(
            Shape(length, width, widths.index(width), rules.index(layers), tuple(items))
            for (length, width, layers), items in sorted(alike.items())
        ),
        widths=np.array(widths, np.int64),
        rules=tuple(rules),
    )


def _faces(number: int, grid: Grid, rules: Sequence[Layers]) -> BinFaces:
    def is_forbidden(block: CellBlock, face: tuple[int, int]) -> bool:
        return bool(block.on_a & face[0] or block.on_b & face[1])

    blocks = tuple(
        block
        for block in grid.blocks
        if any(is_forbidden(block, face) for rule in rules for face in rule)
    )
    forbidden = [
        tuple(
            sum(1 << place for place, block in enumerate(blocks) if is_forbidden(block, face))
            for face in rule
        )
        for rule in rules
    ]  # fmt: skip
    return BinFaces(number, grid, blocks, tuple((up[0], up[1]) for up in forbidden))
