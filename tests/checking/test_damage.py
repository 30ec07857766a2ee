"""Every kind of damage to a plan is refused, in words that say what and where."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import pytest

from tests.checking.examples import documented, full, ticks
from yieldplan.checking import check

Document = dict[str, Any]
Damage = Callable[[Document], object]


def node(plan: Document, name: str) -> Document:
    """The node of that name, in whichever tree it is."""
    trees = [cut["tree"] for wood in plan["woods"] for cut in wood["cuttings"]]
    while trees:
        each = trees.pop()
        if each["id"] == name:
            return each
        trees += each.get("into", [])
    raise LookupError(name)


def named(rows: list[Document], name: str) -> Document:
    """The part, blank, piece or wood of that name."""
    return next(row for row in rows if name in (row.get("id"), row.get("wood")))


def blank(plan: Document, name: str) -> Document:
    """The blank of that name."""
    return named(plan["blanks"], name)


def wood(plan: Document, name: str) -> Document:
    """The plan for that wood."""
    return named(plan["woods"], name)


def move(plan: Document, name: str, across: int = 0, along: int = 0) -> None:
    """Shifts a node by some ticks and leaves its neighbours where they are."""
    box = node(plan, name)["box"]
    box[:] = [box[0] + along, box[1] + across, box[2] + along, box[3] + across]


def stretch(plan: Document, name: str, by: tuple[int, int, int, int]) -> None:
    """Moves the four sides of a node's box."""
    box = node(plan, name)["box"]
    box[:] = [side + more for side, more in zip(box, by, strict=True)]


def cut_again(plan: Document) -> None:
    """Cuts the same copy of W07 a second time, under other names."""
    cuttings = wood(plan, "walnut")["cuttings"]
    box = cuttings[0]["tree"]["box"]
    tree = {"id": "again", "box": box, "fate": "burn"}
    cuttings.append({"stock": "W07", "copy": 1, "tree": tree})


CUTS: dict[str, tuple[Damage, str]] = {
    "box moved along": (
        lambda p: move(p, "W07.2.2.1", along=1),
        "node W07.2.2.1 and node W07.2.2.2 are about 1/8 in (1015 ticks) apart; the "
        "blade between them takes 1/8 in (1016 ticks)",
    ),
    "box moved across": (
        lambda p: move(p, "W07.2.1", across=-1),
        "node W07.2.1 and node W07.2.2 are about 1/8 in (1017 ticks) apart",
    ),
    "box moved out of its row": (
        lambda p: move(p, "W07.2.2.3", across=8),
        "node W07.2.2.3 runs from about 5-1/2 in (44712 ticks)",
    ),
    "boxes overlapping": (
        lambda p: stretch(p, "W07.2.2.1", (0, 0, 2032, 0)),
        "node W07.2.2.1 and node W07.2.2.2 overlap by 1/8 in (1016 ticks)",
    ),
    "leaf lost in the middle": (
        lambda p: node(p, "W07.2.2")["into"].pop(1),
        "node W07.2.2.1 and node W07.2.2.3 are 13-1/8 in",
    ),
    "leaf lost at the end": (
        lambda p: node(p, "W07")["into"].pop(),
        "node W07.3 leaves 1 in (8128 ticks) of node W07 unaccounted for",
    ),
    "leaf lost at the beginning": (
        lambda p: node(p, "W07")["into"].pop(0),
        "node W07.2 leaves 1-1/8 in (9144 ticks) of node W07 unaccounted for",
    ),
    "leaf doubled under its own name": (
        lambda p: node(p, "W07.2.2")["into"].insert(1, node(p, "W07.2.2.1")),
        "node W07.2.2.1 is there twice",
    ),
    "leaf doubled under another name": (
        lambda p: node(p, "W07.2.2")["into"].insert(
            1, node(p, "W07.2.2.1") | {"id": "twin"}
        ),
        "node W07.2.2.1 and node twin overlap",
    ),
    "children out of order": (
        lambda p: node(p, "W07.2")["into"].reverse(),
        "node W07.2.2 and node W07.2.1 overlap",
    ),
    "kerf shrunk by a tick": (
        lambda p: wood(p, "walnut")["rules"].update(kerf=1015),
        "are 1/8 in (1016 ticks) apart; the blade between them takes about 1/8 in",
    ),
    "kerf grown by a tick": (
        lambda p: wood(p, "walnut")["rules"].update(kerf=1017),
        "are 1/8 in (1016 ticks) apart",
    ),
    "kerf forgotten": (
        lambda p: stretch(p, "W07.2.2.1", (0, 0, 1016, 0)),
        "are 0 in (0 ticks) apart",
    ),
    "child reaching out of its node": (
        lambda p: stretch(p, "W07.2.2.3", (0, 0, 1, 0)),
        "node W07.2.2.3 reaches 1 tick out of node W07.2.2",
    ),
    "tree larger than its board": (
        lambda p: named(p["stock"], "W07")["size"].__setitem__(0, 487_679),
        "node W07 starts as the box [0, 0, 487680, 62992]",
    ),
    "tree smaller than its board": (
        lambda p: named(p["stock"], "W07")["size"].__setitem__(1, 62_993),
        "yet the whole piece is [0, 0, 487680, 62993]",
    ),
    "rip called a crosscut": (
        lambda p: node(p, "W07.2").update(cut="crosscut"),
        "a crosscut of node W07.2 leaves it from",
    ),
    "blank larger than its leaf": (
        lambda p: blank(p, "k1")["size"].__setitem__(0, ticks("35")),
        "node W07.2.1 is 34-7/8 in (283464 ticks) long; blank k1 needs 35 in",
    ),
    "leaf given to a wider blank": (
        lambda p: node(p, "W07.2.2.1").update(blank="k1"),
        "node W07.2.2.1 is 2-1/8 in (17272 ticks) wide; blank k1 needs 5-1/4 in",
    ),
}
STOCK: dict[str, tuple[Damage, str]] = {
    "copy cut twice": (cut_again, "walnut cuts copy 1 of W07 twice"),
    "sheet cut twice as the same copy": (
        lambda p: wood(p, "birch")["cuttings"][1].update(copy=1),
        "birch cuts copy 1 of S1 twice",
    ),
    "copy that was not offered": (
        lambda p: wood(p, "birch")["cuttings"][1].update(copy=4),
        "birch cuts copy 4 of S1; 3 of it were offered",
    ),
    "copies taken away": (
        lambda p: named(p["stock"], "S1").update(copies=2),
        "birch cuts copy 3 of S1; 2 of it were offered",
    ),
    "piece of another wood": (
        lambda p: named(p["stock"], "P1").update(wood="maple"),
        "poplar is cut from P1, which is maple",
    ),
    "blank of another wood": (
        lambda p: blank(p, "k3").update(wood="walnut"),
        "blank k3 is to be walnut",
    ),
    "blank from a line it does not list": (
        lambda p: blank(p, "k1").update(stock=["walnut 8/4"]),
        "node W07.2.1: W07 is walnut 4/4; blank k1 may be cut from walnut 8/4",
    ),
    "rough board thinner than the blank": (
        lambda p: named(p["stock"], "W07").update(thick=7618),
        "W07 (walnut 4/4) is about 15/16 in (7618 ticks) thick; blank k1, which lists "
        "that line, needs 15/16 in (7620 ticks)",
    ),
    "rough board that is said to be planed, thinner than the part": (
        lambda p: named(p["stock"], "W07").update(planed=True, thick=6090),
        "W07 (walnut 4/4) is about 3/4 in (6090 ticks) thick; blank k1, which lists "
        "that line, needs 3/4 in (6096 ticks)",
    ),
    "no word on whether it is planed": (
        lambda p: named(p["stock"], "W07").pop("planed"),
        "planed should be true or false, and is not there",
    ),
    "sheet thinner than the part": (
        lambda p: named(p["stock"], "S1").update(thick=2030),
        "S1 (birch 4/4) is about 1/4 in (2030 ticks) thick; blank k7",
    ),
    "blank in the end trim at zero": (
        lambda p: named(p["stock"], "W07").update(trims=[9145, 8128]),
        "blank k1 reaches 1 tick into the end trim at zero",
    ),
    "blank in the far end trim": (
        lambda p: named(p["stock"], "P1").update(trims=[0, ticks("8")]),
        "node P1.1.2: blank k4 reaches 1-1/8 in (9144 ticks) into the far end trim of 8",
    ),
    "blank in the near edge": (
        lambda p: named(p["stock"], "W07").update(edges=[1017, 1016]),
        "node W07.2.1: blank k1 reaches 1 tick into the near edge pass",
    ),
    "blank in the far edge": (
        lambda p: named(p["stock"], "W07").update(edges=[1016, 1017]),
        "node W07.2.2.1: blank k2 reaches 1 tick into the far edge pass",
    ),
}
FACES: dict[str, tuple[Damage, str]] = {
    "wrong face up": (
        lambda p: node(p, "W07.2.2.2").update(face_up="A"),
        "node W07.2.2.2: blank k2 lies with face A up on a knot (A) from 20 in (162560 "
        "ticks) to 22 in (178816 ticks), and from 6 in (48768 ticks) to 7 in (56896 "
        "ticks) across; its show face, 'clear', forbids it",
    ),
    "mark on the other face": (
        lambda p: named(p["stock"], "W07")["marks"][0].update(face="B"),
        "blank k2 lies with face B up on a knot (B)",
    ),
    "mark through": (
        lambda p: named(p["stock"], "W07")["marks"][0].update(face="through"),
        "on a knot (through)",
    ),
    "mark the back may not have": (
        lambda p: named(p["stock"], "W07")["marks"][0].update(kind="split"),
        "its back face, 'sound', forbids it",
    ),
    "mark moved under the fronts": (
        lambda p: named(p["stock"], "W07")["marks"][0].update(
            box=[162_560, 43_687, 178_816, 44_000]
        ),
        "node W07.2.1: blank k1 lies with face A up on a knot",
    ),
    "face word let loose on the blank": (
        lambda p: blank(p, "k2").update(show_face="sound"),
        "blank k2 shows a face 'sound' that lets in knot, sap; part rail needs 'clear'",
    ),
    "back let loose on the blank": (
        lambda p: (
            p["faces"].update(any=[]),
            blank(p, "k2").update(back_face="any"),
        ),
        "blank k2 has at its back a face 'any' that lets in check, hole, split",
    ),
    "face word that is not explained": (
        lambda p: p["faces"].pop("sound"),
        "does not say what 'sound' is",
    ),
}
DEMANDS: dict[str, tuple[Damage, str]] = {
    "sum off by more than its terms are rounded": (
        lambda p: named(p["parts"], "rail")["why"]["length"][0].__setitem__(1, 81_277),
        "part rail: the terms of its length add up to about 12 in (97533 ticks), yet it "
        "is 12 in (97536 ticks)",
    ),
    "part longer than its sum": (
        lambda p: named(p["parts"], "rail")["size"].__setitem__(2, 6_098),
        "the terms of its thickness add up to 3/4 in (6096 ticks)",
    ),
    "part missing from a gang": (
        lambda p: blank(p, "k3")["inside"].pop(),
        "blank k3 makes 2 of block and has 1 inside",
    ),
    "part missing from a set": (
        lambda p: blank(p, "k1")["inside"].pop(),
        "blank k1 makes 1 of lower/front and has 0 inside",
    ),
    "part overlapping in its set": (
        lambda p: blank(p, "k1")["inside"][1]["at"].__setitem__(0, 141_223),
        "upper/front at [2032, 1016, 140208, 41656] and lower/front at [141223, 1016",
    ),
    "part outside its blank": (
        lambda p: blank(p, "k2")["inside"][0]["at"].__setitem__(0, 4_065),
        "blank k2: rail lies in [4065, 508, 101601, 16764], outside the blank's",
    ),
    "part before its blank": (
        lambda p: blank(p, "k2")["inside"][0]["at"].__setitem__(1, -1),
        "blank k2: rail lies in",
    ),
    "part smaller in its blank than finished": (
        lambda p: blank(p, "k2")["inside"][0]["size"].__setitem__(0, 97_535),
        "blank k2: rail has about 12 in (97535 ticks) by 2 in (16256 ticks) inside",
    ),
    "strips too narrow for their part": (
        lambda p: blank(p, "k4")["inside"][0]["size"].__setitem__(1, ticks(3) - 1),
        "blank k4: top strip has",
    ),
    "blank that makes more": (
        lambda p: blank(p, "k2").update(makes={"rail": 2}),
        "blank k2 makes 2 of rail and has 1 inside",
    ),
    "need lowered": (
        lambda p: wood(p, "walnut")["need"].update(rail=1),
        "walnut, rail: 1 needed, 2 made; blanks that may bring spares made 0",
    ),
    "need raised": (
        lambda p: wood(p, "walnut")["need"].update(rail=3),
        "walnut, rail: 3 needed, 2 made",
    ),
    "need forgotten": (
        lambda p: wood(p, "walnut")["need"].pop("upper/front"),
        "upper/front: 1 asked for; need and missing come to 0",
    ),
    "need lowered under a gang": (
        lambda p: wood(p, "poplar")["need"].update(block=2),
        "block: 3 asked for; need and missing come to 2",
    ),
    "quantity lowered with it": (
        lambda p: (
            named(p["parts"], "top").update(quantity=0),
            wood(p, "poplar")["need"].update({"top strip": 0}),
        ),
        "poplar, top strip: 0 needed, 3 made; blanks that may bring spares made 0 of them",
    ),
    "gang that is no gang": (
        lambda p: blank(p, "k3").update(may_spare=False),
        "poplar, block: 3 needed, 4 made; blanks that may bring spares made 0 of them",
    ),
    "missing part not told": (
        lambda p: wood(p, "poplar").update(missing={}),
        "shelf: 1 asked for; need and missing come to 0",
    ),
    "incomplete plan called complete": (
        lambda p: p.update(complete=True),
        "calls itself complete; shelf is missing",
    ),
    "complete plan called incomplete": (
        lambda p: (
            wood(p, "poplar").update(missing={}),
            p["parts"].remove(named(p["parts"], "shelf")),
            p["blanks"].remove(blank(p, "k5")),
        ),
        "The plan calls itself incomplete, yet nothing is missing from it",
    ),
    "set-up piece in need": (
        lambda p: wood(p, "poplar")["need"].update({"test piece": 1}),
        "test piece: 0 asked for (nothing demands a set-up piece)",
    ),
    "leaf turned into another blank": (
        lambda p: node(p, "W07.2.2.1").update(blank="k6"),
        "walnut, W07, node W07.2.2.1: blank k6 is to be poplar",
    ),
    "leaf turned to waste": (
        lambda p: (
            node(p, "W07.2.2.1").pop("blank"),
            node(p, "W07.2.2.1").update(fate="burn"),
        ),
        "walnut, rail: 2 needed, 1 made",
    ),
}
MONEY: dict[str, tuple[Damage, str]] = {
    "price off by one": (
        lambda p: named(p["stock"], "W07").update(price=387_601),
        "W07: 3.23 board feet at 12.00 do not make its price of 38.7601",
    ),
    "board feet off by a hundredth": (
        lambda p: named(p["stock"], "W08").update(board_feet="1.05"),
        "W08: 1.05 board feet at 12.00 do not make its price of 12.48",
    ),
    "board feet left out": (
        lambda p: named(p["stock"], "W08").update(board_feet=None),
        "W08 is priced by the board foot and has no board feet",
    ),
    "cost off by one": (
        lambda p: wood(p, "walnut").update(cost=387_599),
        "walnut: the pieces bought, less the offcuts, cost 38.76; the plan says 38.7599",
    ),
    "line total off by a cent": (
        lambda p: p["money"]["lines"][0].update(total=387_700),
        "Purchase line walnut 4/4 FAS at 12.00 a foot comes to 38.76; the plan says 38.77",
    ),
    "half a cent rounded down": (
        lambda p: p["money"]["lines"][1].update(total=250_000),
        "Purchase line poplar 4/4 at 25.0055 a piece comes to 25.01",
    ),
    "line not rounded at all": (
        lambda p: p["money"]["lines"][1].update(total=250_055),
        "comes to 25.01; the plan says 25.0055",
    ),
    "total off by one": (
        lambda p: p["money"].update(total=p["money"]["total"] + 1),
        "The purchase lines add up to 101.77; the plan says 101.7701",
    ),
    "piece left off its line": (
        lambda p: p["money"]["lines"][0].update(pieces=[]),
        "W07: 1 cut, 0 bought under walnut 4/4 FAS at 12.00 a foot",
    ),
    "copy left off its line": (
        lambda p: p["money"]["lines"][2].update(pieces=[["S1", 1]]),
        "S1: 2 cut, 1 bought",
    ),
    "piece bought and not cut": (
        lambda p: p["money"]["lines"][0]["pieces"].append(["W08", 1]),
        "W08: 0 cut, 1 bought",
    ),
    "line left out": (
        lambda p: p["money"]["lines"].pop(0),
        "W07: 1 cut, 0 bought",
    ),
    "line doubled": (
        lambda p: p["money"]["lines"].append(p["money"]["lines"][1]),
        "Two purchase lines are one: poplar 4/4 at 25.0055 a piece",
    ),
    "line that buys nothing": (
        lambda p: p["money"]["lines"].append(
            p["money"]["lines"][0] | {"grade": "select", "pieces": [], "total": 0}
        ),
        "Purchase line walnut 4/4 select at 12.00 a foot buys nothing",
    ),
    "line in another grade": (
        lambda p: p["money"]["lines"][0].update(grade="select"),
        "W07: 0 cut, 1 bought under walnut 4/4 select",
    ),
    "line by the piece that is by the foot": (
        lambda p: p["money"]["lines"][0].update(by="piece"),
        "under walnut 4/4 FAS at 12.00 a piece",
    ),
    "line's board feet": (
        lambda p: p["money"]["lines"][0].update(board_feet="3.22"),
        "its pieces have 3.23 board feet, the line says 3.22",
    ),
    "line's board feet for a sheet": (
        lambda p: p["money"]["lines"][2].update(board_feet="0.00"),
        "its pieces have none board feet, the line says 0.00",
    ),
}
BOUND: dict[str, tuple[Damage, str]] = {
    "priced raised by one unit": (
        lambda p: wood(p, "walnut")["bound"].update(priced=386_801),
        "prices prove a floor of 38.68, less than the 38.6801 the plan says",
    ),
    "priced lowered by one unit": (
        lambda p: wood(p, "walnut")["bound"].update(priced=386_799),
        "prices prove a floor of 38.68, more than the 38.6799",
    ),
    "value raised by one unit": (
        lambda p: wood(p, "walnut")["bound"].update(value=387_601),
        "whole pieces can cost 38.76 or more; the plan gives its floor as 38.7601",
    ),
    "value lowered by one unit": (
        lambda p: wood(p, "walnut")["bound"].update(value=387_599),
        "whole pieces can cost 38.76 or more",
    ),
    "value not lifted": (
        lambda p: wood(p, "walnut")["bound"].update(value=386_800),
        "whole pieces can cost 38.76 or more; the plan gives its floor as 38.68",
    ),
    "floor of the sheets raised": (
        lambda p: wood(p, "birch")["bound"].update(priced=380_001),
        "birch: the prices prove a floor of 38.00",
    ),
    "sheet forgotten in the floor": (
        # At 20.00 a bottom each of the 3 sheets gives 1.00 more than its price: 40 - 3.
        lambda p: wood(p, "birch")["bound"].update(
            prices={"bottom": 200_000}, priced=380_000
        ),
        "birch: the prices prove a floor of 37.00, less than the 38.00",
    ),
    "price raised": (
        lambda p: wood(p, "walnut")["bound"]["prices"].update(rail=201),
        "prices prove a floor of",
    ),
    "floor above the cost": (
        lambda p: wood(p, "walnut")["bound"].update(value=388_800, priced=388_800),
        "walnut costs 38.76, less than its floor of 38.88",
    ),
    "family of the floor": (
        lambda p: wood(p, "walnut")["bound"].update(family="R"),
        "walnut is cut by family C; its bound is for family R",
    ),
    "set-up piece with a price": (
        lambda p: wood(p, "poplar")["bound"]["prices"].update({"test piece": 5}),
        "poplar: test piece is a set-up piece, and the bound prices it at 0.0005",
    ),
    "grid too fine to work out": (
        lambda p: wood(p, "walnut")["rules"].update(step=[1, 1]),
        "too fine a grid",
    ),
}
EVERY = {**CUTS, **STOCK, **FACES, **DEMANDS, **MONEY, **BOUND}


@pytest.mark.parametrize("name", EVERY)
def test_damage_is_refused_in_words(name: str) -> None:
    damage, words = EVERY[name]
    plan = full()
    damage(plan)
    objections = check(plan)["objections"]
    assert any(words in objection for objection in objections), objections


def test_undamaged_plans_hold() -> None:
    for plan in (documented(), full()):
        assert check(plan)["objections"] == []
