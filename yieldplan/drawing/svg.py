"""Paints a scene as SVG, for a screen or a page that is scaled."""

from __future__ import annotations

from collections.abc import Iterator
from xml.sax.saxutils import escape, quoteattr

from yieldplan.drawing.fonts import width
from yieldplan.drawing.scene import Arrow, Box, Dash, Line, Ring, Scene, Text

_FONT = "DejaVu Sans, Verdana, sans-serif"


def paint(scene: Scene) -> str:
    """The scene as an SVG file."""
    size = f'width="{_n(scene.width)}pt" height="{_n(scene.height)}pt"'
    view = f'viewBox="0 0 {_n(scene.width)} {_n(scene.height)}"'
    says = f"<title>{escape(scene.says)}</title>\n" if scene.says else ""
    lines = [
        f'<svg xmlns="http://www.w3.org/2000/svg" {size} {view} font-family="{_FONT}">\n'
        f'{says}<rect width="100%" height="100%" fill="white"/>'
    ]
    for item in scene.items:
        match item:
            case Line():
                ends = f'x1="{_n(item.x0)}" y1="{_n(item.y0)}" x2="{_n(item.x1)}" y2="{_n(item.y1)}"'
                lines.append(f"<line {ends} {_pen(item.weight, item.dash)}/>")
            case Box():
                lines.append(_box(item))
            case Ring():
                lines.append(_ring(item))
            case Arrow():
                back = _n(item.x - item.length)
                top, low = _n(item.y - item.half), _n(item.y + item.half)
                lines.append(
                    f'<path d="M{_n(item.x)} {_n(item.y)}L{back} {top}V{low}Z"/>'
                )
            case Text():
                lines.extend(_text(item))
    return "\n".join([*lines, "</svg>", ""])


def _n(value: float) -> str:
    return f"{round(value, 2):g}"


def _pen(weight: float, dash: Dash) -> str:
    broken = " ".join(_n(stroke) for stroke in dash)
    broken = f' stroke-dasharray="{broken}"' if dash else ""
    return f'stroke="black" stroke-width="{_n(weight)}"{broken}'


def _box(box: Box) -> str:
    rect = box.rect
    corner = f'x="{_n(rect.x0)}" y="{_n(rect.y0)}"'
    size = f'width="{_n(rect.width)}" height="{_n(rect.height)}"'
    pen = f" {_pen(box.weight, box.dash)}" if box.weight else ""
    return f'<rect {corner} {size} fill="{box.fill}"{pen}/>'


def _ring(ring: Ring) -> str:
    middle = f'cx="{_n(ring.x)}" cy="{_n(ring.y)}"'
    size = f'rx="{_n(ring.rx)}" ry="{_n(ring.ry)}"'
    if ring.filled:
        return f"<ellipse {middle} {size}/>"
    return f'<ellipse {middle} {size} fill="none" {_pen(ring.weight, ring.dash)}/>'


def _text(text: Text) -> Iterator[str]:
    stretches, left = text.placed()
    weight = ' font-weight="bold"' if text.bold else ""
    for run in stretches:
        # The width is stated, so that another font cannot push words into each other.
        wide = width(run.text, run.size, bold=text.bold, condensed=text.condensed)
        yield (
            f'<text x="{_n(left + run.x)}" y="{_n(text.y - run.up)}" font-size="{_n(run.size)}"'
            f'{weight} textLength={quoteattr(_n(wide))} lengthAdjust="spacingAndGlyphs">'
            f"{escape(run.text)}</text>"
        )
