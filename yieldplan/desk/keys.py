"""Says the keys of a job-file table in words: what each is, whether it is needed, its default."""

from __future__ import annotations

import dataclasses
import types
from collections.abc import Iterator
from dataclasses import MISSING, Field, dataclass
from decimal import Decimal
from fractions import Fraction
from typing import Annotated, Any, Literal, Union, get_args, get_origin

from yieldplan.job.tables import hints_of, is_length, key_of
from yieldplan.joints.joint import Joint
from yieldplan.units import tape


@dataclass(frozen=True, kw_only=True)
class Key:
    """One key of a table.

    Parameters
    ----------
    name
        With the tables around it: `front.joint`.
    takes
        What may be written.
    default
        What holds when it is left out; "needed" when it may not be.
    words
        What it is, in one line.
    """

    name: str
    takes: str
    default: str
    words: str


def keys_of(cls: type, inside: str = "") -> Iterator[Key]:
    """Every key of a dataclass's table, those of the tables inside it after their own."""
    hints = hints_of(cls)
    for field in dataclasses.fields(cls):
        if field.name in ("name", "where") or not field.init:
            continue
        hint = hints[field.name]
        name = inside + key_of(field)
        yield Key(
            name=name,
            takes=("true or " if field.metadata.get("true_takes_defaults") else "")
            + _takes(hint),
            default=_default(field, is_size=is_length(_plain(hint))),
            words=str(field.metadata.get("words", "")),
        )
        table = _table(hint)
        if table is not None:
            yield from keys_of(table, f"{name}.")


def _plain(hint: Any) -> Any:
    """The type without its "or nothing"."""
    if get_origin(hint) in (Union, types.UnionType):
        kinds = [each for each in get_args(hint) if each is not type(None)]
        return kinds[0] if len(kinds) == 1 else Joint
    return hint


def _table(hint: Any) -> type | None:
    plain = _plain(hint)
    if get_origin(plain) is tuple:
        plain = _plain(get_args(plain)[0])
    if isinstance(plain, type) and dataclasses.is_dataclass(plain):
        return None if issubclass(plain, Joint) else plain
    return None


def _takes(hint: Any) -> str:
    plain = _plain(hint)
    if is_length(plain):
        return "size"
    if get_origin(plain) is Annotated:
        return _takes(get_args(plain)[0])
    if get_origin(plain) is Literal:
        return " or ".join(f'"{word}"' for word in get_args(plain))
    if get_origin(plain) is tuple:
        inner = [each for each in get_args(plain) if each is not ...]
        count = "" if ... in get_args(plain) else f"{len(inner)} × "
        return f"list of {count}{_takes(inner[0])}"
    simple = {
        str: "text",
        int: "whole number",
        bool: "true or false",
        Fraction: "number",
        Decimal: "amount",
    }
    if plain in simple:
        return simple[plain]
    return "joint" if issubclass(plain, Joint) else "table"


def _default(field: Field[Any], *, is_size: bool) -> str:
    if field.default is MISSING and field.default_factory is MISSING:
        return "needed"
    value = (
        field.default if field.default_factory is MISSING else field.default_factory()
    )
    return _in_words(value, is_size=is_size)


def _in_words(value: object, *, is_size: bool) -> str:
    """A default as a person would write it."""
    if value is None or value == ():
        return ""
    if isinstance(value, bool):
        return "true" if value else "false"
    if isinstance(value, Fraction):
        return tape(value, join="-") if is_size else str(value)
    if isinstance(value, Joint):
        return value.name
    if dataclasses.is_dataclass(value):
        return "as its keys say"
    return str(value)
