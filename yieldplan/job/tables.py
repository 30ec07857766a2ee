"""Turns a dataclass into the table a job file writes for it, so that a new joint or assembly needs no reader."""

from __future__ import annotations

import dataclasses
import types
import typing
from collections.abc import Mapping
from dataclasses import MISSING, Field
from decimal import Decimal
from fractions import Fraction
from functools import reduce
from operator import or_
from typing import Annotated, Any, ClassVar, Literal, Union, get_args, get_origin

from pydantic import (
    BaseModel,
    BeforeValidator,
    ConfigDict,
    Discriminator,
    Tag,
    create_model,
)
from pydantic import Field as PydanticField

from yieldplan.job import words
from yieldplan.joints.joint import Joint

_INCHES = "inches"
_NOT_IN_TABLE = frozenset({"name", "where"})


class Table(BaseModel):
    """A table of a job file that makes one object of the model."""

    model_config = ConfigDict(extra="forbid", arbitrary_types_allowed=True)
    makes: ClassVar[type]
    kind: ClassVar[str] = ""

    def make(self, **more: object) -> Any:
        """The object, from the keys that were given; the others take their defaults."""
        given = {
            name.removeprefix("key_"): _made(getattr(self, name))
            for name in sorted(self.model_fields_set)
            if name.startswith("key_")
        }
        return self.makes(**given, **more)


def _made(value: object) -> object:
    if isinstance(value, Table):
        return value.make()
    if isinstance(value, tuple):
        return tuple(_made(each) for each in value)
    return value


def key_of(field: Field[Any]) -> str:
    """What a job file calls a field: its name, or its `key` where Python has the word."""
    stated = field.metadata.get("key")
    return str(stated) if stated else field.name.removesuffix("_")


def hints_of(cls: type) -> dict[str, Any]:
    """The type of each field, lengths told apart from plain numbers."""
    # Both are Fractions at run time; only the annotation's word knows which is meant.
    told_apart = {"Inches": Annotated[Fraction, _INCHES]}
    return typing.get_type_hints(cls, localns=told_apart, include_extras=True)


def is_length(hint: Any) -> bool:
    """Whether a field of this type is a length."""
    return get_origin(hint) is Annotated and _INCHES in get_args(hint)[1:]


class Tables:
    """Makes a pydantic table for every dataclass of the job's vocabulary.

    Parameters
    ----------
    joints
        The joints a job file may name.
    """

    def __init__(self, joints: Mapping[str, type[Joint]]) -> None:
        self._joints = joints
        self._made: dict[tuple[type, str], type[Table]] = {}

    def of(self, cls: type, *, kind: str = "") -> type[Table]:
        """The table of a dataclass; with `kind` it also has that word as a key."""
        if (cls, kind) not in self._made:
            self._made[cls, kind] = self._make(cls, kind)
        return self._made[cls, kind]

    def _make(self, cls: type, kind: str) -> type[Table]:
        hints = hints_of(cls)
        fields: dict[str, Any] = {}
        if kind:
            fields["kind_word"] = (str, PydanticField("", alias="kind"))
        for field in dataclasses.fields(cls):
            if field.name in _NOT_IN_TABLE or not field.init:
                continue
            required = field.default is MISSING and field.default_factory is MISSING
            fields[f"key_{field.name}"] = (
                self._type(hints[field.name], field, required=required),
                PydanticField(... if required else None, alias=key_of(field)),
            )
        made = create_model(cls.__name__, __base__=Table, **fields)
        made.makes = cls
        made.kind = kind
        return made

    def _type(self, hint: Any, field: Field[Any], *, required: bool) -> Any:
        if is_length(hint):
            # What must be given is a size of something; only a clearance may be nothing.
            may_be_0 = not required or field.metadata.get("least") == 0
            return words.Length if may_be_0 else words.Size
        plain = {Fraction: words.Share, bool: words.Flag, Decimal: words.Amount}
        if hint in plain:
            return plain[hint]
        if hint is str:
            return words.Name
        if hint is int:
            return Annotated[int, words.count(field.metadata.get("least", 1))]
        origin, args = get_origin(hint), get_args(hint)
        if origin is Literal:
            return Annotated[str, words.choice(args)]
        if origin in (Union, types.UnionType):
            return self._union(args, field, required=required)
        if origin is tuple:
            inner = [
                each if each is ... else self._type(each, field, required=required)
                for each in args
            ]
            return tuple[tuple(inner)]  # type: ignore[misc]
        if isinstance(hint, type) and issubclass(hint, Joint):
            return self._joint((hint,))
        if dataclasses.is_dataclass(hint):
            table: Any = self.of(typing.cast("type", hint))
            if field.metadata.get("true_takes_defaults"):
                return Annotated[table | None, BeforeValidator(_yes_or_no)]
            return table
        raise TypeError(f"no way to write a {hint} in a job file ({field.name})")

    def _union(
        self, args: tuple[Any, ...], field: Field[Any], *, required: bool
    ) -> Any:
        kinds = [each for each in args if each is not type(None)]
        if all(isinstance(each, type) and issubclass(each, Joint) for each in kinds):
            return self._joint(tuple(kinds))
        if len(kinds) != 1:
            raise TypeError(f"two ways to write {field.name} in a job file")
        return self._type(kinds[0], field, required=required)

    def _joint(self, bases: tuple[type, ...]) -> Any:
        """A joint's table, told apart by `kind`; a bare text is a kind with its defaults."""
        allowed = {
            words.loosely(name): name
            for name, cls in self._joints.items()
            if issubclass(cls, bases)
        }
        # A union of one would lose its tag, and with it the message about the kind.
        tagged = [
            Annotated[self.of(self._joints[name], kind=name), Tag(name)]
            for name in sorted(allowed.values())
        ] + [Annotated[_NoJoint, Tag("")]]

        def kind_of(value: object) -> str | None:
            kind = value.get("kind") if isinstance(value, dict) else None
            return (
                allowed.get(words.loosely(kind), kind)
                if isinstance(kind, str)
                else None
            )

        return Annotated[
            Annotated[reduce(or_, tagged), Discriminator(kind_of)],
            BeforeValidator(_spelled_out),
        ]


class _NoJoint(Table):
    """Stands in the union of joints so that it is never a union of one."""


def _yes_or_no(value: object) -> object:
    """`true` is the table with its defaults, `false` is none."""
    return ({} if value else None) if isinstance(value, bool) else value


def _spelled_out(value: object) -> object:
    return {"kind": value} if isinstance(value, str) else value
