"""A picture before it is painted: lines, frames, rings and words in points, y downward."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field, replace
from typing import Literal

from yieldplan.drawing.fonts import ASCENT, DESCENT
from yieldplan.drawing.fractions import Run, runs

Align = Literal["left", "middle", "right"]
Dash = tuple[float, ...]


@dataclass(frozen=True)
class Rect:
    """A stretch of the picture. [pt]"""

    x0: float
    y0: float
    x1: float
    y1: float

    @property
    def width(self) -> float:
        """[pt]"""
        return self.x1 - self.x0

    @property
    def height(self) -> float:
        """[pt]"""
        return self.y1 - self.y0

    def inset(self, by: float) -> Rect:
        """The rectangle less a margin on every side."""
        return Rect(self.x0 + by, self.y0 + by, self.x1 - by, self.y1 - by)

    def meets(self, other: Rect) -> bool:
        """Whether the two share more than an edge."""
        return (
            self.x0 < other.x1
            and other.x0 < self.x1
            and self.y0 < other.y1
            and other.y0 < self.y1
        )


@dataclass(frozen=True, kw_only=True)
class Line:
    """A straight stroke. [pt]"""

    x0: float
    y0: float
    x1: float
    y1: float
    weight: float
    dash: Dash = ()


@dataclass(frozen=True, kw_only=True)
class Box:
    """A frame, white inside unless it is left open or filled. [pt]"""

    rect: Rect
    weight: float = 0.0
    dash: Dash = ()
    fill: Literal["white", "black", "none"] = "none"


@dataclass(frozen=True, kw_only=True)
class Ring:
    """An ellipse around a point; a dot when filled. [pt]"""

    x: float
    y: float
    rx: float
    ry: float
    weight: float = 0.0
    dash: Dash = ()
    filled: bool = False


@dataclass(frozen=True, kw_only=True)
class Arrow:
    """The head of an arrow, its point at (x, y), pointing right. [pt]"""

    x: float
    y: float
    length: float = 6.0
    half: float = 2.2


@dataclass(frozen=True, kw_only=True)
class Text:
    """A line of words standing on y.

    Parameters
    ----------
    x, y, size
        [pt]
    figures
        Whether it is a size of ours, whose fractions are built.
    """

    x: float
    y: float
    text: str
    size: float
    bold: bool = False
    condensed: bool = False
    align: Align = "left"
    figures: bool = False

    def placed(self) -> tuple[tuple[Run, ...], float]:
        """What to paint, from the left end of the line, and where that end is. [pt]"""
        stretches, wide = self._set()
        share = {"left": 0.0, "middle": 0.5, "right": 1.0}[self.align]
        return stretches, self.x - share * wide

    def rect(self) -> Rect:
        """The room the words take."""
        _, wide = self._set()
        _, left = self.placed()
        return Rect(
            left, self.y - ASCENT * self.size, left + wide, self.y + DESCENT * self.size
        )

    def _set(self) -> tuple[tuple[Run, ...], float]:
        return runs(
            self.text,
            self.size,
            bold=self.bold,
            condensed=self.condensed,
            figures=self.figures,
        )


Item = Line | Box | Ring | Arrow | Text


def moved(item: Item, x: float, y: float) -> Item:
    """The item somewhere else: further right and further down. [pt]"""
    match item:
        case Line():
            return replace(
                item, x0=item.x0 + x, x1=item.x1 + x, y0=item.y0 + y, y1=item.y1 + y
            )
        case Box():
            rect = item.rect
            there = Rect(rect.x0 + x, rect.y0 + y, rect.x1 + x, rect.y1 + y)
            return replace(item, rect=there)
        case _:
            return replace(item, x=item.x + x, y=item.y + y)


@dataclass
class Scene:
    """Everything on one picture, in the order it is painted.

    Parameters
    ----------
    width, height
        [pt]
    """

    width: float
    height: float
    says: str = ""
    items: list[Item] = field(default_factory=list)

    def add(self, *items: Item) -> None:
        """Put something on top of what is there."""
        self.items.extend(items)

    def extend(self, items: Iterable[Item]) -> None:
        """Put several things on top."""
        self.items.extend(items)

    def place(self, other: Scene, x: float, y: float) -> None:
        """Put another picture on this one, its corner at (x, y). [pt]"""
        self.extend(moved(item, x, y) for item in other.items)

    def texts(self) -> Iterator[Text]:
        """Every line of words."""
        return (item for item in self.items if isinstance(item, Text))

    def collisions(self) -> list[tuple[str, str]]:
        """Words that touch other words, or leave the picture (named twice then)."""
        found: list[tuple[str, str]] = []
        # Lines set without a gap may touch by a rounding error.
        boxes = [(text.text, text.rect().inset(0.01)) for text in self.texts()]
        for number, (text, rect) in enumerate(boxes):
            if (
                rect.x0 < 0
                or rect.y0 < 0
                or rect.x1 > self.width
                or rect.y1 > self.height
            ):
                found.append((text, text))
            found.extend(
                (text, other)
                for other, there in boxes[number + 1 :]
                if rect.meets(there)
            )
        return found
