"""Follows the fence across a piece on the saw, strip by strip, as a maker does."""

from __future__ import annotations

from collections.abc import Iterator

from yieldplan.drawing.cuts import rips
from yieldplan.model.plan import Cutting, Node


def off_the_fence(cutting: Cutting, kerf: int) -> Iterator[str]:
    """Pieces where settings and kerfs, added up from the near edge, do not come to the plan's boxes."""
    for node in _ripped(cutting.tree):
        at, is_fresh = node.box[1], node.box[1] > cutting.tree.box[1]
        for rip in rips(node):
            start = rip.node.box[1]
            if rip.kind == "edge":
                at, is_fresh = at + rip.taken, True
                continue
            if rip.pass_before:
                # A pass of the blade, or of the jointer, takes up to a kerf.
                if not at <= start <= at + kerf:
                    yield f"{rip.node.id} begins at {start}, the pass at {at}"
                at, is_fresh = start, True
            if start != at or not is_fresh:
                yield f"{rip.node.id} begins at {start}, the fence's edge is {at}, {is_fresh}"
            at += rip.node.width + kerf


def _ripped(node: Node) -> Iterator[Node]:
    """Nodes that are ripped, each with the strips within its strips."""
    if node.cut == "rip":
        yield node
        inner = [rip.node for rip in rips(node)]
    else:
        inner = list(node.into)
    for child in inner:
        yield from _ripped(child)
