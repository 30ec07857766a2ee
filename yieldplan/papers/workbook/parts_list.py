"""The sheet Parts: every part with the sum behind its size, the rough size to saw, and where it is cut from."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence

from yieldplan.measure.order import natural
from yieldplan.measure.routes_taken import Routes
from yieldplan.measure.sawn import Sawn, together
from yieldplan.model.job import Job
from yieldplan.model.parts import Part
from yieldplan.papers.workbook.book import Book
from yieldplan.papers.workbook.cells import Put, Rule
from yieldplan.papers.workbook.part_sums import lines_under
from yieldplan.papers.workbook.sheet import Sheet
from yieldplan.papers.workbook.words import (
    UNIT_IN_WORDS,
    counted,
    finished_size,
    wood_in_words,
)
from yieldplan.units import UnitName

_COLUMNS = (154, 56, 180, 70, 80)
_MOST_NAMES = 6  # in one cell; the next six say "as" the first


def fill(
    book: Book,
    job: Job,
    parts: Sequence[Part],
    sawn: Mapping[str, Sawn],
    routes: Routes | None = None,
) -> None:
    """Write the sheet; in a bid nothing is known of routes."""
    note = (
        f"Finished sizes in {UNIT_IN_WORDS[job.unit]}, thickness × width × length; the"
        " grain runs with the length. Under each part the sum of its size, then the"
        " rough size to saw. A sum that stands above is not written again."
    )
    sheet = book.sheet("Parts", _COLUMNS, note=note)
    ordered = [part for part in parts if not part.set_up]
    for wood in sorted({part.wood for part in ordered}, key=natural):
        group = [part for part in ordered if part.wood == wood]
        _group(sheet, wood_in_words(job, wood), group, job.unit, sawn, routes)
    tests = [part for part in parts if part.set_up]
    if tests:
        _group(sheet, "Set-up pieces for the joints, any face", tests, job.unit, sawn)


def _group(
    sheet: Sheet,
    name: str,
    parts: Sequence[Part],
    unit: UnitName,
    sawn: Mapping[str, Sawn],
    routes: Routes | None = None,
) -> None:
    sheet.gap(6)
    count = sum(part.quantity for part in parts)
    written: dict[str, str] = {}
    for number, alike in enumerate(_alike(parts, sawn)):
        with sheet.together():
            if number == 0:
                _heading(sheet, name, counted(count, "part"))
            taken = routes.of([each.demand for each in alike]) if routes else None
            _parts(
                sheet, alike, unit, together(alike, sawn), written,
                taken.words if taken else "",
            )  # fmt: skip


def _alike(parts: Iterable[Part], sawn: Mapping[str, Sawn]) -> list[list[Part]]:
    """Parts that differ in nothing but their names, together; missing ones alone."""
    groups: dict[object, list[Part]] = {}
    for part in parts:
        is_missing = sawn.get(part.demand, Sawn()).missing is not None
        looks = (
            part.id if is_missing else "",
            part.wood, part.length, part.width, part.thickness, part.show_face,
            part.back_face, part.strips, part.glue_up, part.note,
        )  # fmt: skip
        groups.setdefault(looks, []).append(part)
    return [
        group[start : start + _MOST_NAMES]
        for group in groups.values()
        for start in range(0, len(group), _MOST_NAMES)
    ]


def _heading(sheet: Sheet, name: str, count: str) -> None:
    sheet.row(
        Put(value=name, size=13, bold=True, span=4, rule="thick"),
        Put(value=count, size=9, align="right", rule="thick"),
    )
    words = ("part", "how many", "finished", "show face", "cut from")
    sheet.row(
        *(
            Put(
                value=word, size=9, rule="head",
                align="right" if n in (1, 4) else "left", indent=1 if n == 2 else 0,
            )
            for n, word in enumerate(words)
        )
    )  # fmt: skip


def _parts(
    sheet: Sheet,
    alike: Sequence[Part],
    unit: UnitName,
    sawn: Sawn,
    written: dict[str, str],
    route: str,
) -> None:
    part = alike[0]
    names = ", ".join(each.id for each in alike)
    if len(alike) > 1 and part.quantity > 1:
        names += f" ({part.quantity} each)"
    lines = lines_under(part, sawn, unit, written, route)
    rule: Rule = "none" if lines else "thin"
    count = sum(each.quantity for each in alike)
    sheet.row(
        Put(value=names, size=10.5, rule=rule),
        Put(value=count, size=11, bold=True, align="right", rule=rule),
        Put(value=finished_size(part, unit), size=11, bold=True, indent=1, rule=rule),
        Put(value=part.show_face, rule=rule),
        Put(value=", ".join(sawn.boards), size=9, align="right", rule=rule),
        least=18,
    )
    for number, line in enumerate(lines):
        sheet.across(
            Put(
                value=line, size=9.5, indent=2, bold=line.startswith("MISSING"),
                rule="thin" if number == len(lines) - 1 else "none",
            )
        )  # fmt: skip
