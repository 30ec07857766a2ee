"""Puts boards on pages, two to a page where they fit, with the head and foot every sheet has."""

from __future__ import annotations

from collections.abc import Sequence

from yieldplan.drawing.fonts import width, wrap
from yieldplan.drawing.saw_size.board import WIDTH
from yieldplan.drawing.scene import Box, Line, Rect, Scene, Text
from yieldplan.model.plan import Cutting
from yieldplan.papers.cutting_sheets.block import Block, block
from yieldplan.papers.cutting_sheets.runs import Run
from yieldplan.units import from_ticks, tape

HEIGHT = 727.0
"""As high as letter and A4 print at their own size. [pt]"""
HEAD, FOOT = 30.0, 34.0
_HALVES_APART = 16.0
_MOST_FOLDS = 4
_BOX_LINE = 12.5


def head_height(run: Run) -> float:
    """What the head takes from a page, with its box when something is missing. [pt]"""
    return HEAD + (len(_missing(run)) * _BOX_LINE + 18 if run.incomplete else 0.0)


def board_pages(run: Run) -> list[Scene]:
    """The pages with boards, not numbered yet: two halves a page, or one whole."""
    top = head_height(run)
    whole = HEIGHT - top - FOOT
    half = (whole - _HALVES_APART) / 2
    pages: list[Scene] = []
    has_room = False
    for cutting in run.cuttings:
        found, is_half = _best(cutting, run, half, whole)
        if is_half and has_room:
            y = top + half
            pages[-1].add(
                Line(
                    x0=0, y0=y + _HALVES_APART / 2 - 1, x1=WIDTH,
                    y1=y + _HALVES_APART / 2 - 1, weight=0.75, dash=(9.0, 5.0),
                )
            )  # fmt: skip
            pages[-1].place(found.scene, 0.0, y + _HALVES_APART)
            has_room = False
        else:
            page = Scene(WIDTH, HEIGHT)
            page.place(found.scene, 0.0, top)
            pages.append(page)
            has_room = is_half
    return pages


def _best(cutting: Cutting, run: Run, half: float, whole: float) -> tuple[Block, bool]:
    """The board on half a page if all of it can be read there, else on a whole one."""
    tried: list[tuple[int, int, Block, bool]] = []
    rooms = (
        [(whole, False)] if cutting.piece.is_sheet else [(half, True), (whole, False)]
    )
    ways = [(room, is_half, 1) for room, is_half in rooms]
    ways += [(whole, False, folds) for folds in range(2, _MOST_FOLDS + 1)]
    for order, (room, is_half, folds) in enumerate(ways):
        found = block(cutting, run, room, folds)
        tried.append((found.short_of, order, found, is_half))
        if not found.short_of:
            break
    best = min(tried, key=lambda each: each[:2])
    return best[2], best[3]


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
    title = Text(x=0, y=14, text=f"{paper}: {run.name}", size=14, bold=True)
    if title.rect().width > 330:
        lines = wrap(title.text, 330, 14, bold=True, condensed=True)
        title = Text(x=0, y=14, text=lines[0], size=14, bold=True, condensed=True)
    room = WIDTH - title.rect().x1 - 16
    end = f"plan {run.mark}    {place}"
    job = run.job
    while job and width(f"{job}    {end}", 10) > room:
        job = job[:-2].rstrip() + "…" if len(job) > 4 else ""
    said = f"{job}    {end}" if job else end
    page.add(Text(x=WIDTH, y=14, text=said, size=10, align="right"))
    page.add(Line(x0=0, y0=20, x1=WIDTH, y1=20, weight=1.5))
    if run.incomplete:
        lines = _missing(run)
        box = Rect(1.5, 27, WIDTH - 1.5, 27 + len(lines) * _BOX_LINE + 9)
        page.add(Box(rect=box, weight=2.25))
        for number, line in enumerate(lines):
            page.add(
                Text(
                    x=9, y=41 + number * _BOX_LINE, text=line, size=10,
                    bold=number == 0,
                )
            )  # fmt: skip


def _missing(run: Run) -> list[str]:
    return [
        line
        for said in run.incomplete.split("\n")
        for line in wrap(said, WIDTH - 18, 10.0)
    ]


def _foot(page: Scene, run: Run, where: str) -> None:
    y = HEIGHT - FOOT + 6
    saw = run.saw
    kerf = tape(from_ticks(saw.rules.kerf), saw.unit)
    zero = "numbered" if saw.rules.marks_from == "zero end" else "fresh"
    unit = "Inches" if saw.unit == "in" else "Millimetres"
    heavy = (
        f"Heavy line: the edge toward you. Zero: the {zero} end."
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
