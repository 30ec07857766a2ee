"""Where pieces of wood are listed: one source a file."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from yieldplan.faults import Faults
from yieldplan.model.blanks import Blank
from yieldplan.model.job import Job
from yieldplan.model.parts import Part
from yieldplan.model.pieces import Piece


def read(paths: Sequence[Path], job: Job, faults: Faults) -> tuple[Piece, ...]:
    """Every piece of every file, board feet and price fixed; mistakes go to `faults`."""
    from yieldplan.sources.offered import read_all

    return read_all(paths, job, faults)


def sheets(
    job: Job, blanks: Sequence[Blank], parts: Sequence[Part]
) -> tuple[Piece, ...]:
    """The sheets of the job file that a blank asks for.

    Copies are the quantity the job gives, else one for every part wanted: more could
    never be cut.
    """
    from yieldplan.sources.offered import sheets_of

    return sheets_of(job, blanks, parts)
