"""The grid a piece is laid out on: its cells along and across, and the cells its marks block."""

from __future__ import annotations

from dataclasses import dataclass

from yieldplan.checking.facts import Blank, Piece, Rules

MOST_CELLS = 4_000_000
"""A finer grid than this is not worked out again: a 10 x 5 ft sheet in 1/16 in has half of it."""
MOST_ALONG = 10_000
"""A 25 ft board in 1/32 in has 9,600. [cells]"""


@dataclass(frozen=True)
class Block:
    """The cells a mark blocks: a stretch meets it that begins before the end and ends after the start.

    Parameters
    ----------
    along, across
        Start and end. [cells]
    """

    along: tuple[int, int]
    across: tuple[int, int]
    kind: str
    face: str


@dataclass(frozen=True)
class Grid:
    """A piece in cells; none at all when nothing can be cut from it."""

    along: int
    across: int
    blocks: tuple[Block, ...]


def lay_out(piece: Piece, rules: Rules) -> Grid:
    """The grid of a piece, as the format's page defines it under "Cells"."""
    step = rules.along
    start, far = piece.trims
    first = (
        up(start, step) * step if rules.marks_from == "zero end" else start - rules.kerf
    )
    near, opposite = piece.edges
    along = (piece.length - far - first) // step
    across = (piece.width - near - opposite + rules.kerf) // rules.across
    blocks = []
    for mark in piece.marks:
        x0, y0, x1, y1 = mark.box
        end = up(y1 - near, rules.across)
        begin = min((y0 - near + rules.kerf) // rules.across, end - 1)
        blocks.append(
            Block(
                along=((x0 - first) // step, up(x1 - first, step)),
                across=(begin, end),
                kind=mark.kind,
                face=mark.face,
            )
        )
    return Grid(max(along, 0), max(across, 0), tuple(blocks))


def cells_of(blank: Blank, rules: Rules) -> tuple[int, int]:
    """How many cells a blank takes along and across."""
    return (
        up(blank.length + rules.kerf, rules.along),
        up(blank.width + rules.kerf, rules.across),
    )


def up(length: int, step: int) -> int:
    """How many steps it takes to cover a length, rounded up."""
    return -(-length // step)
