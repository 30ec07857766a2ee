"""What a plan file says, read into plain records: parts, blanks, pieces, cuts and money."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import cached_property

Box = tuple[int, int, int, int]
"""x0, y0, x1, y1. [ticks]"""


@dataclass(frozen=True)
class Part:
    """A finished part; `why` holds the terms of each of its sizes. [ticks]"""

    id: str
    quantity: int
    size: tuple[int, int, int]
    why: tuple[tuple[int, ...], tuple[int, ...], tuple[int, ...]]
    show_face: str
    back_face: str
    strips: int
    set_up: bool

    @property
    def demand(self) -> str:
        """What `need`, `makes` and `prices` call it."""
        return self.id if self.strips == 1 else f"{self.id} strip"

    @property
    def asked(self) -> int:
        """How many of its demand the job asks for; test pieces are not asked for."""
        return 0 if self.set_up else self.quantity * self.strips


@dataclass(frozen=True)
class Inside:
    """Where one finished part lies in its blank. [ticks]"""

    part: str
    box: Box


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


@dataclass(frozen=True)
class Mark:
    """A defect of a piece. [ticks]"""

    kind: str
    face: str
    box: Box


@dataclass(frozen=True)
class Piece:
    """A piece of stock that was offered. [ticks; money/10,000; board feet/100]"""

    id: str
    wood: str
    line: str
    kind: str
    planed: bool
    thick: int
    grade: str
    length: int
    width: int
    copies: int
    feet: int | None
    per_foot: int | None
    price: int
    trims: tuple[int, int]
    edges: tuple[int, int]
    marks: tuple[Mark, ...]


@dataclass(frozen=True)
class Node:
    """A stretch of a piece: cut further, a blank, or left with a fate."""

    id: str
    box: Box
    cut: str = ""
    into: tuple[Node, ...] = ()
    blank: str = ""
    face_up: str = ""
    fate: str = ""
    name: str = ""
    worth: int = 0

    def every(self) -> Iterator[Node]:
        """Itself and every node below it."""
        yield self
        for child in self.into:
            yield from child.every()


@dataclass(frozen=True)
class Cutting:
    """One copy of a piece, and its cuts."""

    stock: str
    copy: int
    tree: Node


@dataclass(frozen=True)
class Rules:
    """How a wood is cut. [ticks]"""

    family: str
    kerf: int
    along: int
    across: int
    marks_from: str


@dataclass(frozen=True)
class Bound:
    """The floor as printed, and the prices that prove it. [money/10,000]"""

    value: int
    priced: int
    family: str
    prices: Mapping[str, int]


@dataclass(frozen=True)
class Wood:
    """The plan for one wood. [money/10,000]"""

    name: str
    rules: Rules
    need: Mapping[str, int]
    missing: Mapping[str, int]
    cuttings: tuple[Cutting, ...]
    cost: int
    bound: Bound

    def leaves(self) -> Iterator[tuple[Cutting, Node]]:
        """Every leaf that is a blank, with the cutting it belongs to."""
        for cutting in self.cuttings:
            for node in cutting.tree.every():
                if node.blank:
                    yield cutting, node


@dataclass(frozen=True)
class PurchaseLine:
    """One line of what is bought. [money/10,000; board feet/100]"""

    wood: str
    line: str
    grade: str
    pieces: tuple[tuple[str, int], ...]
    feet: int | None
    by: str
    per: int
    total: int


@dataclass(frozen=True)
class Plan:
    """Everything a plan file says that can be checked."""

    complete: bool
    unit: str
    faces: Mapping[str, frozenset[str]]
    parts: tuple[Part, ...]
    blanks: tuple[Blank, ...]
    stock: tuple[Piece, ...]
    woods: tuple[Wood, ...]
    purchase: tuple[PurchaseLine, ...]
    total: int

    @cached_property
    def part_of(self) -> Mapping[str, Part]:
        """Demand to the part it is for."""
        return {part.demand: part for part in self.parts}

    @cached_property
    def blank_of(self) -> Mapping[str, Blank]:
        """Blank by id."""
        return {blank.id: blank for blank in self.blanks}

    @cached_property
    def piece_of(self) -> Mapping[str, Piece]:
        """Piece of stock by id."""
        return {piece.id: piece for piece in self.stock}

    def say(self, ticks: int) -> str:
        """A length for a person: the ticks, and the fraction or millimetres they are."""
        if 0 < abs(ticks) < 64:
            # Less than 1/128 in: no mark on a tape says it.
            return f"{ticks} tick{'' if abs(ticks) == 1 else 's'}"
        return f"{say_length(ticks, self.unit)} ({ticks} ticks)"


def say_length(ticks: int, unit: str) -> str:
    """A length in fractions of an inch or in millimetres, as near as a tape says it."""
    sign, ticks = ("-" if ticks < 0 else ""), abs(ticks)
    if unit == "mm":
        tenths = (ticks + 16) // 32
        about = "" if ticks == tenths * 32 else "about "
        return f"{about}{sign}{tenths // 10}.{tenths % 10} mm"
    sixty_fourths = (ticks * 2 + 127) // 254
    about = "" if ticks == sixty_fourths * 127 else "about "
    return f"{about}{sign}{_mixed(sixty_fourths)} in"


def _mixed(sixty_fourths: int) -> str:
    whole, top = divmod(sixty_fourths, 64)
    bottom = 64
    while top and top % 2 == 0:
        top, bottom = top // 2, bottom // 2
    if not top:
        return str(whole)
    return f"{whole}-{top}/{bottom}" if whole else f"{top}/{bottom}"


def say_money(units: int) -> str:
    """Money for a person, to the last 1/10,000 that is not zero, at least to the cent."""
    sign, units = ("-" if units < 0 else ""), abs(units)
    whole, part = divmod(units, 10_000)
    digits = f"{part:04d}"
    digits = digits[:2] + digits[2:].rstrip("0")
    return f"{sign}{whole}.{digits}"


def say_feet(hundredths: int) -> str:
    """Board feet for a person."""
    return f"{hundredths // 100}.{hundredths % 100:02d}"
