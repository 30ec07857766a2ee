"""Exact inches to whole ticks, once, where blanks and pieces meet the saw: parts up, stock down, marks outward."""

from __future__ import annotations

from dataclasses import dataclass

from yieldplan.model.blanks import Blank
from yieldplan.model.faces import Mark
from yieldplan.model.pieces import Piece
from yieldplan.model.plan import Box
from yieldplan.units import Inches, to_ticks_down, to_ticks_up


@dataclass(frozen=True, kw_only=True)
class BlankTicks:
    """A blank on the tick grid.

    Parameters
    ----------
    length, width
        [ticks]
    inside
        Box of each finished part, in the order of `Blank.inside`. [ticks]
    """

    length: int
    width: int
    inside: tuple[Box, ...]


def blank_in_ticks(blank: Blank, kerf: Inches) -> BlankTicks:
    """The blank rounded up, its parts laid out again so that a kerf stays between them.

    Sizes on the tick grid (1/64 in, 0.1 mm) come out exactly as they are. Off the grid
    a part grows by less than a tick; its right-hand neighbours then move over by as
    much, and the blank with them.
    """
    gap = to_ticks_up(kerf)
    done: list[Box] = []
    laid: dict[int, Box] = {}
    numbered = sorted(enumerate(blank.inside), key=lambda n: (n[1].x, n[1].y, n[0]))
    for number, part in numbered:
        x, y = to_ticks_up(part.x), to_ticks_up(part.y)
        length, width = to_ticks_up(part.length), to_ticks_up(part.width)
        for number_before, before in laid.items():
            other = blank.inside[number_before]
            if other.x + other.length <= part.x:
                x = max(x, before[2] + gap)
            elif other.y + other.width <= part.y:
                y = max(y, before[3] + gap)
        laid[number] = (x, y, x + length, y + width)
    done = [laid[number] for number in range(len(blank.inside))]
    return BlankTicks(
        length=max([to_ticks_up(blank.length.value), *(box[2] for box in done)]),
        width=max([to_ticks_up(blank.width.value), *(box[3] for box in done)]),
        inside=tuple(done),
    )


def mark_in_ticks(mark: Mark) -> Box:
    """The mark's box, rounded outward. [ticks]"""
    return (
        to_ticks_down(mark.x0),
        to_ticks_down(mark.y0),
        to_ticks_up(mark.x1),
        to_ticks_up(mark.y1),
    )


def piece_in_ticks(piece: Piece) -> tuple[int, int]:
    """Length of the piece, and its width where it is widest, rounded down. [ticks]"""
    return to_ticks_down(piece.length), max(ends_in_ticks(piece))


def ends_in_ticks(piece: Piece) -> tuple[int, int]:
    """Clear width at the numbered end and at the far one, rounded down. [ticks]"""
    near, far = piece.ends_wide
    return to_ticks_down(near), to_ticks_down(far)


def trims_in_ticks(piece: Piece) -> tuple[tuple[int, int], tuple[int, int]]:
    """End trims and edge passes of the piece, rounded up. [ticks]"""
    ends, edges = piece.end_trims, piece.edge_passes
    return (
        (to_ticks_up(ends[0]), to_ticks_up(ends[1])),
        (to_ticks_up(edges[0]), to_ticks_up(edges[1])),
    )
