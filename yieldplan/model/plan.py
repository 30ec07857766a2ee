"""A plan: which pieces are cut, how, what that costs and how good it is proved to be."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from fractions import Fraction
from typing import Literal

from yieldplan.model.blanks import Blank
from yieldplan.model.job import Job
from yieldplan.model.parts import Part
from yieldplan.model.pieces import MarksFrom, Piece
from yieldplan.model.proofs import Limited, PacksProof, SetsProof, TriedProof

Family = Literal["R", "C", "E", "R+", "C+", "E+"]
Fate = Literal["trim", "edge", "burn", "keep"]
Box = tuple[int, int, int, int]
"""x0, y0, x1, y1 in ticks, in the frame of the piece."""


@dataclass(frozen=True, kw_only=True)
class Node:
    """A stretch of a piece in its cut tree: cut further, a blank, or left with a fate."""

    id: str
    box: Box
    cut: Literal["rip", "crosscut"] | None = None
    into: tuple[Node, ...] = ()
    blank: str | None = None
    face_up: Literal["A", "B"] = "A"
    fate: Fate | None = None
    name: str = ""
    worth: int = 0
    """What an offcut counts for. [money/10,000]"""

    def leaves(self) -> Iterator[Node]:
        """Every node below this one (or itself) that is not cut further."""
        if not self.into:
            yield self
        for child in self.into:
            yield from child.leaves()

    @property
    def length(self) -> int:
        """[ticks]"""
        return self.box[2] - self.box[0]

    @property
    def width(self) -> int:
        """[ticks]"""
        return self.box[3] - self.box[1]


@dataclass(frozen=True, kw_only=True)
class Cutting:
    """One copy of a piece, and the tree of its cuts."""

    piece: Piece
    copy: int
    tree: Node
    breakdown: Literal["rip first", "crosscut first"]

    @property
    def how_cut(self) -> str:
        """How it is broken down, in words; a stick has only the one way."""
        return "crosscut to length" if self.piece.is_stick else self.breakdown


@dataclass(frozen=True, kw_only=True)
class Rules:
    """How a wood is cut. [ticks]

    Parameters
    ----------
    crook_at_most
        A stretch that is ripped may have no more crook than this; None when the shop has
        a straight-line rip, which takes any.
    twisted_at_most
        Longest stretch and longest blank from a twisted board.
    around_knots
        Kept clear around a knot wherever a knot is forbidden.
    short_of_checks
        A blank that shows ends this far short of a check or split.
    resaw_kerf
        Lost between two slices.
    offcut_percent
        What an offcut worth keeping counts for, of its share of the piece's price.
    offcut_sizes
        Least (length, width) of an offcut worth keeping; any of them will do.
    """

    family: Family
    kerf: int
    step_along: int
    step_across: int
    marks_from: MarksFrom
    crook_at_most: int | None = None
    twisted_at_most: int = 0
    around_knots: int = 0
    short_of_checks: int = 0
    resaw_kerf: int = 0
    offcut_percent: int = 0
    offcut_sizes: tuple[tuple[int, int], ...] = ()


@dataclass(frozen=True, kw_only=True)
class Bound:
    """What no plan of the family can cost less than, with the prices that prove it.

    `priced` is what the prices give, with lower ones for the pieces of `limited`; `value`
    is the greatest of that lifted to what whole pieces can cost, and of what the further
    proofs say. [money/10,000]

    Parameters
    ----------
    as_asked
        Whether all of it counts no blank oftener than it is asked for in a clear run of a
        strip, and to lead strips beside each other.
    """

    value: int
    priced: int
    family: Family
    prices: Mapping[str, int]
    as_asked: bool = False
    limited: tuple[Limited, ...] = ()
    sets: SetsProof | None = None
    tried: TriedProof | None = None
    packs: PacksProof | None = None


@dataclass(frozen=True, kw_only=True)
class Missing:
    """Parts the plan leaves out, and the reason in words.

    Parameters
    ----------
    demand, count
        As the saw would deliver them: a panel's strips, its steps of width.
    parts
        How many parts that is, where they are not the same.
    """

    demand: str
    count: int
    reason: str
    remedy: str
    parts: int | None = None

    @property
    def said(self) -> str:
        """What is missing, as one would say it: `1 of top`."""
        if self.parts is None:
            return f"{self.count} of {self.demand}"
        name = self.demand.removesuffix(" width").removesuffix(" strip")
        return f"{self.parts} of {name}"


@dataclass(frozen=True, kw_only=True)
class Stage:
    """What one stage of the search reached, for the record."""

    name: str
    cost: int
    bound: int


@dataclass(frozen=True, kw_only=True)
class WoodPlan:
    """The plan for one wood.

    Parameters
    ----------
    need
        Demand id to number, as planned: what the job asks for less what is missing.
    is_sheet, is_stick
        Whether it is cut from sheets, or from sticks; else from boards.
    missing
        What no offered piece can give (or the pile is too small for).
    set_up_left
        Set-up pieces there was no waste for.
    ended
        Why the search ended, in words.
    """

    wood: str
    is_sheet: bool
    rules: Rules
    need: Mapping[str, int]
    missing: tuple[Missing, ...]
    cuttings: tuple[Cutting, ...]
    cost: int
    bound: Bound
    set_up_left: Mapping[str, int]
    stages: tuple[Stage, ...] = ()
    ended: str = ""
    is_stick: bool = False

    @property
    def thing(self) -> str:
        """What a person calls a piece of it: board, sheet or stick."""
        return "sheet" if self.is_sheet else "stick" if self.is_stick else "board"


@dataclass(frozen=True, kw_only=True)
class PurchaseLine:
    """One line of what is bought. [money/10,000]

    Parameters
    ----------
    pack
        The pack that the line is, bought whole; empty for a line of single pieces.
    """

    wood: str
    line: str
    grade: str
    pieces: tuple[tuple[str, int], ...]
    board_feet: Fraction | None
    by: Literal["foot", "piece", "pack", "minimum"]
    per: int
    total: int
    pack: str = ""


@dataclass(frozen=True, kw_only=True)
class Plan:
    """Everything decided for a job; papers are derived from it, never stored in it."""

    job: Job
    parts: tuple[Part, ...]
    blanks: tuple[Blank, ...]
    pieces: tuple[Piece, ...]
    fits: Mapping[str, tuple[str, ...]]
    """Blank id to the stock lines it may be cut from."""
    woods: tuple[WoodPlan, ...]
    purchase: tuple[PurchaseLine, ...]
    cautions: tuple[str, ...]
    on_the_bench: Mapping[str, int] = field(default_factory=dict)
    """Part to how many an earlier plan's cuts have delivered already."""
    mark: str = ""

    @property
    def complete(self) -> bool:
        """Whether every part the job asks for is in the plan."""
        return not any(wood.missing for wood in self.woods)

    @property
    def total(self) -> int:
        """What the purchase lines add up to. [money/10,000]"""
        return sum(line.total for line in self.purchase)
