"""Sets the running dimensions under a board: one zero, a figure at every cut, none in another's way."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from yieldplan.drawing.scene import Align, Arrow, Item, Line, Rect, Ring, Text

ROW = 14.0
"""From one row of figures to the next. [pt]"""
_ROWS = 4
_APART = 3.0


@dataclass(frozen=True, kw_only=True)
class Figure:
    """A figure at its mark, before it has a row."""

    x: float
    says: str


@dataclass(frozen=True, kw_only=True)
class _Placed:
    text: Text
    x: float
    row: int

    @property
    def rect(self) -> Rect:
        return self.text.rect()


def rows_needed(figures: Sequence[Figure], right: float) -> int:
    """How many rows the figures take."""
    return 1 + max((placed.row for placed in _set_out(figures, right)), default=0)


def draw(
    figures: Sequence[Figure], zero: float, y: float, right: float
) -> Iterator[Item]:
    """The dimension line at y with its zero, arrows and figures.

    Parameters
    ----------
    zero
        Where the tape's zero is drawn. [pt]
    right
        No figure reaches past it. [pt]
    """
    yield Ring(x=zero, y=y, rx=2.2, ry=2.2, weight=0.9)
    yield Text(x=zero - 4.5, y=y + 3.6, text="0", size=10, bold=True, align="right")
    if not figures:
        return
    yield Line(x0=zero + 2.2, y0=y, x1=figures[-1].x, y1=y, weight=0.6)
    for placed in _set_out(figures, right):
        yield Arrow(x=placed.x, y=y)
        text = placed.text
        if placed.row or text.align != "middle":
            end = y + 3 + placed.row * ROW + (10 if text.align != "middle" else 0)
            yield Line(x0=placed.x, y0=y, x1=placed.x, y1=end, weight=0.5)
        yield Text(
            x=text.x, y=y + text.y, text=text.text, size=text.size, bold=True,
            condensed=text.condensed, align=text.align, figures=True,
        )  # fmt: skip


def _set_out(figures: Sequence[Figure], right: float) -> list[_Placed]:
    for size, condensed in ((12.0, False), (11.0, True), (9.0, True)):
        done = _search(figures, right, size, condensed)
        if done is not None:
            return done
    # Marks closer than the smallest figures stay in the words below the picture.
    return _those_that_fit(figures, right)


def _choices(
    figure: Figure, right: float, size: float, condensed: bool
) -> Iterator[_Placed]:
    aligns: tuple[tuple[Align, float], ...] = (
        ("middle", 0.0), ("right", -2.5), ("left", 2.5)
    )  # fmt: skip
    for row in range(_ROWS):
        for align, aside in aligns:
            text = Text(
                x=figure.x + aside, y=12.0 + row * ROW, text=figure.says, size=size,
                bold=True, condensed=condensed, align=align, figures=True,
            )  # fmt: skip
            if text.rect().x1 <= right:
                yield _Placed(text=text, x=figure.x, row=row)


def _clear(new: _Placed, old: _Placed) -> bool:
    rect, there = new.rect, old.rect
    if new.row == old.row and (
        rect.x0 < there.x1 + _APART and there.x0 < rect.x1 + _APART
    ):
        return False
    # A figure's own line runs down through the rows above it.
    if new.row > old.row and there.x0 - 1 < new.x < there.x1 + 1:
        return False
    if old.row > new.row and rect.x0 - 1 < old.x < rect.x1 + 1:
        return False
    beside = new.row == old.row
    return not (beside and (there.x0 < new.x < there.x1 or rect.x0 < old.x < rect.x1))


def _search(
    figures: Sequence[Figure], right: float, size: float, condensed: bool
) -> list[_Placed] | None:
    placed: list[_Placed] = []
    tries = [_choices(figure, right, size, condensed) for figure in figures]
    budget = 20_000
    while len(placed) < len(figures):
        number = len(placed)
        for choice in tries[number]:
            budget -= 1
            if all(_clear(choice, old) for old in placed[-12:]):
                placed.append(choice)
                break
        else:
            if number == 0 or budget < 0:
                return None
            tries[number] = _choices(figures[number], right, size, condensed)
            placed.pop()
    return placed


def _those_that_fit(figures: Sequence[Figure], right: float) -> list[_Placed]:
    placed: list[_Placed] = []
    for figure in figures:
        for choice in _choices(figure, right, 9.0, True):
            if all(_clear(choice, old) for old in placed):
                placed.append(choice)
                break
    return placed
