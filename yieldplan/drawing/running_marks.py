"""Sets the running dimensions under a board: one zero, a figure at every cut, none in another's way."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from yieldplan.drawing.scene import Align, Arrow, Item, Line, Rect, Ring, Text

_APART = 3.0
_FREE = -1e6  # no limit


@dataclass(frozen=True, kw_only=True)
class Lettering:
    """How large the figures are, and how many rows of them there may be.

    Parameters
    ----------
    sizes
        Size and whether condensed, the best first. [pt]
    row
        From one row to the next. [pt]
    first
        From the line to the foot of the first row. [pt]
    zero
        Size of the zero. [pt]
    """

    sizes: tuple[tuple[float, bool], ...]
    row: float
    rows: int
    first: float
    zero: float


DESK = Lettering(
    sizes=((12.0, False), (11.0, True), (9.0, True)),
    row=14.0,
    rows=4,
    first=12.0,
    zero=10.0,
)
"""For a picture on a desk."""
ROW = DESK.row


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


def rows_needed(
    figures: Sequence[Figure],
    right: float,
    lettering: Lettering = DESK,
    left: float = _FREE,
) -> int:
    """How many rows the figures take."""
    placed = _set_out(figures, right, lettering, left)
    return 1 + max((each.row for each in placed), default=0)


def all_fit(
    figures: Sequence[Figure], right: float, lettering: Lettering, left: float = _FREE
) -> bool:
    """Whether every figure has a place."""
    return len(_set_out(figures, right, lettering, left)) == len(figures)


def draw(
    figures: Sequence[Figure],
    zero: float,
    y: float,
    right: float,
    lettering: Lettering = DESK,
    *,
    left: float = _FREE,
    goes_on: bool = False,
) -> Iterator[Item]:
    """The dimension line at y with its zero, arrows and figures.

    Parameters
    ----------
    zero
        Where the tape's zero is drawn. [pt]
    left
        No figure of the first row reaches past it: there stands a large zero. [pt]
    goes_on
        The line goes on from another: it has no zero of its own.
    right
        No figure reaches past it. [pt]
    """
    if not goes_on:
        size = lettering.zero
        yield Ring(x=zero, y=y, rx=2.2, ry=2.2, weight=0.9)
        yield Text(
            x=zero - 4.5, y=y + 0.36 * size, text="0", size=size, bold=True,
            align="right",
        )  # fmt: skip
    if not figures:
        return
    yield Line(x0=zero + 2.2, y0=y, x1=figures[-1].x, y1=y, weight=0.6)
    for placed in _set_out(figures, right, lettering, left):
        yield Arrow(x=placed.x, y=y)
        text = placed.text
        if placed.row or text.align != "middle":
            beside = lettering.first - 2 if text.align != "middle" else 0
            end = y + 3 + placed.row * lettering.row + beside
            yield Line(x0=placed.x, y0=y, x1=placed.x, y1=end, weight=0.5)
        yield Text(
            x=text.x, y=y + text.y, text=text.text, size=text.size, bold=True,
            condensed=text.condensed, align=text.align, figures=True,
        )  # fmt: skip


def _set_out(
    figures: Sequence[Figure], right: float, lettering: Lettering, left: float
) -> list[_Placed]:
    for size, condensed in lettering.sizes:
        done = _search(figures, right, size, condensed, lettering, left)
        if done is not None:
            return done
    # Marks closer than the smallest figures stay in the words below the picture.
    return _those_that_fit(figures, right, lettering, left)


def _choices(
    figure: Figure,
    right: float,
    size: float,
    condensed: bool,
    lettering: Lettering,
    left: float,
) -> Iterator[_Placed]:
    aligns: tuple[tuple[Align, float], ...] = (
        ("middle", 0.0), ("right", -2.5), ("left", 2.5)
    )  # fmt: skip
    for row in range(lettering.rows):
        for align, aside in aligns:
            text = Text(
                x=figure.x + aside, y=lettering.first + row * lettering.row,
                text=figure.says, size=size, bold=True, condensed=condensed,
                align=align, figures=True,
            )  # fmt: skip
            is_clear = row or text.rect().x0 >= left
            if text.rect().x1 <= right and is_clear:
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
    figures: Sequence[Figure],
    right: float,
    size: float,
    condensed: bool,
    lettering: Lettering,
    left: float,
) -> list[_Placed] | None:
    def choices(number: int) -> Iterator[_Placed]:
        return _choices(figures[number], right, size, condensed, lettering, left)

    placed: list[_Placed] = []
    tries = [choices(number) for number in range(len(figures))]
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
            tries[number] = choices(number)
            placed.pop()
    return placed


def _those_that_fit(
    figures: Sequence[Figure], right: float, lettering: Lettering, left: float
) -> list[_Placed]:
    size, condensed = lettering.sizes[-1]
    placed: list[_Placed] = []
    for figure in figures:
        for choice in _choices(figure, right, size, condensed, lettering, left):
            if all(_clear(choice, old) for old in placed):
                placed.append(choice)
                break
    return placed
