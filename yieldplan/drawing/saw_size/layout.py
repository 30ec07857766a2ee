"""Lays a board out for the page: how its rows lie along it, how high each is, what is written above."""

from __future__ import annotations

from dataclasses import dataclass, field

from yieldplan.drawing.cuts import crosscuts
from yieldplan.drawing.panels import Detail, least_height, share_out
from yieldplan.drawing.piece_marks import marks_on
from yieldplan.drawing.pulled_apart import Spacing, pull_apart
from yieldplan.drawing.running_marks import Figure, Lettering, all_fit, rows_needed
from yieldplan.drawing.saw import Saw
from yieldplan.drawing.saw_size import beside, callouts, lengths
from yieldplan.drawing.saw_size.callouts import Callout
from yieldplan.drawing.saw_size.rows import Row, rows_of
from yieldplan.drawing.scene import Rect
from yieldplan.model.faces import Mark
from yieldplan.model.plan import Cutting, Node
from yieldplan.model.rounding import mark_in_ticks
from yieldplan.units import from_ticks

WIDTH = 540.0
"""As wide as letter and A4 print at their own size. [pt]"""
MARKS = Lettering(
    sizes=((18.0, False), (18.0, True)), row=19.0, rows=2, first=16.5, zero=14.0
)
CROWDED = Lettering(sizes=((18.0, True),), row=19.0, rows=6, first=16.5, zero=14.0)
"""Marks are never set smaller; they take more rows."""
APART = 9.0
"""Between two pieces of a row. [pt]"""
OVER = 8.0
"""How far a cut runs past the wood, like a chalk line. [pt]"""
GOES_ON = 13.0
"""The line that says a row goes on from the one above. [pt]"""
RINGS = 20.0
"""The numbers of the cuts, above a board that is crosscut first. [pt]"""
BELOW = 8.0
"""From the wood to the dimension line. [pt]"""
_PIECE, _WASTE = 19.5, 14.0  # least heights of a strip that says something
_LEFT, _RIGHT = 34.0, 5.0
_BETWEEN = 6.0
_LARGEST_SCALE = 20.0
_TALLEST = 190.0
_EXAGGERATED = 5.0  # widths are not to scale, but a strip stays a strip


@dataclass(kw_only=True)
class Laid:
    """A row with its pieces along the page.

    Parameters
    ----------
    panels
        Its pieces, where they are drawn along the page; of no height yet.
    lettering
        How its marks are set.
    zero
        Where the tape's zero is drawn. [pt]
    """

    row: Row
    panels: list[tuple[Node, Rect]]
    figures: list[Figure]
    lettering: Lettering
    zero: float
    callouts: list[Callout] = field(default_factory=list)


class Layout:
    """How a board lies on the page at one number of folds."""

    def __init__(self, cutting: Cutting, saw: Saw, folds: int) -> None:
        self.cutting, self.saw = cutting, saw
        tree = cutting.tree
        self.detail = Detail(piece=_PIECE, waste=_WASTE, unit=saw.unit)
        self.numbers_cuts = tree.cut == "crosscut"
        self.left = beside.margin(tree, saw.unit) if tree.cut == "rip" else _LEFT
        rows = rows_of(tree, folds)
        self.scale = self._scale(rows)
        self.rows = [self._laid(row) for row in rows]
        for mark in cutting.piece.marks:
            self._call_out(mark)

    def above(self, laid: Laid) -> float:
        """From the foot of the row before to a row's wood. [pt]"""
        high = callouts.height(laid.callouts, self.left, WIDTH)
        high += 0.0 if laid.row.begins else GOES_ON
        if not laid.row.is_cut:
            return high + 2.0
        return high + (RINGS if self.numbers_cuts else 0.0) + OVER

    def below(self, laid: Laid) -> float:
        """From a row's wood to its foot. [pt]"""
        if not laid.figures:
            return _BETWEEN
        rows = rows_needed(laid.figures, WIDTH - 1, laid.lettering, laid.zero)
        return BELOW + rows * laid.lettering.row + 2 + lengths.HEIGHT + _BETWEEN

    def wood_heights(self, height: float) -> list[float]:
        """How high the wood of every row is drawn, of so much room for all. [pt]"""
        room = height - sum(self.above(laid) + self.below(laid) for laid in self.rows)
        least, most = [], []
        for laid in self.rows:
            row = laid.row
            held = max(least_height(piece, self.detail) for piece in row.pieces)
            true = float(from_ticks(row.node.width)) * self.scale
            if self.cutting.piece.is_sheet:
                tall = true
            elif row.node.into or row.node.blank:
                tall = min(_EXAGGERATED * true, _TALLEST)
            else:
                tall = held
            least.append(held)
            most.append(max(held, tall))
        widths = [laid.row.node.width for laid in self.rows]
        shares = share_out(max(room, sum(least)), widths, least)
        return [min(share, high) for share, high in zip(shares, most, strict=True)]

    def _scale(self, rows: list[Row]) -> float:
        room = WIDTH - self.left - _RIGHT
        cut = [row for row in rows if row.is_cut] or rows
        fits = [
            (room - APART * row.cuts) / float(from_ticks(row.length)) for row in cut
        ]
        return min(*fits, _LARGEST_SCALE)

    def _laid(self, row: Row) -> Laid:
        panels, figures = self._along(row)
        zero = self._zero(row, panels)
        fits = all_fit(figures, WIDTH - 1, MARKS, zero)
        return Laid(
            zero=zero,
            row=row,
            panels=panels,
            figures=figures,
            lettering=MARKS if fits else CROWDED,
        )

    def _along(self, row: Row) -> tuple[list[tuple[Node, Rect]], list[Figure]]:
        if not row.is_cut:
            longest = WIDTH - _RIGHT - self.left
            wide = min(float(from_ticks(row.length)) * self.scale, longest)
            if self.cutting.tree.cut == "rip":
                wide = longest  # as long as its neighbours with their gaps
            return [(row.node, Rect(self.left, 0.0, self.left + wide, 1.0))], []
        space = Spacing(left=self.left, scale=self.scale, apart=APART)
        return pull_apart(row.node, row.pieces, (0.0, 1.0), self.saw, space)

    def _zero(self, row: Row, panels: list[tuple[Node, Rect]]) -> float:
        if not row.begins or not row.is_cut:
            return self.left
        origin = crosscuts(row.node, self.saw.rules).origin
        if origin == row.node.box[0]:
            return self.left
        # A fold may leave the trim alone in its row: zero is then where the trim ends.
        return next(
            (rect.x0 for node, rect in panels if node.box[0] >= origin),
            panels[-1][1].x1,
        )

    def _call_out(self, mark: Mark) -> None:
        """Write a mark above the row that shows most of it, at the piece with most of it."""
        shown = [
            (_overlap(mark, node), -number, laid, node, rect)
            for number, laid in enumerate(self.rows)
            for node, rect in laid.panels
        ]
        most, _, laid, node, rect = max(shown, key=lambda each: each[:2])
        if not most:
            return  # it lies in the saw's own way: nothing of it is left
        ((_, drawn),) = marks_on(node, rect, [mark])
        laid.callouts.append(
            Callout(
                mark=mark,
                x=_clear_of_cuts((drawn.x0 + drawn.x1) / 2, laid.figures),
                y=0.0,
                along=callouts.along_in_words(mark, self.saw.unit),
                across=callouts.across_in_words(
                    mark, self.cutting.piece, self.saw.unit
                ),
            )
        )


def _overlap(mark: Mark, node: Node) -> int:
    box = mark_in_ticks(mark)
    long = min(box[2], node.box[2]) - max(box[0], node.box[0])
    wide = min(box[3], node.box[3]) - max(box[1], node.box[1])
    return max(0, long) * max(0, wide)


def _clear_of_cuts(x: float, figures: list[Figure]) -> float:
    """A little aside where a line to a mark would run along a cut."""
    for figure in figures:
        if abs(figure.x - x) < 4.5:
            return figure.x + (4.5 if x >= figure.x else -4.5)
    return x
