"""What was found on a board, and what a board that is not straight asks of the person at the saw, in words."""

from __future__ import annotations

from collections.abc import Iterator

from yieldplan.measure.off_straight import off_straight
from yieldplan.model.faces import Mark
from yieldplan.model.pieces import Piece
from yieldplan.model.plan import Cutting
from yieldplan.units import UnitName, tape


def found(cutting: Cutting, unit: UnitName) -> str:
    """What was found on the board, as it was written down; nothing when it is clear."""
    piece = cutting.piece
    said = [mark_in_words(mark, unit) for mark in piece.marks]
    said += not_straight(piece, unit)
    first = what_first(piece)
    words = ["Found: " + "; ".join(said), *([first] if first else [])]
    return ". ".join(words) + "." if said else ""


def mark_in_words(mark: Mark, unit: UnitName) -> str:
    """A mark as it is measured: kind, face, stretch of length, stretch of width."""
    face = ", through" if mark.face == "through" else ""
    side = "" if face else f" {mark.face}"
    return (
        f"{mark.kind}{side} {tape(mark.x0, unit)} to {tape(mark.x1, unit)}"
        f" × {tape(mark.y0, unit)} to {tape(mark.y1, unit)}{face}"
    )


def not_straight(piece: Piece, unit: UnitName) -> tuple[str, ...]:
    """Its crook, bow, twist and taper as they were measured; nothing for a straight board."""
    return tuple(_measured(piece, unit))


def _measured(piece: Piece, unit: UnitName) -> Iterator[str]:
    near, far = piece.ends_wide
    if near != far:
        yield f"tapers from {tape(near, unit)} at zero to {tape(far, unit)}"
    yield from off_straight(piece, unit)


def what_first(piece: Piece) -> str:
    """What to do before the first rip of a crooked or twisted board; nothing otherwise."""
    if piece.twist:
        return "Crosscut first: no piece of a twisted board is ripped long"
    if piece.crook:
        return "Joint the near edge of each piece straight before it is ripped"
    return ""
