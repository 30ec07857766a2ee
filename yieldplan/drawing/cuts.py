"""What the saw is set to at each step: marks along a board, fence settings across it."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from typing import Literal

from yieldplan.model.plan import Node, Rules


def flat(node: Node) -> tuple[Node, ...]:
    """The pieces a node is cut into one way, further cuts the same way laid out with them."""
    return tuple(
        piece
        for child in node.into
        for piece in (flat(child) if child.cut == node.cut else (child,))
    )


def kept(root: Node) -> Iterator[Node]:
    """What comes off the saw and is carried away: blanks and offcuts, from zero."""
    return (leaf for leaf in root.leaves() if leaf.blank or leaf.fate == "keep")


def is_waste(node: Node) -> bool:
    """Whether a node is left over and not kept."""
    return not node.into and node.blank is None and node.fate != "keep"


@dataclass(frozen=True, kw_only=True)
class Crosscuts:
    """The marks of one row of crosscuts; the blade goes right of every mark.

    Parameters
    ----------
    at
        Where each cut begins, in the frame of the piece. [ticks]
    origin
        Where the tape's zero lies. [ticks]
    square_off
        Cut off before the tape is laid, where marks start at the fresh end. [ticks]
    """

    at: tuple[int, ...]
    origin: int
    square_off: int = 0

    def figure(self, cut: int) -> int:
        """What the tape reads at a cut. [ticks]"""
        return cut - self.origin


def crosscuts(node: Node, rules: Rules) -> Crosscuts:
    """The marks for a node that is crosscut first."""
    pieces = flat(node)
    start, end = node.box[0], node.box[2]
    at = {piece.box[2] for piece in pieces if piece.box[2] < end}
    # A piece that starts later than a kerf after its neighbour is cut again on its left.
    at |= {piece.box[0] - rules.kerf for piece in pieces if piece.box[0] > start}
    marks = tuple(sorted(at))
    if rules.marks_from == "zero end" or not marks:
        return Crosscuts(at=marks, origin=start)
    # The fresh end is where the first piece that is not trim begins.
    fresh = pieces[1] if pieces[0].fate == "trim" and pieces[1:] else pieces[0]
    return Crosscuts(
        at=tuple(cut for cut in marks if cut >= fresh.box[0]),
        origin=fresh.box[0],
        square_off=fresh.box[0] - start,
    )


@dataclass(frozen=True, kw_only=True)
class Rip:
    """One strip off the fence, in order from the near edge.

    `edge` is what comes off the near edge, `rip` a fence setting, `rest` what remains.

    Parameters
    ----------
    pass_before
        Whether the near edge takes a pass first.
    taken
        What an edge takes off with its kerf: from the near edge to the next strip. [ticks]
    """

    kind: Literal["edge", "rip", "rest"]
    node: Node
    pass_before: bool
    taken: int = 0


def rips(node: Node) -> Iterator[Rip]:
    """The strips of a node that is ripped, near edge first, further rips within it laid out with them."""
    return _rips(node, node.box[1], node.box[3])


def _rips(node: Node, near: int, far: int) -> Iterator[Rip]:
    """The strips of a node that lies between the edges of the piece on the saw. [ticks]"""
    is_near = node.box[1] == near
    for number, child in enumerate(node.into):
        straight = number == 0 and child.box[1] > node.box[1]
        # Behind waste that was ripped off, the edge is a sawn one already.
        if number == 1 and is_near and is_waste(node.into[0]):
            straight = True
        if child.cut == "rip":
            again = list(_rips(child, near, far))
            first = again[0]
            yield replace(first, pass_before=first.pass_before or straight)
            yield from again[1:]
        elif number == 0 and is_near and is_waste(child):
            fresh = node.into[1].box[1] if node.into[1:] else child.box[3]
            yield Rip(
                kind="edge", node=child, pass_before=False, taken=fresh - node.box[1]
            )
        elif child.box[3] == far:
            yield Rip(kind="rest", node=child, pass_before=straight)
        else:
            yield Rip(kind="rip", node=child, pass_before=straight)
