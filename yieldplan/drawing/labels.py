"""Writes names and fence settings into the pieces of a board, as fully as they fit everywhere on it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field, replace
from enum import IntEnum

from yieldplan.drawing.fonts import ASCENT, DESCENT, wrap
from yieldplan.drawing.scene import Box, Item, Rect, Text


class Fullness(IntEnum):
    """How much a piece says on the picture; the list below it always says everything."""

    ONE_LINE = 0  # name and fence setting side by side
    TWO_LINES = 1  # the setting under the name
    NAME = 2  # the name
    FOLDED_NAME = 3  # the name in two lines
    NUMBER = 4  # the number it has in the list

    @property
    def height(self) -> float:
        """The least height of a strip that is to carry it. [pt]"""
        return {0: 20.0, 1: 31.0, 2: 20.0, 3: 26.0, 4: 20.0}[self.value]


@dataclass(frozen=True, kw_only=True)
class Label:
    """What one piece has to say, and where.

    Parameters
    ----------
    avoid
        Marks that the words must not cover.
    """

    rect: Rect
    name: str
    number: int
    setting: str = ""
    strong: bool = False
    avoid: tuple[Rect, ...] = field(default=())


def say(label: Label, fullness: Fullness) -> list[Item] | None:
    """The words for one piece, or None when they do not fit."""
    room = label.rect.inset(2.0)
    for lines in _ways(label, room, fullness):
        placed = _place(lines, label, room)
        if placed is not None:
            return placed
    return None


def fullest(labels: Sequence[Label], fullness: Fullness) -> list[Item] | None:
    """The words for every piece of a board, or None when some do not fit."""
    words: list[Item] = []
    for label in labels:
        said = say(label, fullness)
        if said is None:
            if fullness < Fullness.NUMBER:
                return None
            continue
        words.extend(said)
    return words


_Line = tuple[Text, ...]


def _ways(label: Label, room: Rect, fullness: Fullness) -> Iterator[list[_Line]]:
    name, strong = label.name, label.strong
    setting = Text(x=0, y=0, text=label.setting, size=11.0, bold=True, figures=True)
    if fullness == Fullness.NUMBER:
        number = str(label.number)
        said = Text(x=0, y=0, text=name, size=9.0, condensed=True, bold=strong)
        yield [(Text(x=0, y=0, text=number, size=10.0, bold=True), said)]
        for size in (10.0, 8.5, 7.0):
            yield [(Text(x=0, y=0, text=number, size=size, bold=True),)]
        return
    for size, condensed in ((10.0, False), (10.0, True), (9.0, True)):
        said = Text(x=0, y=0, text=name, size=size, condensed=condensed, bold=strong)
        if fullness == Fullness.ONE_LINE:
            yield [(said, setting) if label.setting else (said,)]
        elif fullness == Fullness.TWO_LINES:
            yield [(said,), (setting,)] if label.setting else [(said,)]
        else:
            yield [(said,)]
    if fullness >= Fullness.NAME:
        yield [(Text(x=0, y=0, text=name, size=8.5, condensed=True, bold=strong),)]
    if fullness == Fullness.FOLDED_NAME:
        folded = wrap(name, room.width, 8.5, bold=strong, condensed=True)
        if len(folded) == 2:
            yield [
                (Text(x=0, y=0, text=part, size=8.5, condensed=True, bold=strong),)
                for part in folded
            ]


_BETWEEN = 6.0


def _wide(line: _Line) -> float:
    return sum(text.rect().width for text in line) + _BETWEEN * (len(line) - 1)


def _place(lines: list[_Line], label: Label, room: Rect) -> list[Item] | None:
    heights = [max(text.size for text in line) * (ASCENT + DESCENT) for line in lines]
    high, wide = sum(heights), max(_wide(line) for line in lines)
    if high > room.height + 2.5 or wide > room.width:
        return None
    top, middle = _free_place(label, room, wide, high)
    items: list[Item] = []
    for line, height in zip(lines, heights, strict=True):
        base = top + ASCENT * max(text.size for text in line)
        x = middle - _wide(line) / 2
        for text in line:
            put = replace(text, x=x, y=base)
            patch = put.rect()
            if any(patch.meets(avoid) for avoid in label.avoid):
                items.append(Box(rect=patch, fill="white"))
            items.append(put)
            x += patch.width + _BETWEEN
        top += height
    return items


def _free_place(
    label: Label, room: Rect, wide: float, high: float
) -> tuple[float, float]:
    """Top and middle of a place for the words clear of marks; the piece's own middle when nowhere."""
    centre, level = (room.x0 + room.x1) / 2, (room.y0 + room.y1 - high) / 2
    across, up = [centre], [level]
    for avoid in label.avoid:
        across += [avoid.x0 - wide / 2 - 2, avoid.x1 + wide / 2 + 2]
        up += [avoid.y0 - high - 1, avoid.y1 + 1]
    places = sorted(
        (abs(top - level) + abs(middle - centre), top, middle)
        for top in up
        for middle in across
    )
    for _, top, middle in places:
        rect = Rect(middle - wide / 2, top, middle + wide / 2, top + high)
        inside = (
            room.x0 - 0.01 <= rect.x0
            and rect.x1 <= room.x1 + 0.01
            and room.y0 - 1.3 <= rect.y0
            and rect.y1 <= room.y1 + 1.3
        )
        if inside and not any(rect.meets(avoid) for avoid in label.avoid):
            return top, middle
    return level, centre
