"""Goes from a saved plan and what was cut since to the job that is left: fewer parts, and the wood on the bench."""

from __future__ import annotations

import dataclasses
from collections.abc import Sequence
from pathlib import Path

from yieldplan import assemblies
from yieldplan.checking import check
from yieldplan.faults import Faults, Where
from yieldplan.model.job import Job
from yieldplan.model.parts import Part
from yieldplan.model.pieces import Piece
from yieldplan.sources.saved_pieces import Document, saved_pieces
from yieldplan.sources.saved_plan import Left, SavedPlan, left_of, read_plan
from yieldplan.sources.since import Since, read_since
from yieldplan.units import from_ticks, tape, to_ticks_up

_MOST_OBJECTIONS = 5


def is_saved_plan(path: Path) -> bool:
    """Whether a file of stock is a saved plan."""
    return path.suffix.lower() in SavedPlan.suffixes


def what_is_left(
    stock: Sequence[Path], since: Path | None, job: Job, faults: Faults
) -> Left:
    """What a saved plan among the files of stock leaves, once it has passed the proof.

    Parameters
    ----------
    since
        What was cut and found since it was made; None when nothing was.
    """
    saved = [path for path in stock if is_saved_plan(path)]
    if len(saved) > 1:
        wrong = "two saved plans are given; pieces of both may be called the same"
        remedy = f"Give one; {saved[0].name} is the other"
        faults.add(Where(file=saved[1].name), "", wrong, remedy)
        return Left()
    if not saved:
        if since is not None:
            wrong = "it says what was cut of a plan, and no plan is given"
            remedy = "Give the plan too: --stock plan/plan.json"
            faults.add(Where(file=since.name), "", wrong, remedy)
        return Left()
    (file,) = saved
    document = read_plan(file, faults)
    if document is None or not _holds(document, file, faults):
        return Left()
    pieces = saved_pieces(document)
    before = len(faults)
    noted = Since()
    if since is not None:
        noted = read_since(since, pieces, _parts(document), job.unit, faults)
    if len(faults) > before:
        return Left()
    left = left_of(document, pieces, noted, file.name, job)
    left = _less_lost(left, noted, since, faults)
    _tell_changed(left, document, file, job, faults)
    # What was told here would be told again as too many that are made.
    return left if len(faults) == before else dataclasses.replace(left, made={})


def _less_lost(left: Left, noted: Since, since: Path | None, faults: Faults) -> Left:
    """Without the parts that were spoiled after they were sawn."""
    made = dict(left.made)
    for name, count in sorted(noted.lost.items()):
        lie = made.get(name, 0)
        if since is not None and count > lie:
            wrong = f"{count} are spoiled, and {lie or 'none'} of it lies on the bench"
            remedy = "Note the cuts too, or take this line out"
            faults.add(Where(file=since.name), name, wrong, remedy)
        made[name] = lie - count
    kept = {name: count for name, count in made.items() if count > 0}
    return dataclasses.replace(left, made=kept)


def _parts(document: Document) -> frozenset[str]:
    """The parts that this plan, or one before it, may have delivered."""
    parts = (part["id"] for part in document["parts"])
    return frozenset((*parts, *document.get("on_the_bench", {})))


def less_made(job: Job, left: Left) -> Job:
    """The job with what was delivered counted as made."""
    made = dict(job.made)
    for name, count in left.made.items():
        made[name] = made.get(name, 0) + count
    return dataclasses.replace(job, made=made)


def less_used(pieces: Sequence[Piece], left: Left, job: Job) -> tuple[Piece, ...]:
    """The sheets and sticks of the job file, without those that were begun.

    Where the job says how many there are; where it does not, more can be bought.
    """
    kept = []
    for piece in pieces:
        used = left.used.get(piece.id, 0)
        if not used or not _is_counted(piece, job):
            kept.append(piece)
        elif piece.copies > used:
            kept.append(dataclasses.replace(piece, copies=piece.copies - used))
    return tuple(kept)


def _is_counted(piece: Piece, job: Job) -> bool:
    sold = job.sheets.get(piece.wood) or job.sticks.get(piece.wood)
    sizes = (sold, *getattr(sold, "more_sizes", ()))
    return any(getattr(size, "quantity", None) is not None for size in sizes)


def _holds(document: Document, file: Path, faults: Faults) -> bool:
    objections = check(dict(document))["objections"]
    if not objections:
        return True
    for objection in objections[:_MOST_OBJECTIONS]:
        faults.add(
            Where(file=file.name),
            "",
            f"the saved plan does not pass its proof: {str(objection).rstrip('.')}",
            "Give the file as it was written, or plan the job anew",
        )
    return False


def _tell_changed(
    left: Left, document: Document, file: Path, job: Job, faults: Faults
) -> None:
    """Parts that lie on the bench and are not what the job asks for now."""
    parts = {part.id: part for part in assemblies.parts_of(job, Faults()).parts}
    saved = {part["id"]: part for part in document["parts"]}
    for name, count in left.made.items():
        where = Where(file=file.name, key=name)
        part = parts.get(name)
        if part is None:
            faults.add(
                where,
                name,
                f"{count} of it lie on the bench, and the job asks for none",
                "Take it as it was into the job again, or note its pieces as gone",
            )
        elif part.quantity < count:
            faults.add(
                where,
                name,
                f"{count} of it lie on the bench, and the job asks for {part.quantity}",
                "Note the pieces that are not wanted as gone",
            )
        elif name in saved and _size(part) != tuple(saved[name]["size"]):
            then, now = saved[name]["size"], _size(part)
            faults.add(
                where,
                name,
                f"{count} of it are sawn {_said(then, job)}, and the job now asks for "
                f"{_said(now, job)}",
                "Change the job back, or note the pieces that no longer serve as gone",
            )


def _size(part: Part) -> tuple[int, ...]:
    sizes = (part.length, part.width, part.thickness)
    return tuple(to_ticks_up(size.value) for size in sizes)


def _said(size: Sequence[int], job: Job) -> str:
    length, width, thickness = (
        tape(from_ticks(each), job.unit, join="-") for each in size
    )
    return f"{thickness} x {width} x {length}"
