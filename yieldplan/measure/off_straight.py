"""How far a board is off straight, in words, as it was measured."""

from __future__ import annotations

from collections.abc import Iterator

from yieldplan.model.pieces import SOME_TWIST, Piece
from yieldplan.units import UnitName, tape


def off_straight(piece: Piece, unit: UnitName, *, join: str = " ") -> Iterator[str]:
    """Its crook, bow and twist; nothing for a straight board.

    Parameters
    ----------
    join
        Between whole inches and their fraction.
    """
    for word, size in (("crook", piece.crook), ("bow", piece.bow)):
        if size:
            yield f"{word} {tape(size, unit, join=join)}"
    if piece.twist == SOME_TWIST:
        yield "twisted, not measured"
    elif piece.twist:
        yield f"twist {tape(piece.twist, unit, join=join)}"
