"""Puts boards on pages, two to a page where each can be read, else one."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from yieldplan.drawing.saw_size.layout import WIDTH
from yieldplan.drawing.scene import Line, Scene
from yieldplan.model.plan import Cutting
from yieldplan.papers.cutting_sheets.block import block
from yieldplan.papers.cutting_sheets.page import FOOT, HEIGHT, head_height
from yieldplan.papers.cutting_sheets.runs import Run

_APART = 16.0
_SHARES = (0.4, 0.45, 0.5, 0.55, 0.6, 1.0)
_HALF, _ONE_NAME = 0.5, 3  # half a page is worth one name in the list below
_MOST_FOLDS = 4
_FOLDED = 4  # so is not to be folded


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
    shares = _SHARES[-2:] if cutting.piece.is_sheet else _SHARES
    ways = [(share, 1) for share in shares]
    ways += [(1.0, folds) for folds in range(2, _MOST_FOLDS + 1)]
    best: tuple[int, _Fitted] | None = None
    for share, folds in ways:
        found = block(cutting, run, share * room, folds)
        short_of = found.short_of + _FOLDED * (folds > 1)
        if best is None or short_of < best[0]:
            fitted = _Fitted(cutting=cutting, share=share, folds=folds)
            best = (short_of, fitted)
        if found.short_of <= (_ONE_NAME if share <= _HALF else 0):
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
