"""Writes names and fence settings into the pieces of a board, as fully as they fit everywhere on it."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, field, replace
from enum import IntEnum

from yieldplan.drawing.fonts import ASCENT, DESCENT, wrap
from yieldplan.drawing.scene import Box, Item, Rect, Text

_Line = tuple[Text, ...]
"""Words beside each other."""


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
    may_shrink
        A test piece: the board is not told less fully for its sake.
    """

    rect: Rect
    name: str
    number: int
    setting: str = ""
    strong: bool = False
    avoid: tuple[Rect, ...] = field(default=())
    may_shrink: bool = False


def say(
    label: Label, fullness: Fullness, *, may_hide: bool = True
) -> list[Item] | None:
    """The words for one piece, or None when they do not fit.

    Parameters
    ----------
    may_hide
        Whether they may lie on a mark where nothing else fits.
    """
    room = label.rect.inset(2.0)
    ways = list(_ways(label, room, fullness))
    return first_that_fits(ways, room, label.avoid, may_hide=may_hide)


def first_that_fits(
    ways: Iterable[Sequence[_Line]],
    room: Rect,
    avoid: Sequence[Rect],
    *,
    may_hide: bool = True,
    may_touch: bool = True,
    over: Sequence[Rect] = (),
) -> list[Item] | None:
    """The first of several ways to say something for which there is room; None for none.

    Parameters
    ----------
    ways
        Lines of words each, the best first.
    may_hide
        Whether they may lie on a mark where nothing else fits.
    may_touch
        Whether they may lie on a little of one.
    over
        Lines that they may cross, on white.
    """
    tried = list(ways)
    # Smaller words beside a knot come before larger ones over it.
    for hides in (False, True)[: 1 + may_hide]:
        for lines in tried:
            placed = _place(lines, room, avoid, over, hides=hides, may_touch=may_touch)
            if placed is not None:
                return placed
    return None


def fullest(labels: Sequence[Label], fullness: Fullness) -> list[Item] | None:
    """The words for every piece of a board, or None when some do not fit."""
    words: list[Item] = []
    for label in labels:
        if label.may_shrink:
            said = _test_piece(label, fullness)
        else:
            said = say(label, fullness)
        if said is None:
            if fullness < Fullness.NUMBER and not label.may_shrink:
                return None
            continue
        words.extend(said)
    return words


def _test_piece(label: Label, fullness: Fullness) -> list[Item] | None:
    short = replace(label, name="set-up")
    ways = (
        (label, fullness),
        (label, Fullness.FOLDED_NAME),
        (short, Fullness.NAME),
        (short, Fullness.NUMBER),
    )
    for may_hide in (False, True):
        for words, how in ways:
            said = say(words, how, may_hide=may_hide)
            if said is not None:
                return said
    return None


def _ways(label: Label, room: Rect, fullness: Fullness) -> Iterator[Sequence[_Line]]:
    """Ways to say it, best first; below two lines the setting stands where it fits."""
    settings: list[_Line] = [(_setting(label),)] if label.setting else []
    if fullness == Fullness.NUMBER:
        number = _words(str(label.number), 10.0, bold=True)
        name = _words(label.name, 9.0, condensed=True, bold=label.strong)
        yield from ([(number, name, *line)] for line in settings)
        yield [(number, name)]
        yield from ([(number, *line)] for line in settings)
        for size in (10.0, 8.5, 7.0):
            yield [(_words(str(label.number), size, bold=True),)]
        return
    named = [
        _words(label.name, size, condensed=condensed, bold=label.strong)
        for size, condensed in _NAME_SIZES[fullness]
    ]
    if fullness != Fullness.TWO_LINES:
        yield from ([(name, *line)] for name in named for line in settings)
    if fullness >= Fullness.TWO_LINES:
        yield from ([(name,), line] for name in named for line in settings)
    if not settings or fullness >= Fullness.NAME:
        yield from ([(name,)] for name in named)
    if fullness == Fullness.FOLDED_NAME:
        parts = wrap(label.name, room.width, 8.5, bold=label.strong, condensed=True)
        folded: list[_Line] = [
            (_words(part, 8.5, condensed=True, bold=label.strong),) for part in parts
        ]
        if len(folded) == 2:
            yield from ([*folded, line] for line in settings)
            yield folded


_NAME_SIZES: dict[Fullness, tuple[tuple[float, bool], ...]] = {
    Fullness.ONE_LINE: ((10.0, False), (10.0, True), (9.0, True)),
    Fullness.TWO_LINES: ((10.0, False), (10.0, True), (9.0, True)),
    Fullness.NAME: ((10.0, False), (10.0, True), (9.0, True), (8.5, True)),
    Fullness.FOLDED_NAME: ((10.0, False), (10.0, True), (9.0, True), (8.5, True)),
}


def _words(
    text: str, size: float, *, bold: bool = False, condensed: bool = False
) -> Text:
    return Text(x=0, y=0, text=text, size=size, bold=bold, condensed=condensed)


def _setting(label: Label) -> Text:
    return Text(x=0, y=0, text=label.setting, size=11.0, bold=True, figures=True)


_BETWEEN = 6.0


def _wide(line: _Line) -> float:
    return sum(text.rect().width for text in line) + _BETWEEN * (len(line) - 1)


def _place(
    lines: Sequence[_Line],
    room: Rect,
    avoid: Sequence[Rect],
    over: Sequence[Rect],
    *,
    hides: bool,
    may_touch: bool,
) -> list[Item] | None:
    heights = [max(text.size for text in line) * (ASCENT + DESCENT) for line in lines]
    high, wide = sum(heights), max(_wide(line) for line in lines)
    if high > room.height + 2.5 or wide > room.width:
        return None
    place = _free_place(avoid, room, wide, high, may_touch=may_touch)
    if place is None and not hides:
        return None
    top, middle = place or (
        (room.y0 + room.y1 - high) / 2,
        (room.x0 + room.x1) / 2,
    )
    items: list[Item] = []
    for line, height in zip(lines, heights, strict=True):
        base = top + ASCENT * max(text.size for text in line)
        x = middle - _wide(line) / 2
        for text in line:
            put = replace(text, x=x, y=base)
            patch = put.rect()
            if any(patch.meets(mark) for mark in (*avoid, *over)):
                items.append(Box(rect=patch, fill="white"))
            items.append(put)
            x += patch.width + _BETWEEN
        top += height
    return items


_LOOKS = 12
"""Places along a piece that are looked at beside those next to its marks."""


def _free_place(
    marks: Sequence[Rect], room: Rect, wide: float, high: float, *, may_touch: bool
) -> tuple[float, float] | None:
    """Top and middle of a place for the words where they hide no mark; None when there is none."""
    centre, level = (room.x0 + room.x1) / 2, (room.y0 + room.y1 - high) / 2
    reach = room.width - wide
    across = [centre]
    across += [room.x0 + wide / 2 + reach * n / _LOOKS for n in range(_LOOKS + 1)]
    up = [level, room.y0 - 1.2, room.y1 + 1.2 - high]
    for avoid in marks:
        across += [avoid.x0 - wide / 2 - 2, avoid.x1 + wide / 2 + 2]
        up += [avoid.y0 - high - 1, avoid.y1 + 1]
    places = sorted(
        (abs(top - level) + abs(middle - centre), top, middle)
        for top in up
        for middle in across
    )
    for touches in (False, True)[: 1 + may_touch]:
        for _, top, middle in places:
            rect = Rect(middle - wide / 2, top, middle + wide / 2, top + high)
            inside = (
                room.x0 - 0.01 <= rect.x0
                and rect.x1 <= room.x1 + 0.01
                and room.y0 - 1.3 <= rect.y0
                and rect.y1 <= room.y1 + 1.3
            )
            share = _LEFT_VISIBLE if touches else 0.0
            if inside and all(_hidden(avoid, rect) <= share for avoid in marks):
                return top, middle
    return None


_LEFT_VISIBLE = 0.25
"""Share of a mark that words may lie on: a streak of sap goes on beside them."""


def _hidden(mark: Rect, words: Rect) -> float:
    """Share of a mark that lies under the words."""
    if not mark.meets(words):
        return 0.0
    wide = min(mark.x1, words.x1) - max(mark.x0, words.x0)
    high = min(mark.y1, words.y1) - max(mark.y0, words.y0)
    return wide * high / max(mark.width * mark.height, 1e-6)
