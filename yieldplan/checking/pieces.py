"""The most one piece can be worth in one pattern: ripped first, crosscut first, or the better."""

from __future__ import annotations

from bisect import bisect_right
from dataclasses import dataclass

from yieldplan.checking.grid import Grid
from yieldplan.checking.tables import Soft, Tables
from yieldplan.checking.worths import Harm


@dataclass(frozen=True)
class Obstacle:
    """A block that at least one of the blanks cannot live with. [cells]"""

    along: tuple[int, int]
    across: tuple[int, int]
    harm: Harm


def greatest(grid: Grid, tables: Tables, family: str) -> int:
    """The greatest total worth of blanks in one pattern of the family. [money/10,000]"""
    if not (grid.along and grid.across and tables.held.items):
        return 0
    obstacles = [
        Obstacle(block.along, block.across, harm)
        for block in grid.blocks
        if (harm := tables.held.harm(block)) != Harm()
        and block.along[0] < grid.along
        and block.along[1] > 0
        and block.across[0] < grid.across
        and block.across[1] > 0
    ]
    worths = []
    if family in ("R", "E"):
        worths.append(ripped_first(grid, tables, obstacles))
    if family in ("C", "E"):
        worths.append(crosscut_first(grid, tables, obstacles))
    return max(worths)


def ripped_first(grid: Grid, tables: Tables, obstacles: list[Obstacle]) -> int:
    """Family R: strips over the full length, each with blanks over its whole width."""
    ends = {obstacle.across[1] for obstacle in obstacles}
    strips: dict[tuple[int, int], int] = {}

    def strip(wide: int, met: int) -> int:
        if (wide, met) not in strips:
            soft, runs = _split(
                [
                    (obstacle.along, obstacle.harm)
                    for number, obstacle in enumerate(obstacles)
                    if met >> number & 1
                ],
                grid.along,
                tables.held.everyone,
            )
            strips[wide, met] = sum(
                tables.run(wide, end - start, _within(soft, start, end))
                for start, end in runs
            )
        return strips[wide, met]

    best = [0] * (grid.across + 1)
    for bottom in range(grid.across):
        if bottom:
            gained = best[bottom] > best[bottom - 1]
            best[bottom] = max(best[bottom], best[bottom - 1])
            # A strip can slide back to where its neighbour or a mark ends.
            if not gained and bottom not in ends:
                continue
        for wide in tables.widths:
            top = bottom + wide
            if top > grid.across:
                break
            met = sum(
                1 << number
                for number, obstacle in enumerate(obstacles)
                if obstacle.across[0] < top and obstacle.across[1] > bottom
            )
            best[top] = max(best[top], best[bottom] + strip(wide, met))
    return max(best)


def crosscut_first(grid: Grid, tables: Tables, obstacles: list[Obstacle]) -> int:
    """Family C: sections over the full width, ripped into strips that are clear end to end."""
    ends = {obstacle.along[1] for obstacle in obstacles}
    ahead = sorted(range(len(obstacles)), key=lambda each: obstacles[each].along)
    lengths = tables.lengths
    sections: dict[int, list[int]] = {}

    def section(met: int) -> list[int]:
        if met not in sections:
            soft, runs = _split(
                [
                    (obstacle.across, obstacle.harm)
                    for number, obstacle in enumerate(obstacles)
                    if met >> number & 1
                ],
                grid.across,
                tables.held.everyone,
            )
            stacks = [
                tables.stack(end - start, _within(soft, start, end))
                for start, end in runs
            ]
            sections[met] = [sum(each) for each in zip(*stacks, strict=True)]
        return sections[met]

    best = [0] * (grid.along + 1)
    for start in range(grid.along):
        if start:
            gained = best[start] > best[start - 1]
            best[start] = max(best[start], best[start - 1])
            if not gained and start not in ends:
                continue
        # As the section grows it meets one obstacle after another.
        done, met = 0, 0
        for number in [*ahead, None]:
            until = grid.along - start
            if number is not None:
                if obstacles[number].along[1] <= start:
                    continue
                until = min(until, obstacles[number].along[0] - start)
            up_to = bisect_right(lengths, until)
            if up_to > done:
                worths = section(met)
                for length, worth in zip(
                    lengths[done:up_to], worths[done:up_to], strict=False
                ):
                    total = best[start] + worth
                    if total > best[start + length]:
                        best[start + length] = total
                done = up_to
            if number is not None:
                met |= 1 << number
    return max(best)


def _split(
    blocks: list[tuple[tuple[int, int], Harm]], length: int, everyone: int
) -> tuple[list[Soft], list[tuple[int, int]]]:
    """What is left between the blocks that no item can live with, and the other blocks."""
    soft: list[Soft] = []
    runs: list[tuple[int, int]] = []
    free = 0
    for (start, end), harm in sorted(blocks, key=lambda each: each[0]):
        if harm.out != everyone:
            soft.append(Soft(start, end, harm))
            continue
        if start > free:
            runs.append((free, min(start, length)))
        free = max(free, end)
    if free < length:
        runs.append((free, length))
    return soft, runs


def _within(soft: list[Soft], start: int, end: int) -> tuple[Soft, ...]:
    """The soft blocks of a run, counted from its start."""
    return tuple(
        Soft(max(block.start, start) - start, min(block.end, end) - start, block.harm)
        for block in soft
        if block.start < end and block.end > start
    )
