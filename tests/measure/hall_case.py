"""A tiny job worked by hand: two matched fronts out of one of two walnut boards."""

from __future__ import annotations

import dataclasses
from decimal import Decimal
from fractions import Fraction
from typing import Any

from yieldplan.faults import Where
from yieldplan.measure import purchase
from yieldplan.model.blanks import Blank, Inside
from yieldplan.model.faces import Mark
from yieldplan.model.job import Job, Price, Wood
from yieldplan.model.parts import Part
from yieldplan.model.pieces import Piece
from yieldplan.model.plan import Bound, Cutting, Node, Plan, Rules, WoodPlan
from yieldplan.model.shop import Shop
from yieldplan.model.sums import Sum
from yieldplan.reference import tables
from yieldplan.units import TICKS_PER_INCH, Inches, parse_length

WHERE = Where(file="hall_case.toml", line=1)


def inches(text: str) -> Inches:
    """A length off the tape."""
    return parse_length(text)


def make_shop(**settings: Any) -> Shop:
    """The shop of the defaults table, some settings changed."""
    values: dict[str, Any] = {}
    kinds = {each.name: each.type for each in dataclasses.fields(Shop)}
    for key, default in tables.shop_defaults().items():
        if kinds[key] == "int":
            values[key] = int(default.inch)
        elif kinds[key] == "Breakdown":
            values[key] = default.inch
        elif kinds[key] == "bool":
            values[key] = default.inch == "true"
        elif default.inch == "none":
            values[key] = ()
        else:
            values[key] = inches(default.inch)
    return Shop(**(values | settings))


def make_price(**said: Any) -> Price:
    """Walnut 4/4 FAS at 12.00."""
    given = {
        "wood": "walnut",
        "thickness": "4/4",
        "grade": "FAS",
        "per_foot": Decimal("12.00"),
        "where": WHERE,
    }
    return Price(**(given | said))


def make_job(**said: Any) -> Job:
    """The job's head, without anything to build."""
    given: dict[str, Any] = {
        "file": "hall_case.toml",
        "title": "Hall case",
        "unit": "in",
        "currency": "USD",
        "board_measure": "nhla",
        "shop": make_shop(),
        "woods": {"walnut": Wood(name="walnut", species="black walnut", where=WHERE)},
        "sheets": {},
        "prices": (make_price(),),
        "assemblies": (),
    }
    return Job(**(given | said))


def make_part(name: str, length: str, width: str, **said: Any) -> Part:
    """A part of 3/4 walnut."""
    given: dict[str, Any] = {
        "id": name,
        "quantity": 1,
        "wood": "walnut",
        "length": Sum.of(("as drawn", inches(length))),
        "width": Sum.of(("as drawn", inches(width))),
        "thickness": Sum.of(("as drawn", inches("3/4"))),
        "where": WHERE,
    }
    return Part(**(given | said))


def make_blank(name: str, length: str, width: str, **said: Any) -> Blank:
    """A blank for one part `name` 1/2 shorter and 1/4 narrower than it is."""
    inside = Inside(
        demand=name,
        x=Fraction(0),
        y=Fraction(0),
        length=inches(length) - Fraction(1, 2),
        width=inches(width) - Fraction(1, 4),
    )
    given: dict[str, Any] = {
        "id": f"k {name}",
        "route": "plane",
        "wood": "walnut",
        "length": Sum.of(("rough", inches(length))),
        "width": Sum.of(("rough", inches(width))),
        "thickness": Sum.of(("rough", inches("15/16"))),
        "finished_thickness": inches("3/4"),
        "makes": {name: 1},
        "inside": (inside,),
        "show_face": "sound",
        "back_face": "sound",
        "words": name,
    }
    return Blank(**(given | said))


UPPER = make_part("upper/front", "22", "6", show_face="clear")
LOWER = make_part("lower/front", "22", "6", show_face="clear")
# 22 + 1/8 kerf + 22, and 1 more because it is over 24 long: 45-1/8; 6 + 1/4 wide.
FRONTS = make_blank(
    "fronts",
    "45-1/8",
    "6-1/4",
    id="k1",
    route="match",
    makes={"upper/front": 1, "lower/front": 1},
    inside=(
        Inside(
            demand="upper/front",
            x=Fraction(0),
            y=Fraction(0),
            length=inches("22"),
            width=inches("6"),
        ),
        Inside(
            demand="lower/front",
            x=inches("22-1/8"),
            y=Fraction(0),
            length=inches("22"),
            width=inches("6"),
        ),
    ),
    show_face="clear",
    words="fronts (2 matched)",
)
KNOT = Mark(
    kind="knot",
    face="A",
    x0=inches("50"),
    x1=inches("51"),
    y0=inches("1"),
    y1=inches("2"),
)


def make_board(name: str, **said: Any) -> Piece:
    """A walnut board 60 long and 8 wide; 8 x 5 ft / 12 is 3-1/3, measured 3 bf."""
    given: dict[str, Any] = {
        "id": name,
        "wood": "walnut",
        "line": "walnut 4/4",
        "kind": "rough board",
        "thickness": "4/4",
        "thick": Fraction(1),
        "grade": "FAS",
        "length": inches("60"),
        "width": inches("8"),
        "board_feet": Fraction(3),
        "per_foot": 120_000,
        "price": 360_000,
        "end_trims": (inches("2"), inches("2")),
        "edge_passes": (inches("1/8"), inches("1/8")),
    }
    return Piece(**(given | said))


def node(name: str, box: tuple[str, str, str, str], **said: Any) -> Node:
    """A node whose box is written as off the tape: x0, y0, x1, y1."""
    x0, y0, x1, y1 = (int(inches(each) * TICKS_PER_INCH) for each in box)
    return Node(id=name, box=(x0, y0, x1, y1), **said)


BOARD = make_board("W7", marks=(KNOT,))
# Crosscut first: marks at 2, 47-1/2 and 58, blade right of each; then ripped 6-1/4.
TREE = node(
    "W7",
    ("0", "0", "60", "8"),
    cut="crosscut",
    into=(
        node("W7.1", ("0", "0", "2", "8"), fate="trim"),
        node(
            "W7.2",
            ("2-1/8", "0", "47-1/2", "8"),
            cut="rip",
            into=(
                node("W7.2.1", ("2-1/8", "1/8", "47-1/2", "6-3/8"), blank="k1"),
                node("W7.2.2", ("2-1/8", "6-1/2", "47-1/2", "7-7/8"), fate="burn"),
            ),
        ),
        node("W7.3", ("47-5/8", "0", "58", "8"), fate="burn"),
        node("W7.4", ("58-1/8", "0", "60", "8"), fate="trim"),
    ),
)
RULES = Rules(
    family="C",
    kerf=TICKS_PER_INCH // 8,
    step_along=TICKS_PER_INCH // 2,
    step_across=TICKS_PER_INCH // 8,
    marks_from="zero end",
)


def make_wood_plan(**said: Any) -> WoodPlan:
    """W7 cut for the fronts. One board holds one set, so a set is worth a board: a proof."""
    given: dict[str, Any] = {
        "wood": "walnut",
        "is_sheet": False,
        "rules": RULES,
        "need": {"upper/front": 1, "lower/front": 1},
        "missing": (),
        "cuttings": (
            Cutting(piece=BOARD, copy=1, tree=TREE, breakdown="crosscut first"),
        ),
        "cost": 360_000,
        "bound": Bound(
            value=360_000,
            priced=360_000,
            family="C",
            prices={"upper/front": 180_000, "lower/front": 180_000},
        ),
        "set_up_left": {},
        "ended": "no plan of this kind costs less",
    }
    return WoodPlan(**(given | said))


def make_plan(**said: Any) -> Plan:
    """The whole plan; W8 was offered too and stays at the yard."""
    woods = said.get("woods", (make_wood_plan(),))
    given: dict[str, Any] = {
        "job": make_job(),
        "parts": (UPPER, LOWER),
        "blanks": (FRONTS,),
        "pieces": (BOARD, make_board("W8")),
        "fits": {"k1": ("walnut 4/4",)},
        "woods": woods,
        "purchase": purchase.lines(woods),
        "cautions": ("Plane the fronts to their openings.",),
        "mark": "BCDF",
    }
    return Plan(**(given | said))
