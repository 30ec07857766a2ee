"""Shares out the drawn height of a sawn piece among its strips, and finds where every leaf is drawn."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Literal

from yieldplan.drawing.cuts import flat, rips
from yieldplan.drawing.fonts import width
from yieldplan.drawing.scene import Rect
from yieldplan.model.plan import Node
from yieldplan.units import UnitName, from_ticks, tape

WASTE_HEIGHT = 8.0
"""The least height waste is drawn with where nothing is written in it. [pt]"""


@dataclass(frozen=True, kw_only=True)
class Detail:
    """How large things must be drawn so that what is written in them can be read.

    Parameters
    ----------
    piece, waste
        Least height of what is kept, and of what is not. [pt]
    """

    piece: float
    unit: UnitName
    waste: float = WASTE_HEIGHT


@dataclass(frozen=True, kw_only=True)
class Setting:
    """What the saw is set to for a cut, in a word and a figure.

    `off` is taken off the near edge, `rip` set at the fence, `cut` measured along the
    strip from its fresh end; `rest` is what remains beside a rip.
    """

    word: Literal["off", "rip", "cut", "rest"]
    figure: str

    def __str__(self) -> str:
        return f"{self.word} {self.figure}"


@dataclass(frozen=True, kw_only=True)
class Leaf:
    """A leaf of the cut tree, where it is drawn, and the settings that free it.

    Parameters
    ----------
    settings
        In the order they are made; what its strip needs is said in the first piece of it.
    """

    node: Node
    rect: Rect
    settings: tuple[Setting, ...] = ()

    @property
    def setting(self) -> str:
        """The last fence setting among them, for a picture that lists lengths below."""
        fence = [str(each) for each in self.settings if each.word in ("rip", "rest")]
        return fence[-1] if fence else ""


@dataclass(frozen=True, kw_only=True)
class Cut:
    """A cut within a piece, as a line. [pt]"""

    x0: float
    y0: float
    x1: float
    y1: float


def least_height(node: Node, detail: Detail) -> float:
    """The least height a node can be drawn with. [pt]"""
    if node.cut == "rip":
        return sum(least_height(child, detail) for child in node.into)
    if node.cut == "crosscut":
        return max(least_height(child, detail) for child in node.into)
    if node.fate == "edge":
        return WASTE_HEIGHT  # sawdust but for a sliver: nothing is written in it
    return detail.piece if node.blank or node.fate == "keep" else detail.waste


def leaves(
    node: Node, rect: Rect, detail: Detail, settings: tuple[Setting, ...] = ()
) -> Iterator[Leaf | Cut]:
    """Every leaf below a node with its place on the picture, and the cuts between."""
    if not node.into:
        yield Leaf(node=node, rect=rect, settings=settings)
    elif node.cut == "crosscut":
        yield from _in_a_row(node, rect, detail, settings)
    else:
        yield from _in_a_stack(node, rect, detail, settings)


def _in_a_row(
    node: Node, rect: Rect, detail: Detail, settings: tuple[Setting, ...]
) -> Iterator[Leaf | Cut]:
    # Where one child ends and the next begins lies a kerf: the cut is drawn there.
    per_tick = rect.width / node.length
    x0 = rect.x0
    row = flat(node)
    for number, child in enumerate(row):
        x1 = rect.x0 + (child.box[2] - node.box[0]) * per_tick
        if number == len(row) - 1:
            x1 = rect.x1
        room = Rect(x0, rect.y0, x1, rect.y1)
        told = settings
        if child.box[2] < node.box[2]:  # the last needs no cut: it is what is left
            figure = tape(from_ticks(child.length), detail.unit)
            told += (Setting(word="cut", figure=figure),)
        yield from leaves(child, room, detail, told)
        if number < len(row) - 1:
            yield Cut(x0=x1, y0=rect.y0, x1=x1, y1=rect.y1)
        x0 = x1
        if child.blank or child.into:
            settings = ()  # said once in a strip


def _in_a_stack(
    node: Node, rect: Rect, detail: Detail, settings: tuple[Setting, ...]
) -> Iterator[Leaf | Cut]:
    strips = list(rips(node))
    least = [least_height(rip.node, detail) for rip in strips]
    shares = share_out(rect.height, [rip.node.width for rip in strips], least)
    y1 = rect.y1  # the near edge is at the bottom
    for number, (rip, share) in enumerate(zip(strips, shares, strict=True)):
        y0 = y1 - share
        if number:
            yield Cut(x0=rect.x0, y0=y1, x1=rect.x1, y1=y1)
        word: Literal["off", "rip", "rest"] = "off" if rip.kind == "edge" else rip.kind
        size = rip.taken if rip.kind == "edge" else rip.node.width
        figure = tape(from_ticks(size), detail.unit)
        told = (*settings, Setting(word=word, figure=figure))
        room = Rect(rect.x0, y0, rect.x1, y1)
        yield from leaves(rip.node, room, detail, told)
        if rip.node.blank or rip.node.into:
            settings = ()
        y1 = y0


def share_out(total: float, sizes: list[int], least: list[float]) -> list[float]:
    """A height shared in proportion to sizes, each at least its least. [pt]"""
    held: set[int] = set()
    while True:
        room = total - sum(least[number] for number in held)
        free = [number for number in range(len(sizes)) if number not in held]
        whole = sum(sizes[number] for number in free)
        short = {n for n in free if room * sizes[n] < least[n] * whole - 1e-6}
        if not short or not free:
            break
        held |= short
    return [
        least[n] if n in held else room * sizes[n] / whole for n in range(len(sizes))
    ]


def widest_figure(node: Node, unit: UnitName, size: float) -> float:
    """Room for the fence settings beside a board's strips. [pt]"""
    return max(
        (
            width(tape(from_ticks(child.width), unit), size, bold=True)
            for child in flat(node)
        ),
        default=0.0,
    )
