"""Breaks a sentence into lines, never within a size or between a number and its times sign."""

from __future__ import annotations

import re

from yieldplan.drawing.fonts import wrap

_HARD = "\u00a0"
_TOGETHER = re.compile(r"(?<=\d) (?=\d+/\d)|(?<=\d) (?=×)|(?<=×) ")


def lines(
    text: str, room: float, size: float, *, bold: bool = False, condensed: bool = False
) -> list[str]:
    """The lines, none wider than `room`. [pt]"""
    glued = _TOGETHER.sub(_HARD, text)
    done = wrap(glued, room, size, bold=bold, condensed=condensed)
    return [line.replace(_HARD, " ") for line in done]
