"""One wood of a job as a question to the packer: blanks become items, parts demands, pieces bins."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence

from yieldplan import stock
from yieldplan.model.blanks import Blank
from yieldplan.model.faces import (
    MARK_KINDS,
    FaceWord,
    Mark,
    MarkKind,
    forbidden_by,
    forbidden_in_joints,
)
from yieldplan.model.job import Job
from yieldplan.model.parts import Part, joint_zone
from yieldplan.model.pieces import Piece
from yieldplan.model.rounding import (
    BlankTicks,
    blank_in_ticks,
    ends_in_ticks,
    mark_in_ticks,
    piece_in_ticks,
    trims_in_ticks,
)
from yieldplan.model.shop import Shop
from yieldplan.packing.problem import Bin, Block, Demand, Item, Problem
from yieldplan.packing.wood.leftovers import KeepSizes
from yieldplan.units import nearest_tick, to_ticks_up


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
    packs = _packs(offered)
    kind = stock.kinds()[offered[0].kind if offered else "rough board"]
    along, across = kind.steps_on(offered, shop)
    return Problem(
        demands=tuple(
            Demand(
                name=part.demand,
                need=part.needed,
                rank=0 if part.show_face == "clear" else 1,
                area=to_ticks_up(part.length.value)
                * to_ticks_up(part.width.value)
                // (part.needed // part.quantity),
                whole=part.needed // part.quantity,
            )
            for part in asked
        ),
        items=tuple(item_of(blank, place, parts, job) for blank in routes),
        bins=tuple(_bin(piece, routes, fits, parts, job) for piece in offered),
        family=kind.family(shop),
        kerf=to_ticks_up(shop.kerf),
        step_along=to_ticks_up(along),
        step_across=to_ticks_up(across),
        # One grid a wood: its boards are of kinds that are marked alike.
        marks_from=(offered[0].marks_from if offered else None) or kind.marks_from,
        crook_at_most=None
        if shop.straight_line_rip
        else to_ticks_up(shop.crook_at_most),
        twisted_at_most=to_ticks_up(shop.twisted_at_most),
        sets=_sets(routes),
        # Beside whole boards that a pack leaves over, its offcuts are worth nothing.
        offcut_percent=0 if packs else _offcut_percent(asked, job),
        offcut_sizes=keep_sizes(asked, shop).sizes,
        packs=packs,
    )


def _packs(offered: Sequence[Piece]) -> tuple[tuple[int, ...], ...]:
    """Pieces that are sold only together, pack by pack, in the order they are offered."""
    packs: dict[str, list[int]] = {}
    for number, piece in enumerate(offered):
        if piece.pack:
            packs.setdefault(piece.pack, []).append(number)
    return tuple(map(tuple, packs.values()))


def keep_sizes(asked: Sequence[Part], shop: Shop) -> KeepSizes:
    """What is worth keeping of a wood that these parts are asked of."""
    widths = [part.width.value for part in asked if part.is_stick]
    return KeepSizes.of(shop, show=shows(asked), stick=min(widths, default=None))


def shows(asked: Sequence[Part]) -> bool:
    """Whether a wood is one of the job's show woods: one of its parts shows a clear face."""
    return any(part.show_face == "clear" for part in asked)


_MOST_PERCENT = 50


def _offcut_percent(asked: Sequence[Part], job: Job) -> int:
    if any(part.is_sawn_to_size for part in asked):
        return 0
    shop = job.shop
    percent = shop.offcut_percent_show if shows(asked) else shop.offcut_percent_other
    return min(percent, _MOST_PERCENT)


def _sets(routes: Sequence[Blank]) -> tuple[tuple[int, ...], ...]:
    """Blanks that are steps of a set, set by set, in order."""
    steps: dict[str, dict[int, int]] = {}
    for number, blank in enumerate(routes):
        if blank.step is not None:
            steps.setdefault(blank.step.set, {})[blank.step.number] = number
    return tuple(
        tuple(number for _, number in sorted(found.items()))
        for _, found in sorted(steps.items())
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


def item_of(
    blank: Blank, place: Mapping[str, int], parts: Sequence[Part], job: Job
) -> Item:
    """The blank as an item.

    Parameters
    ----------
    place
        Demand to its number.
    """
    size = blank_in_ticks(blank, job.shop.kerf)
    show, back = _mask(blank.show_face, job), _mask(blank.back_face, job)
    if blank.show_face == "clear":
        show, back = show | _SHOWS, back | _SHOWS
    zones = _zones(blank, size, parts, job)
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
        may_spare=blank.may_spare,
        zones=zones,
        zone_bits=_bits(forbidden_in_joints(bridge_pith=job.shop.bridge_pith))
        if any(zones)
        else 0,
    )


_SHOWS = 1 << len(MARK_KINDS)
"""Bit of the stretch beside a check that only parts which show keep away from."""


def _mask(word: FaceWord, job: Job) -> int:
    return _bits(forbidden_by(word, bridge_pith=job.shop.bridge_pith))


def _bits(kinds: frozenset[MarkKind]) -> int:
    return sum(1 << bit for bit, kind in enumerate(MARK_KINDS) if kind in kinds)


def _zones(
    blank: Blank, size: BlankTicks, parts: Sequence[Part], job: Job
) -> tuple[int, int]:
    """How far from its ends a blank is a joint zone: all of it where it holds several parts."""
    part_of = {part.demand: part for part in parts}
    zones = {
        to_ticks_up(joint_zone(part_of[demand], job.shop))
        for demand in blank.makes
        if demand in part_of
    }
    if blank.turned or not any(zones):
        return (0, 0)
    boxes = set(size.inside)
    if len(boxes) > 1:
        return (size.length, size.length)
    (box,) = boxes
    zone = max(zones)
    return (box[0] + zone, size.length - box[2] + zone)


def _bin(
    piece: Piece,
    routes: Sequence[Blank],
    fits: Mapping[str, tuple[str, ...]],
    parts: Sequence[Part],
    job: Job,
) -> Bin:
    length, width = piece_in_ticks(piece)
    trims, edges = trims_in_ticks(piece)
    ends = ends_in_ticks(piece)
    return Bin(
        name=piece.id,
        length=length,
        width=width,
        trims=trims,
        edges=edges,
        blocks=tuple(block for mark in piece.marks for block in _blocks(mark, job)),
        price=piece.price,
        copies=piece.copies,
        holds=frozenset(
            number
            for number, blank in enumerate(routes)
            if piece.line in fits.get(blank.id, ())
            and _may_come_from(blank, piece, parts, job)
        ),
        widths=ends if ends[0] != ends[1] else None,
        crook=to_ticks_up(piece.crook),
        is_twisted=piece.twist > 0,
        found=tuple(mark_in_ticks(mark) for mark in piece.marks),
    )


def _may_come_from(blank: Blank, piece: Piece, parts: Sequence[Part], job: Job) -> bool:
    """Whether a board is flat enough for a blank of this length."""
    if piece.is_straight:
        return True
    length = blank_in_ticks(blank, job.shop.kerf).length
    whole, _ = piece_in_ticks(piece)
    if piece.twist and length > to_ticks_up(job.shop.twisted_at_most):
        return False
    if blank.step is not None:
        return False
    # Planing takes the bow of the blank's own length besides what it takes anyway.
    lost = -(-to_ticks_up(piece.bow) * length**2 // whole**2)
    least = max(
        (
            to_ticks_up(part.thickness.value)
            for part in parts
            if part.demand in blank.makes
        ),
        default=0,
    )
    if not piece.is_planed or blank.slices > 1:
        least = max(least, to_ticks_up(blank.thickness.value))
    return least <= nearest_tick(piece.thick) + 1 - lost


def _blocks(mark: Mark, job: Job) -> Iterator[Block]:
    """The mark with what must stay clear around it."""
    x0, y0, x1, y1 = mark_in_ticks(mark)
    around = to_ticks_up(job.shop.knot_margin) if mark.kind == "knot" else 0
    box = (x0 - around, y0 - around, x1 + around, y1 + around)
    yield _block(box, 1 << MARK_KINDS.index(mark.kind), mark)
    short = to_ticks_up(job.shop.check_margin)
    if mark.kind in ("check", "split") and short:
        yield _block((x0 - short, y0, x1 + short, y1), _SHOWS, mark)


def _block(box: tuple[int, int, int, int], bit: int, mark: Mark) -> Block:
    return Block(
        box=box,
        on_a=bit if mark.face in ("A", "through") else 0,
        on_b=bit if mark.face in ("B", "through") else 0,
    )
