"""Sets a size the way a tape is read: whole inches, then a small fraction beside them."""

from __future__ import annotations

import re
from dataclasses import dataclass
from functools import lru_cache

from yieldplan.drawing.fonts import width

BUILT_FROM = 11.0
"""From this size up a fraction is built; below it, it would be too small to read. [pt]"""
_SMALL = 0.68
_RAISED = 0.36
_FRACTION = re.compile(r"(?P<join> ?)(?P<top>\d+)/(?P<bottom>\d+)", re.ASCII)


@dataclass(frozen=True, kw_only=True)
class Run:
    """A stretch of letters of one size on one line.

    Parameters
    ----------
    x, up
        From the start of the line, and above it. [pt]
    size
        [pt]
    """

    text: str
    x: float
    up: float
    size: float


@lru_cache(maxsize=20_000)
def runs(
    text: str,
    size: float,
    *,
    bold: bool = False,
    condensed: bool = False,
    figures: bool = False,
) -> tuple[tuple[Run, ...], float]:
    """The text as stretches to paint, and how wide they are together. [pt]

    Only our own sizes are `figures`: a name somebody typed is set as it was typed.
    """
    placed: list[Run] = []
    x = 0.0

    def put(letters: str, up: float = 0.0, share: float = 1.0) -> None:
        nonlocal x
        if letters:
            placed.append(Run(text=letters, x=x, up=up * size, size=share * size))
            x += width(letters, share * size, bold=bold, condensed=condensed)

    if not figures or size < BUILT_FROM:
        put(text)
        return tuple(placed), x
    done = 0
    for found in _FRACTION.finditer(text):
        put(text[done : found.start()])
        if found["join"]:
            # Close to its whole number, a word's space from anything else.
            is_mixed = text[: found.start()][-1:].isdigit()
            x += 0.12 * size if is_mixed else width(" ", size, bold=bold)
        put(found["top"], _RAISED, _SMALL)
        put("⁄")
        put(found["bottom"], 0.0, _SMALL)
        done = found.end()
    put(text[done:])
    return tuple(placed), x
