"""The marks of a bin as the items see them: which each rule forbids, and which all of them shun."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace

from yieldplan.packing.grid.cells import CellBlock, Grid, zones_of
from yieldplan.packing.grid.offcuts import Offcuts
from yieldplan.packing.grid.rooms import Room, Rooms
from yieldplan.packing.problem import Problem

Layers = tuple[tuple[int, int], tuple[int, int]]
Rule = tuple[Layers, int]
"""What an item may not bear, each way up, and what it may not bear in its zones."""


@dataclass(frozen=True)
class BinFaces:
    """The marks of one bin that matter to some item of the problem.

    Parameters
    ----------
    forbidden
        For each face rule, bit sets of the blocks forbidden with face A up and with B up.
    in_zones
        For each face rule, the bit set of the blocks forbidden in an item's zones.
    shunned
        Bit sets of the blocks that no item of the problem can bear: none whose zones may
        lie anywhere, none wherever its zones lie.
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
    shunned: tuple[int, int]
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

        Items of the whole wood, not of this board alone: what counts as clear must not
        change with what else is offered, for a floor is worked out again elsewhere.

        Parameters
        ----------
        anywhere
            Whether an item's zones may lie anywhere; else its own place is known.
        """
        return not met & ~self.shunned[0 if anywhere else 1]

    def in_room(self, room: Room) -> BinFaces:
        """The same marks in a room of the bin, counted from its near side."""
        grid = replace(self.grid, across=max(0, room.across - room.near))
        return replace(self, grid=grid, blocks=room.blocks(self.blocks))


def rules_of_all(problem: Problem) -> list[Rule]:
    """What the items of the wood, steps of sets among them, may not bear."""
    return sorted(
        {
            (item.layers, item.zone_bits if any(zones_of(item, problem)) else 0)
            for item in problem.items
        }
    )


def is_forbidden_up(block: CellBlock, side: tuple[int, int]) -> bool:
    """Whether an item that lies this way up may not bear a mark."""
    return bool(block.on_a & side[0] or block.on_b & side[1])


def faces_of(
    number: int,
    grid: Grid,
    rules: Sequence[Rule],
    everyone: Sequence[Rule],
    problem: Problem,
) -> BinFaces:
    def matters(block: CellBlock) -> bool:
        return any(
            is_forbidden_up(block, side) for layers, _ in everyone for side in layers
        ) or any((block.on_a | block.on_b) & zone for _, zone in everyone)

    def is_shunned(block: CellBlock, *, anywhere: bool) -> bool:
        return all(
            all(is_forbidden_up(block, side) for side in layers)
            or (anywhere and bool((block.on_a | block.on_b) & zone))
            for layers, zone in everyone
        )

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
        shunned=(
            places(lambda block: is_shunned(block, anywhere=True)),
            places(lambda block: is_shunned(block, anywhere=False)),
        ),
        rooms=Rooms(piece, grid, problem),
        offcuts=Offcuts(piece, grid, problem),
        is_straight=piece.is_straight,
    )
