"""Set-up pieces for the machines, cut from what is left over; never a reason to open a board."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from typing import Literal

from yieldplan.model.plan import Box, Node
from yieldplan.packing.grid.cells import faces_up
from yieldplan.packing.problem import Bin, Item
from yieldplan.packing.wood.lay import Stretch, lay
from yieldplan.packing.wood.leftovers import KeepSizes, usable, with_fates
from yieldplan.packing.wood.trees import area_left


@dataclass(frozen=True)
class CutBoard:
    """A board with its tree, while set-up pieces are being placed."""

    bin: int
    tree: Node


def place_set_up(
    item: Item,
    boards: Sequence[CutBoard],
    bins: Sequence[Bin],
    holds: frozenset[int],
    keep: KeepSizes,
    kerf: int,
) -> list[CutBoard] | None:
    """The boards with one set-up piece in the smallest leftover that will do.

    Parameters
    ----------
    holds
        Bins whose thickness serves.
    """
    spots = sorted(
        (leaf.fate == "keep", leaf.length * leaf.width, place, path)
        for place, board in enumerate(boards)
        if board.bin in holds
        for path, leaf in _leaves(board.tree)
        if leaf.fate in ("burn", "keep") and not leaf.worth
    )
    for _, _, place, path in spots:
        piece = bins[boards[place].bin]
        found = _cut_in(_at(boards[place].tree, path), item, piece, kerf)
        if found is None:
            continue
        tree = _put(boards[place].tree, path, with_fates(found, piece, keep))
        return [
            *boards[:place],
            replace(boards[place], tree=tree),
            *boards[place + 1 :],
        ]
    return None


def _leaves(
    node: Node, path: tuple[int, ...] = ()
) -> Iterator[tuple[tuple[int, ...], Node]]:
    if not node.into:
        yield path, node
    for place, child in enumerate(node.into):
        yield from _leaves(child, (*path, place))


def _at(node: Node, path: tuple[int, ...]) -> Node:
    for place in path:
        node = node.into[place]
    return node


def _put(node: Node, path: tuple[int, ...], new: Node) -> Node:
    if not path:
        return new
    children = list(node.into)
    children[path[0]] = _put(children[path[0]], path[1:], new)
    return replace(node, into=tuple(children))


def _cut_in(leaf: Node, item: Item, piece: Bin, kerf: int) -> Node | None:
    """The leaf with the item cut from it, leaving the largest leftover it can."""
    x_from, y_from, x_to, y_to = usable(leaf.box, piece)
    xs = {x_from, *(b.box[2] for b in piece.blocks if x_from < b.box[2] < x_to)}
    ys = {y_from, *(b.box[3] for b in piece.blocks if y_from < b.box[3] < y_to)}
    best: tuple[int, Node] | None = None
    for x in sorted(xs):
        for y in sorted(ys):
            box = (x, y, x + item.length, y + item.width)
            if box[2] > x_to or box[3] > y_to:
                continue
            face = _face_up(item, box, piece)
            if face is None:
                continue
            blank = Node(id="", box=box, blank=item.name, face_up=face)
            for crosscut_first in (True, False):
                node = _two_cuts(leaf.box, blank, kerf, crosscut_first)
                if (
                    crosscut_first
                    and leaf.box[1] < y_from
                    and leaf.box[3] < piece.width
                ):
                    node = _edge_first(leaf.box, y_from, blank, kerf)
                left = area_left([node])
                if best is None or left > best[0]:
                    best = (left, node)
    return best[1] if best is not None else None


def _edge_first(box: Box, fresh: int, blank: Node, kerf: int) -> Node:
    """A strip that is ripped off a board: with its near edge straight before, or nothing runs on the fence."""

    def cut(part: Box) -> Node:
        return _two_cuts(part, blank, kerf, crosscut_first=True)

    return lay(box, "rip", [Stretch(fresh, box[3], cut)], kerf)


def _two_cuts(box: Box, blank: Node, kerf: int, crosscut_first: bool) -> Node:
    along = (blank.box[0], blank.box[2])
    across = (blank.box[1], blank.box[3])

    def rip(part: Box) -> Node:
        inner = (lambda _: blank) if crosscut_first else crosscut
        return lay(part, "rip", [Stretch(*across, inner)], kerf)

    def crosscut(part: Box) -> Node:
        inner = rip if crosscut_first else (lambda _: blank)
        return lay(part, "crosscut", [Stretch(*along, inner)], kerf)

    return crosscut(box) if crosscut_first else rip(box)


def _face_up(item: Item, box: Box, piece: Bin) -> Literal["A", "B"] | None:
    met = [
        block
        for block in piece.blocks
        if block.box[0] < box[2]
        and box[0] < block.box[2]
        and block.box[1] < box[3]
        and box[1] < block.box[3]
    ]
    faces = faces_up(item, met)
    if not faces:
        return None
    return "A" if "A" in faces else "B"
