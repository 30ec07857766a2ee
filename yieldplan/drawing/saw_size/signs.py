"""Signs of a drawing office: a numbered cut, the line where a drawing is broken off."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

from yieldplan.drawing.scene import Item, Line, Ring, Text


def ringed(number: int, x: float, foot: float) -> Iterator[Item]:
    """The number of a cut in a ring that stands on its line."""
    wide = 7.0 if number < 10 else 8.5
    yield Ring(x=x, y=foot - 8, rx=wide, ry=7.0, weight=1.0)
    yield Text(x=x, y=foot - 4.4, text=str(number), size=10, bold=True, align="middle")


def long_break(x: float, top: float, bottom: float) -> Iterator[Item]:
    """A long-break line: the wood goes on from the row above."""
    middle, tooth = (top + bottom) / 2, 5.0
    x -= 4.5
    points = [
        (x, top - 4), (x, middle - tooth), (x - 4, middle - tooth / 2),
        (x + 4, middle + tooth / 2), (x, middle + tooth), (x, bottom + 4),
    ]  # fmt: skip
    for (x0, y0), (x1, y1) in pairwise(points):
        yield Line(x0=x0, y0=y0, x1=x1, y1=y1, weight=0.75)
