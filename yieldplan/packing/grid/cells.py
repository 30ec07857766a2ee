"""The grid a piece is laid out on: crosscut marks along it, rip settings across it, marks as blocked cells.

The rules are those of `plan_format.md` under "Cells"; the plan and its floor both use them.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from yieldplan.packing.problem import Bin, Block, Item, Problem


@dataclass(frozen=True)
class CellBlock:
    """The cells a mark takes up: along from `i0` to `i1`, across from `u0` to `u1`."""

    i0: int
    i1: int
    u0: int
    u1: int
    on_a: int
    on_b: int


@dataclass(frozen=True)
class Grid:
    """One bin in cells.

    Parameters
    ----------
    zero
        Where the first crosscut mark lies. [ticks]
    along, across
        Number of cells.
    """

    zero: int
    along: int
    across: int
    blocks: tuple[CellBlock, ...]
    found: tuple[CellBlock, ...] = ()
    """The marks as they were found, without what is kept clear around them."""

    @property
    def is_usable(self) -> bool:
        """Whether anything can be cut from it at all."""
        return self.along > 0 and self.across > 0


@dataclass(frozen=True)
class Size:
    """Cells an item takes, each with the kerf beside it."""

    along: int
    across: int


def size_of(item: Item, problem: Problem) -> Size:
    """The cells an item takes."""
    return Size(
        -(-(item.length + problem.kerf) // problem.step_along),
        -(-(item.width + problem.kerf) // problem.step_across),
    )


def grid_of(piece: Bin, problem: Problem) -> Grid:
    """The grid of one bin, with the marks that reach into it."""
    kerf, step_x, step_y = problem.kerf, problem.step_along, problem.step_across
    if problem.marks_from == "zero end":
        zero = -(-piece.trims[0] // step_x) * step_x
    else:
        zero = piece.trims[0] - kerf
    along = max(0, (piece.length - piece.trims[1] - zero) // step_x)
    across = max(0, (piece.width - sum(piece.edges) + kerf) // step_y)

    def within(blocks: Iterable[Block]) -> tuple[CellBlock, ...]:
        return tuple(
            CellBlock(
                max(cells.i0, 0),
                min(cells.i1, along),
                max(cells.u0, 0),
                min(cells.u1, across),
                cells.on_a,
                cells.on_b,
            )
            for cells in (_cells(block, piece, zero, problem) for block in blocks)
            if cells.i0 < along and cells.i1 > 0 and cells.u0 < across and cells.u1 > 0
        )

    found = (Block(box=box, on_a=0, on_b=0) for box in piece.found)
    return Grid(zero, along, across, within(piece.blocks), within(found))


def _cells(block: Block, piece: Bin, zero: int, problem: Problem) -> CellBlock:
    x0, y0, x1, y1 = block.box
    near = piece.edges[0]
    top = -(-(y1 - near) // problem.step_across)
    # The strip below a mark ends a kerf before its last cell does.
    bottom = min((y0 - near + problem.kerf) // problem.step_across, top - 1)
    return CellBlock(
        (x0 - zero) // problem.step_along,
        -(-(x1 - zero) // problem.step_along),
        bottom,
        top,
        block.on_a,
        block.on_b,
    )


def zones_of(item: Item, problem: Problem) -> tuple[int, int]:
    """Cells that its zones take at its zero end and at its far end."""
    near, far = item.zones
    step, cells = problem.step_along, size_of(item, problem).along
    if not item.zone_bits:
        return 0, 0
    return (
        min(cells, -(-(near + problem.kerf) // step)) if near else 0,
        min(cells, -(-(far + cells * step - item.length) // step)) if far else 0,
    )


def is_forbidden(item: Item, blocks: list[CellBlock]) -> bool:
    """Whether an item may not bear these marks, whichever face is up."""
    return all(
        any(block.on_a & on_a or block.on_b & on_b for block in blocks)
        for on_a, on_b in item.layers
    )


def is_in_a_zone(item: Item, blocks: Iterable[CellBlock]) -> bool:
    """Whether any of these marks may not lie where the item's joints are cut."""
    return any((block.on_a | block.on_b) & item.zone_bits for block in blocks)


def blocks_met(
    grid: Grid, i: int, j: int, u: int, v: int, down: int = 0
) -> list[CellBlock]:
    """Marks that a rectangle of cells meets.

    Parameters
    ----------
    down
        By how many cells marks reach further toward the near edge.
    """
    return [
        block
        for block in grid.blocks
        if i < block.i1 and j > block.i0 and u < block.u1 and v > block.u0 - down
    ]


def faces_up(item: Item, blocks: Sequence[CellBlock | Block]) -> str:
    """The faces that may show, "A" before "B": "AB", "A", "B" or none."""
    return "".join(
        face
        for face, (on_a, on_b) in zip("AB", item.layers, strict=True)
        if not any(block.on_a & on_a or block.on_b & on_b for block in blocks)
    )
