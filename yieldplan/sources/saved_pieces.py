"""The pieces of a saved plan: every board and every node of its cut trees, by the name chalked on it."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from typing import Any

from yieldplan.model.faces import Mark
from yieldplan.model.plan import Box
from yieldplan.units import from_ticks

Document = Mapping[str, Any]
"""The plain data of plan.json, or of a part of it."""

_TEXTS = ("id", "wood", "line", "kind", "thickness", "grade", "lot")
_NUMBERS = ("price", "thick", "crook", "bow", "twist", "copies")


@dataclass(frozen=True, kw_only=True)
class Spot:
    """A stretch of wood that has a name in the plan.

    Parameters
    ----------
    stock
        The piece of stock it lies in, as the file has it.
    copy
        Which copy of the stock; None for one that the plan does not cut.
    node
        Its node; None for a piece that the plan does not cut.
    box
        Where it lies. [ticks]
    above
        The nodes that it is sawn from, the board first.
    rules
        How its wood is cut, as the file has it.
    """

    name: str
    stock: Document
    copy: int | None
    node: Document | None
    box: Box
    above: tuple[str, ...] = ()
    rules: Document

    @property
    def is_cut(self) -> bool:
        """Whether the plan cuts it further."""
        return self.node is not None and "into" in self.node

    @property
    def blank(self) -> str | None:
        """The blank it is, if it is one."""
        return None if self.node is None else self.node.get("blank")

    @property
    def fate(self) -> str | None:
        """What becomes of it where it is left over."""
        return None if self.node is None else self.node.get("fate")


@dataclass(frozen=True, kw_only=True)
class SavedPieces:
    """All of them, in the order of the file.

    Parameters
    ----------
    also
        Other names: what an offcut is called.
    """

    spots: Mapping[str, Spot]
    also: Mapping[str, str] = field(default_factory=dict)

    def below(self, name: str) -> Iterator[Spot]:
        """A spot, and everything that is sawn from it."""
        yield from (
            spot
            for spot in self.spots.values()
            if name == spot.name or name in spot.above
        )


def saved_pieces(document: Document) -> SavedPieces:
    """Every board the plan was offered, and every node of those it cuts.

    Raises
    ------
    KeyError, TypeError, ValueError
        For a file that is no plan; one that passed the proof raises nothing.
    """
    for piece in document["stock"]:
        if not all(isinstance(piece[key], str) for key in _TEXTS):
            raise TypeError(f"a piece of stock whose {', '.join(_TEXTS)} are no texts")
        if not isinstance(piece.get("pack", ""), str):
            raise TypeError("a piece of stock whose pack is no text")
        if not all(isinstance(piece[key], int) for key in _NUMBERS):
            raise TypeError(
                f"a piece of stock whose {', '.join(_NUMBERS)} are no numbers"
            )
    stock = {piece["id"]: piece for piece in document["stock"]}
    rules = {wood["wood"]: wood["rules"] for wood in document["woods"]}
    spots: dict[str, Spot] = {}
    also: dict[str, str] = {}
    begun: set[str] = set()
    for wood in document["woods"]:
        for cutting in wood["cuttings"]:
            piece = stock[cutting["stock"]]
            begun.add(piece["id"])
            for node, above in _nodes(cutting["tree"], ()):
                spots[node["id"]] = Spot(
                    name=node["id"],
                    stock=piece,
                    copy=cutting["copy"],
                    node=node,
                    box=_box(node),
                    above=above,
                    rules=wood["rules"],
                )
                if node.get("name"):
                    also[node["name"]] = node["id"]
    for piece in document["stock"]:
        # A board of a wood that nothing is made of any more has no rules: it is whole.
        if piece["id"] not in begun and piece["wood"] in rules:
            length, width = piece["size"]
            spots.setdefault(
                piece["id"],
                Spot(
                    name=piece["id"],
                    stock=piece,
                    copy=None,
                    node=None,
                    box=(0, 0, length, width),
                    rules=rules[piece["wood"]],
                ),
            )
    return SavedPieces(spots=spots, also=also)


def _nodes(
    node: Document, above: tuple[str, ...]
) -> Iterator[tuple[Document, tuple[str, ...]]]:
    yield node, above
    for child in node.get("into", ()):
        yield from _nodes(child, (*above, node["id"]))


def _box(node: Document) -> Box:
    x0, y0, x1, y1 = node["box"]
    return x0, y0, x1, y1


def marks_of(stock: Document) -> list[Mark]:
    """The marks of a piece of stock, in its own frame."""
    return [
        Mark(
            kind=mark["kind"],
            face=mark["face"],
            x0=from_ticks(mark["box"][0]),
            y0=from_ticks(mark["box"][1]),
            x1=from_ticks(mark["box"][2]),
            y1=from_ticks(mark["box"][3]),
        )
        for mark in stock["marks"]
    ]
