"""The example that the plan file's format ends with, as a document to damage."""

from __future__ import annotations

import json
from importlib.resources import files
from typing import Any


def documented() -> dict[str, Any]:
    """A fresh copy of the example in `plan_format.md`."""
    page = files("yieldplan").joinpath("plan_format.md").read_text(encoding="utf-8")
    (block,) = page.split("```json\n")[1:]
    example: dict[str, Any] = json.loads(block.split("```")[0])
    return example


def full() -> dict[str, Any]:
    """The example with two woods more: poplar with a gang, strips and a test piece, and sheets.

    Poplar, kerf 1/8. Three blocks of 6 in come from two gangs of two: one is a spare. A
    top of 20 x 9 is glued up from 3 strips of 20 x 3. A shelf is missing: no board for it.
    Plywood: two of three sheets are cut for one bottom each.
    """
    plan = documented()
    plan["complete"] = False
    plan["parts"] += [
        _part("block", 3, ("6", "2", "3/4")),
        _part("top", 1, ("20", "9", "3/4"), strips=3),
        _part("shelf", 1, ("70", "9", "3/4")),
        _part("test piece", 2, ("8", "2", "3/4"), face="sound", set_up=True),
        _part("bottom", 2, ("30", "20", "1/4")),
    ]
    plan["blanks"] += [
        _blank("k3", "gang", ("12-5/8", "2-1/8"), "block", (0, "6-1/8"), ("6", "2")),
        _blank("k4", "plane", ("20-1/2", "3-1/8"), "top strip", (0,), ("20", "3")),
        _blank("k5", "plane", ("70-1/2", "9-1/8"), "shelf", (0,), ("70", "9")),
        _blank("k6", "plane", ("8", "2"), "test piece", (0,), ("8", "2"), face="sound"),
        _blank("k7", "plane", ("30", "20"), "bottom", (0,), ("30", "20"), wood="birch"),
    ]
    plan["stock"] += [
        _piece("P1", "poplar", ("48", "10"), "8.33", 250_055, marks=True),
        _piece("S1", "birch", ("48", "24"), None, 190_000, copies=3),
    ]
    # Four strips of 3-1/8 or 2-1/8, a kerf apart: 3-1/8 + 3-1/8 + 2-1/8 + 3 kerfs = 8-3/4.
    strips = [
        _row("P1.1", "0", "3-1/8", ["k4", "k4", None]),
        _row("P1.2", "3-1/4", "6-3/8", ["k4", "k3", None]),
        _row("P1.3", "6-1/2", "8-5/8", ["k3", "k6", None]),
        {"id": "P1.4", "box": _box("0", "8-3/4", "48", "10"), "fate": "edge"},
    ]
    tree = {"id": "P1", "box": _box("0", "0", "48", "10"), "cut": "rip", "into": strips}
    plan["woods"] += [
        _wood("poplar", {"block": 3, "top strip": 3}, {"shelf": 1}, [("P1", 1, tree)]),
        _wood(
            "birch", {"bottom": 2}, {}, [("S1", n, _sheet(f"S1/{n}")) for n in (1, 3)]
        ),
    ]
    # 25.0055 is half a cent and more above 25.00: 25.01; two sheets of 19.00 are 38.00.
    plan["money"]["lines"] += [
        _line("poplar", "P1", 1, "8.33", 250_055, 250_100),
        _line("birch", "S1", 2, None, 190_000, 380_000),
    ]
    plan["money"]["total"] = 387_600 + 250_100 + 380_000
    # A sheet holds one bottom (30 of 48, 20 of 24), so at 19.00 a bottom none gives more
    # than its price: 2 x 19.00 is the floor, and the cost. Poplar's floor is left at 0.
    plan["woods"][2]["bound"] |= {
        "value": 380_000,
        "priced": 380_000,
        "prices": {"bottom": 190_000},
    }
    return plan


def ticks(inches: str | int) -> int:
    """Ticks of a shop fraction like `12-5/8`; 8128 to the inch."""
    whole, _, rest = (
        str(inches).rpartition("-") if "/" in str(inches) else (inches, "", "")
    )
    if "/" in rest:
        top, bottom = rest.split("/")
        return int(whole or 0) * 8128 + int(top) * 8128 // int(bottom)
    return int(whole) * 8128


def _box(x0: str, y0: str, x1: str, y1: str) -> list[int]:
    return [ticks(each) for each in (x0, y0, x1, y1)]


def _part(
    name: str,
    quantity: int,
    size: tuple[str, str, str],
    *,
    face: str = "clear",
    strips: int = 1,
    set_up: bool = False,
) -> dict[str, Any]:
    length, width, thickness = (ticks(each) for each in size)
    return {
        "id": name,
        "quantity": quantity,
        "size": [length, width, thickness],
        "why": {
            "length": [["drawn", length]],
            "width": [["drawn", width]],
            "thickness": [["drawn", thickness]],
        },
        "show_face": face,
        "back_face": "sound",
        "strips": strips,
        "set_up": set_up,
        "zone": 0,
        "glue_up": None,
    }


def _blank(
    name: str,
    route: str,
    size: tuple[str, str],
    part: str,
    places: tuple[str | int, ...],
    part_size: tuple[str, str],
    *,
    face: str = "clear",
    wood: str = "poplar",
) -> dict[str, Any]:
    return {
        "id": name,
        "route": route,
        "wood": wood,
        "size": [ticks(each) for each in size],
        "thickness": ticks("15/16") if wood == "poplar" else ticks("1/4"),
        "stock": [f"{wood} 4/4"],
        "makes": {part: len(places)},
        "inside": [
            {
                "part": part,
                "at": [ticks(x), 0],
                "size": [ticks(each) for each in part_size],
                "slice": 0,
            }
            for x in places
        ],
        "show_face": face,
        "back_face": "sound",
        "turned": False,
        "step": None,
        "may_spare": route == "gang",
    }


def _piece(
    name: str,
    wood: str,
    size: tuple[str, str],
    feet: str | None,
    price: int,
    *,
    copies: int = 1,
    marks: bool = False,
) -> dict[str, Any]:
    return {
        "id": name,
        "wood": wood,
        "line": f"{wood} 4/4",
        "kind": "rough board" if feet else "sheet",
        "planed": feet is None,
        "thickness": "4/4",
        "thick": 8128 if feet else ticks("1/4"),
        "grade": "",
        "lot": "",
        "size": [ticks(each) for each in size],
        "widths": [ticks(size[1])] * 2,
        "crook": 0,
        "bow": 0,
        "twist": 0,
        "copies": copies,
        "board_feet": feet,
        "per_foot": None,
        "price": price,
        "trims": [0, 0],
        "edges": [0, 0],
        # A knot that the test piece may have, and nothing else.
        "marks": [{"kind": "knot", "face": "A", "box": _box("14", "7", "16", "8")}]
        if marks
        else [],
    }


def _row(name: str, y0: str, y1: str, blanks: list[str | None]) -> dict[str, Any]:
    """Blanks left to right from zero, each a kerf from the next, then what is left."""
    lengths = {"k4": "20-1/2", "k3": "12-5/8", "k6": "8"}
    x, into = 0, []
    for number, blank in enumerate(blanks, 1):
        end = x + ticks(lengths[blank]) if blank else ticks(48)
        leaf: dict[str, Any] = {
            "id": f"{name}.{number}",
            "box": [x, ticks(y0), end, ticks(y1)],
        }
        into.append(leaf)
        if blank:
            leaf |= {"blank": blank, "face_up": "A"}
        else:
            leaf |= {"fate": "burn"}
        x = end + 1016
    return {"id": name, "box": _box("0", y0, "48", y1), "cut": "crosscut", "into": into}


def _sheet(name: str) -> dict[str, Any]:
    bottom = {
        "id": f"{name}.1.1",
        "box": _box("0", "0", "30", "20"),
        "blank": "k7",
        "face_up": "A",
    }
    rest = {"id": f"{name}.1.2", "box": _box("0", "20-1/8", "30", "24"), "fate": "burn"}
    section = {
        "id": f"{name}.1",
        "box": _box("0", "0", "30", "24"),
        "cut": "rip",
        "into": [bottom, rest],
    }
    end = {"id": f"{name}.2", "box": _box("30-1/8", "0", "48", "24"), "fate": "burn"}
    return {
        "id": name,
        "box": _box("0", "0", "48", "24"),
        "cut": "crosscut",
        "into": [section, end],
    }


def _wood(
    wood: str,
    need: dict[str, int],
    missing: dict[str, int],
    cuttings: list[tuple[str, int, dict[str, Any]]],
) -> dict[str, Any]:
    # Without prices nothing is proved: a floor of zero is always true.
    bound = {"value": 0, "priced": 0, "family": "C", "prices": {}}
    price = {"P1": 250_055, "S1": 190_000}
    return {
        "wood": wood,
        "rules": {
            "family": "C",
            "kerf": 1016,
            "step": [4064, 1016],
            "marks_from": "trimmed end",
            "crook_at_most": None,
            "twisted_at_most": ticks(24),
            "around_knots": 0,
            "short_of_checks": 0,
            "resaw_kerf": 1016,
            "offcuts": {"percent": 0, "sizes": []},
        },
        "need": need,
        "missing": missing,
        "cuttings": [
            {"stock": stock, "copy": copy, "tree": tree}
            for stock, copy, tree in cuttings
        ],
        "cost": sum(price[stock] for stock, _, _ in cuttings),
        "bound": bound,
    }


def _line(
    wood: str, stock: str, copies: int, feet: str | None, per: int, total: int
) -> dict[str, Any]:
    return {
        "wood": wood,
        "line": f"{wood} 4/4",
        "grade": "",
        "pieces": [[stock, copies]],
        "board_feet": feet,
        "by": "piece",
        "per": per,
        "total": total,
    }
