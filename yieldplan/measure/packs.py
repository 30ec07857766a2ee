"""Whole packs: which of them a plan opens, and which of their boards it leaves uncut."""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping, Sequence

from yieldplan.measure.order import natural
from yieldplan.model.pieces import Piece
from yieldplan.model.plan import Plan, PurchaseLine, WoodPlan


def packs_opened(
    wood: WoodPlan, offered: Sequence[Piece]
) -> Mapping[str, tuple[Piece, ...]]:
    """Every pack that a board is cut of, with all its boards, in natural order."""
    names = {cut.piece.pack for cut in wood.cuttings if cut.piece.pack}
    return {
        name: tuple(
            sorted(
                (piece for piece in offered if piece.pack == name),
                key=lambda piece: natural(piece.id),
            )
        )
        for name in sorted(names, key=natural)
    }


def left_whole(
    wood: WoodPlan, offered: Sequence[Piece]
) -> tuple[tuple[Piece, int], ...]:
    """Boards that come with a pack and are not cut, and how many copies of each."""
    cut = Counter(cutting.piece.id for cutting in wood.cuttings)
    return tuple(
        (piece, piece.copies - cut[piece.id])
        for pieces in packs_opened(wood, offered).values()
        for piece in pieces
        if piece.copies > cut[piece.id]
    )


def price_of_pack(pieces: Sequence[Piece]) -> int:
    """What the whole pack costs. [money/10,000]"""
    return sum(piece.price * piece.copies for piece in pieces)


def say_left_whole(plan: Plan) -> str:
    """`Bought with the packs and not cut, yours to keep: W6, W7.`; often nothing."""
    names = [
        piece.id if count == 1 else f"{count} of {piece.id}"
        for wood in plan.woods
        for piece, count in left_whole(wood, plan.pieces)
    ]
    if not names:
        return ""
    return f"Bought with the packs and not cut, yours to keep: {', '.join(names)}."


def say_line(line: PurchaseLine) -> str:
    """What a purchase line buys: `walnut 4/4 FAS`, `walnut 4/4, whole pack 8`."""
    if line.by == "minimum":
        return f"minimum order{f' of {line.wood}' if line.wood else ''}"
    stock = f"{line.line} {line.grade}".strip()
    return f"{stock}, whole pack {line.pack}" if line.pack else stock
