"""Draws one board to be sawn from: marks from one zero, a word for every piece, what was found above."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace

from yieldplan.drawing.cuts import crosscuts
from yieldplan.drawing.hatching import mark as mark_symbol
from yieldplan.drawing.hatching import waste
from yieldplan.drawing.panels import Cut, Leaf, leaves
from yieldplan.drawing.piece_marks import (
    inside,
    joint_lines,
    joints,
    kept_frame,
    marks_on,
    step_strokes,
)
from yieldplan.drawing.running_marks import (
    all_fit,
    draw,
    rows_needed,
)
from yieldplan.drawing.saw import Saw
from yieldplan.drawing.saw_size import beside, callouts, lengths, signs
from yieldplan.drawing.saw_size.callouts import Callout
from yieldplan.drawing.saw_size.layout import (
    APART,
    BELOW,
    CROWDED,
    GOES_ON,
    OVER,
    WIDTH,
    Laid,
    Layout,
)
from yieldplan.drawing.saw_size.legend import Legend
from yieldplan.drawing.saw_size.words import Said
from yieldplan.drawing.scene import Box, Item, Line, Rect, Scene, Text
from yieldplan.model.plan import Cutting, Node
from yieldplan.units import from_ticks, tape


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
        self.layout = Layout(cutting, saw, folds)
        self.legend = Legend({each.name for each in names.values()})
        self.scene = Scene(WIDTH, 0.0, says=f"{cutting.piece.id}, {cutting.how_cut}")
        self.short_of = 0
        self._cut_number = 0

    def picture(self) -> SawPicture:
        """Everything from the top down."""
        woods = self.layout.wood_heights(self.height)
        y = 0.0
        for laid, wood in zip(self.layout.rows, woods, strict=True):
            y = self._row(laid, y, wood)
        self.scene.height = y
        self.short_of += self.legend.short_of
        self.short_of += 100 if y > self.height + 0.5 else 0
        return SawPicture(
            scene=self.scene, legend=self.legend.lines(), short_of=self.short_of
        )

    def _row(self, laid: Laid, y: float, wood: float) -> float:
        row = laid.row
        top = y + self.layout.above(laid)
        head = y if row.begins else y + GOES_ON
        bottom = top + wood
        panels = [(n, Rect(r.x0, top, r.x1, bottom)) for n, r in laid.panels]
        laid.callouts = [self._ended(call, panels) for call in laid.callouts]
        leads = [Rect(c.x - 1.5, top, c.x + 1.5, c.y) for c in laid.callouts]
        words: list[Item] = []
        for node, rect in panels:
            words.extend(self._panel(node, rect, leads, nearest=row.nearest))
        self.scene.extend(step_strokes(panels, self.saw.blanks, APART))
        self.scene.extend(
            callouts.draw(laid.callouts, self.layout.left, WIDTH, head, top - 3)
        )
        self.scene.extend(words)
        if not row.begins:
            self.scene.add(self._goes_on(laid, y + 9))
            self.scene.extend(signs.long_break(self.layout.left, top, bottom))
        if row.rip is not None:
            self.scene.extend(
                beside.draw(row, self.layout.left, top, bottom, self.saw.unit)
            )
        if laid.figures:
            self._marks(laid, top, bottom, panels)
        return bottom + self.layout.below(laid)

    def _ended(self, call: Callout, panels: list[tuple[Node, Rect]]) -> Callout:
        """The callout with its line down to the upper edge of its mark."""
        tops = [
            there.y0 + 1
            for node, rect in panels
            for leaf in leaves(node, rect, self.layout.detail)
            if isinstance(leaf, Leaf)
            for _, there in marks_on(leaf.node, leaf.rect, [call.mark])
            if there.x0 <= call.x <= there.x1
        ]
        return replace(call, y=min(tops, default=panels[0][1].y0))

    def _marks(
        self, laid: Laid, top: float, bottom: float, panels: list[tuple[Node, Rect]]
    ) -> None:
        line = bottom + BELOW
        weight = 2.25 if self.cutting.tree.cut != "rip" else 1.75
        for figure in laid.figures:
            self.scene.add(
                Line(x0=figure.x, y0=top - OVER, x1=figure.x, y1=line, weight=weight)
            )
            if self.layout.numbers_cuts:
                self._cut_number += 1
                self.scene.extend(signs.ringed(self._cut_number, figure.x, top - OVER))
        right = WIDTH - 1
        self.scene.extend(
            draw(
                laid.figures, laid.zero, line, right, laid.lettering, left=laid.zero,
                goes_on=not laid.row.begins,
            )
        )  # fmt: skip
        if not all_fit(laid.figures, right, laid.lettering, laid.zero):
            self.short_of += 50
        self.short_of += 3 * (laid.lettering is CROWDED)
        rows = rows_needed(laid.figures, right, laid.lettering, laid.zero)
        foot = line + rows * laid.lettering.row + 2 + 11
        drawn, missing = lengths.draw(panels, self.saw.unit, foot, APART)
        self.short_of += 3 * missing
        self.scene.extend(drawn)
        word = Text(
            x=self.layout.left - 5, y=foot, text="piece", size=10, align="right"
        )
        starts = [item.rect().x0 for item in drawn if isinstance(item, Text)]
        starts += [item.x0 for item in drawn if isinstance(item, Line)]
        if min(starts, default=WIDTH) > word.rect().x1 + 2:
            self.scene.add(word)

    def _goes_on(self, laid: Laid, y: float) -> Text:
        marks = crosscuts(laid.row.node, self.saw.rules)
        before = [cut for cut in marks.at if cut < laid.row.start]
        last = tape(from_ticks(marks.figure(before[-1])), self.saw.unit)
        said = f"continued from {last}, still measured from zero"
        return Text(x=self.layout.left, y=y, text=said, size=10, bold=True)

    def _panel(
        self, node: Node, rect: Rect, leads: list[Rect], *, nearest: bool
    ) -> list[Item]:
        is_strip = not any(
            node is child
            for row in self.layout.rows
            for child in row.row.pieces
            if row.row.is_cut
        )
        lines: list[Cut] = []
        words: list[Item] = []
        for drawn in leaves(node, rect, self.layout.detail):
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
