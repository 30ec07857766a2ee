"""How wide a word is on paper, from the fonts that ship with the program."""

from __future__ import annotations

import io
from functools import lru_cache
from importlib import resources

from PIL import ImageFont

FILES = {
    (False, False): "DejaVuSans.ttf",
    (True, False): "DejaVuSans-Bold.ttf",
    (False, True): "DejaVuSansCondensed.ttf",
    (True, True): "DejaVuSansCondensed-Bold.ttf",
}
_MEASURED_AT = 200.0

ASCENT = 0.76
"""How far letters rise above the line they stand on, as a share of their size."""
DESCENT = 0.24
"""How far they reach below it."""


@lru_cache(maxsize=256)
def font(
    size: float, *, bold: bool = False, condensed: bool = False
) -> ImageFont.FreeTypeFont:
    """The font at a size in pixels."""
    file = resources.files("yieldplan.drawing") / "fonts" / FILES[bold, condensed]
    # The plain layout puts the same letters in the same places on every machine.
    return ImageFont.truetype(
        io.BytesIO(file.read_bytes()), size, layout_engine=ImageFont.Layout.BASIC
    )


@lru_cache(maxsize=20_000)
def width(
    text: str, size: float, *, bold: bool = False, condensed: bool = False
) -> float:
    """How much room a line of text takes. [pt]"""
    measured = font(_MEASURED_AT, bold=bold, condensed=condensed).getlength(text)
    return float(measured) * size / _MEASURED_AT


def wrap(
    text: str, room: float, size: float, *, bold: bool = False, condensed: bool = False
) -> list[str]:
    """The text in lines no wider than `room`, broken at spaces, else anywhere.

    Parameters
    ----------
    room
        [pt]
    """
    lines: list[str] = []
    for paragraph in text.split("\n"):
        line = ""
        for word in paragraph.split(" "):
            longer = f"{line} {word}" if line else word
            if width(longer, size, bold=bold, condensed=condensed) <= room:
                line = longer
                continue
            if line:
                lines.append(line)
            line = word
            # One letter stays, however little room there is.
            while (
                len(line) > 1
                and width(line, size, bold=bold, condensed=condensed) > room
            ):
                fits = _letters_that_fit(line, room, size, bold, condensed)
                lines.append(line[:fits])
                line = line[fits:]
        lines.append(line)
    return lines


def _letters_that_fit(
    word: str, room: float, size: float, bold: bool, condensed: bool
) -> int:
    count = len(word) - 1
    while (
        count > 1 and width(word[:count], size, bold=bold, condensed=condensed) > room
    ):
        count -= 1
    return max(count, 1)
