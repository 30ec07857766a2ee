"""What stands left of a strip: which rip it is, the fence setting, and its width as a dimension."""

from __future__ import annotations

from collections.abc import Iterator

from yieldplan.drawing.cuts import rips
from yieldplan.drawing.fonts import width
from yieldplan.drawing.saw_size.rows import Row
from yieldplan.drawing.scene import Item, Line, Text
from yieldplan.model.plan import Node
from yieldplan.units import UnitName, from_ticks, tape

_ORDINALS = (
    "first",
    "second",
    "third",
    "fourth",
    "fifth",
    "sixth",
    "seventh",
    "eighth",
)
_LARGE = 18.0
_DIMENSION = 22.0  # from the words to the wood


def margin(tree: Node, unit: UnitName) -> float:
    """Room left of a board that is ripped first. [pt]"""
    figures = [tape(from_ticks(rip.node.width), unit) for rip in rips(tree)]
    widest = max(Text(x=0, y=0, text=f, size=_LARGE, bold=True, figures=True).rect().width for f in figures)  # fmt: skip
    return max(widest, width("second rip", 10.0), 44 + widest * 14 / 18) + _DIMENSION


def draw(
    row: Row, left: float, top: float, bottom: float, unit: UnitName
) -> Iterator[Item]:
    """The words, the figure and the dimension arrows of one strip."""
    rip = row.rip
    if rip is None or not row.begins:
        return
    node, middle = rip.node, (top + bottom) / 2
    size_off = rip.taken if rip.kind == "edge" else node.width
    figure = tape(from_ticks(size_off), unit)
    if rip.kind == "rip":
        word, size, bold = f"{_ordinal(row.rip_number)} rip", _LARGE, True
    elif rip.kind == "rest":
        word, size, bold = "rest", _LARGE if node.blank or node.into else 12.0, True
    else:
        word, size, bold = "off the edge", 12.0, True
        if node.fate == "edge":
            return
    x = 0.0
    if bottom - top < 30:
        # A low strip says it all on one line.
        yield Text(x=x, y=middle + 3.6, text=word.removesuffix(" rip"), size=10)
        size = min(size, 14.0)
        yield Text(
            x=left - _DIMENSION, y=middle + 0.36 * size, text=figure, size=size,
            bold=bold, align="right", figures=True,
        )  # fmt: skip
    else:
        yield Text(x=x, y=middle - 6, text=word, size=10)
        yield Text(x=x, y=middle + 13, text=figure, size=size, bold=bold, figures=True)
    x = left - 12
    yield Line(x0=x, y0=top, x1=x, y1=bottom, weight=0.5)
    for y in (top, bottom):
        yield Line(x0=x - 4, y0=y, x1=left - 2, y1=y, weight=0.5)
        inward = 5.0 if y == top else -5.0
        yield Line(x0=x, y0=y, x1=x - 1.8, y1=y + inward, weight=0.75)
        yield Line(x0=x, y0=y, x1=x + 1.8, y1=y + inward, weight=0.75)


def _ordinal(number: int) -> str:
    return _ORDINALS[number - 1] if number <= len(_ORDINALS) else f"{number}th"
