"""Draws one board as it is sawn: its sections or strips pulled apart, the marks to cut at below them."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from yieldplan.drawing.cuts import crosscuts, flat, is_waste, kept, rips
from yieldplan.drawing.hatching import mark as mark_symbol
from yieldplan.drawing.hatching import waste
from yieldplan.drawing.labels import Fullness, Label, fullest, say
from yieldplan.drawing.panels import (
    WASTE_HEIGHT,
    Cut,
    Detail,
    Leaf,
    least_height,
    leaves,
    widest_figure,
)
from yieldplan.drawing.piece_marks import (
    inside,
    joint_lines,
    joints,
    kept_frame,
    marks_on,
)
from yieldplan.drawing.pulled_apart import Spacing, pull_apart
from yieldplan.drawing.running_marks import ROW, Figure, draw, rows_needed
from yieldplan.drawing.saw import Saw
from yieldplan.drawing.scene import Box, Item, Line, Rect, Scene, Text
from yieldplan.model.plan import Cutting, Node
from yieldplan.units import UnitName, from_ticks, tape

WIDTH = 691.0
"""9.6 in: as wide as a landscape page of letter or A4 has room for. [pt]"""

_LEFT, _RIGHT = 30.0, 26.0
_APART = 7.0  # between pieces pulled apart
_OVER = 7.0  # a cut runs past the wood, like a chalk line
_BELOW = 9.0  # from the wood to the dimension line
_BETWEEN_ROWS = 6.0
_LARGEST_SCALE = 10.0  # points to the inch: a short offcut is not blown up
_TALLEST = 300.0


@dataclass(frozen=True, kw_only=True)
class BoardPicture:
    """The picture of a board, and how fully its pieces are named on it."""

    scene: Scene
    fullness: Fullness

    @property
    def numbered(self) -> bool:
        """Whether its pieces carry the numbers of the list below."""
        return self.fullness == Fullness.NUMBER


_LEGIBLE = Fullness.NAME
"""A board that says less than this at the common scale is drawn at its own."""


def common_scale(cuttings: Sequence[Cutting], unit: UnitName) -> float:
    """Points to the inch at which the longest of some boards just fits."""
    return min(
        (_own_scale(cutting, unit) for cutting in cuttings), default=_LARGEST_SCALE
    )


def board_scene(cutting: Cutting, saw: Saw, scale: float | None = None) -> BoardPicture:
    """The picture of one board.

    Parameters
    ----------
    scale
        Points to the inch along the board; the board's own largest when left out.
    """
    own = _own_scale(cutting, saw.unit)
    picture = _at_scale(cutting, saw, min(scale or own, own))
    if picture.fullness > _LEGIBLE and scale is not None and scale < own:
        picture = _at_scale(cutting, saw, own)
    return picture


def _at_scale(cutting: Cutting, saw: Saw, scale: float) -> BoardPicture:
    for fullness in Fullness:
        picture = _Picture(cutting, saw, scale, fullness)
        words = fullest(picture.labels, fullness)
        if words is not None:
            break
    assert words is not None  # the last fullness leaves out what does not fit
    picture.scene.extend(words)
    picture.scene.extend(picture.fates())
    return BoardPicture(scene=picture.scene, fullness=fullness)


def _margin(cutting: Cutting, unit: UnitName) -> float:
    if cutting.tree.cut != "rip":
        return _LEFT
    return max(_LEFT, widest_figure(cutting.tree, unit, 12.0) + 14.0)


def _own_scale(cutting: Cutting, unit: UnitName) -> float:
    tree = cutting.tree
    rows = flat(tree) if tree.cut == "rip" else (tree,)
    cuts = max((len(flat(row)) for row in rows), default=0)
    room = WIDTH - _margin(cutting, unit) - _RIGHT - _APART * cuts
    length = float(from_ticks(tree.length))
    return min(room / length, _LARGEST_SCALE)


class _Picture:
    """A board on its way to a scene, at one fullness of its labels."""

    def __init__(
        self, cutting: Cutting, saw: Saw, scale: float, fullness: Fullness
    ) -> None:
        self.cutting, self.saw, self.scale = cutting, saw, scale
        self.detail = Detail(piece=fullness.height, unit=saw.unit)
        self.labels: list[Label] = []
        self._wastes: list[Label] = []
        self.left = _margin(cutting, saw.unit)
        self.scene = Scene(WIDTH, 0.0, says=_title(cutting))
        self._numbers = {n.id: i for i, n in enumerate(kept(cutting.tree), start=1)}
        self._items: list[Item] = []
        self._y = 2.0
        tree = cutting.tree
        if tree.cut == "rip":
            strips = list(rips(tree))
            self._longest = max(self._drawn_length(rip.node) for rip in strips)
            for rip in reversed(strips):  # the near edge is at the bottom
                last = rip is strips[0]
                self._row(
                    rip.node, nearest=last, beside=_beside(rip.kind, rip.node, saw)
                )
        else:
            self._longest = self._drawn_length(tree)
            self._row(tree, nearest=True, beside="")
        self.scene.height = self._y
        self.scene.extend(self._items)

    def _row(self, node: Node, *, nearest: bool, beside: str) -> None:
        high = self._row_height(node)
        self._y += _OVER if node.cut == "crosscut" else 0.0
        top, bottom = self._y, self._y + high
        if beside:
            self._items.append(
                Text(
                    x=self.left - 8, y=(top + bottom) / 2 + 4, text=beside,
                    size=min(12.0, high), bold=True, align="right", figures=True,
                )
            )  # fmt: skip
        panels, figures = self._panels(node, top, bottom)
        for child, rect in panels:
            self._panel(child, rect, nearest=nearest)
        right = WIDTH - 1
        if not figures:
            self._y = bottom + _BETWEEN_ROWS
            return
        line = bottom + _BELOW
        for figure in figures:
            self._items.append(
                Line(
                    x0=figure.x, y0=top - _OVER, x1=figure.x, y1=line,
                    weight=2.25 if self.cutting.tree.cut != "rip" else 1.75,
                )
            )  # fmt: skip
        zero = self._zero(node, panels)
        self._items.extend(draw(figures, zero, line, right))
        self._y = line + rows_needed(figures, right) * ROW + 3 + _BETWEEN_ROWS

    def _row_height(self, node: Node) -> float:
        children = flat(node) if node.cut == "crosscut" else (node,)
        least = max(least_height(child, self.detail) for child in children)
        if is_waste(node):
            return WASTE_HEIGHT + 4
        true = float(from_ticks(node.width)) * self.scale
        return max(least, min(true, _TALLEST))

    def _panels(
        self, node: Node, top: float, bottom: float
    ) -> tuple[list[tuple[Node, Rect]], list[Figure]]:
        """The pieces of a row, pulled apart at its cuts, and the figures at the cuts."""
        if node.cut != "crosscut":
            # An uncut strip is drawn as long as its neighbours with their gaps.
            wide = self._longest
            return [(node, Rect(self.left, top, self.left + wide, bottom))], []
        space = Spacing(left=self.left, scale=self.scale, apart=_APART)
        return pull_apart(node, flat(node), (top, bottom), self.saw, space)

    def _zero(self, node: Node, panels: list[tuple[Node, Rect]]) -> float:
        origin = crosscuts(node, self.saw.rules).origin
        for child, rect in panels:
            if child.box[0] >= origin:
                return rect.x0 if origin > node.box[0] else self.left
        return self.left

    def _drawn_length(self, node: Node) -> float:
        gaps = 0
        if node.cut == "crosscut":
            gaps = sum(piece.box[2] < node.box[2] for piece in flat(node))
        return self._points(node.length) + _APART * gaps

    def _points(self, ticks: int) -> float:
        return float(from_ticks(ticks)) * self.scale

    def _panel(self, node: Node, rect: Rect, *, nearest: bool) -> None:
        cuts: list[Cut] = []
        for drawn in leaves(node, rect, self.detail):
            if isinstance(drawn, Cut):
                cuts.append(drawn)
            else:
                self._leaf(drawn)
        self._items.extend(
            Line(x0=cut.x0, y0=cut.y0, x1=cut.x1, y1=cut.y1, weight=1.25)
            for cut in cuts
        )
        self._items.append(Box(rect=rect, weight=1.0))
        if nearest:
            self._items.append(
                Line(x0=rect.x0, y0=rect.y1, x1=rect.x1, y1=rect.y1, weight=3.0)
            )

    def _leaf(self, leaf: Leaf) -> None:
        node, rect = leaf.node, leaf.rect
        number = self._numbers.get(node.id, 0)
        if number == 0:
            self._items.extend(waste(rect))
        avoid: list[Rect] = []
        for mark, there in marks_on(node, rect, self.cutting.piece.marks):
            avoid.append(there)
            self._items.extend(mark_symbol(mark.kind, mark.face, there))
        if number == 0:
            said = node.fate or ""
            self._wastes.append(
                Label(rect=rect, name=said, number=0, avoid=tuple(avoid))
            )
        if node.blank is not None:
            blank = self.saw.blanks[node.blank]
            self._items.extend(joints(blank, node, rect))
            rooms = list(inside(blank, node, rect))
            if len(rooms) < len(blank.laid_out):
                avoid += joint_lines(blank, node, rect)
            for order, (name, room) in enumerate(rooms):
                self.labels.append(
                    Label(
                        rect=room, name=name, number=number, avoid=tuple(avoid),
                        setting=leaf.setting if order == 0 else "",
                        may_shrink=blank.set_up,
                    )
                )  # fmt: skip
        elif number:
            self._items.extend(kept_frame(rect))
            self.labels.append(
                Label(
                    rect=rect.inset(3.0), name=f"KEEP {node.name}", number=number,
                    strong=True, avoid=tuple(avoid), setting=leaf.setting,
                )
            )  # fmt: skip

    def fates(self) -> Iterator[Item]:
        """What becomes of the waste, on white, where there is room for the word."""
        for label in self._wastes:
            room = label.rect.inset(1.0)
            patch = Text(x=0, y=0, text=label.name, size=8.5, condensed=True).rect()
            if patch.width + 4 > room.width or patch.height > room.height + 2:
                continue
            words = say(replace(label, rect=room), Fullness.FOLDED_NAME) or []
            texts = [item for item in words if isinstance(item, Text)]
            if any(t.rect().meets(a) for t in texts for a in label.avoid):
                continue
            for text in texts:
                yield Box(rect=text.rect(), fill="white")
                yield text


def _beside(kind: str, node: Node, saw: Saw) -> str:
    return "" if kind == "edge" else tape(from_ticks(node.width), saw.unit)


def _title(cutting: Cutting) -> str:
    piece = cutting.piece
    return f"{piece.id}, {piece.line}, {cutting.how_cut}"
