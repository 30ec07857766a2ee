"""The only writer and reader of plan.json; the format stands in `plan_format.md`."""

from __future__ import annotations

import dataclasses
import hashlib
import json
from collections import Counter
from fractions import Fraction
from pathlib import Path
from typing import Any

from yieldplan.measure.minimum import minimum_orders
from yieldplan.model.blanks import Blank
from yieldplan.model.faces import FORBIDS, forbidden_by, forbidden_in_joints
from yieldplan.model.parts import GlueUp, Part, joint_zone
from yieldplan.model.pieces import MONEY_PER_UNIT, Piece
from yieldplan.model.plan import Node, Plan, PurchaseLine, WoodPlan
from yieldplan.model.rounding import (
    blank_in_ticks,
    ends_in_ticks,
    mark_in_ticks,
    piece_in_ticks,
    trims_in_ticks,
)
from yieldplan.model.shop import Shop
from yieldplan.model.sums import Sum
from yieldplan.plan_file.proofs import bound_of, in_lines
from yieldplan.units import (
    TICKS_PER_INCH,
    Inches,
    nearest_tick,
    to_ticks_down,
    to_ticks_up,
)

VERSION = 1
_MARK_LETTERS = "BCDFGHJKLMNPRSTVWXYZ"

Document = dict[str, Any]


class NotAPlan(ValueError):  # noqa: N818 - named for what the file is
    """The file is not a plan this program can read; says why."""


def write(plan: Plan) -> Document:
    """The plan as the plain data of plan.json, with its mark.

    Exact integers throughout. The mark is four letters made from everything else in
    the document, so two different plans do not share sheets by mistake.
    """
    shop = plan.job.shop
    document: Document = {
        "yieldplan_plan": VERSION,
        "title": plan.job.title,
        "mark": "",
        "complete": plan.complete,
        "ticks_per_inch": TICKS_PER_INCH,
        "money_per_unit": MONEY_PER_UNIT,
        "currency": plan.job.currency,
        "unit": plan.job.unit,
        "faces": {
            word: sorted(forbidden_by(word, bridge_pith=shop.bridge_pith))
            for word in sorted(FORBIDS)
        },
        "zones": sorted(forbidden_in_joints(bridge_pith=shop.bridge_pith)),
        "on_the_bench": dict(sorted(plan.on_the_bench.items())),
        "parts": [_part(part, shop) for part in plan.parts],
        "blanks": [
            _blank(blank, plan.fits.get(blank.id, ()), shop.kerf)
            for blank in plan.blanks
        ],
        "stock": [_stock(piece) for piece in plan.pieces],
        "woods": [_wood(wood) for wood in plan.woods],
        "money": {
            "lines": [_purchase(line) for line in plan.purchase],
            **_minimum(plan),
            "total": plan.total,
        },
    }
    document["mark"] = _mark(document)
    return document


def _minimum(plan: Plan) -> Document:
    orders = [[name, least] for name, least in minimum_orders(plan.job)]
    return {"minimum": orders} if orders else {}


def dump(document: Document) -> bytes:
    """The document as the bytes of plan.json."""
    return (in_lines(document) + "\n").encode()


def read(path: Path) -> Document:
    """The plain data of a plan.json.

    Raises
    ------
    NotAPlan
        When the file is not JSON, or not a plan of this version.
    OSError
        When it cannot be read.
    """
    try:
        document = json.loads(path.read_bytes())
    except (UnicodeDecodeError, json.JSONDecodeError, RecursionError) as error:
        raise NotAPlan(f"{path.name} is not a plan file: {error}") from error
    version = document.get("yieldplan_plan") if isinstance(document, dict) else None
    if version is None:
        raise NotAPlan(f"{path.name} is not a plan file")
    if version != VERSION:
        raise NotAPlan(
            f"{path.name} is a plan file of version {version}; this program reads {VERSION}"
        )
    return document  # type: ignore[no-any-return]


def _mark(document: Document) -> str:
    number = int.from_bytes(hashlib.sha256(dump(document)).digest()[:8], "big")
    letters = []
    for _ in range(4):
        number, place = divmod(number, len(_MARK_LETTERS))
        letters.append(_MARK_LETTERS[place])
    return "".join(letters)


def _why(total: Sum) -> list[list[Any]]:
    return [
        [f"{term.times} × {term.words}" if term.times != 1 else term.words,
         nearest_tick(term.value)]
        for term in total
    ]  # fmt: skip


def _part(part: Part, shop: Shop) -> Document:
    sizes = {"length": part.length, "width": part.width, "thickness": part.thickness}
    return {
        "id": part.id,
        "quantity": part.quantity,
        "size": [to_ticks_up(size.value) for size in sizes.values()],
        "why": {name: _why(size) for name, size in sizes.items()},
        "show_face": part.show_face,
        "back_face": part.back_face,
        "strips": part.strips,
        "set_up": part.set_up,
        "zone": to_ticks_up(joint_zone(part, shop)),
        "glue_up": _glue_up(part.glue_up),
    }


def _glue_up(glue_up: GlueUp | None) -> Document | None:
    if glue_up is None:
        return None
    return {
        "step": to_ticks_up(glue_up.step),
        "units": glue_up.units,
        "least": to_ticks_down(glue_up.least),
        "most": to_ticks_up(glue_up.most),
        "colour": glue_up.colour,
    }


def _blank(blank: Blank, fits: tuple[str, ...], kerf: Inches) -> Document:
    ticks = blank_in_ticks(blank, kerf)
    return {
        "id": blank.id,
        "route": blank.route,
        "wood": blank.wood,
        "size": [ticks.length, ticks.width],
        "thickness": to_ticks_up(blank.thickness.value),
        "stock": list(fits),
        "makes": dict(sorted(blank.makes.items())),
        "inside": [
            {
                "part": inside.demand,
                "at": [box[0], box[1]],
                "size": [box[2] - box[0], box[3] - box[1]],
                "slice": inside.slice,
            }
            for inside, box in zip(blank.inside, ticks.inside, strict=True)
        ],
        "show_face": blank.show_face,
        "back_face": blank.back_face,
        "turned": blank.turned,
        "step": dataclasses.asdict(blank.step) if blank.step is not None else None,
        "may_spare": blank.may_spare,
    }


def _feet(board_feet: Fraction | None) -> str | None:
    if board_feet is None:
        return None
    hundredths = round(board_feet * 100)
    return f"{hundredths // 100}.{hundredths % 100:02d}"


def _stock(piece: Piece) -> Document:
    trims, edges = trims_in_ticks(piece)
    return {
        "id": piece.id,
        "wood": piece.wood,
        "line": piece.line,
        "kind": piece.kind,
        "planed": piece.is_planed,
        "thickness": piece.thickness,
        "thick": nearest_tick(piece.thick),
        "grade": piece.grade,
        "lot": piece.lot,
        **({"pack": piece.pack} if piece.pack else {}),
        "size": list(piece_in_ticks(piece)),
        "widths": list(ends_in_ticks(piece)),
        "crook": to_ticks_up(piece.crook),
        "bow": to_ticks_up(piece.bow),
        "twist": to_ticks_up(piece.twist),
        "copies": piece.copies,
        "board_feet": _feet(piece.board_feet),
        "per_foot": piece.per_foot,
        "price": piece.price,
        "trims": list(trims),
        "edges": list(edges),
        "marks": [
            {"kind": mark.kind, "face": mark.face, "box": list(mark_in_ticks(mark))}
            for mark in piece.marks
        ],
    }


def _node(node: Node) -> Document:
    document: Document = {"id": node.id, "box": list(node.box)}
    if node.into:
        document["cut"] = node.cut
        document["into"] = [_node(child) for child in node.into]
    elif node.blank is not None:
        document["blank"] = node.blank
        document["face_up"] = node.face_up
    else:
        document["fate"] = node.fate
        if node.fate == "keep":
            document["name"] = node.name
            document["worth"] = node.worth
    return document


def _wood(wood: WoodPlan) -> Document:
    rules = wood.rules
    # One part can be short for two reasons; the file counts it once.
    missing = Counter[str]()
    for left_out in wood.missing:
        missing[left_out.demand] += left_out.count
    return {
        "wood": wood.wood,
        "rules": {
            "family": rules.family,
            "kerf": rules.kerf,
            "step": [rules.step_along, rules.step_across],
            "marks_from": rules.marks_from,
            "crook_at_most": rules.crook_at_most,
            "twisted_at_most": rules.twisted_at_most,
            "around_knots": rules.around_knots,
            "short_of_checks": rules.short_of_checks,
            "resaw_kerf": rules.resaw_kerf,
            "offcuts": {
                "percent": rules.offcut_percent,
                "sizes": [list(size) for size in rules.offcut_sizes],
            },
        },
        "need": dict(sorted(wood.need.items())),
        "missing": dict(sorted(missing.items())),
        "cuttings": [
            {"stock": cut.piece.id, "copy": cut.copy, "tree": _node(cut.tree)}
            for cut in wood.cuttings
        ],
        "cost": wood.cost,
        "bound": bound_of(wood.bound),
    }


def _purchase(line: PurchaseLine) -> Document:
    return {
        "wood": line.wood,
        "line": line.line,
        "grade": line.grade,
        "pieces": [[name, count] for name, count in line.pieces],
        "board_feet": _feet(line.board_feet),
        "by": line.by,
        **({"pack": line.pack} if line.pack else {}),
        "per": line.per,
        "total": line.total,
    }
