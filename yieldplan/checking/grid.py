"""The grid a piece is laid out on: its cells along and across, and the cells its marks block."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from yieldplan.checking.facts import Mark, Piece, Rules
from yieldplan.checking.wanted import Blank, Box

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
    for_shown
        Whether it counts only for blanks that show: a check with what stays clear of it.
    """

    along: tuple[int, int]
    across: tuple[int, int]
    kind: str
    face: str
    for_shown: bool = False


@dataclass(frozen=True)
class Uneven:
    """What crook, twist and taper leave of a piece, stretch by stretch. [cells]

    Parameters
    ----------
    room
        Cells across at each mark, from the zero end.
    lost
        Cells across that crook takes off a stretch, by its length; as long a list as
        the longest stretch that may be ripped.
    whole
        Cells across, and lost of them, of the piece ripped over its full length.
    """

    room: tuple[int, ...]
    lost: tuple[int, ...]
    whole: tuple[int, int]


@dataclass(frozen=True)
class Grid:
    """A piece in cells; none at all when nothing can be cut from it.

    Parameters
    ----------
    blocks
        Its marks with their reach.
    bare
        Its marks as they are.
    uneven
        None for a straight piece.
    """

    along: int
    across: int
    blocks: tuple[Block, ...]
    bare: tuple[Block, ...]
    uneven: Uneven | None


def lay_out(piece: Piece, rules: Rules) -> Grid:
    """The grid of a piece, as the format's page defines it under "Cells"."""
    first = first_mark(piece, rules)
    along = max((piece.length - piece.trims[1] - first) // rules.along, 0)
    across = cells_across(piece, rules, piece.width)
    return Grid(
        along,
        across,
        tuple(
            _block(piece, rules, mark, box, for_shown)
            for mark in piece.marks
            for box, for_shown in _reaches(mark, rules)
        ),
        tuple(_block(piece, rules, mark, mark.box, False) for mark in piece.marks),
        None if piece.is_straight else _uneven(piece, rules, along),
    )


def first_mark(piece: Piece, rules: Rules) -> int:
    """Where the first mark along a piece lies. [ticks]"""
    start = piece.trims[0]
    if rules.marks_from == "zero end":
        return up(start, rules.along) * rules.along
    return start - rules.kerf


def cells_across(piece: Piece, rules: Rules, width: int) -> int:
    """How many cells there are across a piece where it is so wide; 0 when it is too narrow."""
    return max((width - sum(piece.edges) + rules.kerf) // rules.across, 0)


def cells_of(blank: Blank, rules: Rules) -> tuple[int, int]:
    """How many cells a blank takes along and across."""
    return (
        up(blank.length + rules.kerf, rules.along),
        up(blank.width + rules.kerf, rules.across),
    )


def up(length: int, step: int) -> int:
    """How many steps it takes to cover a length, rounded up."""
    return -(-length // step)


def _reaches(mark: Mark, rules: Rules) -> Iterator[tuple[Box, bool]]:
    """A mark's box with its reach, and whether that is for blanks that show only."""
    x0, y0, x1, y1 = mark.box
    around = rules.around_knots if mark.kind == "knot" else 0
    yield (x0 - around, y0 - around, x1 + around, y1 + around), False
    short = rules.short_of_checks
    if mark.kind in ("check", "split") and short:
        yield (x0 - short, y0, x1 + short, y1), True


def _block(piece: Piece, rules: Rules, mark: Mark, box: Box, for_shown: bool) -> Block:
    x0, y0, x1, y1 = box
    first, near = first_mark(piece, rules), piece.edges[0]
    end = up(y1 - near, rules.across)
    begin = min((y0 - near + rules.kerf) // rules.across, end - 1)
    return Block(
        along=((x0 - first) // rules.along, up(x1 - first, rules.along)),
        across=(begin, end),
        kind=mark.kind,
        face=mark.face,
        for_shown=for_shown,
    )


def _uneven(piece: Piece, rules: Rules, along: int) -> Uneven:
    first, step = first_mark(piece, rules), rules.along
    marks = (
        min(max(first + number * step, 0), piece.length) for number in range(along + 1)
    )
    room = tuple(cells_across(piece, rules, piece.width_at(mark)) for mark in marks)
    lost = []
    for number in range(along + 1):
        bent = piece.crook * (number * step) ** 2
        twisted = piece.twist and number * step - rules.kerf > _longest(rules)
        if twisted or _is_too_crooked(up(bent, piece.length**2), rules):
            break
        lost.append(up(bent, piece.length**2 * rules.across))
    whole = cells_across(piece, rules, min(piece.widths)), up(piece.crook, rules.across)
    twisted = piece.twist and piece.length > _longest(rules)
    if twisted or _is_too_crooked(piece.crook, rules):
        whole = 0, 0
    return Uneven(room, tuple(lost), whole)


def _longest(rules: Rules) -> int:
    """The longest stretch that is ripped from a twisted piece. [ticks]"""
    return rules.twisted_at_most + rules.along


def _is_too_crooked(crook: int, rules: Rules) -> bool:
    return rules.crook_at_most is not None and crook > rules.crook_at_most
