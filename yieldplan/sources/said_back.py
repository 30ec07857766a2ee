"""Says in full words what was read for a board, so that a slip of the thumb is seen before the saw."""

from __future__ import annotations

from collections.abc import Iterator

from yieldplan.measure.money import say_feet, say_money
from yieldplan.measure.off_straight import off_straight
from yieldplan.model.faces import Mark
from yieldplan.model.pieces import Piece
from yieldplan.units import UnitName, feet_and_inches, tape


def in_words(piece: Piece, unit: UnitName) -> str:
    """One line: `W1: walnut 4/4, 9-1/4 wide, 10 ft 2 in long, FAS, knot 31 to 37 through`."""
    return f"{piece.id}: {', '.join(_words(piece, unit))}"


def _words(piece: Piece, unit: UnitName) -> Iterator[str]:
    yield piece.line
    wide = f"{tape(piece.width, unit, join='-')} wide"
    if piece.width_far is not None:
        wide += (
            f" at its number, {tape(piece.width_far, unit, join='-')} at the far end"
        )
    yield wide
    yield f"{feet_and_inches(piece.length, unit)} long"
    if piece.grade:
        yield piece.grade
    yield from off_straight(piece, unit, join="-")
    for mark in piece.marks:
        yield _mark(mark, piece, unit)
    if piece.lot:
        yield f"lot {piece.lot}"
    if piece.pack:
        yield f"sold only in pack {piece.pack}"
    feet = (
        "" if piece.board_feet is None else f"{say_feet(piece.board_feet)} board feet"
    )
    if piece.per_foot is not None:
        yield f"{feet} at {say_money(piece.per_foot)} a foot: {say_money(piece.price)}"
    else:
        yield f"{feet}, {say_money(piece.price)} for it".removeprefix(", ")


def _mark(mark: Mark, piece: Piece, unit: UnitName) -> str:
    x0, x1, y0, y1 = (
        tape(size, unit, join="-") for size in (mark.x0, mark.x1, mark.y0, mark.y1)
    )
    is_across = mark.y0 == 0 and mark.y1 == max(piece.ends_wide)
    across = "" if is_across else f" x {y0} to {y1}"
    if mark.face == "through":
        return f"{mark.kind} {x0} to {x1}{across} through"
    return f"{mark.kind} on face {mark.face} {x0} to {x1}{across}"
