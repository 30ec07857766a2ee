"""What every sheet has: its head, the box that says what is missing, and its foot."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from yieldplan.drawing.fonts import width, wrap
from yieldplan.drawing.saw_size.layout import WIDTH
from yieldplan.drawing.scene import Box, Line, Rect, Scene, Text
from yieldplan.papers.cutting_sheets.runs import Run
from yieldplan.units import from_ticks, tape

HEIGHT = 727.0
"""As high as letter and A4 print at their own size. [pt]"""
HEAD, FOOT = 34.0, 34.0
_TITLE = 330.0
_BOX_LINE = 12.5


def head_height(run: Run) -> float:
    """What the head takes from a page, with its box when something is missing. [pt]"""
    return HEAD + (len(_missing(run)) * _BOX_LINE + 18 if run.incomplete else 0.0)


def numbered(run: Run, boards: Sequence[Scene], fence: Sequence[Scene]) -> list[Scene]:
    """The pages of a run with their heads and feet."""
    pages = [*boards, *fence]
    for number, page in enumerate(pages, start=1):
        is_board = number <= len(boards)
        place = f"sheet {number} of {len(pages)}"
        _head(page, run, "Cutting sheet" if is_board else "Fence and stops", place)
        if is_board:
            _foot(
                page, run, f"fence and stops: sheet {len(boards) + 1}" if fence else ""
            )
    return pages


def _head(page: Scene, run: Run, paper: str, place: str) -> None:
    title = Text(x=0, y=17, text=f"{paper}: {run.name}", size=14, bold=True)
    if title.rect().width > _TITLE:
        said = _cut_off(title.text, _TITLE, 14, bold=True, condensed=True)
        title = replace(title, text=said, condensed=True)
    page.add(title, Line(x0=0, y0=23, x1=WIDTH, y1=23, weight=1.5))
    room = WIDTH - title.rect().x1 - 16
    end = Text(
        x=WIDTH, y=17, text=f"plan {run.mark}    {place}", size=10, align="right"
    )
    both = replace(end, text=f"{run.job}    {end.text}")
    if both.rect().width <= room:
        page.add(both)
    else:
        # A long title stands above, so that the plan's mark is never cut.
        narrow = width(run.job, 10) > room
        job = _cut_off(run.job, room, 10, condensed=narrow)
        page.add(replace(end, y=8, text=job, condensed=narrow), replace(end, y=19.5))
    if run.incomplete:
        lines = _missing(run)
        box = Rect(1.5, 31, WIDTH - 1.5, 31 + len(lines) * _BOX_LINE + 9)
        page.add(Box(rect=box, weight=2.25))
        for number, line in enumerate(lines):
            page.add(
                Text(
                    x=9, y=45 + number * _BOX_LINE, text=line, size=10,
                    bold=number == 0,
                )
            )  # fmt: skip


def _cut_off(
    text: str, room: float, size: float, *, bold: bool = False, condensed: bool = False
) -> str:
    """The text, or as much of its beginning as there is room for; nothing for a letter or two."""
    if width(text, size, bold=bold, condensed=condensed) <= room:
        return text
    for left in range(len(text) - 1, 3, -1):
        short = f"{text[:left].rstrip()}…"
        if width(short, size, bold=bold, condensed=condensed) <= room:
            return short
    return ""


def _missing(run: Run) -> list[str]:
    return [
        line
        for said in run.incomplete.split("\n")
        for line in wrap(said, WIDTH - 18, 10.0)
    ]


def _foot(page: Scene, run: Run, where: str) -> None:
    y = HEIGHT - FOOT + 6
    saw = run.saw
    kerf = tape(from_ticks(saw.rules.kerf), saw.unit).removeprefix("about ")
    zero = "numbered" if saw.rules.marks_from == "zero end" else "fresh"
    unit = "Inches" if saw.unit == "in" else "Millimetres"
    heavy = (
        f"Heavy line: edge toward you. Zero: the {zero} end."
        f" Blade right of every mark, kerf {kerf}."
    )
    page.add(
        Line(x0=0, y0=y, x1=WIDTH, y1=y, weight=0.5),
        Text(x=0, y=y + 12, text=heavy, size=10, condensed=True),
        Text(x=WIDTH, y=y + 12, text=where, size=10, align="right", condensed=True),
        Text(
            x=0, y=y + 25, text="A defect that is not drawn? Mark it, stop, plan again.",
            size=10, bold=True,
        ),
        Text(
            x=WIDTH, y=y + 25, text=f"{unit}. Lengths to scale, widths not.",
            size=10, align="right", condensed=True,
        ),
    )  # fmt: skip
