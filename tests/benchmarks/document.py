"""A benchmark's problem and its solution as plan.json, so that the checker goes over every cut and floor of it.

Written from `plan_format.md`. There is no milling here: a part is as large as its blank, or
one tick each way where what is inside the blank plays no role.
"""

from __future__ import annotations

from collections import Counter
from typing import Any

from tests.builders import make_job, make_piece
from yieldplan import plan_file
from yieldplan.model.plan import Cutting, Missing, Plan, Rules, WoodPlan
from yieldplan.packing import Problem, Solution
from yieldplan.packing.bound_by_name import bound_by_name
from yieldplan.packing.lay import numbered
from yieldplan.packing.leftovers import KeepSizes, with_fates, with_names, with_worth
from yieldplan.packing.problem import Bin, Block, Item
from yieldplan.packing.trees import tree_of

WOOD = "wood"
KINDS = {1: "hole", 2: "stain"}
"""Bit of a kind of mark to a name; neither kind reaches beyond its box."""
THICK = 8128
CENT = 100

Document = dict[str, Any]


class NotOnThePage(ValueError):  # noqa: N818 - named for what the problem is
    """The problem asks for something that plan.json has no words for."""


def document(
    problem: Problem, solution: Solution, *, is_sheet: bool = False
) -> Document:
    """The plan of one wood.

    Parameters
    ----------
    is_sheet
        Whether the bins are sheets, so that a part may lie across.

    Raises
    ------
    NotOnThePage
        Random problems ask for more than jobs can: two lists of what no joint may hold.
    """
    return plan_file.write(_plan(problem, solution, is_sheet=is_sheet)) | {
        "faces": {
            _face(mask): [kind for bit, kind in KINDS.items() if bit & mask]
            for mask in range(sum(KINDS) + 1)
        },
        "zones": _zone_kinds(problem),
        **_Goods(problem, is_sheet=is_sheet).written(),
        "money": _money(problem, solution, is_sheet=is_sheet),
    }


def _face(mask: int) -> str:
    return f"without {mask}"


def _zone_kinds(problem: Problem) -> list[str]:
    masks = {item.zone_bits for item in problem.items if any(item.zones)}
    if len(masks) > 1:
        raise NotOnThePage("items differ in what their joints may not hold")
    return [kind for bit, kind in KINDS.items() if any(bit & mask for mask in masks)]


class _Goods:
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
            "show_face": _face(0),
            "back_face": _face(0),
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
            "show_face": _face(show),
            "back_face": _face(back),
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


def _plan(problem: Problem, solution: Solution, *, is_sheet: bool) -> Plan:
    """The plan as the writer of plan.json takes it; parts, blanks and stock are written here."""
    copies: Counter[int] = Counter()
    cuttings = []
    for pattern, worth in zip(solution.patterns, solution.worths, strict=True):
        piece = problem.bins[pattern.bin]
        copies[pattern.bin] += 1
        tree = with_fates(
            tree_of(pattern, problem, exact=is_sheet), piece, KeepSizes(())
        )
        name = f"{piece.name}/{copies[pattern.bin]}"
        cuttings.append(
            Cutting(
                piece=make_piece(piece.name),
                copy=copies[pattern.bin],
                tree=with_names(numbered(with_worth(tree, worth), name)),
                breakdown="rip first" if pattern.breakdown == "R" else "crosscut first",
            )
        )
    named = [demand.name for demand in problem.demands]
    wood = WoodPlan(
        wood=WOOD,
        is_sheet=is_sheet,
        rules=Rules(
            family=problem.family,
            kerf=problem.kerf,
            step_along=problem.step_along,
            step_across=problem.step_across,
            marks_from=problem.marks_from,
            crook_at_most=problem.crook_at_most,
            twisted_at_most=problem.twisted_at_most,
            around_knots=0,
            short_of_checks=0,
            resaw_kerf=0,
            offcut_percent=problem.offcut_percent,
            offcut_sizes=problem.offcut_sizes,
        ),
        need=dict(zip(named, solution.need, strict=True)),
        missing=tuple(
            Missing(
                demand=name, count=count, reason="too little wood", remedy="buy more"
            )
            for name, count in zip(named, solution.short, strict=True)
            if count
        ),
        cuttings=tuple(cuttings),
        cost=solution.cost,
        bound=bound_by_name(solution, problem),
        set_up_left={},
    )
    return Plan(
        job=make_job(),
        parts=(),
        blanks=(),
        pieces=(),
        fits={},
        woods=(wood,),
        purchase=(),
        cautions=(),
    )


def _money(problem: Problem, solution: Solution, *, is_sheet: bool) -> Document:
    """One line for every price and stock line, by the piece."""
    line_of = _Goods(problem, is_sheet=is_sheet).line_of
    bought: dict[tuple[str, int], Counter[str]] = {}
    for pattern in solution.patterns:
        piece = problem.bins[pattern.bin]
        heading = (line_of[piece.holds], piece.price)
        bought.setdefault(heading, Counter())[piece.name] += 1
    lines = [
        {
            "wood": WOOD,
            "line": line,
            "grade": "",
            "pieces": sorted([name, count] for name, count in pieces.items()),
            "board_feet": None if is_sheet else f"{pieces.total()}.00",
            "by": "piece",
            "per": price,
            "total": (2 * price * pieces.total() + CENT) // (2 * CENT) * CENT,
        }
        for (line, price), pieces in sorted(bought.items())
    ]
    return {"lines": lines, "total": sum(line["total"] for line in lines)}
