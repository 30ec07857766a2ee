"""A plan laid out by hand with everything a paper has to show, so that papers need no solver.

Boards are written as a saw meets them: marks along, blade right of every mark, then
strips across. One kerf of 1/8 lies between neighbours.
"""

from __future__ import annotations

import dataclasses
from collections.abc import Callable, Sequence
from datetime import date
from decimal import Decimal
from fractions import Fraction
from typing import Any, Literal, Union

from tests.measure.hall_case import WHERE, inches, make_job, make_shop
from yieldplan.measure import purchase
from yieldplan.model.blanks import Blank, Inside
from yieldplan.model.faces import Mark
from yieldplan.model.job import Job, Price, Sheet, Wood
from yieldplan.model.parts import Part
from yieldplan.model.pieces import Piece
from yieldplan.model.plan import (
    Bound,
    Box,
    Cutting,
    Missing,
    Node,
    Plan,
    Rules,
    WoodPlan,
)
from yieldplan.model.report import Report
from yieldplan.model.sums import Sum
from yieldplan.units import TICKS_PER_INCH, Inches

KERF = TICKS_PER_INCH // 8

Content = Union[str, tuple[str, Literal["B"]], list["Strip"], "Lengths"]
"""A blank's id, a fate, a blank with face B up, strips, or a strip crosscut again."""


@dataclasses.dataclass(frozen=True)
class Strip:
    """A strip off the fence: its width, and what becomes of it."""

    width: str
    content: Content


@dataclasses.dataclass(frozen=True)
class Lengths:
    """A strip crosscut again into lengths, from its own end."""

    pieces: tuple[tuple[str, str], ...]


def ticks(text: str) -> int:
    """A length off the tape. [ticks]"""
    return int(inches(text) * TICKS_PER_INCH)


@dataclasses.dataclass(frozen=True)
class Stretch:
    """Wood from `start` to `end` of a row, and what becomes of it. [ticks]"""

    start: int
    end: int
    make: Callable[[Box], Node]


def lay(box: Box, cut: Literal["rip", "crosscut"], row: Sequence[Stretch]) -> Node:
    """A node cut into stretches a kerf apart; what is left over is burnt."""

    def part(start: int, end: int) -> Box:
        if cut == "crosscut":
            return (start, box[1], end, box[3])
        return (box[0], start, box[2], end)

    first, last = (box[0], box[2]) if cut == "crosscut" else (box[1], box[3])
    if [(each.start, each.end) for each in row] == [(first, last)]:
        return row[0].make(box)
    children, at = [], first
    for each in row:
        if each.start - at > KERF:
            children.append(Node(id="", box=part(at, each.start - KERF), fate="burn"))
        children.append(each.make(part(each.start, each.end)))
        at = each.end + KERF
    if at < last:
        fate: Any = "edge" if cut == "rip" and last - at <= KERF else "burn"
        children.append(Node(id="", box=part(at, last), fate=fate))
    return Node(id="", box=box, cut=cut, into=tuple(children))


def numbered(node: Node, name: str) -> Node:
    """The tree with its nodes named after the board, W1.2.1, and offcuts after it too."""
    letters = iter("ABCDEFGH")

    def named(node: Node, name: str) -> Node:
        into = tuple(named(c, f"{name}.{n}") for n, c in enumerate(node.into, start=1))
        offcut = f"{name.split('.')[0]}-{next(letters)}" if node.fate == "keep" else ""
        return dataclasses.replace(node, id=name, into=into, name=offcut)

    return named(node, name)


FATES = ("trim", "edge", "burn", "keep")


def _make(content: Content) -> Callable[[Box], Node]:
    def make(box: Box) -> Node:
        if isinstance(content, list):
            return _strips(box, content)
        if isinstance(content, Lengths):
            return _lengths(box, content)
        if isinstance(content, tuple):
            return Node(id="", box=box, blank=content[0], face_up="B")
        if content in FATES:
            return Node(id="", box=box, fate=content)  # type: ignore[arg-type]
        return Node(id="", box=box, blank=content)

    return make


def _strips(box: Box, strips: Sequence[Strip], edge: int = KERF) -> Node:
    row, y = [], box[1] + edge
    for strip in strips:
        row.append(Stretch(y, y + ticks(strip.width), _make(strip.content)))
        y += ticks(strip.width) + KERF
    return lay(box, "rip", row)


def _lengths(box: Box, lengths: Lengths) -> Node:
    row, x = [], box[0]
    for length, content in lengths.pieces:
        row.append(Stretch(x, x + ticks(length), _make(content)))
        x += ticks(length) + KERF
    return lay(box, "crosscut", row)


def between(box: Box, marks: Sequence[tuple[str, str, Content]]) -> Node:
    """A stretch crosscut at marks from zero: from mark, to mark, what lies between."""
    row = [
        Stretch(ticks(start) + KERF if start != "0" else 0, ticks(end), _make(content))
        for start, end, content in marks
    ]
    return lay(box, "crosscut", row)


def crosscut_first(
    piece: Piece, marks: Sequence[tuple[str, str, Content]], copy: int = 1
) -> Cutting:
    """A board cut into sections at marks, each section ripped."""
    box = (0, 0, int(piece.length * TICKS_PER_INCH), int(piece.width * TICKS_PER_INCH))
    tree = numbered(between(box, marks), piece.id)
    return Cutting(piece=piece, copy=copy, tree=tree, breakdown="crosscut first")


def rip_first(
    piece: Piece,
    strips: Sequence[tuple[str, Sequence[tuple[str, str, Content]]]],
    copy: int = 1,
) -> Cutting:
    """A board ripped into strips, each crosscut at its own marks."""
    length, width = piece.length * TICKS_PER_INCH, piece.width * TICKS_PER_INCH
    row, y = [], KERF

    def strip(marks: Sequence[tuple[str, str, Content]]) -> Callable[[Box], Node]:
        return lambda box: between(box, marks)

    for wide, marks in strips:
        row.append(Stretch(y, y + ticks(wide), strip(marks)))
        y += ticks(wide) + KERF
    tree = lay((0, 0, int(length), int(width)), "rip", row)
    tree = numbered(tree, piece.id)
    return Cutting(piece=piece, copy=copy, tree=tree, breakdown="rip first")


def make_piece(name: str, length: str, width: str, **said: Any) -> Piece:
    """A rough 4/4 board at 14.50 a foot; board feet by its size unless given."""
    size = inches(length), inches(width)
    feet = said.pop("board_feet", None) or Fraction(
        round(size[0] * size[1] / 144 * 100), 100
    )
    per_foot = said.get("per_foot", 145_000)
    given: dict[str, Any] = {
        "id": name,
        "wood": "walnut",
        "line": "walnut 4/4",
        "kind": "rough board",
        "thickness": "4/4",
        "thick": Fraction(1),
        "grade": "FAS",
        "length": size[0],
        "width": size[1],
        "board_feet": feet,
        "per_foot": per_foot,
        "price": int(feet * (per_foot or 0)),
        "end_trims": (inches("2"), inches("2")),
        "edge_passes": (inches("1/8"), inches("1/8")),
    }
    return Piece(**(given | said))


def make_mark(text: str) -> Mark:
    """A mark from `knot A 31 32 2 3`: kind, face, stretch of length, of width."""
    kind, face, x0, x1, y0, y1 = text.split()
    return Mark(
        kind=kind, face=face, x0=inches(x0), x1=inches(x1), y0=inches(y0), y1=inches(y1)
    )  # type: ignore[arg-type]


def plain_part(name: str, wood: str, size: tuple[str, str, str], **said: Any) -> Part:
    """A part whose length is a sum: an opening less a lap of 3/8."""
    length, width, thickness = (inches(each) for each in size)
    given: dict[str, Any] = {
        "id": name,
        "quantity": 1,
        "wood": wood,
        "length": Sum.of(
            ("opening", length + Fraction(3, 8)), ("lap", Fraction(-3, 8))
        ),
        "width": Sum.of(("as drawn", width)),
        "thickness": Sum.of(("as drawn", thickness)),
        "where": WHERE,
    }
    return Part(**(given | said))


def plain_blank(number: str, part: Part, *, over: str = "1/2", **said: Any) -> Blank:
    """A blank for one part: 1/2 longer, 1/4 wider, 3/16 thicker."""
    more, wider = inches(over), Fraction(1, 4)
    given: dict[str, Any] = {
        "id": number,
        "route": "plane",
        "wood": part.wood,
        "length": Sum.of(("finished", part.length.value), ("sawing to length", more)),
        "width": Sum.of(("finished", part.width.value), ("jointing", wider)),
        "thickness": Sum.of(
            ("finished", part.thickness.value), ("planing", Fraction(3, 16))
        ),
        "finished_thickness": part.thickness.value,
        "makes": {part.demand: 1},
        "inside": (
            Inside(
                demand=part.demand,
                x=more / 2,
                y=wider / 2,
                length=part.length.value,
                width=part.width.value,
            ),
        ),
        "show_face": part.show_face,
        "back_face": part.back_face,
        "words": part.demand,
    }
    return Blank(**(given | said))


def set_blank(
    number: str, route: str, parts: Sequence[Part], words: str, **said: Any
) -> Blank:
    """Parts in one blank end to end, a kerf between, 1/2 longer and 1/4 wider in all."""
    kerf, x = Fraction(1, 8), Fraction(1, 4)
    inside = []
    for part in parts:
        inside.append(
            Inside(
                demand=part.demand,
                x=x,
                y=Fraction(1, 8),
                length=part.length.value,
                width=part.width.value,
            )
        )
        x += part.length.value + kerf
    makes: dict[str, int] = {}
    for part in parts:
        makes[part.demand] = makes.get(part.demand, 0) + 1
    lengths = [(part.id, part.length.value) for part in parts]
    whole = Sum.of(
        *lengths, ("kerf", kerf, len(parts) - 1), ("sawing to length", Fraction(1, 2))
    )
    return plain_blank(
        number,
        parts[0],
        route=route,
        length=whole,
        makes=makes,
        inside=tuple(inside),
        words=words,
        **said,
    )


def rules(family: Literal["R", "C", "E"] = "C", **said: Any) -> Rules:
    """Marks on half inches, fence on eighths."""
    given: dict[str, Any] = {
        "family": family,
        "kerf": KERF,
        "step_along": ticks("1/2"),
        "step_across": ticks("1/8"),
        "marks_from": "zero end",
    }
    return Rules(**(given | said))


# ---- The job: two drawers, fronts of walnut, the rest of poplar, bottoms of plywood.

UPPER = plain_part("upper/front", "walnut", ("21 1/2", "5 1/4", "3/4"), show_face="clear")  # fmt: skip
LOWER = plain_part("lower/front", "walnut", ("21 1/2", "5 1/4", "3/4"), show_face="clear")  # fmt: skip
RAIL = plain_part("divider", "walnut", ("22", "2 1/2", "3/4"), quantity=2, show_face="clear", back_face="any")  # fmt: skip
KNOB = plain_part("knob blank", "walnut", ("5 1/2", "1 1/2", "3/4"), quantity=2)
TEST = plain_part("set-up, half-blind", "walnut", ("8", "5 1/4", "3/4"), quantity=1, set_up=True)  # fmt: skip
SIDE = plain_part("side", "poplar", ("19 5/8", "5 1/4", "1/2"), quantity=4)
BACK = plain_part("back", "poplar", ("21 1/2", "4 5/8", "1/2"), quantity=2)
TOP = plain_part("=1+1", "poplar", ("24", "18", "3/4"), strips=3, note="Glued up from strips.")  # fmt: skip
BOTTOM = plain_part("bottom", "bottom", ("21 7/16", "19 3/16", "1/4"), quantity=3, is_sheet=True)  # fmt: skip
FRONTS = set_blank("k1", "match", (UPPER, LOWER), "fronts (2 matched)")
KNOBS = set_blank("k3", "gang", (KNOB, KNOB), "knob blank (2 ganged)")


def _blanks() -> tuple[Blank, ...]:
    strip = inches("6")
    return (
        FRONTS,
        plain_blank("k2", RAIL),
        KNOBS,
        plain_blank("k4", SIDE),
        plain_blank("k5", BACK),
        plain_blank(
            "k6",
            TOP,
            width=Sum.of(("third of the panel", strip), ("joints", Fraction(1, 8))),
            inside=(
                Inside(
                    demand="=1+1 strip",
                    x=Fraction(1, 4),
                    y=Fraction(1, 16),
                    length=inches("24"),
                    width=strip,
                ),
            ),
        ),
        plain_blank(
            "k7",
            BOTTOM,
            over="0",
            is_sheet=True,
            route="plane",
            length=BOTTOM.length,
            width=BOTTOM.width,
            thickness=BOTTOM.thickness,
            inside=(
                Inside(
                    demand="bottom",
                    x=Fraction(0),
                    y=Fraction(0),
                    length=BOTTOM.length.value,
                    width=BOTTOM.width.value,
                ),
            ),
        ),
        plain_blank("k8", TEST, set_up=True, show_face="any", back_face="any"),
    )


W1 = make_piece(
    "W1", "108", "8 1/4", lot="north stack",
    marks=(
        make_mark("split through 0 5 3-1/2 4-1/2"),
        make_mark("knot A 50 53 6-3/4 8"),
        make_mark("wane B 80 108 7-1/2 8-1/4"),
        make_mark("sap A 56 66 0 1"),
    ),
)  # fmt: skip
W2 = make_piece("W2", "84", "6", grade="=HYPERLINK(1)", per_foot=None, price=400_000)
W3 = make_piece("W3", "96", "7")
P1 = make_piece("P1", "118", "13", wood="poplar", line="poplar 4/4", grade="No. 1 Common", per_foot=46_000,
    marks=(make_mark("knot A 56 60 7 8-1/2"), make_mark("stain A 90 112 0 2")),
)  # fmt: skip
P2 = make_piece("P2", "120", "7 1/4", wood="poplar", line="poplar 4/4", grade="No. 1 Common", per_foot=46_000)  # fmt: skip
S1 = make_piece(
    "bottom", "96", "48", wood="bottom", line="birch plywood", kind="sheet",
    is_planed=True, is_sheet=True,
    thickness="1/4", thick=Fraction(1, 4), grade="", board_feet=None, per_foot=None,
    price=380_000, copies=3, end_trims=(inches("1/4"),) * 2, edge_passes=(inches("1/8"),) * 2,
)  # fmt: skip
S1 = dataclasses.replace(S1, board_feet=None)

WALNUT = (
    crosscut_first(
        W1,
        [
            ("0", "6", "trim"),
            ("6", "50", [Strip("5 1/2", "k1"), Strip("2 3/8", "burn")]),
            ("50", "54", "burn"),
            ("54", "77", [Strip("2 3/4", ("k2", "B")), Strip("2 3/4", "k2")]),
            ("77", "106", "keep"),
            ("106", "108", "trim"),
        ],
    ),
    crosscut_first(
        W2,
        [
            ("0", "2", "trim"),
            ("2", "15", [Strip("1 3/4", "k3"), Strip("3 7/8", "burn")]),
            ("15", "24", [Strip("5 1/2", "k8")]),
            ("24", "82", "keep"),
            ("82", "84", "trim"),
        ],
    ),
)
POPLAR = (
    rip_first(
        P1,
        [
            ("5 1/2", [("0", "2", "trim"), ("2", "22 1/2", "k4"), ("22 1/2", "43", "k4"),
                       ("43", "63 1/2", "k4"), ("63 1/2", "84", "k4"), ("84", "118", "burn")]),
            ("6 1/8", [("0", "2", "trim"), ("2", "27", "k6"), ("27", "52", "k6"),
                       ("52", "60 1/2", "burn"), ("60 1/2", "85 1/2", "k6"),
                       ("85 1/2", "116", "keep"), ("116", "118", "trim")]),
        ],
    ),
    crosscut_first(
        P2,
        [
            ("0", "2", "trim"),
            ("2", "24 1/2", [Strip("4 7/8", "k5"), Strip("2", "burn")]),
            ("24 1/2", "47", [Strip("4 7/8", Lengths((("22", "k5"),))), Strip("2", "burn")]),
            ("47", "118", "keep"),
            ("118", "120", "trim"),
        ],
    ),
)  # fmt: skip


def _sheet() -> Cutting:
    # The zero end is squared 1/4 off; marks are then read from the fresh end.
    size, deep = ticks("21 7/16"), ticks("19 3/16")

    def section(box: Box) -> Node:
        y, row = ticks("1/8"), []
        for _ in range(2):
            row.append(Stretch(y, y + deep, _make("k7")))
            y += deep + KERF
        return lay(box, "rip", row)

    def one(box: Box) -> Node:
        return lay(
            box,
            "rip",
            [Stretch(ticks("1/8"), ticks("1/8") + deep, _make("k7"))],
        )

    x = ticks("1/4")
    row = [
        Stretch(0, x - KERF, _make("trim")),
        Stretch(x, x + size, section),
        Stretch(x + size + KERF, x + 2 * size + KERF, one),
        Stretch(x + 2 * size + 2 * KERF, ticks("96"), _make("keep")),
    ]
    tree = lay((0, 0, ticks("96"), ticks("48")), "crosscut", row)
    tree = numbered(tree, "bottom")
    return Cutting(piece=S1, copy=1, tree=tree, breakdown="crosscut first")


def make_wood(
    wood: str, cuttings: Sequence[Cutting], need: dict[str, int], **said: Any
) -> WoodPlan:
    """A wood's plan; its floor is a little below its cost."""
    cost = sum(cutting.piece.price for cutting in cuttings)
    given: dict[str, Any] = {
        "wood": wood,
        "is_sheet": False,
        "rules": rules(),
        "need": need,
        "missing": (),
        "cuttings": tuple(cuttings),
        "cost": cost,
        "bound": Bound(
            value=cost - 31_234, priced=cost - 31_234, family="C", prices={}
        ),
        "set_up_left": {},
        "ended": "the gap is below 0.5 %",
    }
    return WoodPlan(**(given | said))


def full_job(**said: Any) -> Job:
    """The job's head: woods, sheet, prices with their dates."""
    return make_job(
        **(
            {
                "title": "Two drawers for the hall",
                "woods": {
                    "walnut": Wood(name="walnut", species="black walnut", is_show_wood=True, where=WHERE),
                    "poplar": Wood(name="poplar", species="yellow-poplar", where=WHERE),
                },
                "sheets": {
                    "bottom": Sheet(
                        name="bottom", product="birch plywood", length=inches("96"), width=inches("48"),
                        thickness=Fraction(1, 4), price=Decimal("38.00"), where=WHERE,
                    )
                },
                "prices": (
                    Price(wood="walnut", thickness="4/4", grade="FAS", per_foot=Decimal("14.50"), as_of=date(2026, 11, 2), where=WHERE),
                    Price(wood="poplar", thickness="4/4", grade="No. 1 Common", per_foot=Decimal("4.60"), where=WHERE),
                ),
                "shop": make_shop(),
            }
            | said
        )
    )  # fmt: skip


def full_plan(**said: Any) -> Plan:
    """Two drawers: matched fronts, a gang, a turned piece, strips, a sheet, set-up pieces."""
    woods = said.get("woods") or (
        make_wood("bottom", (_sheet(),), {"bottom": 3}, is_sheet=True,
                  rules=rules(marks_from="trimmed end", step_along=ticks("1/16"), step_across=ticks("1/16"))),
        make_wood("poplar", POPLAR, {"side": 4, "back": 2, "=1+1 strip": 3}, rules=rules("E")),
        make_wood("walnut", WALNUT, {"upper/front": 1, "lower/front": 1, "divider": 2, "knob blank": 2},
                  set_up_left={"set-up, half-blind": 1}),
    )  # fmt: skip
    blanks = _blanks()
    given: dict[str, Any] = {
        "job": full_job(),
        "parts": (UPPER, LOWER, RAIL, KNOB, TEST, SIDE, BACK, TOP, BOTTOM),
        "blanks": blanks,
        "pieces": (P1, P2, S1, W1, W2, W3),
        "fits": {
            blank.id: ("birch plywood" if blank.is_sheet else f"{blank.wood} 4/4",)
            for blank in blanks
        },
        "woods": woods,
        "purchase": purchase.lines(woods),
        "cautions": (
            "W1 is the only board that gives both fronts in order: chalk it first.",
            "A strip of the panel is ripped to width after the glue has cured.",
        ),
        "mark": "BCDF",
    }
    return Plan(**(given | said))


def short_plan() -> Plan:
    """The same with a part that no board can give."""
    plan = full_plan()
    missing = Missing(
        demand="case top",
        count=1,
        reason="needs 14 in clear width, the widest board less its edges has 9 1/4",
        remedy="buy a board at least 14 1/4 wide, or glue it up: strips = 3",
    )
    wide = plain_part("case top", "walnut", ("24", "14", "3/4"))
    woods = [
        dataclasses.replace(wood, missing=(missing,)) if wood.wood == "walnut" else wood
        for wood in plan.woods
    ]
    return dataclasses.replace(plan, woods=tuple(woods), parts=(*plan.parts, wide))


def passed(plan: Plan) -> Report:
    """The verdict of a proof that found nothing to object to."""
    return Report(
        objections=(),
        floors={wood.wood: wood.bound.value for wood in plan.woods},
        checked=("every cut, kerf and trim", "board feet and money"),
    )


LONG_NAME = "left upright of the tall cabinet beside the window, show side"
"""60 characters and one more cut off: as long as a name may be."""


def stress_plan() -> Plan:
    """A board of 14 ft with 30 parts, names of 60 characters, and one ripped into 6 strips."""
    name = LONG_NAME[:60]
    small = [plain_part(f"{name[:57]} {n:02d}", "walnut", ("10 1/2", "2 1/4", "3/4"), quantity=3) for n in range(1, 13)]  # fmt: skip
    blanks = [plain_blank(f"k{n}", part) for n, part in enumerate(small, start=1)]
    long_board = make_piece("W88", "168", "9", marks=(make_mark("worm A 3 9 1 2"), make_mark("pith B 0 168 4 5")))  # fmt: skip
    six = make_piece("W9", "36", "18", marks=(make_mark("hole through 20 20-1/2 5 5-1/2"),))  # fmt: skip
    marks: list[tuple[str, str, Content]] = [("0", "2", "trim")]
    at, number = Fraction(2), 0
    for _ in range(10):
        strips = [Strip("2 1/2", f"k{(number + n) % 12 + 1}") for n in range(3)]
        number += 3
        marks.append((str_of(at), str_of(at + Fraction(23, 2)), strips))
        at += Fraction(23, 2)
    marks += [(str_of(at), "166", "keep"), ("166", "168", "trim")]
    strips_of_six = [
        ("2 1/2", [("0", "2", "trim"), ("2", "14", f"k{n}"), ("14", "36", "burn")])
        for n in range(1, 7)
    ]
    cuttings = (crosscut_first(long_board, marks), rip_first(six, strips_of_six))
    need = {part.id: 3 for part in small}
    return full_plan(
        woods=(make_wood("walnut", cuttings, need),),
        parts=tuple(small),
        blanks=tuple(blanks),
        pieces=(long_board, six),
        fits={blank.id: ("walnut 4/4",) for blank in blanks},
    )


def str_of(size: Inches) -> str:
    """A size as it is typed."""
    whole, rest = divmod(size, 1)
    return f"{whole} {rest}" if rest else str(whole)
