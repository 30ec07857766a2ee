"""Paints scenes as the pages of a PDF, to be printed at their own size."""

from __future__ import annotations

import io
from collections.abc import Sequence
from importlib import resources
from typing import Literal

from reportlab.lib.pagesizes import A4, LETTER
from reportlab.pdfbase import pdfmetrics
from reportlab.pdfbase.ttfonts import TTFont
from reportlab.pdfgen.canvas import Canvas

from yieldplan.drawing.fonts import FILES
from yieldplan.drawing.scene import Arrow, Box, Dash, Line, Ring, Scene, Text

PageName = Literal["letter", "A4"]
_SIZES: dict[PageName, tuple[float, float]] = {"letter": LETTER, "A4": A4}
_SHADES = {"white": 1.0, "black": 0.0, "none": 1.0}


def paint(pages: Sequence[Scene], page: PageName, title: str) -> bytes:
    """The scenes as a PDF file, one a page, each in the middle of its page.

    The fonts are inside, as far as they are used, and no date: the same scenes are the
    same bytes.
    """
    file = io.BytesIO()
    size = _SIZES[page]
    _take_fonts()
    canvas = Canvas(
        file, pagesize=size, invariant=1, pageCompression=1,
        initialFontName=_name(bold=False, condensed=False),
    )  # fmt: skip
    canvas.setTitle(title)
    canvas.setCreator("yieldplan")
    for scene in pages:
        left, top = (size[0] - scene.width) / 2, (size[1] - scene.height) / 2
        # A scene's y runs down from its top, a page's up from its foot.
        canvas.translate(left, size[1] - top)
        for item in scene.items:
            _draw(canvas, item)
        canvas.showPage()
    canvas.save()
    return file.getvalue()


def _name(*, bold: bool, condensed: bool) -> str:
    return FILES[bold, condensed].removesuffix(".ttf")


def _take_fonts() -> None:
    # Taken anew for every file: a font keeps count of the letters it was used for.
    folder = resources.files("yieldplan.drawing") / "fonts"
    for (bold, condensed), file in FILES.items():
        letters = io.BytesIO((folder / file).read_bytes())
        pdfmetrics.registerFont(TTFont(_name(bold=bold, condensed=condensed), letters))


def _draw(canvas: Canvas, item: Line | Box | Ring | Arrow | Text) -> None:
    match item:
        case Line():
            _pen(canvas, item.weight, item.dash)
            canvas.line(item.x0, -item.y0, item.x1, -item.y1)
        case Box():
            _box(canvas, item)
        case Ring():
            _pen(canvas, item.weight, item.dash)
            canvas.setFillGray(0.0)
            canvas.ellipse(
                item.x - item.rx, -item.y - item.ry, item.x + item.rx, -item.y + item.ry,
                stroke=0 if item.filled else 1, fill=1 if item.filled else 0,
            )  # fmt: skip
        case Arrow():
            path = canvas.beginPath()
            path.moveTo(item.x, -item.y)
            path.lineTo(item.x - item.length, -item.y + item.half)
            path.lineTo(item.x - item.length, -item.y - item.half)
            path.close()
            canvas.setFillGray(0.0)
            canvas.drawPath(path, stroke=0, fill=1)
        case Text():
            _text(canvas, item)


def _pen(canvas: Canvas, weight: float, dash: Dash) -> None:
    canvas.setStrokeGray(0.0)
    canvas.setLineWidth(weight)
    canvas.setDash(list(dash))


def _box(canvas: Canvas, box: Box) -> None:
    rect = box.rect
    _pen(canvas, box.weight, box.dash)
    canvas.setFillGray(_SHADES[box.fill])
    canvas.rect(
        rect.x0, -rect.y1, rect.width, rect.height,
        stroke=1 if box.weight else 0, fill=0 if box.fill == "none" else 1,
    )  # fmt: skip


def _text(canvas: Canvas, text: Text) -> None:
    stretches, left = text.placed()
    canvas.setFillGray(0.0)
    for run in stretches:
        canvas.setFont(_name(bold=text.bold, condensed=text.condensed), run.size)
        canvas.drawString(left + run.x, -text.y + run.up, run.text)
