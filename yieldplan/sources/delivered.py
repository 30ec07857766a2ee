"""What a half-cut plan has delivered: blanks that lie free and may still be what they were sawn for."""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from yieldplan.model.faces import Mark
from yieldplan.model.plan import Box
from yieldplan.model.rounding import mark_in_ticks
from yieldplan.sources.saved_pieces import Document, Spot


@dataclass(frozen=True, kw_only=True)
class Delivered:
    """Parts that need no more sawing, and blanks that are no whole part yet.

    Parameters
    ----------
    parts
        Part to number.
    over
        Blanks of parts that are glued up from several, where not all of them are sawn.
    """

    parts: Mapping[str, int]
    over: tuple[Spot, ...]


def delivered(free: Sequence[Spot], document: Document) -> Delivered:
    """The parts that blanks on the bench make.

    A part glued up from strips is delivered when all its strips are; strips of a part
    that is not whole are pieces, from which the same strips can be taken.
    """
    part_of = {_demand(part): part for part in document["parts"]}
    blanks = {blank["id"]: blank for blank in document["blanks"]}
    groups: dict[tuple[tuple[str, int], ...], list[Spot]] = {}
    for spot in free:
        makes = blanks[spot.blank]["makes"]
        groups.setdefault(tuple(sorted(makes.items())), []).append(spot)
    units: Counter[str] = Counter()
    for makes, spots in groups.items():
        for demand, count in makes:
            units[demand] += count * len(spots)
    over: list[Spot] = []
    for makes, spots in sorted(groups.items()):
        for spot in reversed(spots):
            if all(_is_whole(units[demand], part_of[demand]) for demand, _ in makes):
                continue
            over.append(spot)
            for demand, count in makes:
                units[demand] -= count
    parts = {
        part_of[demand]["id"]: min(
            count // _units(part_of[demand]), part_of[demand]["quantity"]
        )
        for demand, count in units.items()
        if not part_of[demand]["set_up"]
    }
    return Delivered(
        parts={name: count for name, count in sorted(parts.items()) if count},
        over=tuple(sorted(over, key=lambda spot: spot.name)),
    )


def _demand(part: Document) -> str:
    if part.get("glue_up"):
        return f"{part['id']} width"
    return str(part["id"]) if part["strips"] == 1 else f"{part['id']} strip"


def _is_whole(units: int, part: Document) -> bool:
    """Whether so many strips, or steps of width, come to whole parts."""
    if part.get("glue_up"):
        # One panel at the most; its strips may come out a little too wide.
        return units == 0 or units >= _units(part)
    return units % _units(part) == 0


def _units(part: Document) -> int:
    """How much the saw must deliver for one of it."""
    glue_up = part.get("glue_up")
    return int(glue_up["units"]) if glue_up else int(part["strips"])


def is_spoiled_by(spot: Spot, marks: Sequence[Mark], document: Document) -> bool:
    """Whether a mark found since lies where the blank may not have it.

    Where the blank is joined counts as all of it: such a blank is offered again as a
    piece, and the plan, which knows better, may take it for the same part.
    """
    blank = next(b for b in document["blanks"] if b["id"] == spot.blank)
    zones = {part["id"]: part["zone"] for part in document["parts"]}
    demands = {_demand(part): part["id"] for part in document["parts"]}
    is_joined = any(zones[demands[demand]] for demand in blank["makes"])
    up = spot.node["face_up"] if spot.node is not None else "A"
    faces = {up: blank["show_face"], "B" if up == "A" else "A": blank["back_face"]}
    for mark in marks:
        sides = ("A", "B") if mark.face == "through" else (mark.face,)
        is_forbidden = any(mark.kind in document["faces"][faces[s]] for s in sides)
        if is_joined and mark.kind in document["zones"]:
            is_forbidden = True
        if is_forbidden and _overlap(_reach(mark, blank, spot.rules), spot.box):
            return True
    return False


def _reach(mark: Mark, blank: Document, rules: Document) -> Box:
    x0, y0, x1, y1 = mark_in_ticks(mark)
    if mark.kind == "knot":
        around = rules["around_knots"]
        return x0 - around, y0 - around, x1 + around, y1 + around
    if mark.kind in ("check", "split") and blank["show_face"] == "clear":
        short = rules["short_of_checks"]
        return x0 - short, y0, x1 + short, y1
    return x0, y0, x1, y1


def _overlap(one: Box, other: Box) -> bool:
    return (
        one[0] < other[2]
        and other[0] < one[2]
        and one[1] < other[3]
        and other[1] < one[3]
    )
