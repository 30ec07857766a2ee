"""Tiny woods, a few ticks long, small enough to try every way of cutting them."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from decimal import ROUND_HALF_UP, Decimal
from math import gcd
from typing import Any

Rect = tuple[int, int, int, int]
FACES = {
    "clear": ["knot", "sap", "split"],
    "sap allowed": ["knot", "split"],
    "sound": ["split"],
    "any": [],
}


@dataclass(frozen=True)
class TinyBlank:
    """A blank and the parts it makes; each part is laid along it, a kerf apart."""

    id: str
    size: tuple[int, int]
    makes: Mapping[str, int]
    faces: tuple[str, str] = ("clear", "clear")
    route: str = "plane"
    lines: tuple[str, ...] = ("oak 4/4",)
    step: tuple[str, int, int] | None = None
    """The set it is a step of, its number, of how many."""
    at: int = 0
    """Where the first of its parts begins, as far as there is room. [ticks]"""


@dataclass(frozen=True)
class TinyPiece:
    """A piece of stock. [ticks, money/10,000]"""

    id: str
    size: tuple[int, int]
    price: int
    copies: int = 1
    trims: tuple[int, int] = (0, 0)
    edges: tuple[int, int] = (0, 0)
    marks: tuple[tuple[str, str, Rect], ...] = ()
    line: str = "oak 4/4"
    widths: tuple[int, int] | None = None
    """At zero and at the far end, where they differ."""
    crook: int = 0
    bow: int = 0
    twist: int = 0

    @property
    def is_straight(self) -> bool:
        """Neither crooked, bowed, twisted nor tapered."""
        tapered = self.widths is not None and self.widths[0] != self.widths[1]
        return not (self.crook or self.bow or self.twist or tapered)


@dataclass(frozen=True)
class TinyWood:
    """One wood: rules, blanks, pieces and what is needed."""

    family: str
    kerf: int
    step: tuple[int, int]
    blanks: tuple[TinyBlank, ...]
    pieces: tuple[TinyPiece, ...]
    need: Mapping[str, int]
    marks_from: str = "zero end"
    set_up: frozenset[str] = field(default_factory=frozenset)
    zones: Mapping[str, int] = field(default_factory=dict)
    """How far from its ends a part is a joint zone, where it is. [ticks]"""
    crook_at_most: int | None = None
    twisted_at_most: int = 0
    around_knots: int = 0
    short_of_checks: int = 0
    percent: int = 0
    sizes: tuple[tuple[int, int], ...] = ()


def document(
    wood: TinyWood,
    cuttings: Sequence[Mapping[str, Any]],
    *,
    prices: Mapping[str, int] | None = None,
    priced: int = 0,
) -> dict[str, Any]:
    """A plan file for a tiny wood; `priced` has to be what the prices prove."""
    price_of = {piece.id: piece.price for piece in wood.pieces}
    cost = sum(
        price_of[cutting["stock"]] - _worth_in(cutting["tree"]) for cutting in cuttings
    )
    step = 1 if wood.percent else gcd(*price_of.values())
    value = max(0, -(-priced // step) * step) if step else 0
    part_sizes = _part_sizes(wood)
    return {
        "yieldplan_plan": 1,
        "title": "tiny",
        "mark": "TINY",
        "complete": True,
        "ticks_per_inch": 8128,
        "money_per_unit": 10000,
        "currency": "USD",
        "unit": "in",
        "faces": FACES,
        "zones": ["knot", "split"],
        "parts": [
            {
                "id": part,
                "quantity": wood.need.get(part, 2),
                "size": [length, width, 5],
                "why": {
                    "length": [["opening", length + 1], ["clearance", -1]],
                    "width": [["drawn", width]],
                    "thickness": [["drawn", 5]],
                },
                "show_face": "any",
                "back_face": "any",
                "strips": 1,
                "set_up": part in wood.set_up,
                "zone": wood.zones.get(part, 0),
                "glue_up": None,
            }
            for part, (length, width) in sorted(part_sizes.items())
        ],
        "blanks": [_blank(wood, blank, part_sizes) for blank in wood.blanks],
        "stock": [_piece(piece) for piece in wood.pieces],
        "woods": [
            {
                "wood": "oak",
                "rules": {
                    "family": wood.family,
                    "kerf": wood.kerf,
                    "step": list(wood.step),
                    "marks_from": wood.marks_from,
                    "crook_at_most": wood.crook_at_most,
                    "twisted_at_most": wood.twisted_at_most,
                    "around_knots": wood.around_knots,
                    "short_of_checks": wood.short_of_checks,
                    "resaw_kerf": 0,
                    "offcuts": {
                        "percent": wood.percent,
                        "sizes": [list(size) for size in wood.sizes],
                    },
                },
                "need": dict(wood.need),
                "missing": {},
                "cuttings": [dict(cutting) for cutting in cuttings],
                "cost": cost,
                "bound": {
                    "value": value,
                    "priced": priced,
                    "family": wood.family,
                    "prices": dict(prices or {}),
                },
            }
        ],
        "money": _money(wood, cuttings),
    }


def _part_sizes(wood: TinyWood) -> dict[str, tuple[int, int]]:
    """Finished sizes so small that any blank of the wood holds what it makes."""
    parts = {part for blank in wood.blanks for part in blank.makes}
    sizes = {}
    for part in parts:
        rooms = []
        for blank in wood.blanks:
            if part in blank.makes:
                number = sum(blank.makes.values())
                rooms.append((blank.size[0] - (number - 1) * wood.kerf) // number)
        sizes[part] = min(rooms), min(b.size[1] for b in wood.blanks if part in b.makes)
    return sizes


def places(wood: TinyWood, blank: TinyBlank) -> list[tuple[str, int, int]]:
    """Where the parts of a blank lie along it: part, its beginning, its length."""
    sizes = _part_sizes(wood)
    row = [part for part, count in sorted(blank.makes.items()) for _ in range(count)]
    taken = sum(sizes[part][0] for part in row) + (len(row) - 1) * wood.kerf
    x = min(blank.at, blank.size[0] - taken)
    found = []
    for part in row:
        found.append((part, x, sizes[part][0]))
        x += sizes[part][0] + wood.kerf
    return found


def _worth_in(node: Mapping[str, Any]) -> int:
    return node.get("worth", 0) + sum(map(_worth_in, node.get("into", [])))


def _blank(
    wood: TinyWood, blank: TinyBlank, sizes: Mapping[str, tuple[int, int]]
) -> dict[str, Any]:
    inside = [
        {"part": part, "at": [x, 0], "size": list(sizes[part]), "slice": 0}
        for part, x, _ in places(wood, blank)
    ]
    step = None
    if blank.step is not None:
        step = dict(zip(("set", "number", "of"), blank.step, strict=True))
    return {
        "id": blank.id,
        "route": blank.route,
        "wood": "oak",
        "size": list(blank.size),
        "thickness": 7,
        "stock": list(blank.lines),
        "makes": dict(blank.makes),
        "inside": inside,
        "show_face": blank.faces[0],
        "back_face": blank.faces[1],
        "turned": False,
        "step": step,
        "may_spare": False,
    }


def _piece(piece: TinyPiece) -> dict[str, Any]:
    return {
        "id": piece.id,
        "wood": "oak",
        "line": piece.line,
        "kind": "rough board",
        "planed": False,
        "thickness": "4/4",
        "thick": 8,
        "grade": "",
        "lot": "",
        "size": list(piece.size),
        "widths": list(piece.widths or [piece.size[1]] * 2),
        "crook": piece.crook,
        "bow": piece.bow,
        "twist": piece.twist,
        "copies": piece.copies,
        "board_feet": "1.00",
        "per_foot": None,
        "price": piece.price,
        "trims": list(piece.trims),
        "edges": list(piece.edges),
        "marks": [
            {"kind": kind, "face": face, "box": list(box)}
            for kind, face, box in piece.marks
        ],
    }


def _money(wood: TinyWood, cuttings: Sequence[Mapping[str, Any]]) -> dict[str, Any]:
    """Purchase lines, rounded by the decimal module so as to differ from the checker."""
    groups: dict[tuple[str, int], dict[str, int]] = {}
    by_id = {piece.id: piece for piece in wood.pieces}
    for cutting in cuttings:
        piece = by_id[cutting["stock"]]
        group = groups.setdefault((piece.line, piece.price), {})
        group[piece.id] = group.get(piece.id, 0) + 1
    lines = []
    for (line, price), bought in sorted(groups.items()):
        exact = Decimal(price * sum(bought.values())) / 10_000
        cents = exact.quantize(Decimal("0.01"), ROUND_HALF_UP)
        lines.append(
            {
                "wood": "oak",
                "line": line,
                "grade": "",
                "pieces": [[stock, copies] for stock, copies in sorted(bought.items())],
                "board_feet": f"{sum(bought.values())}.00",
                "by": "piece",
                "per": price,
                "total": int(cents * 10_000),
            }
        )
    return {"lines": lines, "total": sum(line["total"] for line in lines)}
