"""How each kind of mark and each fate of waste is drawn, so that a black and white print can be read."""

from __future__ import annotations

from collections.abc import Iterator

from yieldplan.drawing.scene import Box, Dash, Item, Line, Rect, Ring
from yieldplan.model.faces import MarkFace, MarkKind

_UNDERSIDE: Dash = (3.0, 2.0)
_SOLID: Dash = ()
# Worm holes lie in no order, but in the same one each time.
_SCATTER = (0.13, 0.71, 0.37, 0.89, 0.05, 0.58, 0.29, 0.97, 0.47, 0.79, 0.21, 0.63)


def mark(kind: MarkKind, face: MarkFace, rect: Rect) -> Iterator[Item]:
    """A mark as it shows; broken strokes when it is on the underside."""
    dash = _UNDERSIDE if face == "B" else _SOLID
    light = kind in ("stain", "worm")
    if kind != "pith":
        yield Box(rect=rect, fill="white")
    match kind:
        case "knot":
            yield from _rings(rect, dash)
        case "split" | "check" | "shake":
            yield from _along(rect, 3.2, 0.6, dash)
            yield from _zigzag(rect, dash)
        case "wane":
            yield from _across(rect, 3.2, 0.9, dash)
        case "sap":
            yield from _dots(rect, dash)
        case "pith":
            middle = (rect.y0 + rect.y1) / 2
            yield Line(
                x0=rect.x0, y0=middle, x1=rect.x1, y1=middle,
                weight=1.25, dash=(9.0, 2.5, 1.5, 2.5),
            )  # fmt: skip
            return
        case "stain":
            yield from _open_circles(rect, dash)
        case "worm":
            yield from _worm(rect)
        case "hole":
            yield from _hole(rect, dash)
    yield Box(rect=rect, weight=0.75 if light else 1.25, dash=dash)


def waste(rect: Rect, *, spacing: float = 7.0) -> Iterator[Item]:
    """Wood that is trimmed off or burnt: thin lines at 45 degrees."""
    yield from diagonal(rect, spacing, 0.5)


def diagonal(
    rect: Rect, spacing: float, weight: float, *, falling: bool = False
) -> Iterator[Item]:
    """Lines at 45 degrees, rising or falling to the right, cut off at the frame."""
    # On a rising line x + y is constant; on a falling one x - y is.
    if falling:
        low, high = rect.x0 - rect.y1, rect.x1 - rect.y0
    else:
        low, high = rect.x0 + rect.y0, rect.x1 + rect.y1
    step = spacing * 2**0.5
    at = (low // step + 1) * step
    while at < high:
        if falling:
            x0, x1 = max(rect.x0, at + rect.y0), min(rect.x1, at + rect.y1)
            yield Line(x0=x0, y0=x0 - at, x1=x1, y1=x1 - at, weight=weight)
        else:
            x0, x1 = max(rect.x0, at - rect.y1), min(rect.x1, at - rect.y0)
            yield Line(x0=x0, y0=at - x0, x1=x1, y1=at - x1, weight=weight)
        at += step


def _steps(low: float, high: float, spacing: float) -> Iterator[float]:
    count = int((high - low) / spacing)
    first = low + (high - low - (count - 1) * spacing) / 2 if count else 0.0
    for number in range(count):
        yield first + number * spacing


def _along(rect: Rect, spacing: float, weight: float, dash: Dash) -> Iterator[Item]:
    for y in _steps(rect.y0, rect.y1, spacing):
        yield Line(x0=rect.x0, y0=y, x1=rect.x1, y1=y, weight=weight, dash=dash)


def _across(rect: Rect, spacing: float, weight: float, dash: Dash) -> Iterator[Item]:
    for x in _steps(rect.x0, rect.x1, spacing):
        yield Line(x0=x, y0=rect.y0, x1=x, y1=rect.y1, weight=weight, dash=dash)


def across(rect: Rect, spacing: float, weight: float) -> Iterator[Item]:
    """Lines along the grain's width, evenly spaced."""
    return _across(rect, spacing, weight, _SOLID)


def along(rect: Rect, spacing: float, weight: float) -> Iterator[Item]:
    """Lines along the grain, evenly spaced."""
    return _along(rect, spacing, weight, _SOLID)


def _zigzag(rect: Rect, dash: Dash) -> Iterator[Item]:
    middle, swing = (rect.y0 + rect.y1) / 2, min(3.0, rect.height * 0.35)
    teeth = max(2, round(rect.width / 7))
    step = rect.width / teeth
    for tooth in range(teeth):
        up = swing if tooth % 2 else -swing
        yield Line(
            x0=rect.x0 + tooth * step, y0=middle + up,
            x1=rect.x0 + (tooth + 1) * step, y1=middle - up, weight=1.6, dash=dash,
        )  # fmt: skip


def _rings(rect: Rect, dash: Dash) -> Iterator[Item]:
    x, y = (rect.x0 + rect.x1) / 2, (rect.y0 + rect.y1) / 2
    rx, ry = rect.width / 2 - 1.5, rect.height / 2 - 1.5
    while rx > 1.2 and ry > 1.2:
        yield Ring(x=x, y=y, rx=rx, ry=ry, weight=0.8, dash=dash)
        rx, ry = rx - 3, ry - 3
    yield Ring(x=x, y=y, rx=1.2, ry=1.2, filled=True)


def _dots(rect: Rect, dash: Dash) -> Iterator[Item]:
    # On the underside every third dot is left out, as a broken line leaves gaps.
    rows = list(_steps(rect.y0, rect.y1, 3.0)) or [(rect.y0 + rect.y1) / 2]
    for row, y in enumerate(rows):
        for column, x in enumerate(_steps(rect.x0 + 1, rect.x1 - 3, 6.0)):
            if not dash or (row + column) % 3:
                yield Ring(x=x + 3 * (row % 2), y=y, rx=0.6, ry=0.6, filled=True)


def _open_circles(rect: Rect, dash: Dash) -> Iterator[Item]:
    for y in list(_steps(rect.y0, rect.y1, 8.0)) or [(rect.y0 + rect.y1) / 2]:
        for x in _steps(rect.x0, rect.x1, 8.0):
            yield Ring(x=x, y=y, rx=1.5, ry=1.5, weight=0.6, dash=dash and (2.0, 1.0))


def _worm(rect: Rect) -> Iterator[Item]:
    count = max(2, int(rect.width * rect.height / 60))
    inner = rect.inset(1.5)
    for number in range(count):
        across = _SCATTER[(5 * number + 3) % len(_SCATTER)]
        yield Ring(
            x=inner.x0 + inner.width * (number + 0.5) / count,
            y=inner.y0 + inner.height * across, rx=1.0, ry=1.0, filled=True,
        )  # fmt: skip


def _hole(rect: Rect, dash: Dash) -> Iterator[Item]:
    inner = rect.inset(1.5)
    x, y = (rect.x0 + rect.x1) / 2, (rect.y0 + rect.y1) / 2
    radius = max(1.0, min(inner.width, inner.height) / 2)
    yield Ring(x=x, y=y, rx=radius, ry=radius, weight=1.0, dash=dash)
    yield Line(x0=x - radius, y0=y - radius, x1=x + radius, y1=y + radius, weight=0.8)
    yield Line(x0=x - radius, y0=y + radius, x1=x + radius, y1=y - radius, weight=0.8)
