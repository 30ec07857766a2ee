"""The second row of figures under a board: how long each piece is that comes off."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from yieldplan.drawing.cuts import is_waste
from yieldplan.drawing.scene import Arrow, Item, Line, Rect, Text
from yieldplan.model.plan import Node
from yieldplan.units import UnitName, from_ticks, tape

HEIGHT = 15.0
"""[pt]"""
_SIZES = ((12.0, False), (12.0, True), (11.0, True), (10.0, True))
_ARROW = 11.0  # least room for an arrow beside the figure


def draw(
    panels: Sequence[tuple[Node, Rect]], unit: UnitName, y: float, apart: float
) -> tuple[list[Item], int]:
    """The row, and how many lengths found no room in it.

    Parameters
    ----------
    apart
        Between two pieces: an arrow reaches from cut to cut. [pt]
    """
    items: list[Item] = []
    missing = 0
    for node, rect in panels:
        if is_waste(node):
            items.extend(_fate(node, rect, y))
            continue
        text = _figure(node, rect.width + apart - 3, unit, (rect.x0 + rect.x1) / 2, y)
        if text is None:
            missing += 1
            continue
        items.append(text)
        items.extend(_arrows(rect, text.rect(), y - 4, apart / 2 - 1))
    return items, missing


def _figure(node: Node, room: float, unit: UnitName, x: float, y: float) -> Text | None:
    for size, condensed in _SIZES:
        text = Text(
            x=x, y=y, text=tape(from_ticks(node.length), unit), size=size,
            condensed=condensed, align="middle", figures=True,
        )  # fmt: skip
        if text.rect().width <= room:
            return text
    return None


def _arrows(rect: Rect, words: Rect, y: float, reach: float) -> Iterator[Item]:
    left, right = rect.x0 - reach, rect.x1 + reach
    if words.x0 - 3 - left < _ARROW:
        return
    yield Line(x0=left, y0=y, x1=words.x0 - 3, y1=y, weight=0.5)
    yield Arrow(x=left, y=y, length=-5.0, half=1.8)
    yield Line(x0=words.x1 + 3, y0=y, x1=right, y1=y, weight=0.5)
    yield Arrow(x=right, y=y, length=5.0, half=1.8)


def _fate(node: Node, rect: Rect, y: float) -> Iterator[Item]:
    text = Text(
        x=(rect.x0 + rect.x1) / 2, y=y, text=node.fate or "", size=10.0, align="middle"
    )  # fmt: skip
    if text.rect().width <= rect.width:
        yield text
