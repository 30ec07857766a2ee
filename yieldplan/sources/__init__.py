"""Where pieces of wood are listed: one source a file."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from yieldplan.faults import Faults
from yieldplan.model.blanks import Blank
from yieldplan.model.job import Job
from yieldplan.model.parts import Part
from yieldplan.model.pieces import Piece


def read(
    paths: Sequence[Path], job: Job, faults: Faults, *, also: Sequence[Piece] = ()
) -> tuple[Piece, ...]:
    """Every piece of every file, board feet and price fixed; mistakes go to `faults`.

    Parameters
    ----------
    also
        Pieces that are offered besides, such as what is left of a saved plan.
    """
    from yieldplan.sources.offered import read_all

    return read_all(paths, job, faults, also)


def as_read(
    paths: Sequence[Path], pieces: Sequence[Piece], job: Job
) -> tuple[str, ...]:
    """What was typed in short lines, said back in full words, one line a board."""
    from yieldplan.sources.offered import echoed

    return echoed(paths, pieces, job)


def sheets_and_sticks(
    job: Job, blanks: Sequence[Blank], parts: Sequence[Part]
) -> tuple[Piece, ...]:
    """The sheets and sticks of the job file that a blank asks for, in every size.

    Copies are the quantity the job gives, else one for every part wanted: more could
    never be cut.
    """
    from yieldplan.sources.from_job import pieces_of_the_job

    return pieces_of_the_job(job, blanks, parts)
