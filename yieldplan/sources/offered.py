"""Gathers what is offered: the boards of every tally, and the sheets of the job file."""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence
from pathlib import Path

import yieldplan.sources
from yieldplan import registry
from yieldplan.faults import Faults, Where
from yieldplan.measure.money import from_units
from yieldplan.measure.order import natural
from yieldplan.model.blanks import Blank
from yieldplan.model.job import Job, Sheet
from yieldplan.model.parts import Part
from yieldplan.model.pieces import Piece
from yieldplan.sources.board_rows import MOST_BOARDS
from yieldplan.sources.source import Source
from yieldplan.stock.sheet import Sheet as SheetKind
from yieldplan.units import Inches, UnitName, tape


def read_all(paths: Sequence[Path], job: Job, faults: Faults) -> tuple[Piece, ...]:
    """Every piece of every file, each id once, in natural order of their ids."""
    sources = registry.find(yieldplan.sources, Source)  # type: ignore[type-abstract]
    by_suffix = by_ending(sources.values())
    found: list[Piece] = []
    for path in paths:
        source = by_suffix.get(path.suffix.lower())
        if source is None:
            known = ", ".join(sorted(by_suffix))
            remedy = f"A tally ends in one of: {known}"
            where = Where(file=path.name)
            faults.add(where, path.suffix, "no way to read such a file", remedy)
            continue
        found += source.pieces(path, job, faults)
    if len(found) > MOST_BOARDS:
        where = Where(file=paths[0].name)
        faults.add(where, "", f"over {MOST_BOARDS:,} boards in all", "Offer fewer")
        return ()
    return _each_once(found, job, faults)


def by_ending(sources: Iterable[type[Source]]) -> dict[str, Source]:
    """Every source by each file ending it reads.

    Raises
    ------
    ValueError
        When two sources claim the same ending.
    """
    found: dict[str, Source] = {}
    for source in sources:
        for suffix in source.suffixes:
            if suffix in found:
                both = f"{type(found[suffix]).__name__} and {source.__name__}"
                raise ValueError(f"two sources read files ending in {suffix}: {both}")
            found[suffix] = source()
    return found


def _each_once(pieces: Sequence[Piece], job: Job, faults: Faults) -> tuple[Piece, ...]:
    first_of: dict[str, Piece] = {}
    for piece in pieces:
        where = piece.where or Where(file="")
        if piece.id in first_of:
            other = first_of[piece.id].where
            wrong = f"two boards have this number; the other is in {other}"
            faults.add(where, piece.id, wrong, "Give each board its own")
        elif piece.id in job.sheets:
            wrong = "a sheet of the job has this name"
            faults.add(where, piece.id, wrong, "Give the board another number")
        first_of.setdefault(piece.id, piece)
    for piece in first_of.values():
        # What is cut from board W7 is called W7.1, W7.2: no board may look like that.
        stem = re.sub(r"(\.\d+)+$", "", piece.id)
        if stem != piece.id and stem in first_of:
            wrong = f"pieces cut from {stem} will be called like this"
            where = piece.where or Where(file="")
            faults.add(where, piece.id, wrong, "Write it with a hyphen")
    # The order of a tally's rows is the yard's business: the plan must not hang on it.
    return tuple(sorted(first_of.values(), key=lambda piece: natural(piece.id)))


def sheets_of(
    job: Job, blanks: Sequence[Blank], parts: Sequence[Part]
) -> tuple[Piece, ...]:
    """A piece for every sheet product that a blank asks for."""
    asked = {blank.wood for blank in blanks if blank.is_sheet}
    wanted = {name: 0 for name in sorted(asked) if name in job.sheets}
    for part in parts:
        if part.wood in wanted and part.is_sheet and not part.set_up:
            wanted[part.wood] += part.needed
    return tuple(_sheet(job.sheets[name], count, job) for name, count in wanted.items())


def _sheet(sheet: Sheet, wanted: int, job: Job) -> Piece:
    kind = SheetKind()
    trim, edge = kind.end_trim(job.shop), kind.edge_pass(job.shop)
    thickness = thickness_in_words(sheet.thickness, job.unit)
    return Piece(
        id=sheet.name,
        wood=sheet.name,
        line=f"{sheet.name} {thickness}",
        kind=kind.name,
        is_planed=kind.is_planed,
        is_sheet=kind.is_sheet,
        thickness=thickness,
        thick=sheet.thickness,
        length=sheet.length,
        width=sheet.width,
        # More sheets than blanks could never be cut.
        copies=max(wanted, 1) if sheet.quantity is None else sheet.quantity,
        board_feet=None,
        per_foot=None,
        price=from_units(sheet.price),
        end_trims=(trim, trim),
        edge_passes=(edge, edge),
        where=sheet.where,
    )


def thickness_in_words(thickness: Inches, unit: UnitName) -> str:
    """A sheet's thickness as it is sold: `1/2 in`, or `5.2 mm` where no tape shows it."""
    if unit == "in" and (thickness * 32).denominator == 1:
        return f"{tape(thickness, join='-')} in"
    return f"{tape(thickness, 'mm')} mm"
