"""Tells what can be named in a job file: lists it, and describes one of it in full."""

from __future__ import annotations

import inspect
from collections.abc import Callable, Iterator, Mapping

import yieldplan.assemblies
import yieldplan.blanks
import yieldplan.joints
import yieldplan.papers
import yieldplan.sources
import yieldplan.stock
from yieldplan import registry
from yieldplan.assemblies.assembly import Assembly
from yieldplan.blanks.route import Route
from yieldplan.desk import job_words
from yieldplan.desk.keys import Key, keys_of
from yieldplan.desk.start import FILES, template_text
from yieldplan.joints.joint import Joint
from yieldplan.papers.paper import Paper
from yieldplan.reference.tables import Species, grades, species
from yieldplan.sources.source import Source
from yieldplan.stock.kind import StockKind


def names() -> dict[str, list[tuple[str, str]]]:
    """Everything that has a name, by kind: the name, and what it is in one line."""
    groups = {
        group: [(name, _first_line(cls)) for name, cls in sorted(found().items())]
        for group, found in _CLASSES.items()
    }
    groups["tables"] = [(t.name, t.words) for t in job_words.TABLES.values()]
    groups["species"] = [
        (kind.name, ", ".join(kind.also)) for kind in species().values()
    ]
    groups["grades"] = [
        (grade.name, ", ".join(grade.spellings)) for grade in grades().values()
    ]
    return groups


def describe(name: str) -> str:
    """A page on one of the names: what it is, its keys, an example.

    Raises
    ------
    KeyError
        When nothing has this name.
    """
    pages = [page for find in _PAGES for page in find(name)]
    if not pages:
        raise KeyError(name)
    return "\n\n".join(pages)


def _found(package: object, base: type) -> Callable[[], Mapping[str, type]]:
    return lambda: registry.find(package, base)  # type: ignore[arg-type]


_CLASSES: dict[str, Callable[[], Mapping[str, type]]] = {
    "assemblies": _found(yieldplan.assemblies, Assembly),
    "joints": _found(yieldplan.joints, Joint),
    "routes": _found(yieldplan.blanks, Route),
    "stock": _found(yieldplan.stock, StockKind),
    "sources": _found(yieldplan.sources, Source),
    "papers": _found(yieldplan.papers, Paper),
}
_SINGULAR = {"assemblies": "assembly", "stock": "kind of stock"}


def _class_pages(name: str) -> Iterator[str]:
    for group, found in _CLASSES.items():
        cls = found().get(name)
        if cls is None:
            continue
        kind = _SINGULAR.get(group, group.removesuffix("s"))
        page = [f"{name} ({kind})", "", _text(cls)]
        if group == "assemblies":
            table = name.replace(" ", "_").replace("-", "_")
            named = Key(
                name="name",
                takes="text or list of text",
                default="needed",
                words="one of it for each name",
            )
            page += ["", f"Keys of [[{table}]]", *_key_lines([named, *keys_of(cls)])]
            page += _template_example(table)
        elif group == "joints":
            keys = list(keys_of(cls))
            page += ["", "Keys of its table", *_key_lines(keys)] if keys else []
            page += ["", "Example", f'  joint = "{name}"']
            set_ = [
                f'{k.name} = "{k.default or "1/4"}"' for k in keys if k.takes == "size"
            ]
            if set_:
                page.append(f'  joint = {{ kind = "{name}", {set_[0]} }}')
        yield "\n".join(page)


def _table_pages(name: str) -> Iterator[str]:
    table = job_words.TABLES.get(name.replace("_", " "))
    if table is not None:
        lines = [f"{table.name} ({table.where})", "", table.words + ".", ""]
        lines += _key_lines(table.keys())
        if table.example:
            lines += ["", "Example", *(f"  {x}" for x in table.example.split("\n"))]
        yield "\n".join(lines)


def _species_pages(name: str) -> Iterator[str]:
    kind = species().get(name)
    if kind is not None:
        yield "\n".join(_species_lines(kind))
    grade = grades().get(name)
    if grade is not None:
        spellings = ", ".join(grade.spellings)
        yield f"{name} (grade)\n\nAlso written {spellings}.\nSource: {grade.source}."


def _species_lines(kind: Species) -> list[str]:
    also = f"Also called {', '.join(kind.also)}." if kind.also else ""
    return [
        f"{kind.name} (species)",
        "",
        *([also] if also else []),
        "A board 12 wide changes by this much for each 2 per cent of moisture:",
        f"  flatsawn     {float(kind.tangential * 24):.3f}",
        f"  quartersawn  {float(kind.radial * 24):.3f}",
        f"Source: {kind.source}.",
    ]


_PAGES = (_class_pages, _table_pages, _species_pages)


def _first_line(cls: type) -> str:
    return (inspect.getdoc(cls) or "").split("\n")[0].rstrip(".")


def _text(cls: type) -> str:
    """The docstring as a woodworker reads it: up to its list of parameters."""
    text = inspect.getdoc(cls) or ""
    words = text.split("\nParameters\n")[0].strip().replace("`", '"')
    # As wide as the terminal, not as the source.
    paragraphs = words.split("\n\n")
    return "\n\n".join(" ".join(each.split()) for each in paragraphs)


def _key_lines(keys: Iterator[Key] | list[Key]) -> list[str]:
    rows = list(keys)
    widest = max((len(key.name) for key in rows), default=0)
    lines = []
    for key in rows:
        if key.default == "needed":
            left_out = "needed"
        else:
            left_out = f"left out: {key.default}" if key.default else "may be left out"
        lines.append(f"  {key.name:<{widest}}  {key.takes}; {left_out}")
        if key.words:
            lines.append(f"  {'':<{widest}}  {key.words}")
    return lines


def _template_example(table: str) -> list[str]:
    """The table as it stands in the file a newcomer is given, which plans."""
    text = template_text(FILES["job.toml"].format(unit="in"))
    head = f"[[{table}]]\n"
    if head not in text:
        return []
    block = text[text.index(head) :].split("\n\n")[0]
    return ["", "Example", *(f"  {line}" for line in block.split("\n"))]
