"""Which stretches of a board are drawn under each other: the board, its strips, its halves when folded."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from yieldplan.drawing.cuts import Rip, flat, is_waste, rips
from yieldplan.model.plan import Node


@dataclass(frozen=True, kw_only=True)
class Row:
    """A stretch of wood that is crosscut in one go, or a part of it where it is folded.

    Parameters
    ----------
    node
        The board, or a strip of it.
    pieces
        What it is crosscut into, as far as they are in this row; itself when uncut.
    begins
        Whether the row holds the zero end; else it goes on from the row above.
    rip, rip_number
        The rip that frees it, and which rip from the near edge that is; of strips only.
    nearest
        Whether its near edge is the board's.
    """

    node: Node
    pieces: tuple[Node, ...]
    begins: bool
    rip: Rip | None
    rip_number: int
    nearest: bool

    @property
    def is_cut(self) -> bool:
        """Whether it is crosscut."""
        return self.node.cut == "crosscut"

    @property
    def start(self) -> int:
        """Where its wood begins. [ticks]"""
        return self.node.box[0] if self.begins else self.pieces[0].box[0]

    @property
    def length(self) -> int:
        """From where its wood begins to where it ends. [ticks]"""
        is_last = self.pieces[-1] is _pieces(self.node)[-1]
        end = self.node.box[2] if is_last else self.pieces[-1].box[2]
        return end - self.start

    @property
    def cuts(self) -> int:
        """How many cuts are drawn in it."""
        return sum(piece.box[2] < self.node.box[2] for piece in self.pieces)


def rows_of(tree: Node, folds: int) -> list[Row]:
    """The rows of a board from the top of the page down: the near edge is the lowest.

    Parameters
    ----------
    folds
        Into how many rows a stretch is folded at most; 1 is not at all.
    """
    if tree.cut != "rip":
        return list(_folded(tree, folds, None, 0, nearest=True))
    strips = list(rips(tree))
    numbers, number = [], 0
    for rip in strips:
        number += rip.kind == "rip"
        numbers.append(number)
    return [
        row
        for rip, at in zip(reversed(strips), reversed(numbers), strict=True)
        for row in _folded(rip.node, folds, rip, at, nearest=rip is strips[0])
    ]


def _pieces(node: Node) -> tuple[Node, ...]:
    return flat(node) if node.cut == "crosscut" else (node,)


def _folded(
    node: Node, folds: int, rip: Rip | None, number: int, *, nearest: bool
) -> Iterator[Row]:
    for at, group in enumerate(_shared_out(_pieces(node), folds)):
        yield Row(
            node=node, pieces=tuple(group), begins=at == 0, rip=rip,
            rip_number=number, nearest=nearest,
        )  # fmt: skip


def _shared_out(pieces: Sequence[Node], folds: int) -> list[list[Node]]:
    """The pieces in at most so many rows, the longest row as short as can be."""
    if folds == 1 or len(pieces) == 1:
        return [list(pieces)]
    lengths = sorted(
        {
            last.box[2] - first.box[0]
            for at, first in enumerate(pieces)
            for last in pieces[at:]
        }
    )
    for longest in lengths:
        groups: list[list[Node]] = [[]]
        for piece in pieces:
            is_too_long = (
                piece.box[2] - groups[-1][0].box[0] > longest if groups[-1] else False
            )
            # A trim alone is no row: the tape's zero lies behind it.
            if is_too_long and not all(is_waste(each) for each in groups[-1]):
                groups.append([])
            groups[-1].append(piece)
        whole = all(group[-1].box[2] - group[0].box[0] <= longest for group in groups)
        if whole and len(groups) <= folds:
            return groups
    return [list(pieces)]
