"""One wood of a job as a question to the packer: blanks become items, parts demands, pieces bins."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence

from yieldplan import stock
from yieldplan.model.blanks import Blank
from yieldplan.model.faces import FORBIDS, MARK_KINDS, FaceWord, Mark
from yieldplan.model.job import Job
from yieldplan.model.parts import Part
from yieldplan.model.pieces import Piece
from yieldplan.model.rounding import (
    blank_in_ticks,
    mark_in_ticks,
    piece_in_ticks,
    trims_in_ticks,
)
from yieldplan.model.shop import FAMILY_OF
from yieldplan.packing.problem import Bin, Block, Demand, Item, Problem
from yieldplan.units import to_ticks_up


def pose(
    wood: str,
    parts: Sequence[Part],
    blanks: Sequence[Blank],
    pieces: Sequence[Piece],
    fits: Mapping[str, tuple[str, ...]],
    job: Job,
) -> Problem:
    """The wood's parts, the blanks that make them and the pieces they may come from.

    Parameters
    ----------
    fits
        Blank id to the stock lines it may be cut from.
    """
    shop = job.shop
    asked = parts_asked(wood, parts)
    place = {part.demand: number for number, part in enumerate(asked)}
    routes = [blank for blank in blanks_for(wood, blanks) if not blank.set_up]
    offered = pieces_of(wood, pieces)
    kind = stock.kinds()[offered[0].kind if offered else "rough board"]
    along, across = kind.steps(shop)
    return Problem(
        demands=tuple(
            Demand(
                name=part.demand,
                need=part.needed,
                rank=0 if part.show_face == "clear" else 1,
                area=to_ticks_up(part.length.value)
                * to_ticks_up(part.width.value)
                // part.strips,
            )
            for part in asked
        ),
        items=tuple(item_of(blank, place, job) for blank in routes),
        bins=tuple(_bin(piece, routes, fits) for piece in offered),
        family=FAMILY_OF[shop.breakdown],
        kerf=to_ticks_up(shop.kerf),
        step_along=to_ticks_up(along),
        step_across=to_ticks_up(across),
        # One grid a wood: its boards are of kinds that are marked alike.
        marks_from=kind.marks_from,
    )


def parts_asked(wood: str, parts: Sequence[Part]) -> list[Part]:
    """The parts of a wood that must be made."""
    return [part for part in parts if part.wood == wood and not part.set_up]


def blanks_for(wood: str, blanks: Sequence[Blank]) -> list[Blank]:
    """The blanks that come from a wood, set-up pieces too."""
    return [blank for blank in blanks if blank.wood == wood]


def pieces_of(wood: str, pieces: Sequence[Piece]) -> list[Piece]:
    """The pieces of a wood, W2 before W10."""
    return sorted(
        (piece for piece in pieces if piece.wood == wood),
        key=lambda piece: _natural(piece.id),
    )


def _natural(name: str) -> list[tuple[int, int, str]]:
    return [
        (0, int(run), run) if run.isdigit() else (1, 0, run)
        for run in re.findall(r"[0-9]+|[^0-9]+", name)
    ]


def item_of(blank: Blank, place: Mapping[str, int], job: Job) -> Item:
    """The blank as an item.

    Parameters
    ----------
    place
        Demand to its number.
    """
    size = blank_in_ticks(blank, job.shop.kerf)
    show, back = _mask(blank.show_face), _mask(blank.back_face)
    return Item(
        name=blank.id,
        length=size.length,
        width=size.width,
        makes={
            place[demand]: count
            for demand, count in sorted(blank.makes.items())
            if demand in place
        },
        layers=((show, back), (back, show)),
        may_spare=blank.route == "gang",
    )


def _mask(word: FaceWord) -> int:
    return sum(1 << bit for bit, kind in enumerate(MARK_KINDS) if kind in FORBIDS[word])


def _bin(
    piece: Piece, routes: Sequence[Blank], fits: Mapping[str, tuple[str, ...]]
) -> Bin:
    length, width = piece_in_ticks(piece)
    trims, edges = trims_in_ticks(piece)
    return Bin(
        name=piece.id,
        length=length,
        width=width,
        trims=trims,
        edges=edges,
        blocks=tuple(_block(mark) for mark in piece.marks),
        price=piece.price,
        copies=piece.copies,
        holds=frozenset(
            number
            for number, blank in enumerate(routes)
            if piece.line in fits.get(blank.id, ())
        ),
    )


def _block(mark: Mark) -> Block:
    bit = 1 << MARK_KINDS.index(mark.kind)
    return Block(
        box=mark_in_ticks(mark),
        on_a=bit if mark.face in ("A", "through") else 0,
        on_b=bit if mark.face in ("B", "through") else 0,
    )
