"""How wide a stretch of a crooked, tapered or twisted piece is once it has a straight edge.

The rules are those of `plan_format.md` under "Cells": a stretch loses crook by the square of
its share of the board's length, and a tapered one is as wide as its narrower end.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np

from yieldplan.packing.grid.cells import CellBlock, Grid
from yieldplan.packing.grid.crossings import Ints
from yieldplan.packing.problem import Bin, Problem


@dataclass(frozen=True)
class Room:
    """What a stretch has across.

    Parameters
    ----------
    across
        Cells, from the near edge on; 0 where nothing may be ripped from it.
    down
        By how many cells its marks reach further toward the near edge.
    near
        Cells at the near edge that are taken already.
    """

    across: int
    down: int = 0
    near: int = 0

    def blocks(self, blocks: tuple[CellBlock, ...]) -> tuple[CellBlock, ...]:
        """The marks as they lie in the room, counted from its near side.

        A mark outside the room is left without cells across, so that all rooms of a
        piece number their marks alike.
        """
        size = self.across - self.near
        found = []
        for block in blocks:
            low = max(0, min(block.u0 - self.down - self.near, size))
            high = max(low, min(block.u1 - self.near, size))
            found.append(replace(block, u0=low, u1=high))
        return tuple(found)


class Rooms:
    """The rooms of one piece."""

    def __init__(self, piece: Bin, grid: Grid, problem: Problem) -> None:
        self._piece = piece
        self._grid = grid
        self._problem = problem
        self._plain = Room(grid.across)

    def section(self, i: int, j: int) -> Room:
        """Of the section from mark `i` to mark `j`."""
        piece, step = self._piece, self._problem.step_along
        if piece.is_straight or j <= i:
            return self._plain
        ends = (self._grid.zero + i * step, self._grid.zero + j * step)
        wood = (j - i) * step - self._problem.kerf
        narrower = min(self._wide(ends[0]), self._wide(ends[1]))
        return self._room(self._down((j - i) * step, wood), narrower)

    def table(self, lengths: Ints) -> tuple[Ints, Ints]:
        """Rooms of all sections: cells across by length and start, cells down by length.

        Parameters
        ----------
        lengths
            [cells]
        """
        piece, problem = self._piece, self._problem
        step = problem.step_along
        marks = np.clip(
            self._grid.zero + step * np.arange(self._grid.along + 1), 0, piece.length
        )
        near, far = piece.widths or (piece.width, piece.width)
        wide = near + (far - near) * marks // piece.length
        across = np.zeros((len(lengths), len(marks)), np.int64)
        downs = np.zeros(len(lengths), np.int64)
        for number, cells in enumerate(lengths.tolist()):
            # Exact in Python's own integers: a length squared is a large number.
            down = self._down(cells * step, cells * step - problem.kerf)
            if down is None or not 0 < cells < len(marks):
                continue
            downs[number] = down
            narrower = np.minimum(wide[: len(marks) - cells], wide[cells:])
            inner = narrower - sum(piece.edges) + problem.kerf
            rest = inner // problem.step_across - down
            across[number, : len(rest)] = np.maximum(rest, 0)
        return across, downs

    def whole(self) -> Room:
        """Of the board when it is ripped from end to end."""
        piece = self._piece
        if piece.is_straight:
            return self._plain
        narrower = min(piece.widths or (piece.width,))
        return self._room(self._down(piece.length, piece.length), narrower)

    def _wide(self, x: int) -> int:
        """The piece's width at a place along it. [ticks]"""
        piece = self._piece
        near, far = piece.widths or (piece.width, piece.width)
        at = min(max(x, 0), piece.length)
        return near + (far - near) * at // piece.length

    def _down(self, long: int, wood: int) -> int | None:
        """Cells a stretch loses to crook; None where nothing may be ripped from it.

        Parameters
        ----------
        long
            What its crook is reckoned from. [ticks]
        wood
            How long it is for a twisted board. [ticks]
        """
        piece, problem = self._piece, self._problem
        if piece.is_twisted and wood > problem.twisted_at_most + problem.step_along:
            return None
        loss, whole = piece.crook * long**2, piece.length**2
        most = problem.crook_at_most
        if most is not None and -(-loss // whole) > most:
            return None
        return -(-loss // (whole * problem.step_across))

    def _room(self, down: int | None, wide: int) -> Room:
        if down is None:
            return Room(0)
        inner = wide - sum(self._piece.edges) + self._problem.kerf
        return Room(max(0, inner // self._problem.step_across - down), down)
