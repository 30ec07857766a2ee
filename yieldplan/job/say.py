"""Turns what pydantic found wrong with a table into faults a woodworker can act on."""

from __future__ import annotations

import difflib
from collections.abc import Iterable, Iterator
from typing import Any, get_args

from pydantic import ValidationError
from pydantic_core import ErrorDetails

from yieldplan.assemblies.recipe import FromRecipe
from yieldplan.faults import Faults, did_you_mean
from yieldplan.job.document import Document, holds, typed_at
from yieldplan.job.lines import KeyPath
from yieldplan.job.tables import Table

_SHAPES = {
    "model_type": ("a table is needed here", "Write it as { key = value, ... }"),
    "model_attributes_type": (
        "a table is needed here",
        "Write it as { key = value, ... }",
    ),
    "dict_type": ("a table is needed here", "Write it as { key = value, ... }"),
    "tuple_type": ("a list is needed here", 'Write it in brackets: ["a", "b"]'),
    "too_short": ("the list is too short", "Add what is missing"),
    "too_long": ("the list is too long", "Take out what is too many"),
    "union_tag_not_found": (
        "it does not say which joint",
        'Write { kind = "...", ... }, or the joint\'s name in quotes',
    ),
}


def tell(
    found: ValidationError,
    *,
    data: object,
    table: type[Table] | None,
    document: Document,
    at: KeyPath,
    shared: tuple[KeyPath, ...],
    faults: Faults,
    may_lack: bool = False,
) -> None:
    """Add one fault for every mistake pydantic found.

    Parameters
    ----------
    data
        What was validated.
    table
        The table it was validated as, to know its keys.
    at, shared
        Where the data stands in the file, and where parts of it may stand that were said
        once for all (`[shop.drawer]`).
    may_lack
        Whether a missing key is no mistake.
    """
    errors = found.errors(include_url=False)
    misspelt = _misspelt(errors, table)
    for error in errors:
        # A key written wrong is one mistake, not an unknown key and a missing one.
        if error["type"] == "missing" and error["loc"] in misspelt:
            continue
        if may_lack and error["type"] in ("missing", "union_tag_not_found"):
            continue
        path = _real(error["loc"], data)
        start = max((at, *shared), key=lambda each: _known(document, each, path))
        place = start + path
        wrong, remedy = _said(error, table, at)
        said = _own_text(error, path, data)
        faults.add(document.where(*place), said, wrong, remedy)


def nearest(word: str, known: Iterable[str]) -> str | None:
    """The known word that was most likely meant."""
    near = difflib.get_close_matches(word, sorted(known), n=1, cutoff=0.6)
    return near[0] if near else None


def _misspelt(
    errors: list[ErrorDetails], table: type[Table] | None
) -> set[tuple[str | int, ...]]:
    """The places whose key stands there under a wrong spelling."""
    meant = set()
    for error in errors:
        if error["type"] == "extra_forbidden" and table is not None:
            *outer, key = error["loc"]
            near = nearest(str(key), _keys(table, tuple(outer)))
            meant.add((*outer, near or ""))
    return meant


def _own_text(error: ErrorDetails, path: KeyPath, data: object) -> str:
    if error["type"] == "missing":
        return ""
    if error["type"] == "extra_forbidden":
        return str(path[-1])
    if error["type"] == "union_tag_invalid":
        return str(error["ctx"]["tag"])
    return typed_at(data, path)


def _said(
    error: ErrorDetails, table: type[Table] | None, at: KeyPath
) -> tuple[str, str]:
    kind, loc, context = error["type"], error["loc"], error.get("ctx", {})
    if kind == "mistake":
        return str(context["wrong"]), str(context["remedy"])
    if kind == "missing" and isinstance(loc[-1], int):
        return _SHAPES["too_short"]
    if kind == "missing":
        subject = str(at[0]).replace("_", " ") if at else "job"
        remedy = f"Write it; `yieldplan describe {subject}` says what it is"
        if table is not None and issubclass(
            getattr(table, "makes", object), FromRecipe
        ):
            remedy = "Write it; the recipe asks every job for it"
        return f'"{loc[-1]}" is missing', remedy
    if kind == "extra_forbidden":
        known = sorted(_keys(table, loc[:-1])) if table else []
        return "this key is not known here", did_you_mean(str(loc[-1]), known)
    if kind == "union_tag_invalid":
        known = [word.strip("'") for word in str(context["expected_tags"]).split(", ")]
        return (
            "no such joint goes here",
            did_you_mean(str(context["tag"]), [word for word in known if word]),
        )
    return _SHAPES.get(kind, ("this is not what is needed here", "Correct it"))


def _real(loc: tuple[str | int, ...], data: Any) -> KeyPath:
    """The path in the file: pydantic puts the joint's kind between its keys."""
    path: list[str | int] = []
    for number, word in enumerate(loc):
        if holds(data, word):
            data = data[word]
        elif number < len(loc) - 1:
            continue
        path.append(word)
    return tuple(path)


def _known(document: Document, start: KeyPath, path: KeyPath) -> int:
    return len(document.known_part(start + path)) - len(start)


def _keys(table: type[Table], loc: tuple[str | int, ...]) -> set[str]:
    """The keys of the table a location leads to."""
    tables = [table]
    for word in loc:
        if isinstance(word, int):
            continue
        fields = [
            field
            for each in tables
            for name, field in each.model_fields.items()
            if (field.alias or name) == word
        ]
        if fields:
            tables = [each for field in fields for each in _tables_in(field.annotation)]
        else:
            tables = [each for each in tables if each.kind == word]
    return {
        str(field.alias or name)
        for each in tables
        for name, field in each.model_fields.items()
    }


def _tables_in(annotation: Any) -> Iterator[type[Table]]:
    if isinstance(annotation, type) and issubclass(annotation, Table):
        yield annotation
    for inner in get_args(annotation):
        yield from _tables_in(inner)
