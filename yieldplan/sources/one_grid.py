"""Lays whole boards and pieces already sawn on one grid of marks, as one wood must be."""

from __future__ import annotations

import dataclasses
from collections.abc import Sequence

from yieldplan import stock
from yieldplan.model.pieces import Piece
from yieldplan.model.shop import Shop
from yieldplan.units import from_ticks, to_ticks_up


def on_one_grid(pieces: Sequence[Piece], shop: Shop) -> tuple[Piece, ...]:
    """The pieces, those of a wood with a sawn piece all marked from the trimmed end.

    A sawn end is where the wood begins; a board's first mark lies on the shop's step
    from its numbered end, and its wood begins a kerf right of it. Trimmed to there, the
    board has the same marks as before.
    """
    sawn = {piece.wood for piece in pieces if piece.marks_from == "trimmed end"}
    kinds = stock.kinds()
    kerf = to_ticks_up(shop.kerf)
    laid = []
    for piece in pieces:
        kind = kinds[piece.kind]
        is_from_zero = (piece.marks_from or kind.marks_from) == "zero end"
        if piece.wood in sawn and is_from_zero:
            step = to_ticks_up(kind.steps(shop)[0])
            first = -(-to_ticks_up(piece.end_trims[0]) // step) * step
            trims = (from_ticks(first + kerf), piece.end_trims[1])
            laid.append(
                dataclasses.replace(piece, end_trims=trims, marks_from="trimmed end")
            )
        else:
            laid.append(piece)
    return tuple(laid)
