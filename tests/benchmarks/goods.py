"""Parts, blanks and stock of a benchmark's problem, as `plan_format.md` says they are written.

There is no milling here: a part is as large as its blank on sheets, and elsewhere one tick
each way, since what is inside a blank plays no role but for its joints.
"""

from __future__ import annotations

from typing import Any

from yieldplan.packing import Problem
from yieldplan.packing.problem import Bin, Block, Item

WOOD = "wood"
KINDS = {1: "hole", 2: "stain"}
"""Bit of a kind of mark to a name; neither kind reaches beyond its box."""
THICK = 8128

Document = dict[str, Any]


class NotOnThePage(ValueError):  # noqa: N818 - named for what the problem is
    """The problem asks for something that plan.json has no words for."""


def face(mask: int) -> str:
    return f"without {mask}"


def zone_kinds(problem: Problem) -> list[str]:
    masks = {item.zone_bits for item in problem.items if any(item.zones)}
    if len(masks) > 1:
        raise NotOnThePage("items differ in what their joints may not hold")
    return [kind for bit, kind in KINDS.items() if any(bit & mask for mask in masks)]


class Goods:
    """Parts, blanks and stock."""

    def __init__(self, problem: Problem, *, is_sheet: bool) -> None:
        self.problem = problem
        self.is_sheet = is_sheet
        self.line_of: dict[frozenset[int], str] = {}
        for piece in problem.bins:
            self.line_of.setdefault(piece.holds, f"line {len(self.line_of) + 1}")
        makers: list[list[Item]] = [[] for _ in problem.demands]
        for item in problem.items:
            for demand in item.makes:
                makers[demand].append(item)
        # A sheet's part lies across where a blank of it is not as the first one is.
        self.size = [
            (items[0].length, items[0].width) if is_sheet and items else (1, 1)
            for items in makers
        ]
        self.zone = [0] * len(problem.demands)
        for item in problem.items:
            zone = self._zone_of(item)
            for demand in item.makes:
                if self.zone[demand] not in (0, zone):
                    raise NotOnThePage("a part has two depths of joint")
                self.zone[demand] = max(self.zone[demand], zone)
        for item in problem.items:
            if any(self.zone[demand] for demand in item.makes) and not any(item.zones):
                raise NotOnThePage("a jointed part has a blank without zones")

    def _zone_of(self, item: Item) -> int:
        """A joint as deep as its blank's zones say, the part taking the rest of its length."""
        near, far = item.zones
        if not any(item.zones) or not item.zone_bits:
            return 0
        if min(near, far) >= item.length:
            return 10**6
        over = near + far - 2 * min(near, far)
        if sum(item.makes.values()) > 1 or not min(near, far) or over >= item.length:
            raise NotOnThePage("a joint at one end, or in the middle of a blank")
        return min(near, far)

    def written(self) -> Document:
        return {
            "parts": [self._part(number) for number in range(len(self.problem.demands))],
            "blanks": [self._blank(number) for number in range(len(self.problem.items))],
            "stock": [self._stock(piece) for piece in self.problem.bins],
        }  # fmt: skip

    def _part(self, number: int) -> Document:
        demand, (length, width) = self.problem.demands[number], self.size[number]
        sizes = {"length": length, "width": width, "thickness": 1}
        return {
            "id": demand.name,
            "quantity": demand.need,
            "size": list(sizes.values()),
            "why": {name: [["as drawn", size]] for name, size in sizes.items()},
            "show_face": face(0),
            "back_face": face(0),
            "strips": 1,
            "set_up": False,
            "zone": self.zone[number],
            "glue_up": None,
        }

    def _blank(self, number: int) -> Document:
        problem, item = self.problem, self.problem.items[number]
        show, back = item.layers[0]
        if item.layers[1] != (back, show):
            raise NotOnThePage("an item turned over does not change its faces")
        made = [each for each, count in item.makes.items() for _ in range(count)]
        turned = self.is_sheet and self.size[made[0]] != (item.length, item.width)
        at, inside = 0, []
        for demand in made:
            length, width = self.size[demand][::-1] if turned else self.size[demand]
            zone = self.zone[demand]
            if len(made) == 1 and 0 < zone < item.length:
                at = item.zones[0] - zone
                length = item.length - at - (item.zones[1] - zone)
            inside.append(
                {
                    "part": problem.demands[demand].name,
                    "at": [at, 0],
                    "size": [length, width],
                    "slice": 0,
                }
            )
            at += length + problem.kerf
        if at - problem.kerf > item.length:
            raise NotOnThePage("a blank too short for the kerfs between its parts")
        (step,) = [
            {"set": f"set {place}", "number": steps.index(number) + 1, "of": len(steps)}
            for place, steps in enumerate(problem.sets)
            if number in steps
        ] or [None]
        return {
            "id": item.name,
            "route": "plane",
            "wood": WOOD,
            "size": [item.length, item.width],
            "thickness": 1,
            "stock": [line for held, line in self.line_of.items() if number in held],
            "makes": {
                problem.demands[demand].name: count
                for demand, count in item.makes.items()
            },
            "inside": inside,
            "show_face": face(show),
            "back_face": face(back),
            "turned": turned,
            "step": step,
            "may_spare": item.may_spare,
        }

    def _stock(self, piece: Bin) -> Document:
        problem = self.problem
        for number in piece.holds:
            item = problem.items[number]
            is_long = piece.is_twisted and item.length > problem.twisted_at_most
            is_step = not piece.is_straight and number in problem.in_sets()
            if is_long or is_step:
                raise NotOnThePage("a crooked board that holds what it may not")
        if any(
            0 < len(piece.holds & set(steps)) < len(steps) for steps in problem.sets
        ):
            raise NotOnThePage("a board that holds some steps of a set")
        widths = piece.widths or (piece.width, piece.width)
        return {
            "id": piece.name,
            "wood": WOOD,
            "line": self.line_of[piece.holds],
            "kind": "sheet" if self.is_sheet else "rough board",
            "planed": self.is_sheet,
            "thickness": "4/4",
            "thick": THICK,
            "grade": "",
            "lot": "",
            "size": [piece.length, piece.width],
            "widths": list(widths),
            "crook": piece.crook,
            "bow": 0,
            "twist": int(piece.is_twisted),
            "copies": piece.copies,
            "board_feet": None if self.is_sheet else "1.00",
            "per_foot": None,
            "price": piece.price,
            "trims": list(piece.trims),
            "edges": list(piece.edges),
            "marks": [_mark(block) for block in piece.blocks],
        }


def _mark(block: Block) -> Document:
    face = "A" if not block.on_b else "B" if not block.on_a else "through"
    return {
        "kind": KINDS[block.on_a or block.on_b],
        "face": face,
        "box": list(block.box),
    }
