"""What is left of a saved plan: boards not begun, sections and strips not cut up, offcuts, spoiled blanks."""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from pathlib import Path
from typing import ClassVar

from yieldplan import plan_file, stock
from yieldplan.faults import Faults, Where
from yieldplan.model.faces import Mark
from yieldplan.model.job import Job
from yieldplan.model.parts import MOST_PARTS
from yieldplan.model.pieces import Piece
from yieldplan.sources.delivered import delivered, is_spoiled_by
from yieldplan.sources.from_job import names_of_the_job
from yieldplan.sources.rest_piece import rest_piece, whole_piece
from yieldplan.sources.saved_pieces import (
    Document,
    SavedPieces,
    Spot,
    marks_of,
    saved_pieces,
)
from yieldplan.sources.since import Since
from yieldplan.sources.source import Source

_DAMAGED = (
    KeyError,
    TypeError,
    ValueError,
    AttributeError,
    IndexError,
    ArithmeticError,
)


class SavedPlan(Source):
    """A saved plan (plan.json): what it was offered, less what has been cut since."""

    words: ClassVar[str] = "saved plan"
    suffixes: ClassVar[tuple[str, ...]] = (".json",)

    def pieces(self, file: Path, job: Job, faults: Faults) -> tuple[Piece, ...]:
        """Every board of the plan as it was offered: without notes nothing is cut."""
        document = read_plan(file, faults)
        if document is None:
            return ()
        try:
            pieces = saved_pieces(document)
            return left_of(document, pieces, Since(), file.name, job).pieces
        except _DAMAGED:
            wrong = "this plan file is damaged"
            faults.add(Where(file=file.name), "", wrong, "Plan the job anew")
            return ()


@dataclass(frozen=True, kw_only=True)
class Left:
    """What is left of a plan.

    Parameters
    ----------
    pieces
        Every piece that is still to be cut.
    made
        Part to number delivered, by this plan's cuts and by those before it.
    used
        Sheets and sticks of the job file that were begun, by name.
    """

    pieces: tuple[Piece, ...] = ()
    made: Mapping[str, int] = field(default_factory=dict)
    used: Mapping[str, int] = field(default_factory=dict)


def read_plan(file: Path, faults: Faults) -> Document | None:
    """The plain data of a plan file; None, and a fault, when it is none."""
    where = Where(file=file.name)
    try:
        document = plan_file.read(file)
        if not _is_count_of_parts(document.get("on_the_bench", {})):
            raise plan_file.NotAPlan("what lies on the bench is not counted in it")
        return document
    except OSError as error:
        reason = error.strerror or "it cannot be opened"
        faults.add(where, "", f"it cannot be read: {reason}", "Check name and rights")
    except (plan_file.NotAPlan, ValueError):
        wrong = "this is not a plan file of this program"
        faults.add(where, "", wrong, "Give the plan.json that a plan was saved in")
    return None


def _is_count_of_parts(bench: object) -> bool:
    return isinstance(bench, dict) and all(
        isinstance(count, int) and 0 < count <= MOST_PARTS for count in bench.values()
    )


def left_of(
    document: Document, pieces: SavedPieces, since: Since, file: str, job: Job
) -> Left:
    """The pieces that are left, and what needs no more sawing.

    A blank that lies free counts as delivered, unless it is gone or a mark was found
    where it may have none; then it is a piece again. What is left over and was to be
    burnt is not offered: who knows whether it still lies there.
    """
    found: list[Piece] = []
    free: list[Spot] = []
    used: Counter[str] = Counter()
    where = Where(file=file)
    from_job = names_of_the_job(job, Faults())
    paid_packs = _paid_packs(pieces, since)
    marks = {spot.name: _marks(spot, pieces, since) for spot in pieces.spots.values()}

    def offer(spot: Spot) -> None:
        piece = rest_piece(
            spot,
            _stretch(spot, pieces),
            _name(spot, document),
            marks[spot.name],
            where,
            job.unit,
        )
        if piece is not None:
            found.append(piece)

    for spot in pieces.spots.values():
        is_begun = spot.name in since.cut or spot.name in since.gone
        is_from_job = spot.stock["id"] in from_job
        if not spot.above and is_begun and is_from_job:
            used[spot.stock["id"]] += 1
        if {spot.name, *spot.above} & since.gone or not set(spot.above) <= since.cut:
            continue
        if spot.is_cut and spot.name in since.cut:
            continue
        if not spot.above and not is_begun:
            if not is_from_job:
                paid = spot.name in since.bought or _pack(spot) in paid_packs
                found.append(
                    whole_piece(spot, marks[spot.name], where, job.unit, is_paid=paid)
                )
        elif spot.blank is None:
            if spot.is_cut or spot.fate == "keep":
                offer(spot)
        elif is_spoiled_by(spot, _new_marks(spot, pieces, since), document):
            offer(spot)
        else:
            free.append(spot)
    done = delivered(free, document)
    for spot in done.over:
        offer(spot)
    made = Counter(document.get("on_the_bench", {})) + Counter(done.parts)
    return Left(pieces=tuple(found), made=dict(sorted(made.items())), used=dict(used))


def _pack(spot: Spot) -> str | None:
    pack: str | None = spot.stock.get("pack")
    return pack


def _paid_packs(pieces: SavedPieces, since: Since) -> frozenset[str]:
    """Packs that a board was cut or bought of: who buys one board of them buys all."""
    touched = since.cut | since.gone | since.bought
    found = (_pack(spot) for name, spot in pieces.spots.items() if name in touched)
    return frozenset(pack for pack in found if pack)


def _new_marks(spot: Spot, pieces: SavedPieces, since: Since) -> list[Mark]:
    """Every mark found since on the same board, in the board's frame."""
    return [
        mark
        for name, found in sorted(since.marks.items())
        if _board(pieces.spots[name]) == _board(spot)
        for mark in found
    ]


def _marks(spot: Spot, pieces: SavedPieces, since: Since) -> Sequence[Mark]:
    return [*marks_of(spot.stock), *_new_marks(spot, pieces, since)]


def _board(spot: Spot) -> str:
    return spot.above[0] if spot.above else spot.name


def _stretch(spot: Spot, pieces: SavedPieces) -> Spot | None:
    """The topmost node that it was ripped from, if it was."""
    for name in spot.above:
        above = pieces.spots[name]
        if above.node is not None and above.node.get("cut") == "rip":
            return above
    return None


def _name(spot: Spot, document: Document) -> str:
    """What it is called: as it was; with the plan's mark where it is from a sheet or a
    stick, since the next plan numbers those from 1 again.
    """
    if spot.above and not stock.kinds()[spot.stock["kind"]].is_board:
        return f"{spot.name} {document['mark']}"
    return spot.name
