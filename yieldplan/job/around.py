"""Reads what stands around the assemblies: woods, sheets, prices, grain matches, what is made."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Annotated, Any

from pydantic import TypeAdapter

from yieldplan.faults import did_you_mean
from yieldplan.job import words
from yieldplan.job.commission import (
    GrainMatchTable,
    PriceTable,
    SheetTable,
    StickTable,
    WoodTable,
)
from yieldplan.job.lines import KeyPath
from yieldplan.job.values import Values
from yieldplan.model.job import GrainMatch, Price, Sheet, Stick, Wood
from yieldplan.units import tape

_NAME: TypeAdapter[Any] = TypeAdapter(words.Name)
_COUNT: TypeAdapter[Any] = TypeAdapter(Annotated[int, words.count(0)])


def _named(values: Values, key: str) -> dict[str, object]:
    """The tables of `[wood.<name>]` and their like, by a name that can be printed."""
    found = {}
    for written, table in values.table(key).items():
        tidy = " ".join(written.split())
        values.read_key((key, written), _NAME)
        found[tidy] = table
    return found


def woods(values: Values) -> Mapping[str, Wood]:
    """The woods by name; one with a slip in it is still known to boards and parts."""
    found = {}
    for name, table in _named(values, "wood").items():
        read = values.read_table(WoodTable, table, ("wood", name))
        where = values.document.where("wood", name)
        found[name] = (read or WoodTable()).wood(name, where)
    return found


def sheets(values: Values) -> Mapping[str, Sheet]:
    """The sheet products by name; one with a slip in it is still known to parts."""
    found = {}
    spare = SheetTable.model_validate(
        {
            "product": "sheet",
            "thickness": "0.25 in",
            "size": ["48 in", "96 in"],
            "price": 0,
        }
    )
    for name, table in _named(values, "sheet").items():
        path = ("sheet", name)
        read = values.read_table(SheetTable, table, path)
        if read is not None and not _sizes_are_clear(values, read, path):
            read = None
        found[name] = (read or spare).sheet(name, values.document.where(*path))
    return found


def _sizes_are_clear(values: Values, read: SheetTable, path: KeyPath) -> bool:
    """Whether the sheet has one size, or a list of them, each with its price once."""
    if read.sizes is None:
        missing = [key for key in ("size", "price") if getattr(read, key) is None]
        for key in missing:
            remedy = "Write it; `yieldplan describe sheet` says what it is"
            values.fault(path, "", f'"{key}" is missing', remedy)
        return not missing
    for key in ("size", "price", "quantity"):
        if getattr(read, key) is not None:
            wrong = f"{key} stands beside sizes, which has its own"
            remedy = f"Write {key} inside sizes, or leave sizes out"
            values.fault((*path, key), values.typed((*path, key)), wrong, remedy)
            return False
    return _each_once(
        values,
        [
            (tape(each.width, values.unit), tape(each.length, values.unit))
            for each in read.all_sizes()
        ],
        (*path, "sizes"),
        "this size stands here already",
    )


def sticks(values: Values) -> Mapping[str, Stick]:
    """The sticks by name; one with a slip in it is still known to parts."""
    found = {}
    spare = StickTable.model_validate(
        {
            "product": "stick",
            "width": "1 in",
            "thickness": "1 in",
            "lengths": [{"length": "96 in", "price": 0}],
        }
    )
    for name, table in _named(values, "stick").items():
        path = ("stick", name)
        read = values.read_table(StickTable, table, path)
        if read is not None:
            lengths = [tape(each.length, values.unit) for each in read.lengths]
            wrong = "this length stands here already"
            _each_once(values, lengths, (*path, "lengths"), wrong)
        found[name] = (read or spare).stick(name, values.document.where(*path))
    return found


def _each_once(
    values: Values, sizes: Sequence[object], path: KeyPath, wrong: str
) -> bool:
    """Whether every size is there once: its purchase line is called by it."""
    twice = [n for n, size in enumerate(sizes) if size in sizes[:n]]
    for number in twice:
        values.fault((*path, number), "", wrong, "Keep one of the two")
    return not twice


def check_names_apart(
    values: Values,
    woods: Mapping[str, Wood],
    sheets: Mapping[str, Sheet],
    sticks: Mapping[str, Stick],
) -> None:
    """Note a wood, sheet or stick of one name: the packer plans each by its name."""
    kinds = (("wood", woods), ("sheet", sheets), ("stick", sticks))
    for number, (kind, named) in enumerate(kinds):
        for other, taken in kinds[:number]:
            for name in named:
                if name in taken:
                    values.fault(
                        (kind, name),
                        name,
                        f"a {other} and a {kind} have the same name",
                        f"Give the {kind} another, such as its product",
                    )


def prices(values: Values, woods: Mapping[str, Wood]) -> tuple[Price, ...]:
    """The price list; a wood, thickness and grade is priced once."""
    found: dict[tuple[str, str, str], Price] = {}
    for path, table in values.tables("price"):
        read = values.read_table(PriceTable, table, path)
        if read is None:
            continue
        if (read.per_foot is None) == (read.per_cubic_metre is None):
            wrong = "a price is either per_foot or per_cubic_metre"
            values.fault(path, "", wrong, "Write one of them")
            continue
        price = read.price(values.document.where(*path))
        if price.wood not in woods:
            values.fault(
                (*path, "wood"),
                price.wood,
                "the job has no such wood",
                did_you_mean(price.wood, woods),
            )
        key = (price.wood, price.thickness, price.grade)
        if key in found:
            first = found[key].where.line
            wrong = (
                f"this wood, thickness and grade has a price on line {first} already"
            )
            values.fault(path, " ".join(key).strip(), wrong, "Keep one of the two")
        found.setdefault(key, price)
    return tuple(found.values())


def grain_matches(values: Values) -> tuple[GrainMatch, ...]:
    """The matched sets; a part is in one of them at the most."""
    matches: dict[str, GrainMatch] = {}
    set_of: dict[str, str] = {}
    for path, table in values.tables("grain_match"):
        read = values.read_table(GrainMatchTable, table, path)
        if read is None:
            continue
        match = read.match(values.document.where(*path))
        if match.name in matches:
            wrong = "two grain matches have this name"
            values.fault((*path, "name"), match.name, wrong, "Give each its own")
        for number, part in enumerate(match.parts):
            if part in set_of:
                wrong = f"this part is in a matched set already ({set_of[part]})"
                at = (*path, "parts", number)
                values.fault(at, part, wrong, "A part can be matched once")
            set_of[part] = match.name
        matches[match.name] = match
    return tuple(matches.values())


def already_made(values: Values) -> dict[str, int]:
    """How many of which part are made."""
    return {
        part: values.read(("made", part), _COUNT, otherwise=0)
        for part in values.table("made")
    }
