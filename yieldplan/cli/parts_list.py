"""The parts of a job for the terminal: by wood, thickness x width x length, sums below."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from yieldplan.assemblies.too_large import too_large
from yieldplan.cli.table import rows
from yieldplan.model.job import Job
from yieldplan.model.parts import Built, Part
from yieldplan.units import tape


def parts_list(job: Job, built: Built, *, with_sums: bool) -> Iterator[str]:
    """The list, line by line."""
    parts = [part for part in built.parts if not part.set_up]
    count = sum(part.quantity for part in parts)
    unit = "millimetres" if job.unit == "mm" else "inches"
    yield f"{job.title}: {count} part{'' if count == 1 else 's'} to make"
    yield f"Finished thickness × width × length, {unit}."
    for wood in dict.fromkeys(part.wood for part in parts):
        yield ""
        yield _title(job, wood)
        yield from _rows([p for p in parts if p.wood == wood], job, with_sums=with_sums)
    set_up = [part for part in built.parts if part.set_up]
    if set_up:
        yield ""
        yield "Set-up pieces, from waste"
        yield from _rows(set_up, job, with_sums=with_sums)
    for caution in too_large(built.parts, job.unit):
        yield ""
        yield caution


def _title(job: Job, wood: str) -> str:
    if wood in job.sheets:
        return f"{wood}, {job.sheets[wood].product}"
    if wood in job.sticks:
        return f"{wood}, {job.sticks[wood].product}"
    if wood in job.woods and job.woods[wood].species != wood:
        return f"{wood}, {job.woods[wood].species}"
    return wood


def _rows(parts: Sequence[Part], job: Job, *, with_sums: bool) -> Iterator[str]:
    lines = rows([_cells(part, job) for part in parts], align="<>><", indent=2)
    for part, line in zip(parts, lines, strict=True):
        yield line
        if with_sums:
            yield from (f"      {said}" for said in _sums(part, job))


def _cells(part: Part, job: Job) -> tuple[str, ...]:
    sizes = (part.thickness, part.width, part.length)
    size = " × ".join(tape(each.value, job.unit, join="-") for each in sizes)
    faces = [] if part.set_up else [f"show face {part.show_face}"]
    if part.strips > 1:
        faces.append(f"from {part.strips} strips")
    if part.note:
        faces.append(part.note)
    return part.id, str(part.quantity), size, "; ".join(faces)


def _sums(part: Part, job: Job) -> Iterator[str]:
    for name in ("length", "width", "thickness"):
        yield f"{name:<10} {getattr(part, name).say(job.unit, join='-', grid=32)}"
