"""Reads what stands around the assemblies: woods, sheets, prices, grain matches, what is made."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Annotated, Any

from pydantic import TypeAdapter

from yieldplan.faults import did_you_mean
from yieldplan.job import words
from yieldplan.job.commission import (
    GrainMatchTable,
    PriceTable,
    SheetTable,
    WoodTable,
)
from yieldplan.job.values import Values
from yieldplan.model.job import GrainMatch, Price, Sheet, Wood

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
        read = values.read_table(SheetTable, table, ("sheet", name))
        where = values.document.where("sheet", name)
        found[name] = (read or spare).sheet(name, where)
    return found


def check_names_apart(
    values: Values, woods: Mapping[str, Wood], sheets: Mapping[str, Sheet]
) -> None:
    """Note a wood and a sheet of one name: the packer plans each by its name."""
    for name in sheets:
        if name in woods:
            values.fault(
                ("sheet", name),
                name,
                "a wood and a sheet have the same name",
                "Give the sheet another, such as its product",
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
