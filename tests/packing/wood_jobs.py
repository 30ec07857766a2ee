"""Builds jobs of one wood for tests: parts with their blanks, boards with marks; the rest filled in."""

from __future__ import annotations

from fractions import Fraction
from typing import Any

from tests.measure.hall_case import WHERE, make_job, make_shop
from yieldplan import plan_file
from yieldplan.checking import check
from yieldplan.measure import purchase
from yieldplan.model.blanks import Blank, Inside
from yieldplan.model.faces import FaceWord, Mark
from yieldplan.model.job import Job
from yieldplan.model.parts import Part
from yieldplan.model.pieces import Piece
from yieldplan.model.plan import Plan, WoodPlan
from yieldplan.model.sums import Sum
from yieldplan.packing import Stop, plan_wood
from yieldplan.units import parse_length

KERF = Fraction(1, 8)


def size(words: str, inches: str | Fraction) -> Sum:
    """A sum of one term."""
    value = inches if isinstance(inches, Fraction) else parse_length(inches)
    return Sum.of((words, value))


def make_part(
    id_: str,
    length: str,
    width: str,
    quantity: int = 1,
    *,
    show: FaceWord = "sound",
    back: FaceWord = "sound",
    set_up: bool = False,
    sheet: bool = False,
) -> Part:
    """A part 3/4 thick."""
    return Part(
        id=id_,
        quantity=quantity,
        wood="walnut",
        is_sheet=sheet,
        length=size("length", length),
        width=size("width", width),
        thickness=size("thickness", "3/4"),
        show_face=show,
        back_face=back,
        set_up=set_up,
        where=WHERE,
    )


def make_blank(parts: list[Part], route: str = "plane", id_: str = "") -> Blank:
    """The parts end to end in one blank, a kerf between them, 1/2 over in length and 1/8 in width."""
    over, trim = parse_length("1/2"), parse_length("1/8")
    if parts[0].is_sheet:
        over = trim = Fraction(0)
    at = Fraction(0)
    inside = []
    for part in parts:
        inside.append(
            Inside(
                demand=part.demand,
                x=at,
                y=Fraction(0),
                length=part.length.value,
                width=part.width.value,
            )
        )
        at += part.length.value + KERF
    makes: dict[str, int] = {}
    for part in parts:
        makes[part.demand] = makes.get(part.demand, 0) + 1
    return Blank(
        id=id_ or f"{route} {' '.join(part.id for part in parts)}",
        route=route,
        may_spare=route == "gang",
        wood="walnut",
        is_sheet=parts[0].is_sheet,
        length=size("length", at - KERF + over),
        width=size("width", max(part.width.value for part in parts) + trim),
        thickness=size("thickness", "15/16" if not parts[0].is_sheet else "3/4"),
        finished_thickness=Fraction(3, 4),
        makes=makes,
        inside=tuple(inside),
        show_face="any" if parts[0].set_up else parts[0].show_face,
        back_face="any" if parts[0].set_up else parts[0].back_face,
        set_up=parts[0].set_up,
        words=" ".join(part.id for part in parts),
    )


def make_mark(kind: str, face: str, x0: str, x1: str, y0: str, y1: str) -> Mark:
    """A mark as read off the tape."""
    sides = [parse_length(side) for side in (x0, x1, y0, y1)]
    return Mark(
        kind=kind,  # type: ignore[arg-type]
        face=face,  # type: ignore[arg-type]
        x0=sides[0],
        x1=sides[1],
        y0=sides[2],
        y1=sides[3],
    )


def make_board(id_: str, length: str, width: str, *marks: Mark, **said: Any) -> Piece:
    """A rough 4/4 walnut board at 12.00 a foot, board feet to 1/100."""
    long, wide = parse_length(length), parse_length(width)
    feet = Fraction(round(long * wide / 144 * 100), 100)
    given: dict[str, Any] = {
        "id": id_,
        "wood": "walnut",
        "line": "walnut 4/4",
        "kind": "rough board",
        "thickness": "4/4",
        "thick": Fraction(1),
        "length": long,
        "width": wide,
        "board_feet": feet,
        "per_foot": 120_000,
        "price": int(feet * 120_000),
        "end_trims": (Fraction(2), Fraction(2)),
        "edge_passes": (KERF, KERF),
        "marks": tuple(marks),
    }
    return Piece(**(given | said))


def make_sheet(id_: str, copies: int, price: int = 380_000) -> Piece:
    """A 48 x 24 sheet with 1/2 off each end and no edge passes."""
    return make_board(
        id_,
        "48",
        "24",
        line="walnut sheet",
        kind="sheet",
        thickness="3/4",
        thick=Fraction(3, 4),
        board_feet=None,
        per_foot=None,
        price=price,
        copies=copies,
        end_trims=(Fraction(1, 2), Fraction(1, 2)),
        edge_passes=(Fraction(0), Fraction(0)),
    )


def plan_of(
    parts: list[Part],
    blanks: list[Blank],
    pieces: list[Piece],
    *,
    work: int = 150_000,
    fits: dict[str, tuple[str, ...]] | None = None,
    **settings: Any,
) -> tuple[Plan, WoodPlan]:
    """The plan; every blank fits every line unless said otherwise."""
    job: Job = make_job(shop=make_shop(**settings))
    lines = tuple(sorted({piece.line for piece in pieces}))
    fits = fits if fits is not None else {blank.id: lines for blank in blanks}
    wood = plan_wood(
        "walnut", parts, blanks, pieces, fits, job, Stop(work=work), lambda _: None
    )
    plan = Plan(
        job=job,
        parts=tuple(parts),
        blanks=tuple(blanks),
        pieces=tuple(pieces),
        fits=fits,
        woods=(wood,),
        purchase=purchase.lines((wood,), pieces),
        cautions=(),
    )
    return plan, wood


def objections(plan: Plan) -> list[str]:
    """What the independent checker has against the plan."""
    found: list[str] = check(plan_file.write(plan))["objections"]
    return found
