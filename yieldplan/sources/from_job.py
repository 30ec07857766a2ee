"""What the job file itself offers: sheets in their sizes, sticks in their lengths."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from decimal import Decimal

from yieldplan.faults import Faults, Where
from yieldplan.measure.money import from_units
from yieldplan.model.blanks import Blank
from yieldplan.model.job import Job, Sheet, Stick
from yieldplan.model.parts import Part
from yieldplan.model.pieces import Piece
from yieldplan.stock.kind import StockKind
from yieldplan.stock.sheet import Sheet as SheetKind
from yieldplan.stock.stick import Stick as StickKind
from yieldplan.units import Inches, UnitName, feet_and_inches, tape


@dataclass(frozen=True, kw_only=True)
class _Size:
    """One size that can be bought: what it is called, and what it measures and costs."""

    id: str
    line: str
    thickness: str
    thick: Inches
    length: Inches
    width: Inches
    price: Decimal
    quantity: int | None
    where: Where


def pieces_of_the_job(
    job: Job, blanks: Sequence[Blank], parts: Sequence[Part]
) -> tuple[Piece, ...]:
    """A piece for every size of every sheet and stick that a blank asks for."""
    asked = {blank.wood for blank in blanks if blank.is_sawn_to_size}
    wanted = dict.fromkeys(sorted(asked & {*job.sheets, *job.sticks}), 0)
    for part in parts:
        if part.wood in wanted and part.is_sawn_to_size and not part.set_up:
            wanted[part.wood] += part.needed
    return tuple(
        piece for name, count in wanted.items() for piece in _of(name, count, job)
    )


def names_of_the_job(job: Job, faults: Faults) -> dict[str, str]:
    """What its sheets and sticks are called, and which it is: no board has such a name.

    A size of one that is called as another is noted.
    """
    names = {**dict.fromkeys(job.sheets, "sheet"), **dict.fromkeys(job.sticks, "stick")}
    for sheet in job.sheets.values():
        if sheet.more_sizes:
            _take(_sheets(sheet, job.unit), "sheet", names, faults)
    for stick in job.sticks.values():
        _take(_sticks(stick, job.unit), "stick", names, faults)
    return names


def _take(
    sizes: Iterable[_Size], kind: str, names: dict[str, str], faults: Faults
) -> None:
    for size in sizes:
        if size.id in names:
            wrong = "two sheets or sticks of the job would be called this"
            faults.add(size.where, size.id, wrong, "Give one of them another name")
        names[size.id] = kind


def _of(name: str, wanted: int, job: Job) -> Iterator[Piece]:
    if name in job.sheets:
        for size in _sheets(job.sheets[name], job.unit):
            yield _piece(name, size, wanted, SheetKind(), job)
    else:
        for size in _sticks(job.sticks[name], job.unit):
            yield _piece(name, size, wanted, StickKind(), job)


def _sheets(sheet: Sheet, unit: UnitName) -> Iterator[_Size]:
    thickness = thickness_in_words(sheet.thickness, unit)
    for size in sheet.sizes:
        id_, line = sheet.name, f"{sheet.name} {thickness}"
        if sheet.more_sizes:
            sides = tape(size.width, unit), tape(size.length, unit)
            id_ = f"{sheet.name} {sides[0]} x {sides[1]} {unit}"
            line = f"{line} {sides[0]} × {sides[1]}"
        yield _Size(
            id=id_,
            line=line,
            thickness=thickness,
            thick=sheet.thickness,
            length=size.length,
            width=size.width,
            price=size.price,
            quantity=size.quantity,
            where=sheet.where,
        )


def _sticks(stick: Stick, unit: UnitName) -> Iterator[_Size]:
    for each in stick.lengths:
        long = feet_and_inches(each.length, unit) + (" mm" if unit == "mm" else "")
        yield _Size(
            id=f"{stick.name} {long}",
            line=f"{stick.name} {long}",
            thickness=thickness_in_words(stick.thickness, unit),
            thick=stick.thickness,
            length=each.length,
            width=stick.width,
            price=each.price,
            quantity=each.quantity,
            where=stick.where,
        )


def _piece(wood: str, size: _Size, wanted: int, kind: StockKind, job: Job) -> Piece:
    trim, edge = kind.end_trim(job.shop), kind.edge_pass(job.shop)
    return Piece(
        id=size.id,
        wood=wood,
        line=size.line,
        kind=kind.name,
        is_planed=kind.is_planed,
        is_sheet=kind.is_sheet,
        is_stick=kind.is_stick,
        thickness=size.thickness,
        thick=size.thick,
        length=size.length,
        width=size.width,
        # More of a size than blanks could never be cut.
        copies=max(wanted, 1) if size.quantity is None else size.quantity,
        board_feet=None,
        per_foot=None,
        price=from_units(size.price),
        end_trims=(trim, trim),
        edge_passes=(edge, edge),
        where=size.where,
    )


def thickness_in_words(thickness: Inches, unit: UnitName) -> str:
    """A thickness as it is sold: `1/2 in`, or `5.2 mm` where no tape shows it."""
    if unit == "in" and (thickness * 32).denominator == 1:
        return f"{tape(thickness, join='-')} in"
    return f"{tape(thickness, 'mm')} mm"
