"""Paints a scene in pure black and white at 220 dots to the inch, as a laser printer puts it down."""

from __future__ import annotations

import io
import math

from PIL import Image, ImageDraw

from yieldplan.drawing.dashes import dashes
from yieldplan.drawing.fonts import font
from yieldplan.drawing.scene import Arrow, Box, Line, Ring, Scene, Text

DPI = 220
_SCALE = DPI / 72
_BLACK, _WHITE = 0, 1


def paint(scene: Scene) -> bytes:
    """The scene as a PNG file."""
    size = (math.ceil(scene.width * _SCALE), math.ceil(scene.height * _SCALE))
    image = Image.new("1", size, _WHITE)
    pen = ImageDraw.Draw(image)
    for item in scene.items:
        match item:
            case Line():
                _line(pen, item)
            case Box():
                _box(pen, item)
            case Ring():
                _ring(pen, item)
            case Arrow():
                _arrow(pen, item)
            case Text():
                _text(pen, item)
    file = io.BytesIO()
    image.save(file, format="PNG", dpi=(DPI, DPI), optimize=True)
    return file.getvalue()


def _weight(points: float) -> int:
    return max(1, round(points * _SCALE))


def _line(pen: ImageDraw.ImageDraw, line: Line) -> None:
    wide, high = line.x1 - line.x0, line.y1 - line.y0
    for start, end in dashes(math.hypot(wide, high), line.dash):
        x0, y0 = line.x0 + start * wide, line.y0 + start * high
        x1, y1 = line.x0 + end * wide, line.y0 + end * high
        _stroke(pen, x0, y0, x1, y1, _weight(line.weight))


def _stroke(
    pen: ImageDraw.ImageDraw, x0: float, y0: float, x1: float, y1: float, weight: int
) -> None:
    half = weight / 2
    x0, y0, x1, y1 = x0 * _SCALE, y0 * _SCALE, x1 * _SCALE, y1 * _SCALE
    # Upright and level strokes are painted as bars, so that they keep their weight.
    if abs(x0 - x1) < 0.01:
        left, top, bottom = round(x0 - half), round(min(y0, y1)), round(max(y0, y1))
        pen.rectangle((left, top, left + weight - 1, max(top, bottom - 1)), fill=_BLACK)
    elif abs(y0 - y1) < 0.01:
        top, left, right = round(y0 - half), round(min(x0, x1)), round(max(x0, x1))
        pen.rectangle((left, top, max(left, right - 1), top + weight - 1), fill=_BLACK)
    else:
        pen.line((x0, y0, x1, y1), fill=_BLACK, width=weight)


def _box(pen: ImageDraw.ImageDraw, box: Box) -> None:
    rect = box.rect
    if box.fill != "none":
        corners = [round(v * _SCALE) for v in (rect.x0, rect.y0, rect.x1, rect.y1)]
        if corners[2] > corners[0] and corners[3] > corners[1]:
            pen.rectangle(
                (corners[0], corners[1], corners[2] - 1, corners[3] - 1),
                fill=_BLACK if box.fill == "black" else _WHITE,
            )
    if not box.weight:
        return
    half = box.weight / 2
    for x0, y0, x1, y1 in (
        (rect.x0 - half, rect.y0, rect.x1 + half, rect.y0),
        (rect.x0 - half, rect.y1, rect.x1 + half, rect.y1),
        (rect.x0, rect.y0, rect.x0, rect.y1),
        (rect.x1, rect.y0, rect.x1, rect.y1),
    ):
        _line(pen, Line(x0=x0, y0=y0, x1=x1, y1=y1, weight=box.weight, dash=box.dash))


def _ring(pen: ImageDraw.ImageDraw, ring: Ring) -> None:
    around = [
        v * _SCALE
        for v in (
            ring.x - ring.rx, ring.y - ring.ry, ring.x + ring.rx, ring.y + ring.ry
        )
    ]  # fmt: skip
    corners = (around[0], around[1], around[2], around[3])
    if ring.filled:
        pen.ellipse(corners, fill=_BLACK)
        return
    round_about = math.pi * (ring.rx + ring.ry)
    for start, end in dashes(round_about, ring.dash):
        pen.arc(
            corners, 360 * start, 360 * end, fill=_BLACK, width=_weight(ring.weight)
        )


def _arrow(pen: ImageDraw.ImageDraw, arrow: Arrow) -> None:
    x, y = arrow.x * _SCALE, arrow.y * _SCALE
    back, half = x - arrow.length * _SCALE, arrow.half * _SCALE
    pen.polygon([(x, y), (back, y - half), (back, y + half)], fill=_BLACK)


def _text(pen: ImageDraw.ImageDraw, text: Text) -> None:
    stretches, left = text.placed()
    for run in stretches:
        letters = font(run.size * _SCALE, bold=text.bold, condensed=text.condensed)
        at = ((left + run.x) * _SCALE, (text.y - run.up) * _SCALE)
        pen.text(at, run.text, font=letters, fill=_BLACK, anchor="ls")
