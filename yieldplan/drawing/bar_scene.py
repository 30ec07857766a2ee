"""Where a wood goes, drawn as a board with its shares laid off along a tape."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from decimal import Decimal

from yieldplan.drawing.hatching import along, diagonal
from yieldplan.drawing.piece_marks import kept_frame
from yieldplan.drawing.scene import Box, Item, Line, Rect, Ring, Scene, Text

_HIGH = 34.0
_TOP = 26.0
_MARGIN = 14.0
_APART = 12.0


def bar_scene(percent: Mapping[str, Decimal], width: float, says: str) -> Scene:
    """The board; shares in the order given, numbered from 1.

    Parameters
    ----------
    percent
        Share by its name, adding up to 100. [%]
    width
        [pt]
    """
    scene = Scene(width, _TOP + _HIGH + 26.0, says=says)
    room = width - 2 * _MARGIN
    whole = Rect(_MARGIN, _TOP, width - _MARGIN, _TOP + _HIGH)
    x, middles = whole.x0, []
    for number, (name, share) in enumerate(percent.items(), start=1):
        wide = float(share) / 100 * room
        rect = Rect(x, whole.y0, x + wide, whole.y1)
        if share:
            scene.extend(_pattern(name, rect))
            middles.append((number, (rect.x0 + rect.x1) / 2))
            label = Text(
                x=(rect.x0 + rect.x1) / 2, y=(rect.y0 + rect.y1) / 2 + 4,
                text=f"{name} {share} %", size=11, bold=True, align="middle",
            )  # fmt: skip
            if name == "parts" and label.rect().width + 6 < wide:
                scene.add(label)
        x += wide
    scene.add(Box(rect=whole, weight=1.25))
    scene.extend(_numbers(middles, whole))
    scene.extend(_tape(whole))
    return scene


def _pattern(name: str, rect: Rect) -> Iterator[Item]:
    match name:
        case "planing":
            yield from along(rect, 3.2, 0.6)
        case "kerf":
            yield Box(rect=rect, fill="black")
        case "trim":
            yield from diagonal(rect, 7.0, 0.5)
        case "misfit":
            yield from diagonal(rect, 4.0, 0.8, falling=True)
        case "defects":
            yield from diagonal(rect, 4.0, 0.6)
            yield from diagonal(rect, 4.0, 0.6, falling=True)
        case "offcuts" if rect.width > 8:
            yield from kept_frame(rect)
    yield Box(rect=rect, weight=0.75)


def _numbers(middles: list[tuple[int, float]], whole: Rect) -> Iterator[Item]:
    # Narrow shares lie closer than their numbers: the numbers move apart, on leaders.
    places = [middle for _, middle in middles]
    for at in range(1, len(places)):
        places[at] = max(places[at], places[at - 1] + _APART)
    if places:
        places[-1] = min(places[-1], whole.x1 + 6)
    for at in range(len(places) - 2, -1, -1):
        places[at] = min(places[at], places[at + 1] - _APART)
    for (number, middle), place in zip(middles, places, strict=True):
        yield Text(
            x=place, y=whole.y0 - 14, text=str(number), size=9.5, bold=True,
            align="middle",
        )  # fmt: skip
        yield Line(x0=place, y0=whole.y0 - 11, x1=middle, y1=whole.y0, weight=0.5)


def _tape(whole: Rect) -> Iterator[Item]:
    y = whole.y1 + 7
    yield Line(x0=whole.x0, y0=y, x1=whole.x1, y1=y, weight=0.6)
    yield Ring(x=whole.x0, y=y, rx=2.2, ry=2.2, weight=0.9)
    for tenth in range(11):
        x = whole.x0 + whole.width * tenth / 10
        yield Line(x0=x, y0=y - 2.5, x1=x, y1=y + 2.5, weight=0.75)
        if tenth % 5 == 0:
            said = f"{tenth * 10}" + (" %" if tenth == 10 else "")
            yield Text(x=x, y=y + 13, text=said, size=8.5, align="middle")
