"""What a plan file says, read into plain records: parts, blanks, pieces, cuts and money."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import cached_property

from yieldplan.checking.further import Limited, Packs, Sets, Tried
from yieldplan.checking.saying import say_length
from yieldplan.checking.wanted import Blank, Box, Part


@dataclass(frozen=True)
class Mark:
    """A defect of a piece. [ticks]"""

    kind: str
    face: str
    box: Box


@dataclass(frozen=True)
class Piece:
    """A piece of stock that was offered. [ticks; money/10,000; board feet/100]

    Parameters
    ----------
    widths
        At zero and at the far end; `width` is the greater.
    crook, bow, twist
        How far an edge, a face, a corner is off.
    pack
        What it is sold only together with; empty for a piece sold singly.
    """

    id: str
    wood: str
    line: str
    kind: str
    planed: bool
    thick: int
    grade: str
    lot: str
    length: int
    width: int
    widths: tuple[int, int]
    crook: int
    bow: int
    twist: int
    copies: int
    feet: int | None
    per_foot: int | None
    price: int
    trims: tuple[int, int]
    edges: tuple[int, int]
    marks: tuple[Mark, ...]
    pack: str = ""

    @property
    def is_straight(self) -> bool:
        """Whether it has neither crook, bow nor twist and is as wide at both ends."""
        return self.widths[0] == self.widths[1] and not (
            self.crook or self.bow or self.twist
        )

    @property
    def is_sheet(self) -> bool:
        """Whether it is a sheet: only boards have board feet."""
        return self.feet is None

    def width_at(self, x: int) -> int:
        """How wide it is there, its far edge being straight. [ticks]"""
        at_zero, at_far_end = self.widths
        return at_zero + (at_far_end - at_zero) * x // self.length


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
class Offcuts:
    """What an offcut counts for, per cent of its share of the price, and from which sizes on."""

    percent: int
    sizes: tuple[tuple[int, int], ...]


@dataclass(frozen=True)
class Rules:
    """How a wood is cut. [ticks]

    Parameters
    ----------
    crook_at_most
        The most crook in a stretch that is ripped; None for any.
    twisted_at_most
        The longest blank from a twisted piece.
    around_knots, short_of_checks
        How far a knot reaches all around, and a check or split along.
    """

    family: str
    kerf: int
    along: int
    across: int
    marks_from: str
    crook_at_most: int | None
    twisted_at_most: int
    around_knots: int
    short_of_checks: int
    resaw_kerf: int
    offcuts: Offcuts


@dataclass(frozen=True)
class Bound:
    """The floor as printed, and the prices that prove it. [money/10,000]

    Parameters
    ----------
    as_asked
        Whether values count no blank oftener than it is asked for, where wood is clear.
    limited
        Lesser values of some pieces.
    sets, tried, packs
        Further proofs, each of a floor of its own.
    """

    value: int
    priced: int
    family: str
    prices: Mapping[str, int]
    as_asked: bool = False
    limited: tuple[Limited, ...] = ()
    sets: Sets | None = None
    tried: Tried | None = None
    packs: Packs | None = None


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
    pack: str = ""


@dataclass(frozen=True)
class Plan:
    """Everything a plan file says that can be checked."""

    complete: bool
    unit: str
    faces: Mapping[str, frozenset[str]]
    zones: frozenset[str]
    parts: tuple[Part, ...]
    blanks: tuple[Blank, ...]
    stock: tuple[Piece, ...]
    woods: tuple[Wood, ...]
    purchase: tuple[PurchaseLine, ...]
    total: int
    minimum: tuple[tuple[str, int], ...] = ()
    """What a wood's lines must come to; under no name all of them. [money/10,000]"""

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
