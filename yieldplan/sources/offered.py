"""Gathers the boards of every tally, each number once."""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence
from pathlib import Path

import yieldplan.sources
from yieldplan import registry
from yieldplan.faults import Faults, Where
from yieldplan.measure.order import natural
from yieldplan.model.job import Job
from yieldplan.model.pieces import Piece
from yieldplan.sources.board_rows import MOST_BOARDS
from yieldplan.sources.from_job import names_of_the_job
from yieldplan.sources.packs import tell_in_two_files
from yieldplan.sources.said_back import in_words
from yieldplan.sources.source import Source


def read_all(
    paths: Sequence[Path], job: Job, faults: Faults, also: Sequence[Piece] = ()
) -> tuple[Piece, ...]:
    """Every piece of every file, each id once, in natural order of their ids."""
    sources = registry.find(yieldplan.sources, Source)  # type: ignore[type-abstract]
    by_suffix = by_ending(sources.values())
    found: list[Piece] = list(also)
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
        where = found[-1].where or Where(file="")
        where = Where(file=where.file)
        faults.add(where, "", f"over {MOST_BOARDS:,} boards in all", "Offer fewer")
        return ()
    tell_in_two_files(found, faults)
    return _each_once(found, job, faults)


def echoed(paths: Sequence[Path], pieces: Sequence[Piece], job: Job) -> tuple[str, ...]:
    """Every piece of the files that are said back, in full words."""
    sources = registry.find(yieldplan.sources, Source)  # type: ignore[type-abstract]
    said_back = {
        s for kind in sources.values() if kind.is_echoed for s in kind.suffixes
    }
    files = {path.name for path in paths if path.suffix.lower() in said_back}
    return tuple(
        in_words(piece, job.unit)
        for piece in pieces
        if piece.where is not None and piece.where.file in files
    )


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
    taken = names_of_the_job(job, faults)
    for piece in pieces:
        where = piece.where or Where(file="")
        if piece.id in first_of:
            other = first_of[piece.id].where
            wrong = f"two boards have this number; the other is in {other}"
            faults.add(where, piece.id, wrong, "Give each board its own")
        elif piece.id in taken:
            wrong = f"a {taken[piece.id]} of the job has this name"
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
