"""One board of a cutting sheet: its number, how it is cut, the drawing, and what to mind below."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from yieldplan.drawing.fonts import width, wrap
from yieldplan.drawing.found import not_straight
from yieldplan.drawing.saw_size.board import SawPicture, saw_picture
from yieldplan.drawing.saw_size.layout import WIDTH
from yieldplan.drawing.scene import Box, Rect, Scene, Text
from yieldplan.model.pieces import Piece
from yieldplan.model.plan import Cutting
from yieldplan.papers.cutting_sheets.lines import lines
from yieldplan.papers.cutting_sheets.notes import adds_up, notes
from yieldplan.papers.cutting_sheets.runs import Run
from yieldplan.papers.cutting_sheets.steps import steps
from yieldplan.units import feet_and_inches, tape

_NUMBER_SIZES = ((44.0, False), (44.0, True), (36.0, True), (30.0, True), (24.0, True), (18.0, True), (14.0, True))  # fmt: skip
_NUMBER_ROOM = 128.0
_STEP, _NOTE = 12.5, 12.5
_HEAD = 52.0


@dataclass(frozen=True, kw_only=True)
class Block:
    """A board as it stands on a page, and how much its drawing had to leave out."""

    scene: Scene
    short_of: int


def block(cutting: Cutting, run: Run, height: float, folds: int) -> Block:
    """The board in no more height than there is, if that can be. [pt]"""
    scene = Scene(WIDTH, height)
    head = max(_HEAD, _head(scene, cutting, run))
    below = _wrapped([*notes(cutting, run)])
    last = _wrapped([adds_up(cutting, run.saw)])
    legend: list[str] = []
    while True:
        # What has no room in its piece is listed below, which takes room again.
        under = [*legend, *below, *last]
        room = height - head - len(under) * _NOTE - 4
        picture = saw_picture(cutting, run.saw, run.names, room, folds)
        listed = _legend(picture)
        if len(listed) <= len(legend):
            break
        legend = listed
    scene.place(picture.scene, 0.0, head)
    y = head + picture.scene.height + 6
    for line in [*listed, *below, *last]:
        scene.add(Text(x=0, y=y + 4, text=line, size=10))
        y += _NOTE
    return Block(scene=scene, short_of=picture.short_of)


def _legend(picture: SawPicture) -> list[str]:
    return [
        line
        for letter, said in picture.legend
        for line in lines(f"{letter}:  {said}", WIDTH, 10.0)
    ]


def _wrapped(sentences: list[str]) -> list[str]:
    return [line for said in sentences if said for line in lines(said, WIDTH, 10.0)]


def name_of(piece: Piece, copy: int) -> str:
    """`W1`, or which of several alike."""
    return piece.id if piece.copies == 1 else f"{piece.id} no. {copy}"


def _head(scene: Scene, cutting: Cutting, run: Run) -> float:
    """The number, the size, the boxed words and the steps; how high they are. [pt]"""
    piece = cutting.piece
    number = list(_number(name_of(piece, cutting.copy)))
    scene.extend(number)
    left = max(text.rect().x1 for text in number) + 9
    scene.add(
        Text(
            x=left,
            y=14,
            text=_size_in_words(piece, run),
            size=12,
            figures=True,
        )
    )
    right = left
    for words in (cutting.how_cut.upper(), "FACE A UP"):
        label = Text(x=right + 4, y=38, text=words, size=12, bold=True)
        frame = Rect(right, 24, label.rect().x1 + 4, 44)
        scene.add(Box(rect=frame, weight=1.0), label)
        right = frame.x1 + 6
    wide = Text(x=left, y=14, text=_size_in_words(piece, run), size=12, figures=True).rect().x1  # fmt: skip
    start = max(right, wide + 8, 308.0)
    y = 9.0
    for count, step in enumerate(steps(cutting, run.saw), start=1):
        scene.add(Text(x=start, y=y, text=str(count), size=10, bold=True))
        for line in lines(step, WIDTH - start - 12, 10.0, condensed=True):
            scene.add(Text(x=start + 12, y=y, text=line, size=10, condensed=True))
            y += _STEP
    return y + 2


def _number(name: str) -> Iterator[Text]:
    for size, condensed in _NUMBER_SIZES:
        if width(name, size, bold=True, condensed=condensed) <= _NUMBER_ROOM:
            y = 4 + 0.73 * size if size > 20 else 24.0
            yield Text(x=0, y=y, text=name, size=size, bold=True, condensed=condensed)
            return
    size, condensed = _NUMBER_SIZES[-1]
    lines = wrap(name, _NUMBER_ROOM, size, bold=True, condensed=condensed)
    for count, line in enumerate(lines):
        yield Text(
            x=0, y=12 + 15.0 * count, text=line, size=size, bold=True, condensed=condensed
        )  # fmt: skip


def _size_in_words(piece: Piece, run: Run) -> str:
    unit = run.saw.unit
    is_board = not piece.is_sheet
    long = feet_and_inches(piece.length, unit) if is_board else tape(piece.length, unit)
    words = [
        f"{long} × {tape(piece.width, unit)}", run.product, piece.grade,
        *not_straight(piece, unit),
    ]  # fmt: skip
    return ", ".join(word for word in words if word)
