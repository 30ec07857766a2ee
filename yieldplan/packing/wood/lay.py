"""Lays parts of a node in a row, exactly one kerf between neighbours, and what is left as leaves of waste."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from typing import Literal

from yieldplan.model.plan import Box, Node

Cut = Literal["rip", "crosscut"]


@dataclass(frozen=True)
class Stretch:
    """Wood from `start` to `end` of the row, and what becomes of it. [ticks]"""

    start: int
    end: int
    make: Callable[[Box], Node]


def lay(box: Box, cut: Cut, row: Sequence[Stretch], kerf: int) -> Node:
    """A node cut into stretches: crosscut along x, rip across.

    A stretch that is the whole box needs no cut. Where no more than a kerf is left over
    between two stretches, a second pass of the blade takes it: what follows is one node
    that is cut again.
    """
    start, end = (box[0], box[2]) if cut == "crosscut" else (box[1], box[3])
    if len(row) == 1 and (row[0].start, row[0].end) == (start, end):
        return row[0].make(box)
    children: list[Node] = []
    at = start
    for place, stretch in enumerate(row):
        if stretch.start - at > kerf:
            children.append(waste(_part(box, cut, at, stretch.start - kerf)))
        elif stretch.start > at and children:
            rest = _part(box, cut, at, end)
            children.append(lay(rest, cut, row[place:], kerf))
            return Node(id="", box=box, cut=cut, into=tuple(children))
        children.append(stretch.make(_part(box, cut, stretch.start, stretch.end)))
        at = stretch.end + kerf
    if at < end:
        children.append(waste(_part(box, cut, at, end)))
    return Node(id="", box=box, cut=cut, into=tuple(children))


def waste(box: Box) -> Node:
    """A leaf that is nothing yet; its fate is decided when the tree is whole."""
    return Node(id="", box=box, fate="burn")


def numbered(node: Node, name: str) -> Node:
    """The tree with its nodes named: the stock's name, then the place in each row."""
    return replace(
        node,
        id=name,
        into=tuple(
            numbered(child, f"{name}.{place}")
            for place, child in enumerate(node.into, start=1)
        ),
    )


def _part(box: Box, cut: Cut, start: int, end: int) -> Box:
    if cut == "crosscut":
        return (start, box[1], end, box[3])
    return (box[0], start, box[2], end)
