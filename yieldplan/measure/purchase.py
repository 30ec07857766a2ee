"""The purchase list: what is bought, line by line, and what becomes of its board feet."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from fractions import Fraction
from math import ceil
from typing import Literal

from yieldplan.measure.money import to_the_cent
from yieldplan.measure.order import natural
from yieldplan.measure.packs import packs_opened, price_of_pack
from yieldplan.measure.thickness import parse_thickness
from yieldplan.model.blanks import Blank
from yieldplan.model.pieces import Piece
from yieldplan.model.plan import Cutting, Plan, PurchaseLine, WoodPlan
from yieldplan.units import Inches, TapeError, UnitName

CUBIC_INCHES_PER_BOARD_FOOT = 144

_Heading = tuple[str, str, str, Literal["foot", "piece", "pack"], int, str]
"""Wood, line, grade, by foot, by piece or by pack, the price of one, and the pack's name."""


@dataclass
class _Bought:
    copies: Counter[str] = field(default_factory=Counter)
    pieces: dict[str, Piece] = field(default_factory=dict)


def lines(
    cuttings_by_wood: Sequence[WoodPlan], offered: Sequence[Piece] = ()
) -> tuple[PurchaseLine, ...]:
    """One line for all pieces of a stock line, grade and price, and one for each pack opened.

    In natural order. A line's total is rounded half up to the cent, once; sums add
    rounded lines.

    Parameters
    ----------
    offered
        Every piece: what else is in a pack that is opened is bought with it.
    """
    bought: dict[_Heading, _Bought] = {}
    for wood in cuttings_by_wood:
        for name, pieces in packs_opened(wood, offered).items():
            bought[_heading_of_pack(name, pieces)] = _Bought(
                copies=Counter({piece.id: piece.copies for piece in pieces}),
                pieces={piece.id: piece for piece in pieces},
            )
        for cutting in wood.cuttings:
            piece = cutting.piece
            if piece.pack:
                continue
            under = bought.setdefault(_heading(piece), _Bought())
            under.copies[piece.id] += 1
            under.pieces[piece.id] = piece
    ordered = sorted(
        bought,
        key=lambda h: (
            *(natural(name) for name in h[:3]),
            h[3],
            natural(h[5]),
            -h[4],
        ),
    )
    return tuple(_line(heading, bought[heading]) for heading in ordered)


def net_and_rough(plan: Plan, line: PurchaseLine) -> tuple[Fraction, Fraction]:
    """Board feet of the finished parts, and of the blanks, sawn from a purchase line.

    Both are taken at the thickness the yard measures the stock by, so that they stand
    beside the board feet bought. Set-up pieces come out of waste and count in neither.
    [bf]

    Raises
    ------
    ValueError
        For a line of sheets, which have no board feet.
    """
    if line.board_feet is None:
        raise ValueError(f"{line.line} is not measured in board feet")
    blank_of = {blank.id: blank for blank in plan.blanks}
    net = rough = Fraction(0)
    for cutting in _cut_from(plan, line):
        thickness = measured_thickness(cutting.piece, plan.job.unit)
        for blank in _blanks_in(cutting, blank_of):
            finished = sum((p.length * p.width for p in blank.laid_out), Fraction(0))
            net += finished * thickness
            rough += blank.length.value * blank.width.value * thickness
    return net / CUBIC_INCHES_PER_BOARD_FOOT, rough / CUBIC_INCHES_PER_BOARD_FOOT


def running_length(line: PurchaseLine, piece_of: Mapping[str, Piece]) -> Inches | None:
    """How long the sticks of a line are together; None where it has no sticks. [in]"""
    pieces = [(piece_of[name], copies) for name, copies in line.pieces]
    if not pieces or not all(piece.is_stick for piece, _ in pieces):
        return None
    return sum((piece.length * copies for piece, copies in pieces), Fraction(0))


def say_run(run: Inches, unit: UnitName) -> str:
    """`36 running feet`, `37.5 running feet`, `7.2 metres`: rounded up to a tenth."""
    if unit == "mm":
        size, word = run * Fraction(254, 10) / 1000, "metres"
    else:
        size, word = run / 12, "running feet"
    tenths = ceil(size * 10)
    return f"{tenths // 10}{f'.{tenths % 10}' if tenths % 10 else ''} {word}"


def measured_thickness(piece: Piece, unit: UnitName) -> Inches:
    """The thickness board feet are counted by: nominal, and one inch at the least. [in]

    A planed board is measured by what it was before the planer.
    """
    thick = piece.thick
    if piece.is_planed:
        try:
            thick = parse_thickness(piece.thickness, unit).measured
        except TapeError:
            # A name of the yard's own says nothing more than the rule does.
            thick = piece.thick
    return max(thick, Fraction(1))


def _heading(piece: Piece) -> _Heading:
    if piece.per_foot is None:
        return piece.wood, piece.line, piece.grade, "piece", piece.price, ""
    return piece.wood, piece.line, piece.grade, "foot", piece.per_foot, ""


def _heading_of_pack(name: str, pieces: Sequence[Piece]) -> _Heading:
    grades = {piece.grade for piece in pieces}
    grade = grades.pop() if len(grades) == 1 else ""
    first, price = pieces[0], price_of_pack(pieces)
    return first.wood, first.line, grade, "pack", price, name


def _line(heading: _Heading, bought: _Bought) -> PurchaseLine:
    wood, name, grade, by, per, pack = heading
    feet = _board_feet(bought)
    if by == "foot":
        if feet is None:
            raise ValueError(f"{name} is priced by the foot and has no board feet")
        amount = feet * per
    else:
        amount = Fraction(per if by == "pack" else bought.copies.total() * per)
    return PurchaseLine(
        wood=wood,
        line=name,
        grade=grade,
        pieces=tuple(
            (piece, bought.copies[piece])
            for piece in sorted(bought.copies, key=natural)
        ),
        board_feet=feet,
        by=by,
        per=per,
        total=to_the_cent(amount),
        pack=pack,
    )


def _board_feet(bought: _Bought) -> Fraction | None:
    total = Fraction(0)
    for name, piece in bought.pieces.items():
        if piece.board_feet is None:
            return None
        total += piece.board_feet * bought.copies[name]
    return total


def _cut_from(plan: Plan, line: PurchaseLine) -> Iterator[Cutting]:
    names = {name for name, _ in line.pieces}
    for wood in plan.woods:
        if wood.wood == line.wood:
            yield from (c for c in wood.cuttings if c.piece.id in names)


def _blanks_in(cutting: Cutting, blank_of: dict[str, Blank]) -> Iterator[Blank]:
    for leaf in cutting.tree.leaves():
        if leaf.blank is not None and not blank_of[leaf.blank].set_up:
            yield blank_of[leaf.blank]
