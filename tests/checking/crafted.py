"""A plan with every rule that straight boards do not need: crook, steps, slices, strips, a turned part."""

from __future__ import annotations

from typing import Any

from tests.checking.examples import documented, ticks

Document = dict[str, Any]
SIZES = {
    "leg": ("20", "2", "3/4"),
    "front 1": ("12", "4", "3/4"),
    "front 2": ("12", "6", "3/4"),
    "slat": ("16", "3", "1/4"),
    "panel": ("18", "9", "3/4"),
    "bottom": ("20", "10", "1/4"),
}


def crafted() -> Document:
    """Kerf 1/8, four boards of oak in 1/2 by 1/8 in cells, one sheet; nothing is trimmed.

    - O1, 80 x 8 at zero and 6 at the far end, crook 1/2 and a bow of 1/4 in: a section of
      40 loses 1/2 / 4 = 1/8 of its width. Two legs with tenons 1 in deep.
    - O2, 60 x 8, straight: fronts of 4 and 6 in, in steps, a slat blank resawn into two,
      and 1/2 of the board kept.
    - O3 and O4, 40 x 6, of lot 12: strips of 5 and 4 in for a panel of 9; O4 is twisted.
    - S, a sheet of 48 x 24: a bottom of 20 x 10 lies across.
    """
    plan = documented()
    plan["faces"]["any"] = []
    plan["parts"] = [_part(name) for name in SIZES]
    part = {each["id"]: each for each in plan["parts"]}
    part["leg"] |= {"quantity": 2, "zone": ticks("1")}
    part["slat"]["quantity"] = 2
    part["panel"]["glue_up"] = {
        "step": ticks("1/2"),
        "units": 18,
        "least": ticks("2"),
        "most": ticks("5"),
        "colour": "one lot",
    }
    plan["blanks"] = [
        _blank("leg", ("20-1/2", "2-1/4"), [("leg", "1/4", "0", 0)]),
        _blank("f1", ("12", "4"), [("front 1", "0", "0", 0)], step=1),
        _blank("f2", ("12", "6"), [("front 2", "0", "0", 0)], step=2),
        _blank("slats", ("16", "3"), [("slat", "0", "0", 0), ("slat", "0", "0", 1)]),
        _strip("wide", "5"),
        _strip("narrow", "4"),
        _blank("bottom", ("10", "20"), [("bottom", "0", "0", 0)], wood="birch"),
    ]
    plan["blanks"][-1]["turned"] = True
    plan["blanks"][-1]["inside"][0]["size"] = [ticks("10"), ticks("20")]
    plan["stock"] = [
        _piece("O1", ("80", "8"), crook=ticks("1/2"), bow=ticks("1/4")),
        _piece("O2", ("60", "8")),
        _piece("O3", ("40", "6"), lot="12"),
        _piece("O4", ("40", "6"), lot="12", twist=ticks("1/4")),
        _piece("S", ("48", "24"), wood="birch"),
    ]
    plan["stock"][0]["widths"] = [ticks("8"), ticks("6")]
    # Between the zones of the lower leg, 1 1/4 in from its ends, the knot does no harm.
    plan["stock"][0]["marks"] = [_mark("knot", "A", ("4", "1", "6", "2"))]
    plan["woods"] = [
        _wood("oak", [_o1(), _o2(), _o3(), _o4()], worth=_kept()),
        _wood("birch", [_sheet()]),
    ]
    plan["woods"][0]["need"] = {
        "leg": 2,
        "front 1": 1,
        "front 2": 1,
        "slat": 2,
        "panel width": 18,
    }
    plan["woods"][1]["need"] = {"bottom": 1}
    plan["money"] = {
        "lines": [
            _line("birch", [["S", 1]], None),
            _line("oak", [[f"O{n}", 1] for n in range(1, 5)], "40.00"),
        ],
        "total": 5 * 100_000,
    }
    return plan


def _kept() -> int:
    """O2's offcut, 29 7/8 of 60 in long, over the whole width: 20 % of its share of 10.00."""
    # 100,000 x 20 x 239 / (100 x 480) = 9,958 1/3, rounded down.
    return 9_958


def _o1() -> Document:
    # At 40 in the board is 7 in wide and a section to there loses 1/8: 6 7/8 in.
    strips = [
        _node("O1.1.1", ("0", "0", "40", "4-1/2"), into=_legs(), cut="crosscut"),
        _node(
            "O1.1.2", ("0", "4-5/8", "40", "6-7/8"), into=_long_leg(), cut="crosscut"
        ),
        _node("O1.1.3", ("0", "7", "40", "8"), fate="edge"),
    ]
    return _tree(
        "O1",
        ("80", "8"),
        _node("O1.1", ("0", "0", "40", "8"), into=strips, cut="rip"),
        _node("O1.2", ("40-1/8", "0", "80", "8"), fate="burn"),
    )


def _legs() -> list[Document]:
    return [
        _node("O1.1.1.1", ("0", "0", "20-1/2", "4-1/2"), blank="leg"),
        _node("O1.1.1.2", ("20-5/8", "0", "40", "4-1/2"), fate="burn"),
    ]


def _long_leg() -> list[Document]:
    return [
        _node("O1.1.2.1", ("0", "4-5/8", "20-1/2", "6-7/8"), blank="leg"),
        _node("O1.1.2.2", ("20-5/8", "4-5/8", "40", "6-7/8"), fate="burn"),
    ]


def _o2() -> Document:
    slat = _node("O2.1.2", ("0", "4-1/8", "12", "8"), fate="burn")
    first = [_node("O2.1.1", ("0", "0", "12", "4"), blank="f1"), slat]
    second = [
        _node("O2.2.1", ("12-1/8", "0", "24-1/8", "6"), blank="f2"),
        _node("O2.2.2", ("12-1/8", "6-1/8", "24-1/8", "8"), fate="burn"),
    ]
    return _tree(
        "O2",
        ("60", "8"),
        _node("O2.1", ("0", "0", "12", "8"), into=first, cut="rip"),
        _node("O2.2", ("12-1/8", "0", "24-1/8", "8"), into=second, cut="rip"),
        _node("O2.3", ("24-1/4", "0", "30", "8"), fate="burn"),
        _node("O2.4", ("30-1/8", "0", "60", "8"), fate="keep", name="rest")
        | {"worth": _kept()},
    )


def _o3() -> Document:
    strips = [
        _node("O3.1.1", ("0", "0", "18", "5"), blank="wide"),
        _node("O3.1.2", ("0", "5-1/8", "18", "6"), fate="burn"),
    ]
    slats = [
        _node("O3.2.1", ("18-1/8", "0", "34-1/8", "3"), blank="slats"),
        _node("O3.2.2", ("18-1/8", "3-1/8", "34-1/8", "6"), fate="burn"),
    ]
    return _tree(
        "O3",
        ("40", "6"),
        _node("O3.1", ("0", "0", "18", "6"), into=strips, cut="rip"),
        _node("O3.2", ("18-1/8", "0", "34-1/8", "6"), into=slats, cut="rip"),
        _node("O3.3", ("34-1/4", "0", "40", "6"), fate="burn"),
    )


def _o4() -> Document:
    strips = [
        _node("O4.1.1", ("0", "0", "18", "4"), blank="narrow"),
        _node("O4.1.2", ("0", "4-1/8", "18", "6"), fate="burn"),
    ]
    return _tree(
        "O4",
        ("40", "6"),
        _node("O4.1", ("0", "0", "18", "6"), into=strips, cut="rip"),
        _node("O4.2", ("18-1/8", "0", "40", "6"), fate="burn"),
    )


def _sheet() -> Document:
    rest = _node("S.1.2", ("0", "20-1/8", "10", "24"), fate="burn")
    bottom = [_node("S.1.1", ("0", "0", "10", "20"), blank="bottom"), rest]
    return _tree(
        "S",
        ("48", "24"),
        _node("S.1", ("0", "0", "10", "24"), into=bottom, cut="rip"),
        _node("S.2", ("10-1/8", "0", "48", "24"), fate="burn"),
    )


def _node(node_id: str, box: tuple[str, ...], **said: Any) -> Document:
    if "blank" in said:
        said["face_up"] = "A"
    return {"id": node_id, "box": [ticks(each) for each in box], **said}


def _tree(stock: str, size: tuple[str, str], *into: Document) -> Document:
    tree = _node(stock, ("0", "0", *size), cut="crosscut", into=[*into])
    return {"stock": stock, "copy": 1, "tree": tree}


def _part(name: str) -> Document:
    length, width, thickness = (ticks(each) for each in SIZES[name])
    return {
        "id": name,
        "quantity": 1,
        "size": [length, width, thickness],
        "why": {
            "length": [["drawn", length]],
            "width": [["drawn", width]],
            "thickness": [["drawn", thickness]],
        },
        "show_face": "sound",
        "back_face": "any",
        "strips": 1,
        "set_up": False,
        "zone": 0,
        "glue_up": None,
    }


def _blank(
    name: str,
    size: tuple[str, str],
    row: list[tuple[str, str, str, int]],
    *,
    wood: str = "oak",
    step: int | None = None,
) -> Document:
    makes: dict[str, int] = {}
    for part, *_ in row:
        makes[part] = makes.get(part, 0) + 1
    return {
        "id": name,
        "route": "saw",
        "wood": wood,
        "size": [ticks(each) for each in size],
        "thickness": ticks("3/4") if wood == "oak" else ticks("1/4"),
        "stock": [f"{wood} 4/4"],
        "makes": makes,
        "inside": [
            {
                "part": part,
                "at": [ticks(x), ticks(y)],
                "size": [ticks(each) for each in SIZES[part][:2]],
                "slice": number,
            }
            for part, x, y, number in row
        ],
        "show_face": "sound",
        "back_face": "sound" if name == "slats" else "any",
        "turned": False,
        "step": step and {"set": "fronts", "number": step, "of": 2},
        "may_spare": False,
    }


def _strip(name: str, width: str) -> Document:
    blank = _blank(name, ("18", width), [])
    blank["makes"] = {"panel width": 2 * int(width)}
    place = {"at": [0, 0], "size": [ticks("18"), ticks(width)], "slice": 0}
    blank["inside"] = [{"part": "panel width"} | place]
    return blank


def _piece(
    name: str, size: tuple[str, str], *, wood: str = "oak", lot: str = "", **said: int
) -> Document:
    return {
        "id": name,
        "wood": wood,
        "line": f"{wood} 4/4",
        "kind": "board" if wood == "oak" else "sheet",
        "planed": wood == "birch",
        "thickness": "4/4",
        "thick": ticks("1") if wood == "oak" else ticks("1/4"),
        "grade": "",
        "lot": lot,
        "size": [ticks(each) for each in size],
        "widths": [ticks(size[1])] * 2,
        "crook": 0,
        "bow": 0,
        "twist": 0,
        "copies": 1,
        "board_feet": "10.00" if wood == "oak" else None,
        "per_foot": None,
        "price": 100_000,
        "trims": [0, 0],
        "edges": [0, 0],
        "marks": [],
        **said,
    }


def _mark(kind: str, face: str, box: tuple[str, ...]) -> Document:
    return {"kind": kind, "face": face, "box": [ticks(each) for each in box]}


def _wood(wood: str, cuttings: list[Document], *, worth: int = 0) -> Document:
    return {
        "wood": wood,
        "rules": {
            "family": "C",
            "kerf": 1016,
            "step": [4064, 1016],
            "marks_from": "trimmed end",
            "crook_at_most": 2032,
            "twisted_at_most": ticks("18"),
            "around_knots": ticks("1/4"),
            "short_of_checks": ticks("1"),
            "resaw_kerf": ticks("1/8"),
            "offcuts": {
                "percent": 20 if wood == "oak" else 0,
                "sizes": [[ticks("24"), ticks("3")]],
            },
        },
        "need": {},
        "missing": {},
        "cuttings": cuttings,
        "cost": 100_000 * len(cuttings) - worth,
        "bound": {"value": 0, "priced": 0, "family": "C", "prices": {}},
    }


def _line(wood: str, pieces: list[list[Any]], feet: str | None) -> Document:
    return {
        "wood": wood,
        "line": f"{wood} 4/4",
        "grade": "",
        "pieces": pieces,
        "board_feet": feet,
        "by": "piece",
        "per": 100_000,
        "total": 100_000 * len(pieces),
    }
