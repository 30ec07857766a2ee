"""The offcuts: what is kept counts for something only where it is large, clear and in one piece."""

from __future__ import annotations

from collections.abc import Iterator

from yieldplan.checking.cuts import cuttings_of, where
from yieldplan.checking.faces import overlap
from yieldplan.checking.facts import Cutting, Node, Offcuts, Piece, Plan
from yieldplan.checking.saying import say_money


def offcuts_count_for_what_they_are(plan: Plan) -> Iterator[str]:
    """Ensures that an offcut's worth is its share of the price, and that it is worth keeping."""
    for wood, cutting in cuttings_of(plan):
        piece = plan.piece_of[cutting.stock]
        for node in cutting.tree.every():
            if not node.worth:
                continue
            most = most_worth(piece, wood.rules.offcuts, *size_of(piece, node))
            if node.worth > most:
                yield (
                    f"{where(wood, cutting, node)}: the offcut {node.name} is said to be "
                    f"worth {say_money(node.worth)}; it counts for {say_money(most)}."
                )
            for hindrance in _hindrances(cutting, node, piece):
                yield (
                    f"{where(wood, cutting, node)}: the offcut {node.name} is worth "
                    f"nothing, as {hindrance}."
                )


def one_offcut_of_a_piece_counts(plan: Plan) -> Iterator[str]:
    """Ensures that at most one offcut of a piece has a worth."""
    for wood, cutting in cuttings_of(plan):
        counted = [node.name for node in cutting.tree.every() if node.worth]
        if len(counted) > 1:
            yield (
                f"{where(wood, cutting, cutting.tree)}: {' and '.join(counted)} both have "
                "a worth; one offcut of a piece may."
            )


def size_of(piece: Piece, node: Node) -> tuple[int, int]:
    """An offcut's length and width, less the trims and edges of its piece. [ticks]"""
    x0, y0, x1, y1 = _usable(piece, node)
    return x1 - x0, y1 - y0


def most_worth(piece: Piece, offcuts: Offcuts, length: int, width: int) -> int:
    """The most an offcut of this size may count for; 0 when it is not worth keeping. [money/10,000]

    Parameters
    ----------
    length, width
        Less trims and edges. [ticks]
    """
    whole = piece.length * piece.width
    if not any(length >= long and width >= wide for long, wide in offcuts.sizes):
        return 0
    # A board left under 30 in a hundred counts as used up.
    if 10 * length * width < 3 * whole:
        return 0
    return piece.price * offcuts.percent * length * width // (100 * whole)


def _usable(piece: Piece, node: Node) -> tuple[int, int, int, int]:
    x0, y0, x1, y1 = node.box
    return (
        max(x0, piece.trims[0]),
        max(y0, piece.edges[0]),
        min(x1, piece.length - piece.trims[1]),
        min(y1, piece.width - piece.edges[1]),
    )


def _hindrances(cutting: Cutting, node: Node, piece: Piece) -> Iterator[str]:
    if not piece.is_straight:
        yield f"{piece.id} is not straight"
    row = _first_cuts(cutting.tree)
    if node not in row:
        yield "it is not cut from the whole piece at once"
    elif any(below.blank for last in row[row.index(node) :] for below in last.every()):
        yield "blanks are cut from what lies after it"
    for mark in piece.marks:
        if overlap(mark.box, _usable(piece, node)):
            yield f"a {mark.kind} lies in it"


def _first_cuts(tree: Node) -> tuple[Node, ...]:
    """What the root is cut into, the second pass of a blade at its end taken with it."""
    row = tree.into
    while row and row[-1].cut == tree.cut:
        row = (*row[:-1], *row[-1].into)
    return row


RULES = (offcuts_count_for_what_they_are, one_offcut_of_a_piece_counts)
