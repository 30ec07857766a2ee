"""The most one piece can be worth in one pattern: ripped first, crosscut first, or the better."""

from __future__ import annotations

from collections.abc import Sequence

from yieldplan.checking.beside_marks import crosscut_beside, ripped_beside
from yieldplan.checking.facts import Piece, Rules
from yieldplan.checking.grid import Grid
from yieldplan.checking.obstacles import Soft, obstacles_ripped, split, within
from yieldplan.checking.offcuts import most_worth
from yieldplan.checking.sections import Sections
from yieldplan.checking.tables import Tables


def greatest(piece: Piece, rules: Rules, grid: Grid, tables: Tables) -> int:
    """The greatest total worth of blanks, and of an offcut, in one pattern. [money/10,000]"""
    if not (grid.along and grid.across):
        return 0
    worths = []
    if rules.family in ("R", "E"):
        best = ripped_first(grid, tables)
        worths.append(_with_offcut(best, offcuts_ripped(piece, rules, grid)))
    if rules.family in ("C", "E"):
        best = Sections(grid, tables).worths()
        worths.append(_with_offcut(best, offcuts_crosscut(piece, rules, grid)))
    if rules.family in ("R+", "E+"):
        best = ripped_beside(grid, tables)
        worths.append(_with_offcut(best, offcuts_ripped(piece, rules, grid)))
    if rules.family in ("C+", "E+"):
        best = crosscut_beside(grid, tables)
        worths.append(_with_offcut(best, offcuts_crosscut(piece, rules, grid)))
    return max(worths)


def ripped_first(grid: Grid, tables: Tables) -> list[int]:
    """Family R: the most from strips over the full length that end at a cell or before it."""
    obstacles = obstacles_ripped(grid, tables.held)
    across = grid.across
    if grid.uneven:
        across = max(grid.uneven.whole[0] - grid.uneven.whole[1], 0)
    ends = {obstacle.across[1] for obstacle in obstacles}
    strips: dict[tuple[int, int], int] = {}

    def strip(wide: int, met: int) -> int:
        if (wide, met) not in strips:
            soft, runs = split(
                [
                    Soft(*obstacle.along, obstacle.harm, obstacle.in_zones)
                    for number, obstacle in enumerate(obstacles)
                    if met >> number & 1
                ],
                grid.along,
                tables.held.everyone,
            )
            is_mixed = any(
                obstacle.is_mixed and met >> number & 1
                for number, obstacle in enumerate(obstacles)
            )
            strips[wide, met] = sum(
                tables.run(
                    wide, end - start, within(soft, start, end), is_mixed=is_mixed
                )
                for start, end in runs
            )
        return strips[wide, met]

    best = [0] * (across + 1)
    for bottom in range(across + 1):
        if bottom:
            gained = best[bottom] > best[bottom - 1]
            best[bottom] = max(best[bottom], best[bottom - 1])
            # A strip can slide back to where its neighbour or a mark ends; but where blanks
            # are counted as asked, one that crosses more marks may be said to hold more.
            if not gained and bottom not in ends and not tables.clear:
                continue
        for wide in tables.widths:
            top = bottom + wide
            if top > across:
                break
            met = sum(
                1 << number
                for number, obstacle in enumerate(obstacles)
                if obstacle.across[0] < top and obstacle.across[1] > bottom
            )
            best[top] = max(best[top], best[bottom] + strip(wide, met))
    return best


def offcuts_ripped(piece: Piece, rules: Rules, grid: Grid) -> list[int]:
    """What is left counts for when the last strip ends at a cell, cell by cell. [money/10,000]"""
    long = grid.along * rules.along - rules.kerf
    clear = max(
        (
            block.across[1]
            for block in grid.bare
            if block.along[1] > 0
            and block.along[0] < grid.along
            and block.across[0] < grid.across
        ),
        default=0,
    )
    return [
        most_worth(
            piece,
            rules.offcuts,
            long,
            (grid.across - end) * rules.across - rules.kerf,
        )
        if piece.is_straight and end >= clear
        else 0
        for end in range(grid.across + 1)
    ]


def offcuts_crosscut(piece: Piece, rules: Rules, grid: Grid) -> list[int]:
    """What is left counts for when the last section ends at a mark, mark by mark. [money/10,000]"""
    wide = piece.width - sum(piece.edges)
    clear = max(
        (
            block.along[1]
            for block in grid.bare
            if block.across[1] > 0
            and block.across[0] < grid.across
            and block.along[0] < grid.along
        ),
        default=0,
    )
    return [
        most_worth(
            piece,
            rules.offcuts,
            (grid.along - end) * rules.along - rules.kerf,
            wide,
        )
        if piece.is_straight and end >= clear
        else 0
        for end in range(grid.along + 1)
    ]


def _with_offcut(best: Sequence[int], offcuts: Sequence[int]) -> int:
    """The most from a pattern and what lies beyond it."""
    return max(best[-1], *(map(sum, zip(best, offcuts, strict=False))))
