"""The sheet Parts: every part with the sum behind its size, the rough size to saw, and where it is cut from."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field

from yieldplan.measure.order import natural
from yieldplan.model.blanks import Blank
from yieldplan.model.job import Job
from yieldplan.model.parts import Part
from yieldplan.model.plan import Missing, Plan
from yieldplan.papers.workbook.book import Book
from yieldplan.papers.workbook.cells import Put
from yieldplan.papers.workbook.sheet import Sheet
from yieldplan.papers.workbook.words import (
    UNIT_IN_WORDS,
    counted,
    finished_size,
    size,
    wood_in_words,
)
from yieldplan.units import UnitName

_COLUMNS = (170, 58, 156, 76, 80)


@dataclass(frozen=True, kw_only=True)
class Sawn:
    """Where a part comes from.

    Parameters
    ----------
    blanks
        The blanks it is milled from, as used in the plan; all of its routes in a bid.
    boards
        The pieces they are cut from.
    missing
        What the plan leaves out of it.
    left_out
        Set-up pieces there was no waste for.
    """

    blanks: tuple[Blank, ...] = ()
    boards: tuple[str, ...] = ()
    missing: Missing | None = None
    left_out: int = 0


@dataclass
class _Used:
    blanks: dict[str, Blank] = field(default_factory=dict)
    boards: set[str] = field(default_factory=set)


def sawn_by_plan(plan: Plan) -> dict[str, Sawn]:
    """For every demand, what the plan makes of it."""
    blank_of = {blank.id: blank for blank in plan.blanks}
    used: dict[str, _Used] = {}
    for wood in plan.woods:
        for cutting in wood.cuttings:
            for leaf in cutting.tree.leaves():
                if leaf.blank is None:
                    continue
                blank = blank_of[leaf.blank]
                for demand in blank.makes:
                    entry = used.setdefault(demand, _Used())
                    entry.blanks[blank.id] = blank
                    entry.boards.add(cutting.piece.id)
    missing = {each.demand: each for wood in plan.woods for each in wood.missing}
    left = {d: n for wood in plan.woods for d, n in wood.set_up_left.items()}
    return {
        demand: Sawn(
            blanks=tuple(used[demand].blanks.values()) if demand in used else (),
            boards=tuple(sorted(used[demand].boards, key=natural))
            if demand in used
            else (),
            missing=missing.get(demand),
            left_out=left.get(demand, 0),
        )
        for demand in {*used, *missing, *left}
    }


def sawn_by_routes(blanks: Iterable[Blank]) -> dict[str, Sawn]:
    """For every demand, the blanks that could make it, when no board is known."""
    made: dict[str, list[Blank]] = {}
    for blank in blanks:
        for demand in blank.makes:
            made.setdefault(demand, []).append(blank)
    return {demand: Sawn(blanks=tuple(each)) for demand, each in made.items()}


def fill(book: Book, job: Job, parts: Sequence[Part], sawn: Mapping[str, Sawn]) -> None:
    """Write the sheet."""
    note = (
        f"Finished sizes in {UNIT_IN_WORDS[job.unit]}, thickness × width × length; the grain runs"
        " with the length. Under each part the sum of its size, then the rough size"
        " to saw. A sum that stands above is not written again."
    )
    sheet = book.sheet("Parts", _COLUMNS, note=note)
    ordered = [part for part in parts if not part.set_up]
    woods = sorted({part.wood for part in ordered}, key=natural)
    for wood in woods:
        group = [part for part in ordered if part.wood == wood]
        _group(sheet, wood_in_words(job, wood), group, job.unit, sawn)
    tests = [part for part in parts if part.set_up]
    if tests:
        _group(sheet, "Set-up pieces for the joints, any face", tests, job.unit, sawn)


def _group(
    sheet: Sheet,
    name: str,
    parts: Sequence[Part],
    unit: UnitName,
    sawn: Mapping[str, Sawn],
) -> None:
    sheet.gap(6)
    count = sum(part.quantity for part in parts)
    written: dict[str, str] = {}
    for number, part in enumerate(parts):
        with sheet.together():
            if number == 0:
                _heading(sheet, name, counted(count, "part"))
            _part(sheet, part, unit, sawn.get(part.demand, Sawn()), written)


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


def _part(
    sheet: Sheet, part: Part, unit: UnitName, sawn: Sawn, written: dict[str, str]
) -> None:
    sheet.row(
        Put(value=part.id, size=10.5),
        Put(value=part.quantity, size=11, bold=True, align="right"),
        Put(value=finished_size(part, unit), size=11, bold=True, indent=1),
        Put(value=part.show_face),
        Put(value=", ".join(sawn.boards), size=9, align="right"),
        least=18,
    )
    lines = [*_sums(part, unit, written), *_rough(part, unit, sawn, written)]
    alike = {line.partition(": ")[2] for line in lines}
    if len(lines) > 1 and len(alike) == 1 and min(alike).startswith("as "):
        lines = [f"sums and rough size: {min(alike)}"]
    if part.strips > 1:
        lines.append(f"glued up from {part.strips} equal strips")
    if part.note:
        lines.append(part.note)
    lines += _left_out(sawn)
    for number, line in enumerate(lines):
        rule = "thin" if number == len(lines) - 1 else "none"
        bold = line.startswith("MISSING")
        sheet.across(Put(value=line, size=9.5, indent=2, rule=rule, bold=bold))  # type: ignore[arg-type]


def _sums(part: Part, unit: UnitName, written: dict[str, str]) -> list[str]:
    lines = []
    for name, total in (
        ("length", part.length),
        ("width", part.width),
        ("thickness", part.thickness),
    ):
        if len(total.terms) == 1 and total.terms[0].words in ("", "as drawn"):
            continue  # the finished size already says it
        said = f"{name}: {total.say(unit)}"
        if said in written:
            lines.append(f"{name}: as {written[said]}")
        else:
            written[said] = part.id
            lines.append(said)
    return lines


def _rough(
    part: Part, unit: UnitName, sawn: Sawn, written: dict[str, str]
) -> list[str]:
    lines = []
    for blank in sawn.blanks:
        whole = size(
            (blank.thickness.value, blank.width.value, blank.length.value), unit
        )
        if blank.is_sheet:
            lines.append("sawn to size from the sheet")
            continue
        others = "" if len(blank.inside) < 2 else f" for {blank.words}"
        why = "; ".join(
            f"{name} {total.say(unit)}"
            for name, total in (
                ("length", blank.length),
                ("width", blank.width),
                ("thickness", blank.thickness),
            )
        )
        said = f"rough{others}: {whole}   ({why})"
        if said in written:
            lines.append(f"rough{others}: as {written[said]}")
        else:
            written[said] = part.id
            lines.append(said)
    return lines


def _left_out(sawn: Sawn) -> list[str]:
    if sawn.missing is not None:
        missing = sawn.missing
        return [f"MISSING {missing.count}: {missing.reason}; {missing.remedy}"]
    if sawn.left_out:
        return [f"no waste was large enough for {sawn.left_out} of them"]
    return []
