"""Finds a part in a plan file, and every blank that is sawn for it."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from yieldplan.faults import Fault, FaultsFound, Where, did_you_mean
from yieldplan.plan_file import Document


@dataclass(frozen=True, kw_only=True)
class Sawn:
    """A blank where it lies: its stock, which copy of it, and the leaf of the cut tree."""

    blank: Document
    stock: Document
    copy: int
    node: Document
    kerf: int


def find_part(document: Document, name: str) -> Document:
    """The part called so, or the only one whose id ends so.

    Raises
    ------
    FaultsFound
        When there is none, or more than one.
    """
    parts: dict[str, Document] = {part["id"]: part for part in document["parts"]}
    wanted = name.strip()
    if wanted in parts:
        return parts[wanted]
    ending = [key for key in parts if key.casefold().endswith(f"/{wanted.casefold()}")]
    ending += [key for key in parts if key.casefold() == wanted.casefold()]
    if len(ending) == 1:
        return parts[ending[0]]
    inside = [
        key for key in parts if key.casefold().startswith(f"{wanted.casefold()}/")
    ]
    if ending or inside:
        wrong = "more than one part is called so"
        remedy = f"Say which: {', '.join(sorted(ending or inside))}"
    else:
        wrong = "the plan has no such part"
        remedy = did_you_mean(wanted, parts)
    where = Where(file=f'plan {document["mark"]} of "{document["title"]}"')
    raise FaultsFound([Fault(where=where, said=name, wrong=wrong, remedy=remedy)])


def sawn_blanks(document: Document, demand: str) -> Iterator[Sawn]:
    """Every blank that makes this demand, in the order the plan cuts its stock."""
    making = {
        blank["id"]: blank
        for blank in document["blanks"]
        if blank["makes"].get(demand, 0) > 0
    }
    stock = {piece["id"]: piece for piece in document["stock"]}
    for wood in document["woods"]:
        for cutting in wood["cuttings"]:
            for leaf in _leaves(cutting["tree"]):
                if leaf.get("blank") in making:
                    yield Sawn(
                        blank=making[leaf["blank"]],
                        stock=stock[cutting["stock"]],
                        copy=cutting["copy"],
                        node=leaf,
                        kerf=wood["rules"]["kerf"],
                    )


def _leaves(node: Document) -> Iterator[Document]:
    if "into" not in node:
        yield node
    for child in node.get("into", ()):
        yield from _leaves(child)
