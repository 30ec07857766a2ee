"""The obstacles: the blocks of a piece that some of its blanks cannot live with, and what is left between."""

from __future__ import annotations

from dataclasses import dataclass
from typing import NamedTuple

from yieldplan.checking.grid import Grid
from yieldplan.checking.worths import Harm, Held


class Soft(NamedTuple):
    """A block that some face classes can live with, within a stretch. [cells]

    Parameters
    ----------
    in_zones
        Whether no joint zone may hold it.
    """

    start: int
    end: int
    harm: Harm
    in_zones: bool = False


@dataclass(frozen=True)
class Obstacle:
    """A block that at least one of the blanks cannot live with. [cells]

    Parameters
    ----------
    is_mixed
        Whether some blanks of the wood can, worth having or not; asked only where
        that makes a difference.
    """

    along: tuple[int, int]
    across: tuple[int, int]
    harm: Harm
    in_zones: bool = False
    is_mixed: bool = False


def obstacles_ripped(grid: Grid, held: Held) -> list[Obstacle]:
    """What is in the way of strips over the full length, where zones have their place."""
    across, lost = grid.uneven.whole if grid.uneven else (grid.across, 0)
    any_zones = any(item.zones != (0, 0) for item in held.items)
    found = [
        Obstacle(
            block.along,
            (block.across[0] - lost, block.across[1]),
            held.harm(block, with_zones=False),
            any_zones and held.is_in_zones(block),
            held.is_mixed(block, with_zones=False),
        )
        for block in grid.blocks
    ]
    return _in_the_way(found, grid.along, across)


def obstacles_crosscut(grid: Grid, held: Held) -> list[Obstacle]:
    """What is in the way of strips in sections, where a blank with zones is one zone."""
    found = [
        Obstacle(
            block.along,
            block.across,
            held.harm(block, with_zones=True),
            is_mixed=held.is_mixed(block, with_zones=True),
        )
        for block in grid.blocks
    ]
    return sorted(
        _in_the_way(found, grid.along, grid.across), key=lambda each: each.along
    )


def _in_the_way(found: list[Obstacle], along: int, across: int) -> list[Obstacle]:
    return [
        each
        for each in found
        if (each.harm != Harm() or each.in_zones or each.is_mixed)
        and each.along[0] < along
        and each.along[1] > 0
        and each.across[0] < across
        and each.across[1] > 0
    ]


def split(
    blocks: list[Soft], length: int, everyone: int
) -> tuple[list[Soft], list[tuple[int, int]]]:
    """What is left between the blocks that no item can live with, and the other blocks."""
    soft: list[Soft] = []
    runs: list[tuple[int, int]] = []
    free = 0
    for block in sorted(blocks, key=lambda each: (each.start, each.end)):
        if block.harm == Harm() and not block.in_zones:
            continue
        if block.harm.out != everyone:
            soft.append(block)
            continue
        if min(block.start, length) > free:
            runs.append((free, min(block.start, length)))
        free = max(free, block.end)
    if free < length:
        runs.append((free, length))
    return soft, runs


def within(soft: list[Soft], start: int, end: int) -> tuple[Soft, ...]:
    """The soft blocks of a run, counted from its start."""
    return tuple(
        block._replace(
            start=max(block.start, start) - start, end=min(block.end, end) - start
        )
        for block in soft
        if block.start < end and block.end > start
    )
