"""What was found on a board, written above it with a line to the place."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from yieldplan.drawing.fonts import width, wrap
from yieldplan.drawing.scene import Item, Line, Text
from yieldplan.model.faces import Mark
from yieldplan.model.pieces import Piece
from yieldplan.units import UnitName, tape

_SIZE = 10.0
_LINE = 12.0
_APART = 10.0
_LEADER = 7.0  # room below the words for a line to lean over in


@dataclass(frozen=True, kw_only=True)
class Callout:
    """One mark: where it is along the page, and its two lines of words.

    Parameters
    ----------
    x, y
        Where the line ends: above the mark, at its upper edge. [pt]
    along, across
        What it is and where along the board; where across it.
    """

    mark: Mark
    x: float
    y: float
    along: str
    across: str

    def wide(self, *, condensed: bool) -> float:
        """[pt]"""
        return max(
            width(self.along, _SIZE, bold=True, condensed=condensed),
            width(self.across, _SIZE, condensed=condensed),
        )


def along_in_words(mark: Mark, unit: UnitName) -> str:
    """`knot 10 to 13`; face B is underneath, as the board lies."""
    where = f"{tape(mark.x0, unit)} to {tape(mark.x1, unit)}"
    match mark.face:
        case "A":
            return f"{mark.kind} {where}"
        case "B":
            return f"{mark.kind} underneath, {where}"
        case "through":
            return f"{mark.kind} {where}, through"


def across_in_words(mark: Mark, piece: Piece, unit: UnitName) -> str:
    """`3 1/2 to 4 1/2 from near edge`."""
    is_near, is_far = mark.y0 <= 0, mark.y1 >= max(piece.ends_wide)
    if is_near and is_far:
        return "full width"
    if is_far:
        return f"{tape(mark.y0, unit)} to far edge"
    if is_near:
        return f"near edge to {tape(mark.y1, unit)}"
    return f"{tape(mark.y0, unit)} to {tape(mark.y1, unit)} from near edge"


def height(callouts: Sequence[Callout], left: float, right: float) -> float:
    """The room the words take above a row. [pt]"""
    if not callouts:
        return 0.0
    if _beside_each_other(callouts, left, right) is not None:
        return 2 * _LINE + _LEADER
    return len(_listed(callouts, right - left)) * _LINE + 4.0


def draw(
    callouts: Sequence[Callout], left: float, right: float, top: float, wood: float
) -> Iterator[Item]:
    """The words from `top` down, and their lines.

    Parameters
    ----------
    wood
        Where the wood begins: from there the lines run straight down. [pt]
    """
    placed = _beside_each_other(callouts, left, right)
    if placed is None:
        # Too many to stand above their places: the drawing shows each to scale.
        for number, line in enumerate(_listed(callouts, right - left)):
            yield Text(x=left, y=top + 9 + number * _LINE, text=line, size=_SIZE)
        return
    starts, condensed = placed
    foot = top + 2 * _LINE
    for callout, x in zip(_sorted(callouts), starts, strict=True):
        wide = callout.wide(condensed=condensed)
        words = Text(
            x=x, y=top + 9, text=callout.along, size=_SIZE, bold=True, condensed=condensed
        )  # fmt: skip
        yield words
        yield replace(words, y=top + 9 + _LINE, text=callout.across, bold=False)
        start = min(max(callout.x, x + 3), x + wide - 3)
        yield Line(x0=start, y0=foot, x1=callout.x, y1=foot + _LEADER, weight=0.6)
        yield Line(
            x0=callout.x, y0=foot + _LEADER, x1=callout.x, y1=max(callout.y, wood),
            weight=0.6,
        )  # fmt: skip


def _sorted(callouts: Sequence[Callout]) -> list[Callout]:
    return sorted(callouts, key=lambda callout: (callout.x, callout.along))


def _beside_each_other(
    callouts: Sequence[Callout], left: float, right: float
) -> tuple[list[float], bool] | None:
    """Where each begins, in the order of their places, and whether in narrow letters."""
    ordered = _sorted(callouts)
    for condensed in (False, True):
        wide = [callout.wide(condensed=condensed) for callout in ordered]
        if sum(wide) + _APART * (len(wide) - 1) > right - left:
            continue
        starts: list[float] = []
        at = left
        for callout, room in zip(ordered, wide, strict=True):
            starts.append(max(at, callout.x - room / 2))
            at = starts[-1] + room + _APART
        end = right
        for number in range(len(starts) - 1, -1, -1):
            starts[number] = min(starts[number], end - wide[number])
            end = starts[number] - _APART
        return starts, condensed
    return None


def _listed(callouts: Sequence[Callout], room: float) -> list[str]:
    said = "; ".join(f"{each.along}, {each.across}" for each in _sorted(callouts))
    return wrap(f"Found: {said}.", room, _SIZE)
