"""Draws one board to be sawn from: marks from one zero, a word for every piece, what was found above."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from itertools import pairwise

from yieldplan.drawing.cuts import crosscuts
from yieldplan.drawing.hatching import mark as mark_symbol
from yieldplan.drawing.hatching import waste
from yieldplan.drawing.panels import Cut, Detail, Leaf, least_height, leaves, share_out
from yieldplan.drawing.piece_marks import (
    inside,
    joint_lines,
    joints,
    kept_frame,
    marks_on,
    step_strokes,
)
from yieldplan.drawing.pulled_apart import Spacing, pull_apart
from yieldplan.drawing.running_marks import (
    Figure,
    Lettering,
    all_fit,
    draw,
    rows_needed,
)
from yieldplan.drawing.saw import Saw
from yieldplan.drawing.saw_size import beside, callouts, lengths
from yieldplan.drawing.saw_size.callouts import Callout
from yieldplan.drawing.saw_size.legend import Legend
from yieldplan.drawing.saw_size.rows import Row, rows_of
from yieldplan.drawing.saw_size.words import Said
from yieldplan.drawing.scene import Box, Item, Line, Rect, Ring, Scene, Text
from yieldplan.model.plan import Cutting, Node
from yieldplan.units import from_ticks, tape

WIDTH = 540.0
"""As wide as letter and A4 print at their own size. [pt]"""
MARKS = Lettering(
    sizes=((18.0, False), (18.0, True)), row=19.0, rows=2, first=16.5, zero=14.0
)
_CROWDED = Lettering(sizes=((18.0, True),), row=19.0, rows=6, first=16.5, zero=14.0)
"""Marks are never set smaller; they take more rows."""
_DETAIL_PIECE, _DETAIL_WASTE = 19.5, 14.0
_RIGHT = 5.0
_APART = 9.0
_OVER = 8.0
_RINGS = 20.0  # the numbers of the cuts, above a board that is crosscut first
_BELOW = 8.0
_BETWEEN = 6.0
_LARGEST_SCALE = 20.0
_TALLEST = 190.0
_EXAGGERATED = 5.0  # widths are not to scale, but a strip stays a strip


@dataclass(frozen=True, kw_only=True)
class Named:
    """What a blank is called, and which of how many it is (`2 of 4`, or nothing)."""

    name: str
    place: str = ""


@dataclass(frozen=True, kw_only=True)
class SawPicture:
    """A board at saw size.

    Parameters
    ----------
    legend
        What pieces say that had no room for it, by their letters.
    short_of
        How much is missing from what a good picture shows: 0 is nothing.
    """

    scene: Scene
    legend: tuple[tuple[str, str], ...]
    short_of: int


def saw_picture(
    cutting: Cutting, saw: Saw, names: Mapping[str, Named], height: float, folds: int
) -> SawPicture:
    """The picture of a board.

    Parameters
    ----------
    names
        By the id of the node.
    height
        What there is room for. [pt]
    folds
        Into how many rows a long stretch is folded at most.
    """
    return _Drawing(cutting, saw, names, height, folds).picture()


class _Laid:
    """A row with its pieces along the page, before it has a height."""

    def __init__(self, row: Row, drawing: _Drawing) -> None:
        self.row = row
        self.panels, self.figures = drawing.along(row)
        self.right = self.panels[-1][1].x1
        self.callouts: list[Callout] = []
        self.lettering = MARKS
        if not all_fit(self.figures, WIDTH - 1, MARKS):
            self.lettering = _CROWDED

    def above(self, drawing: _Drawing) -> float:
        """From the foot of the row before to its wood. [pt]"""
        high = callouts.height(self.callouts, drawing.left, WIDTH)
        high += 0.0 if self.row.begins else 13.0
        if not self.row.is_cut:
            return high + 2.0
        return high + (_RINGS if drawing.numbers_cuts else 0.0) + _OVER

    def below(self) -> float:
        """From its wood to the foot of the row. [pt]"""
        if not self.figures:
            return _BETWEEN
        rows = rows_needed(self.figures, WIDTH - 1, self.lettering)
        return _BELOW + rows * self.lettering.row + 2 + lengths.HEIGHT + _BETWEEN


class _Drawing:
    def __init__(
        self,
        cutting: Cutting,
        saw: Saw,
        names: Mapping[str, Named],
        height: float,
        folds: int,
    ) -> None:
        self.cutting, self.saw, self.names = cutting, saw, names
        self.height = height
        tree = cutting.tree
        self.detail = Detail(piece=_DETAIL_PIECE, waste=_DETAIL_WASTE, unit=saw.unit)
        self.numbers_cuts = tree.cut == "crosscut"
        self.left = beside.margin(tree, saw.unit) if tree.cut == "rip" else 34.0
        rows = rows_of(tree, folds)
        self.scale = self._scale(rows)
        self.legend = Legend({each.name for each in names.values()})
        self.scene = Scene(WIDTH, 0.0, says=f"{cutting.piece.id}, {cutting.how_cut}")
        self.short_of = 0
        self._cut_number = 0
        self._rows = [_Laid(row, self) for row in rows]
        self._call_out()

    def picture(self) -> SawPicture:
        """Everything from the top down."""
        woods = self._wood_heights()
        y = 0.0
        for laid, wood in zip(self._rows, woods, strict=True):
            y = self._row(laid, y, wood)
        self.scene.height = y
        self.short_of += self.legend.short_of
        self.short_of += 100 if y > self.height + 0.5 else 0
        return SawPicture(
            scene=self.scene, legend=self.legend.lines(), short_of=self.short_of
        )

    def along(self, row: Row) -> tuple[list[tuple[Node, Rect]], list[Figure]]:
        """The pieces of a row along the page, of no height yet, and its marks."""
        if not row.is_cut:
            longest = WIDTH - _RIGHT - self.left
            wide = min(float(from_ticks(row.length)) * self.scale, longest)
            if self.cutting.tree.cut == "rip":
                wide = longest  # as long as its neighbours with their gaps
            return [(row.node, Rect(self.left, 0.0, self.left + wide, 1.0))], []
        space = Spacing(left=self.left, scale=self.scale, apart=_APART)
        return pull_apart(row.node, row.pieces, (0.0, 1.0), self.saw, space)

    def _scale(self, rows: list[Row]) -> float:
        room = WIDTH - self.left - _RIGHT
        cut = [row for row in rows if row.is_cut] or rows
        fits = [
            (room - _APART * row.cuts) / float(from_ticks(row.length)) for row in cut
        ]
        return min(*fits, _LARGEST_SCALE)

    def _wood_heights(self) -> list[float]:
        fixed = sum(laid.above(self) + laid.below() for laid in self._rows)
        room = self.height - fixed
        least, most = [], []
        for laid in self._rows:
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
        shares = share_out(max(room, sum(least)), [row.row.node.width for row in self._rows], least)  # fmt: skip
        return [min(share, high) for share, high in zip(shares, most, strict=True)]

    def _call_out(self) -> None:
        """Share out the marks among the rows that show most of them."""
        piece = self.cutting.piece
        for mark in piece.marks:
            best: tuple[float, _Laid, float] | None = None
            for laid in self._rows:
                for node, rect in laid.panels:
                    for _, drawn in marks_on(node, rect, [mark]):
                        # Of unit height: its share of the row's width times its length.
                        shown = drawn.width * drawn.height
                        if best is None or shown > best[0] + 1e-6:
                            best = (shown, laid, (drawn.x0 + drawn.x1) / 2)
            if best is not None:
                _, laid, x = best
                laid.callouts.append(
                    Callout(
                        mark=mark, x=_clear_of_cuts(x, laid.figures), y=0.0,
                        along=callouts.along_in_words(mark, self.saw.unit),
                        across=callouts.across_in_words(mark, piece, self.saw.unit),
                    )
                )  # fmt: skip

    def _row(self, laid: _Laid, y: float, wood: float) -> float:
        row = laid.row
        top = y + laid.above(self)
        bottom = top + wood
        panels = [(n, Rect(r.x0, top, r.x1, bottom)) for n, r in laid.panels]
        laid.callouts = [self._ended(call, panels) for call in laid.callouts]
        leads = [Rect(c.x - 1.5, top, c.x + 1.5, c.y) for c in laid.callouts]
        words: list[Item] = []
        for node, rect in panels:
            words.extend(self._panel(node, rect, leads, nearest=row.nearest))
        self.scene.extend(step_strokes(panels, self.saw.blanks, _APART))
        self.scene.extend(callouts.draw(laid.callouts, self.left, WIDTH, y, top - 3))
        self.scene.extend(words)
        if not row.begins:
            self.scene.add(self._goes_on(laid, top))
            self.scene.extend(_break(self.left, top, bottom))
        if row.rip is not None:
            self.scene.extend(beside.draw(row, self.left, top, bottom, self.saw.unit))
        if laid.figures:
            self._marks(laid, top, bottom, panels)
        return bottom + laid.below()

    def _ended(self, call: Callout, panels: list[tuple[Node, Rect]]) -> Callout:
        """The callout with its line down to the upper edge of its mark."""
        tops = [
            there.y0 + 1
            for node, rect in panels
            for leaf in leaves(node, rect, self.detail)
            if isinstance(leaf, Leaf)
            for _, there in marks_on(leaf.node, leaf.rect, [call.mark])
            if there.x0 <= call.x <= there.x1
        ]
        return replace(call, y=min(tops, default=panels[0][1].y0))

    def _marks(
        self, laid: _Laid, top: float, bottom: float, panels: list[tuple[Node, Rect]]
    ) -> None:
        line = bottom + _BELOW
        weight = 2.25 if self.cutting.tree.cut != "rip" else 1.75
        for figure in laid.figures:
            self.scene.add(
                Line(x0=figure.x, y0=top - _OVER, x1=figure.x, y1=line, weight=weight)
            )
            if self.numbers_cuts:
                self._cut_number += 1
                self.scene.extend(_ringed(self._cut_number, figure.x, top - _OVER))
        zero = self._zero(laid.row, panels)
        right = WIDTH - 1
        self.scene.extend(
            draw(
                laid.figures, zero, line, right, laid.lettering,
                goes_on=not laid.row.begins,
            )
        )  # fmt: skip
        if not all_fit(laid.figures, right, laid.lettering):
            self.short_of += 50
        self.short_of += 3 * (laid.lettering is _CROWDED)
        rows = rows_needed(laid.figures, right, laid.lettering)
        foot = line + rows * laid.lettering.row + 2 + 11
        drawn, missing = lengths.draw(panels, self.saw.unit, foot, _APART)
        self.short_of += 3 * missing
        self.scene.extend(drawn)
        word = Text(x=self.left - 5, y=foot, text="piece", size=10, align="right")
        starts = [item.rect().x0 for item in drawn if isinstance(item, Text)]
        starts += [item.x0 for item in drawn if isinstance(item, Line)]
        if min(starts, default=WIDTH) > word.rect().x1 + 2:
            self.scene.add(word)

    def _zero(self, row: Row, panels: list[tuple[Node, Rect]]) -> float:
        origin = crosscuts(row.node, self.saw.rules).origin
        for child, rect in panels:
            if child.box[0] >= origin:
                return rect.x0 if origin > row.node.box[0] else self.left
        return self.left

    def _goes_on(self, laid: _Laid, top: float) -> Text:
        marks = crosscuts(laid.row.node, self.saw.rules)
        before = [cut for cut in marks.at if cut < laid.row.start]
        last = tape(from_ticks(marks.figure(before[-1])), self.saw.unit)
        said = f"continued from {last}, still measured from zero"
        y = top - _OVER - (_RINGS if self.numbers_cuts else 0.0) - 2
        return Text(x=self.left, y=y, text=said, size=10, bold=True)

    def _panel(
        self, node: Node, rect: Rect, leads: list[Rect], *, nearest: bool
    ) -> list[Item]:
        is_strip = not any(
            node is child
            for row in self._rows
            for child in row.row.pieces
            if row.row.is_cut
        )
        lines: list[Cut] = []
        words: list[Item] = []
        for drawn in leaves(node, rect, self.detail):
            if isinstance(drawn, Cut):
                lines.append(drawn)
            else:
                words.extend(self._leaf(drawn, leads, is_strip=is_strip))
        self.scene.extend(
            Line(x0=cut.x0, y0=cut.y0, x1=cut.x1, y1=cut.y1, weight=1.25)
            for cut in lines
        )
        self.scene.add(Box(rect=rect, weight=1.0))
        if nearest:
            y = rect.y1
            self.scene.add(Line(x0=rect.x0, y0=y, x1=rect.x1, y1=y, weight=3.0))
        return words

    def _leaf(self, leaf: Leaf, leads: list[Rect], *, is_strip: bool) -> Iterator[Item]:
        """Paints the wood; yields its words, which come on top of every line."""
        node, rect = leaf.node, leaf.rect
        is_kept = node.blank is not None or node.fate == "keep"
        if not is_kept:
            self.scene.extend(waste(rect))
        avoid: list[Rect] = []
        leads = [lead for lead in leads if lead.meets(rect)]
        for mark, there in marks_on(node, rect, self.cutting.piece.marks):
            avoid.append(there)
            self.scene.extend(mark_symbol(mark.kind, mark.face, there))
        if not is_kept:
            # A waste piece of a row says its fate below, beside the lengths.
            if leaf.settings or not self.cutting.tree.into or is_strip:
                yield from self.legend.waste(leaf, avoid, leads)
        elif node.blank is None:
            self.scene.extend(kept_frame(rect))
            size = " × ".join(
                tape(from_ticks(each), self.saw.unit) for each in (node.width, node.length)
            )  # fmt: skip
            said = Said(
                name=f"KEEP {node.name}", size=size, settings=leaf.settings, strong=True
            )
            yield from self.legend.piece(said, rect.inset(3.5), avoid, leads)
        else:
            yield from self._blank(leaf, avoid, leads)

    def _blank(
        self, leaf: Leaf, avoid: list[Rect], leads: list[Rect]
    ) -> Iterator[Item]:
        node, rect = leaf.node, leaf.rect
        blank = self.saw.blanks[node.blank or ""]
        self.scene.extend(joints(blank, node, rect))
        rooms = list(inside(blank, node, rect))
        if len(rooms) < len(blank.laid_out):
            avoid += joint_lines(blank, node, rect)
        named = self.names[node.id]
        for order, (name, room) in enumerate(rooms):
            is_whole = len(rooms) == 1
            yield from self.legend.piece(
                Said(
                    name=named.name if is_whole else name,
                    place=named.place if is_whole else "",
                    settings=leaf.settings if order == 0 else (),
                    turned_over=node.face_up == "B" and order == 0,
                    matters=not blank.set_up,
                ),
                room, avoid, leads,
            )  # fmt: skip


def _clear_of_cuts(x: float, figures: list[Figure]) -> float:
    """A little aside where a line to a mark would run along a cut."""
    for figure in figures:
        if abs(figure.x - x) < 4.5:
            return figure.x + (4.5 if x >= figure.x else -4.5)
    return x


def _ringed(number: int, x: float, foot: float) -> Iterator[Item]:
    wide = 7.0 if number < 10 else 8.5
    yield Ring(x=x, y=foot - 8, rx=wide, ry=7.0, weight=1.0)
    yield Text(x=x, y=foot - 4.4, text=str(number), size=10, bold=True, align="middle")


def _break(x: float, top: float, bottom: float) -> Iterator[Item]:
    """A long-break line: the wood goes on from the row above."""
    middle, tooth = (top + bottom) / 2, 5.0
    x -= _APART / 2
    points = [
        (x, top - 4), (x, middle - tooth), (x - 4, middle - tooth / 2),
        (x + 4, middle + tooth / 2), (x, middle + tooth), (x, bottom + 4),
    ]  # fmt: skip
    for (x0, y0), (x1, y1) in pairwise(points):
        yield Line(x0=x0, y0=y0, x1=x1, y1=y1, weight=0.75)
