"""The last sheet of a wood, to stand beside the fence: settings, final widths and lengths, boxes to tick."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from yieldplan.drawing.saw_size.layout import WIDTH
from yieldplan.drawing.scene import Box, Item, Line, Rect, Scene, Text
from yieldplan.papers.cutting_sheets.finals import (
    FinalSize,
    final_sizes,
    in_words,
    thicknesses,
)
from yieldplan.papers.cutting_sheets.lines import lines as broken
from yieldplan.papers.cutting_sheets.page import FOOT, HEIGHT, head_height
from yieldplan.papers.cutting_sheets.runs import Run
from yieldplan.papers.cutting_sheets.settings import fence_settings
from yieldplan.units import from_ticks, tape

_FIGURES = 92.0  # the right end of the settings
_WORDS = 108.0
_ROW = 30.0
_MOST_BOXES = 14
_BOX, _BOX_STEP = 10.5, 16.0
_IN_A_ROW = 7
_MOST_FENCE, _MOST_STOPS = 8, 10
_BETWEEN = 14.0
_ABOUT = "about "


@dataclass(frozen=True, kw_only=True)
class _Line:
    figure: str
    what: str
    where: str
    count: int


@dataclass(frozen=True, kw_only=True)
class _Block:
    title: str
    lines: Sequence[_Line]
    below: str
    is_many: bool


def fence_pages(run: Run) -> list[Scene]:
    """The pages, not numbered yet; none where nothing is ripped nor brought to size."""
    pages: list[Scene] = []
    top, foot = head_height(run), HEIGHT - FOOT
    y = foot
    for number, block in enumerate(_blocks(run), start=1):
        first = True
        rows = list(block.lines)
        heights = [_height(line) for line in rows]
        below = list(broken(block.below, WIDTH, 10.0, bold=block.is_many))
        # What stands below goes with the last row, never on a page of its own.
        heights[-1] += 13.0 * len(below)
        while rows:
            # A block starts only where two of its rows follow its title.
            if y + 24 + sum(heights[:2]) > foot:
                pages.append(Scene(WIDTH, HEIGHT))
                y = top + 8
            title = f"{number}  {block.title}{'' if first else ', continued'}"
            pages[-1].extend(_title(title, y, with_boxes=first))
            y += 22
            while rows and y + heights[0] <= foot:
                high = _height(rows[0])
                pages[-1].extend(_row(rows.pop(0), y, high))
                y += high
                del heights[0]
            first = False
            if rows:
                y = foot
        for line in below:
            pages[-1].add(Text(x=0, y=y + 12, text=line, size=10, bold=block.is_many))
            y += 13
        y += _BETWEEN
    for page in pages:
        page.extend(_foot(run))
    return pages


def _blocks(run: Run) -> Iterator[_Block]:
    unit = run.saw.unit
    rough = [
        _Line(
            figure=tape(from_ticks(each.figure), unit).removeprefix(_ABOUT), what=each.gives,
            where=each.where, count=len(each.nodes),
        )
        for each in fence_settings(run)
    ]  # fmt: skip
    if rough:
        yield _Block(
            title="Rips at the fence, from the top down",
            lines=rough,
            below=_counted(rough, "fence setting", _MOST_FENCE),
            is_many=len(rough) > _MOST_FENCE,
        )
    planed = thicknesses(run)
    after = f"After planing to {' and '.join(planed)}: final" if planed else "Final"
    yield from _final(f"{after} widths at the fence", final_sizes(run, "width"), run, "fence setting", _MOST_FENCE)  # fmt: skip
    yield from _final("Final lengths at the stop, longest first", final_sizes(run, "length"), run, "stop", _MOST_STOPS)  # fmt: skip


def _final(
    title: str, sizes: Sequence[FinalSize], run: Run, word: str, most: int
) -> Iterator[_Block]:
    lines = [
        _Line(
            figure=tape(each.size, run.saw.unit).removeprefix(_ABOUT),
            what=in_words(each), where=_remarks(each, run), count=each.count,
        )
        for each in sizes
    ]  # fmt: skip
    if lines:
        below = _counted(lines, word, most)
        yield _Block(title=title, lines=lines, below=below, is_many=len(lines) > most)


def _remarks(final: FinalSize, run: Run) -> str:
    rounded = tape(final.size, run.saw.unit).startswith(_ABOUT)
    nearest = {"in": "to the nearest 1/32", "mm": "to the nearest 0.1"}[run.saw.unit]
    thick = f"{tape(final.thickness, run.saw.unit)} thick"
    has_several = len(thicknesses(run)) > 1
    said = ((thick, has_several), (nearest, rounded))
    return "; ".join([*(words for words, is_so in said if is_so), *final.notes])


def _counted(lines: Sequence[_Line], word: str, most: int) -> str:
    number = len(lines)
    said = f"{number} {word}{'' if number == 1 else 's'}."
    odd = [line.figure for line in lines if line.count == 1]
    if number > most and odd and len(odd) < number:
        said += f" For one piece only: {', '.join(odd)}."
    return said


def _title(title: str, y: float, *, with_boxes: bool) -> Iterator[Item]:
    said = Text(x=0, y=y + 14, text=title, size=13, bold=True, figures=True)
    yield replace(said, condensed=said.rect().width > WIDTH - 90)
    if with_boxes:
        yield Text(x=WIDTH, y=y + 14, text="one box a piece", size=10, align="right")
    yield Line(x0=0, y0=y + 20, x1=WIDTH, y1=y + 20, weight=1.0)


def _boxes_from(line: _Line) -> float:
    boxes = min(line.count, _IN_A_ROW)
    return WIDTH - 4 - boxes * _BOX_STEP - (34 if line.count > _MOST_BOXES else 0)


def _words(line: _Line) -> tuple[list[str], list[str]]:
    room = _boxes_from(line) - _WORDS - 8
    return broken(line.what, room, 12.0), broken(
        line.where, room, 10.0
    ) if line.where else []


def _height(line: _Line) -> float:
    what, where = _words(line)
    return max(_ROW, 6 + 14.0 * len(what) + 12.0 * len(where))


def _row(line: _Line, y: float, high: float) -> Iterator[Item]:
    what, where = _words(line)
    yield Text(
        x=_FIGURES, y=y + 23, text=line.figure, size=22, bold=True, align="right",
        figures=True, condensed=len(line.figure) > 7,
    )  # fmt: skip
    base = y + 13
    for words in what:
        yield Text(x=_WORDS, y=base, text=words, size=12)
        base += 14
    base -= 1
    for words in where:
        yield Text(x=_WORDS, y=base, text=words, size=10)
        base += 12
    x = _boxes_from(line)
    if line.count > _MOST_BOXES:
        yield Text(x=x, y=y + 19, text=f"{line.count} ×", size=12, bold=True)
        x += 34
    top = y + (3.5 if line.count > _IN_A_ROW else 9.0)
    for number in range(min(line.count, _MOST_BOXES)):
        down, along = divmod(number, _IN_A_ROW)
        left, up = x + 5 + along * _BOX_STEP, top + down * 12.5
        yield Box(rect=Rect(left, up, left + _BOX, up + _BOX), weight=1.0)
    yield Line(x0=0, y0=y + high, x1=WIDTH, y1=y + high, weight=0.4)


def _foot(run: Run) -> Iterator[Item]:
    y = HEIGHT - FOOT + 6
    unit = "inches" if run.saw.unit == "in" else "millimetres"
    kerf = tape(from_ticks(run.saw.rules.kerf), run.saw.unit).removeprefix(_ABOUT)
    yield Line(x0=0, y0=y, x1=WIDTH, y1=y, weight=0.5)
    yield Text(
        x=0, y=y + 12, size=10,
        text=f"Near edge to the fence, face A up. Square end to the stop. Kerf {kerf} is outside all figures.",
        condensed=True,
    )  # fmt: skip
    yield Text(
        x=0, y=y + 25, size=10,
        text=f"A board's strips in the order of its own sheet: one out of turn puts a knot into a part. Sizes in {unit}.",
        condensed=True,
    )  # fmt: skip
