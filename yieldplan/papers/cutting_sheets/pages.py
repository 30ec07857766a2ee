"""Puts boards on pages, two to a page where they fit, with the head and foot every sheet has."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from yieldplan.drawing.fonts import width, wrap
from yieldplan.drawing.saw_size.board import WIDTH
from yieldplan.drawing.scene import Box, Line, Rect, Scene, Text
from yieldplan.model.plan import Cutting
from yieldplan.papers.cutting_sheets.block import block
from yieldplan.papers.cutting_sheets.runs import Run
from yieldplan.units import from_ticks, tape

HEIGHT = 727.0
"""As high as letter and A4 print at their own size. [pt]"""
HEAD, FOOT = 30.0, 34.0
_APART = 16.0
_SHARES = (0.4, 0.5, 0.6, 1.0)
_MOST_FOLDS = 4
_BOX_LINE = 12.5


def head_height(run: Run) -> float:
    """What the head takes from a page, with its box when something is missing. [pt]"""
    return HEAD + (len(_missing(run)) * _BOX_LINE + 18 if run.incomplete else 0.0)


def board_pages(run: Run) -> list[Scene]:
    """The pages with boards, not numbered yet: two a page where each can be read."""
    top = head_height(run)
    room = HEIGHT - top - FOOT - _APART
    pages: list[Scene] = []
    waiting: list[_Fitted] = []
    for cutting in run.cuttings:
        fitted = _fitted(cutting, run, room)
        if waiting and waiting[0].share + fitted.share > 1:
            pages.append(_page(waiting, run, top, room))
            waiting = []
        waiting.append(fitted)
        if len(waiting) == 2:
            pages.append(_page(waiting, run, top, room))
            waiting = []
    if waiting:
        pages.append(_page(waiting, run, top, room))
    return pages


@dataclass(frozen=True, kw_only=True)
class _Fitted:
    """A board, the least share of a page on which all of it can be read, and its folds."""

    cutting: Cutting
    share: float
    folds: int


def _fitted(cutting: Cutting, run: Run, room: float) -> _Fitted:
    shares = (1.0,) if cutting.piece.is_sheet else _SHARES
    ways = [(share, 1) for share in shares]
    ways += [(1.0, folds) for folds in range(2, _MOST_FOLDS + 1)]
    best: tuple[int, _Fitted] | None = None
    for share, folds in ways:
        found = block(cutting, run, share * room, folds)
        if best is None or found.short_of < best[0]:
            fitted = _Fitted(cutting=cutting, share=share, folds=folds)
            best = (found.short_of, fitted)
        if not found.short_of:
            break
    assert best is not None  # there is always a way
    return best[1]


def _page(boards: Sequence[_Fitted], run: Run, top: float, room: float) -> Scene:
    page = Scene(WIDTH, HEIGHT)
    share = 0.5
    if len(boards) == 1:
        share = max(0.5, boards[0].share)
    elif max(board.share for board in boards) > share:
        share = boards[0].share / (boards[0].share + boards[1].share)
    y = top
    for number, board in enumerate(boards):
        if number:
            y += share * room
            line = y + _APART / 2 - 1
            page.add(
                Line(x0=0, y0=line, x1=WIDTH, y1=line, weight=0.75, dash=(9.0, 5.0))
            )
            y += _APART
            share = 1 - share
        drawn = block(board.cutting, run, share * room, board.folds)
        page.place(drawn.scene, 0.0, y)
    return page


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
    page.add(title)
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
