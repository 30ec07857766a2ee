"""What is wanted, as a plan file says it: finished parts, and the blanks they are milled from."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

Box = tuple[int, int, int, int]
"""x0, y0, x1, y1. [ticks]"""


@dataclass(frozen=True)
class GlueUp:
    """How a panel is glued up from strips of widths that the plan chooses. [ticks]

    Parameters
    ----------
    step
        Width of one step.
    units
        Steps of width the panel asks for. [-]
    least, most
        Width of a strip.
    colour
        Where its strips come from: any, one lot, one board.
    """

    step: int
    units: int
    least: int
    most: int
    colour: str


@dataclass(frozen=True)
class Part:
    """A finished part; `why` holds the terms of each of its sizes. [ticks]

    Parameters
    ----------
    zone
        How far from each of its ends it is a joint zone.
    """

    id: str
    quantity: int
    size: tuple[int, int, int]
    why: tuple[tuple[int, ...], tuple[int, ...], tuple[int, ...]]
    show_face: str
    back_face: str
    strips: int
    set_up: bool
    zone: int
    glue_up: GlueUp | None

    @property
    def demand(self) -> str:
        """What `need`, `makes` and `prices` call it."""
        if self.glue_up is not None:
            return f"{self.id} width"
        return self.id if self.strips == 1 else f"{self.id} strip"

    @property
    def asked(self) -> int:
        """How many of its demand the job asks for; test pieces are not asked for."""
        if self.set_up:
            return 0
        each = self.strips if self.glue_up is None else self.glue_up.units
        return self.quantity * each


@dataclass(frozen=True)
class Inside:
    """Where one finished part lies in its blank. [ticks]"""

    part: str
    box: Box
    slice: int


@dataclass(frozen=True)
class Step:
    """A blank's place in a set that is cut in steps from one board: its number, of how many."""

    set: str
    number: int
    of: int


@dataclass(frozen=True)
class Blank:
    """What the saw delivers. [ticks]"""

    id: str
    route: str
    wood: str
    length: int
    width: int
    thickness: int
    lines: frozenset[str]
    makes: Mapping[str, int]
    inside: tuple[Inside, ...]
    show_face: str
    back_face: str
    turned: bool
    step: Step | None
    may_spare: bool

    @property
    def shows(self) -> bool:
        """Whether checks and splits stay at a distance from it."""
        return self.show_face == "clear"

    @property
    def num_slices(self) -> int:
        """Into how many slices it is resawn; 1 when it is not."""
        return max((inside.slice for inside in self.inside), default=0) + 1
