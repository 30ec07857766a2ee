"""What can be bought: one kind of stock a file; facts only, no solver."""

from __future__ import annotations

import sys
from collections.abc import Iterable, Mapping, Sequence

from yieldplan.model.blanks import Blank
from yieldplan.model.pieces import Piece
from yieldplan.registry import find
from yieldplan.stock.kind import StockKind
from yieldplan.units import Inches

__all__ = ["StockKind", "cautions", "fits", "kinds"]


def kinds() -> Mapping[str, StockKind]:
    """Every kind of stock by its name in words."""
    found = find(sys.modules[__name__], StockKind)  # type: ignore[type-abstract]
    return {name: kind() for name, kind in found.items()}


def cautions(pieces: Iterable[Piece]) -> tuple[str, ...]:
    """What to mind while sawing these pieces, each said once."""
    known = kinds()
    return tuple(
        dict.fromkeys(said for piece in pieces for said in known[piece.kind].cautions)
    )


def fits(
    blanks: Sequence[Blank], pieces: Sequence[Piece]
) -> dict[str, tuple[str, ...]]:
    """Blank id to the stock lines it may be cut from, as to wood and thickness.

    A line is listed only when every piece of it will do: whoever reads the plan file
    goes by the line alone.
    """
    known = kinds()
    lines: dict[str, dict[tuple[str, str, Inches], Piece]] = {}
    for piece in pieces:
        # Pieces alike in these serve alike; the first speaks for the others.
        alike = (piece.kind, piece.wood, piece.thick)
        lines.setdefault(piece.line, {}).setdefault(alike, piece)
    return {
        blank.id: tuple(
            line
            for line in sorted(lines)
            if all(known[p.kind].serves(blank, p) for p in lines[line].values())
        )
        for blank in blanks
    }
