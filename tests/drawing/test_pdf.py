"""The PDF painter: at its own size, fonts inside, the same bytes, words that can be read back."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from tests.papers.pdf_text import text_in_pdf
from yieldplan.drawing import pdf
from yieldplan.drawing.scene import Arrow, Box, Line, Rect, Ring, Scene, Text, moved


def _scene() -> Scene:
    scene = Scene(540, 727)
    scene.add(
        Box(rect=Rect(10, 10, 200, 60), weight=1.0, fill="white"),
        Line(x0=0, y0=100, x1=540, y1=100, weight=0.5, dash=(4.0, 2.0)),
        Ring(x=50, y=150, rx=7, ry=7, weight=1.0),
        Ring(x=80, y=150, rx=2, ry=2, filled=True),
        Arrow(x=300, y=150),
        Text(x=20, y=40, text="Åse's rail, 19 5/8 × 4", size=12, figures=True),
        Text(x=20, y=200, text="narrow and bold", size=12, bold=True, condensed=True),
    )
    return scene


def test_the_same_scenes_are_the_same_bytes() -> None:
    once = pdf.paint([_scene(), _scene()], "letter", "Two pages")
    assert once == pdf.paint([_scene(), _scene()], "letter", "Two pages")


@pytest.mark.parametrize(
    ("page", "size"), [("letter", (612.0, 792.0)), ("A4", (595.28, 841.89))]
)
def test_a_page_is_as_large_as_the_paper_it_is_for(
    page: pdf.PageName, size: tuple[float, float]
) -> None:
    # Letter is 8 1/2 × 11 in of 72 points, A4 210 × 297 mm (ISO 216).
    found = re.search(rb"/MediaBox \[ 0 0 ([\d.]+) ([\d.]+)", pdf.paint([_scene()], page, "x"))  # fmt: skip
    assert found is not None
    assert (float(found[1]), float(found[2])) == pytest.approx(size, abs=0.01)


def test_only_the_letters_that_are_used_are_packed_in() -> None:
    painted = pdf.paint([_scene()], "letter", "x")
    assert painted.count(b"/FontFile2") == 2  # regular, and condensed bold
    assert len(painted) < 60_000  # the fonts on disk are 700,000 each
    assert b"Helvetica" not in painted


def test_words_are_read_back_as_they_were_painted(tmp_path: Path) -> None:
    said = text_in_pdf(pdf.paint([_scene()], "letter", "x"), tmp_path)
    assert "narrow and bold" in said
    assert "Åse's rail, 19" in said


@pytest.mark.parametrize("item", _scene().items, ids=lambda item: type(item).__name__)
def test_a_picture_can_be_put_somewhere_else(item: object) -> None:
    page, picture = Scene(600, 800), Scene(540, 727, items=[item])  # type: ignore[list-item]
    page.place(picture, 10.0, 20.0)
    (there,) = page.items
    assert there != item
    assert moved(there, -10.0, -20.0) == item
