"""Reads what is to be built: a table for each assembly, under what the shop says for all of its kind."""

from __future__ import annotations

import dataclasses
from collections.abc import Iterator, Mapping
from typing import Any

from pydantic import TypeAdapter

from yieldplan.assemblies.assembly import Assembly
from yieldplan.faults import Where
from yieldplan.job import words
from yieldplan.job.lines import KeyPath
from yieldplan.job.tables import Table, Tables
from yieldplan.job.values import Values
from yieldplan.joints.joint import Joint
from yieldplan.model.parts import MOST_PARTS

MOST_ASSEMBLIES = 10_000


def table_key(name: str) -> str:
    """The key of an assembly's table: its name, underlines for spaces."""
    return name.replace(" ", "_").replace("-", "_")


def read_assemblies(
    values: Values,
    kinds: Mapping[str, type[Assembly]],
    joints: Mapping[str, type[Joint]],
) -> tuple[Assembly, ...]:
    """Every assembly of the job that can be read, one for each name."""
    tables = Tables(joints)
    shop = values.table("shop")
    found: list[Assembly] = []
    first_of: dict[str, Where] = {}
    for name, kind in kinds.items():
        key = table_key(name)
        own_shared = _shop_table(shop, key)
        shared = own_shared
        places: tuple[KeyPath, ...] = (("shop", key),)
        if kind.shop_table_of:
            other = table_key(kind.shop_table_of)
            shared = merged(_shop_table(shop, other), own_shared)
            places = (*places, ("shop", other))
        table = tables.of(kind)
        written = list(values.tables(key))
        if own_shared and not written:
            # Nobody asks for one, yet a slip in the shop's table should be told today.
            values.read_table(table, own_shared, ("shop", key), may_lack=True)
        for path, own in written:
            names = _names(values, path, own, first_of)
            rest = {word: value for word, value in own.items() if word != "name"}
            read = values.read_table(table, merged(shared, rest), path, shared=places)
            if read is not None:
                found += _make(values, read, path, name, names)
    _check_limits(values, found)
    return tuple(found)


def _shop_table(shop: Mapping[str, Any], key: str) -> Mapping[str, Any]:
    said = shop.get(key, {})
    return said if isinstance(said, dict) else {}


_MADE_OF = ("wood", "sheet", "stick")


def merged(shared: Mapping[str, Any], own: Mapping[str, Any]) -> dict[str, Any]:
    """What is said once for all, overruled key by key by what the table itself says.

    A joint of another kind replaces the shared one whole: a dado has no use for a
    dovetail's lap. What says its wood is not of the shared sheet or stick, nor the
    other way.
    """
    both = dict(shared)
    if any(key in own for key in _MADE_OF):
        for key in _MADE_OF:
            both.pop(key, None)
    for key, value in own.items():
        before = both.get(key)
        if isinstance(before, dict) and isinstance(value, dict):
            other_kind = "kind" in value and value["kind"] != before.get("kind")
            both[key] = value if other_kind else merged(before, value)
        else:
            both[key] = value
    return both


_NAMES: TypeAdapter[Any] = TypeAdapter(words.Names)


def _names(
    values: Values, path: KeyPath, own: Mapping[str, Any], first_of: dict[str, Where]
) -> list[tuple[str, Where]]:
    kind = path[0]
    if "name" not in own:
        remedy = 'Write name = "..." below the table\'s head'
        values.fault((*path, "name"), "", f"this {kind} has no name", remedy)
        return []
    names = values.read((*path, "name"), _NAMES, otherwise=())
    listed = isinstance(own["name"], list)
    placed = []
    for number, name in enumerate(names):
        at = (*path, "name", number) if listed else (*path, "name")
        where = dataclasses.replace(values.document.where(*at), key=f'{kind} "{name}"')
        if name in first_of:
            values.faults.add(
                where,
                name,
                f"two things of the job have this name; the other is on line {first_of[name].line}",
                "Give each its own name",
            )
            continue
        first_of[name] = where
        placed.append((name, where))
    return placed


def _make(
    values: Values,
    read: Table,
    path: KeyPath,
    kind: str,
    names: list[tuple[str, Where]],
) -> Iterator[Assembly]:
    for name, where in names:
        try:
            yield read.make(name=name, where=where)
        except ValueError as error:  # what a dataclass refuses about its own keys
            remedy = f"Correct it; `yieldplan describe {kind}` says what fits together"
            values.faults.add(where, "", str(error).rstrip("."), remedy)
            return


def _check_limits(values: Values, found: list[Assembly]) -> None:
    if len(found) > MOST_ASSEMBLIES:
        values.fault(
            (), "", f"over {MOST_ASSEMBLIES:,} things to build", "Split the job"
        )
    asked = sum(_quantity(each) for each in found)
    if asked > MOST_PARTS:
        values.fault((), "", f"over {MOST_PARTS:,} parts", "Split the job")


def _quantity(assembly: Assembly) -> int:
    quantity = getattr(assembly, "quantity", 1)
    return quantity if isinstance(quantity, int) else 1
