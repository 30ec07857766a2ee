"""Damage to a plan with crook, twist, steps, slices, panels, zones and offcuts is refused in words."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import pytest

from tests.checking.crafted import crafted
from tests.checking.examples import documented, ticks
from tests.checking.test_damage import blank, move, named, node, stretch, wood
from yieldplan.checking import check
from yieldplan.checking.facts import Offcuts
from yieldplan.checking.offcuts import most_worth
from yieldplan.checking.panels import steps_brought
from yieldplan.checking.reading import read

Document = dict[str, Any]
Damage = Callable[[Document], object]


def stock(plan: Document, name: str) -> Document:
    """The piece of that name."""
    return named(plan["stock"], name)


def part(plan: Document, name: str) -> Document:
    """The part of that name."""
    return named(plan["parts"], name)


def rules(plan: Document) -> Document:
    """The rules oak is cut by."""
    return wood(plan, "oak")["rules"]


def mark(plan: Document, piece: str, kind: str, face: str, *box: str) -> None:
    """One mark more on a piece."""
    stock(plan, piece)["marks"].append(
        {"kind": kind, "face": face, "box": [ticks(each) for each in box]}
    )


def second_pass(plan: Document) -> None:
    """O2's offcut lies beyond a second pass of the blade, which takes 1/16 in more."""
    rest = node(plan, "O2.4")
    # 29-13/16 of 60 in: 100,000 x 20 x 477 / (100 x 960) = 9,937 1/2, rounded down.
    inner = {**rest, "box": [ticks("30-3/16"), *rest["box"][1:]], "worth": 9_937}
    outer = {"id": "O2.5", "box": rest["box"], "cut": "crosscut", "into": [inner]}
    node(plan, "O2")["into"][-1] = outer
    wood(plan, "oak").update(cost=390_063)


def clear_legs(plan: Document, knot_from: int) -> None:
    """Legs that show, the upper one with its face down on a knot that begins there."""
    part(plan, "leg").update(show_face="clear")
    blank(plan, "leg").update(show_face="clear")
    node(plan, "O1.1.2.1").update(face_up="B")
    box = [ticks("4"), knot_from, ticks("6"), ticks("5")]
    stock(plan, "O1")["marks"] = [{"kind": "knot", "face": "A", "box": box}]


STRETCHES: dict[str, tuple[Damage, str]] = {
    "more crook than the fence takes": (
        # 1/2 of crook is 1/8 over half the length: 1016 ticks.
        lambda p: rules(p).update(crook_at_most=1015),
        "O1 copy 1, node O1.1: 40 in (325120 ticks) of O1 has 1/8 in (1016 ticks) of "
        "crook; about 1/8 in (1015 ticks) is the most that is ripped",
    ),
    "blank in what crook takes": (
        lambda p: stock(p, "O1").update(crook=ticks("1/2") + 1),
        "blank leg reaches 1 tick into what crook, taper and edge pass take of node O1.1",
    ),
    "blank in what the taper takes": (
        # A tick less at the far end is half a tick in the middle, rounded down: 1.
        lambda p: stock(p, "O1").update(widths=[ticks("8"), ticks("6") - 1]),
        "blank leg reaches 1 tick into what crook, taper",
    ),
    "blank in the edge pass of a tapered board": (
        lambda p: stock(p, "O1").update(edges=[0, 1]),
        "blank leg reaches 1 tick into what crook, taper",
    ),
    "taper the other way": (
        # 6 in at zero less 1/8; the upper leg reaches to 6-7/8.
        lambda p: stock(p, "O1").update(widths=[ticks("6"), ticks("8")]),
        "blank leg reaches 1 in (8128 ticks) into",
    ),
    "ends that are not as wide as the piece": (
        lambda p: stock(p, "O2").update(widths=[ticks("8") - 1] * 2),
        "O2 is 8 in (65024 ticks) wide, yet its ends are about 8 in (65023 ticks)",
    ),
    "two crooked pieces alike": (
        lambda p: stock(p, "O1").update(copies=2),
        "O1 is there 2 times and is not said to be straight",
    ),
    "crooked sheet": (
        lambda p: stock(p, "S").update(crook=1),
        "S is a sheet and is not said to be straight",
    ),
    "twisted stretch too long": (
        # 18 in of O4 are ripped, 18 and a step of 1/2 are allowed.
        lambda p: rules(p).update(twisted_at_most=ticks("17-1/2") - 1),
        "node O4.1: O4 is twisted, and 18 in (146304 ticks) of it is ripped; about 18 in "
        "(146303 ticks) is the most",
    ),
    "blank too long for a twisted board": (
        lambda p: rules(p).update(twisted_at_most=ticks("18") - 1),
        "node O4.1.1: O4 is twisted, and about 18 in (146303 ticks) is the most that "
        "comes from it; blank narrow is 18 in",
    ),
    "bow that flattening does not take out": (
        # 1 in less 3/4 leaves 1/4; a bow of b takes b x (20.5 / 80)^2 of it: 3.81 in.
        lambda p: stock(p, "O1").update(bow=ticks("3-7/8")),
        "node O1.1.1.1: flattening 20-1/2 in (166624 ticks) of O1, which is bowed, takes",
    ),
    "set from a crooked board": (
        lambda p: stock(p, "O2").update(bow=1),
        "node O2.1.1: O2 is not straight, and blank f1 is a step of a set",
    ),
    "knot that crook lets reach further": (
        # The leg ends at 4-1/2; 1/4 around the knot and 1/8 of crook make it a tick's.
        lambda p: clear_legs(p, knot_from=ticks("4-7/8") - 1),
        "node O1.1.1.1: blank leg lies with face A up on a knot (A)",
    ),
}
ZONES: dict[str, tuple[Damage, str]] = {
    "knot in the zone at zero": (
        lambda p: mark(p, "O1", "knot", "B", "1", "1", "1-1/8", "2"),
        "node O1.1.1.1: a knot (B) from 1 in (8128 ticks) to 1-1/8 in (9144 ticks) lies in "
        "a joint zone of blank leg",
    ),
    "knot whose reach is in the zone at zero": (
        # The zone ends at 1/4 + 1 = 1-1/4, the knot begins a tick less than 1/4 beyond.
        lambda p: stock(p, "O1")["marks"][0].update(
            box=[ticks("1-1/2") - 1, ticks("1"), ticks("2"), ticks("2")]
        ),
        "lies in a joint zone of blank leg",
    ),
    "hole in the far zone, a tick": (
        # 20-1/2 - 1/4 - 20 + 1 = 1-1/4 from the far end, 19-1/4.
        lambda p: stock(p, "O1")["marks"][0].update(
            kind="hole", box=[ticks("17"), ticks("1"), ticks("19-1/4") + 1, ticks("2")]
        ),
        "a hole (A) from 17 in (138176 ticks) to about 19-1/4 in (156465 ticks) lies in a "
        "joint zone",
    ),
    "zone of a longer joint": (
        lambda p: part(p, "leg").update(zone=ticks("3-1/2") + 1),
        "a knot (A) from 4 in (32512 ticks) to 6 in (48768 ticks) lies in a joint zone",
    ),
    "zone anywhere in a blank of two places": (
        # Two slats in one slice, 12 long: the knot lies in the middle of neither end.
        lambda p: (
            part(p, "slat").update(zone=1, size=[ticks("6"), ticks("3"), 2032]),
            part(p, "slat")["why"].update(length=[["drawn", ticks("6")]]),
            blank(p, "slats")["inside"][1].update(slice=0, at=[ticks("8"), 0]),
            mark(p, "O3", "knot", "A", "22", "1", "22-1/8", "2"),
        ),
        "node O3.2.1: a knot (A) from 22 in (178816 ticks) to 22-1/8 in (179832 ticks) "
        "lies in a joint zone of blank slats",
    ),
}
MARGINS: dict[str, tuple[Damage, str]] = {
    "knot too near a blank that shows": (
        # The rails keep 5/8 from the knot; a knot that reaches further lies on the fronts.
        lambda p: p["woods"][0]["rules"].update(around_knots=ticks("5/8") + 1),
        "node W07.2.1: blank k1 lies with face A up on a knot (A)",
    ),
    "check too near the end of a blank that shows": (
        # The fronts end at 36; a check from 37 on is 1 in off, and a tick less is not.
        lambda p: named(p["stock"], "W07")["marks"].append(
            {
                "kind": "check",
                "face": "A",
                "box": [ticks("37") - 1, ticks("1"), ticks("38"), ticks("2")],
            }
        ),
        "node W07.2.1: blank k1 lies with face A up on a check (A)",
    ),
}
STEPS: dict[str, tuple[Damage, str]] = {
    "step without its set": (
        lambda p: blank(p, "f2").update(step=None),
        "set fronts has the steps 1; 2 are said to be there, once each",
    ),
    "step there twice": (
        lambda p: blank(p, "f2")["step"].update(number=1),
        "set fronts has the steps 1, 1; 2 are said",
    ),
    "step beyond the last": (
        lambda p: blank(p, "f2")["step"].update(number=3),
        "set fronts has the steps 1, 3; 2 are said",
    ),
    "steps with other faces": (
        lambda p: blank(p, "f2").update(back_face="sound"),
        "set fronts: its steps are not all of one wood",
    ),
    "steps from other stock": (
        lambda p: blank(p, "f2")["stock"].append("oak 8/4"),
        "set fronts: its steps are not all of one wood",
    ),
    "steps the other way up": (
        lambda p: node(p, "O2.2.1").update(face_up="B"),
        "node O2.2.1: step 2 of set fronts lies with face B up, the step before with "
        "face A",
    ),
    "steps in the wrong order": (
        lambda p: (
            blank(p, "f1")["step"].update(number=2),
            blank(p, "f2")["step"].update(number=1),
        ),
        "node O2.1.1: step 2 of set fronts lies here without the step before",
    ),
    "set that breaks off": (
        lambda p: (
            node(p, "O2.2.1").pop("blank"),
            node(p, "O2.2.1").update(fate="burn"),
        ),
        "node O2.2: step 2 of set fronts should lie here, next to node O2.1.1",
    ),
    "set that breaks off at the end of the board": (
        lambda p: (
            p["woods"][0]["cuttings"][1]["tree"]["into"].__delitem__(slice(1, 4)),
        ),
        "node O2.1.1: set fronts breaks off after step 1 of 2",
    ),
    "step up from the near edge": (
        lambda p: move(p, "O2.1.1", across=1),
        "node O2.1.1: blank f1 is a step of a set and begins at 0 in (0 ticks), 1 tick "
        "across; the corner of its section is at 0 in (0 ticks), 0 in (0 ticks) across",
    ),
    "step in from the end of its section": (
        lambda p: stretch(p, "O2.2.1", (1, 0, 0, 0)),
        "node O2.2.1: blank f2 is a step of a set and begins at about 12-1/8 in",
    ),
    "two steps in one section": (
        lambda p: (
            node(p, "O2.1.2").pop("fate")
            and node(p, "O2.1.2").update(blank="f2", face_up="A")
        ),
        "node O2.1 holds 2 steps of sets",
    ),
    "step of a board that is ripped first": (
        lambda p: (
            node(p, "O4.1.1").update(blank="f1"),
            p["woods"][0]["cuttings"][3]["tree"].update(cut="rip"),
        ),
        "blank f1 is a step of a set, and O4 is not crosscut first",
    ),
}
SLICES: dict[str, tuple[Damage, str]] = {
    "slice left out": (
        lambda p: blank(p, "slats")["inside"][1].update(slice=2),
        "blank slats: nothing lies in its slice 1",
    ),
    "blank too thin for its slices": (
        # 1/4 + 1/8 + 1/4 = 5/8, and a tick for each of the three.
        lambda p: blank(p, "slats").update(thickness=ticks("5/8") - 4),
        "blank slats is about 5/8 in (5076 ticks) thick; the 2 slices of blank slats and "
        "the cuts between them take 5/8 in (5080 ticks)",
    ),
    "planed board too thin for slices": (
        lambda p: stock(p, "O3").update(planed=True, thick=ticks("5/8") - 4),
        "O3 is about 5/8 in (5076 ticks) thick; the 2 slices",
    ),
    "wider cut between slices": (
        lambda p: rules(p).update(resaw_kerf=ticks("1/4") + 4),
        "the 2 slices of blank slats and the cuts between them take about 3/4 in",
    ),
    "parts of one slice over one another": (
        lambda p: blank(p, "slats")["inside"][1].update(slice=0),
        "blank slats: slat at [0, 0, 130048, 24384] and slat at [0, 0, 130048, 24384] are "
        "not one kerf",
    ),
    "new face that may have what the part may not": (
        lambda p: blank(p, "slats").update(back_face="any"),
        "blank slats is resawn, and its face 'any' lets in check, hole, split; a new face "
        "of part slat",
    ),
    "back that asks more than the face": (
        lambda p: (
            part(p, "slat").update(back_face="clear"),
            blank(p, "slats").update(back_face="clear"),
        ),
        "blank slats is resawn, and its face 'sound' lets in knot, sap",
    ),
}
PANELS: dict[str, tuple[Damage, str]] = {
    "too few steps for the panel": (
        lambda p: part(p, "panel")["glue_up"].update(units=17),
        "part panel is 9 in (73152 ticks) wide; 17 steps of 1/2 in (4064 ticks) do not",
    ),
    "strip too narrow": (
        lambda p: part(p, "panel")["glue_up"].update(least=ticks("4") + 1),
        "blank narrow: a strip of panel is 4 in (32512 ticks) wide; from about 4 in",
    ),
    "strip too wide": (
        lambda p: part(p, "panel")["glue_up"].update(most=ticks("5") - 1),
        "blank wide: a strip of panel is 5 in (40640 ticks) wide",
    ),
    "strip that brings a step less": (
        lambda p: blank(p, "wide")["inside"][0].update(size=[146_304, 40_639]),
        "blank wide makes 10 of panel width and has 9 inside",
    ),
    "strip that is too short": (
        lambda p: blank(p, "wide")["inside"][0].update(size=[146_303, 40_640]),
        "blank wide: panel width has about 18 in (146303 ticks) by 5 in",
    ),
    "strips of two lots": (
        lambda p: stock(p, "O4").update(lot="13"),
        "part panel: its strips are to come from one lot, and come from lot 12, lot 13",
    ),
    "strip of no lot": (
        lambda p: stock(p, "O4").update(lot=""),
        "part panel: its strips are to come from one lot, and O4 is of no lot",
    ),
    "strips of two boards": (
        lambda p: part(p, "panel")["glue_up"].update(colour="one board"),
        "part panel: its strips are to come from one board, and come from O3 copy 1, O4",
    ),
    "panel asked for twice": (
        lambda p: part(p, "panel").update(quantity=2),
        "part panel is glued up from strips of any width; its quantity is 2",
    ),
    "panel in equal strips too": (
        lambda p: part(p, "panel").update(strips=2),
        "its strips 2, and neither may be more than 1",
    ),
    "strip left out": (
        lambda p: (
            node(p, "O4.1.1").pop("blank"),
            node(p, "O4.1.1").update(fate="burn"),
        ),
        "oak, panel width: 18 needed, 10 made",
    ),
    "spare steps from strips that bring none": (
        lambda p: (
            node(p, "O4.1.2").pop("fate"),
            node(p, "O4.1.2").update(blank="narrow", face_up="A"),
        ),
        "oak, panel width: 18 needed, 26 made; blanks that may bring spares made 0",
    ),
}
TURNED: dict[str, tuple[Damage, str]] = {
    "part turned without a word": (
        lambda p: blank(p, "bottom").update(turned=False),
        "blank bottom: bottom has 10 in (81280 ticks) by 20 in (162560 ticks) inside",
    ),
    "part turned across a board": (
        lambda p: blank(p, "slats").update(turned=True),
        "blank slats lies across, and may be cut from O1, which is no sheet",
    ),
}
OFFCUTS: dict[str, tuple[Damage, str]] = {
    "worth raised by one": (
        lambda p: node(p, "O2.4").update(worth=9_959),
        "node O2.4: the offcut rest is said to be worth 0.9959; it counts for 0.9958",
    ),
    "worth not taken off the cost": (
        lambda p: wood(p, "oak").update(cost=400_000),
        "oak: the pieces bought, less the offcuts, cost 39.0042; the plan says 40.00",
    ),
    "offcut too short to keep": (
        lambda p: rules(p)["offcuts"].update(sizes=[[ticks("29-7/8") + 1, 1]]),
        "the offcut rest is said to be worth 0.9958; it counts for 0.00",
    ),
    "offcut too narrow to keep": (
        lambda p: rules(p)["offcuts"].update(sizes=[[1, ticks("8") + 1]]),
        "it counts for 0.00",
    ),
    "offcut that only without its trim would do": (
        # 29-7/8 less the trim is below 24.
        lambda p: stock(p, "O2").update(trims=[0, ticks("6")]),
        "it counts for 0.00",
    ),
    "offcut of less than 30 in a hundred": (
        # 5-3/8 of the 8 in that are left after an edge pass: 239/480 x 19/32 is under 0.3.
        lambda p: stock(p, "O2").update(edges=[0, ticks("3-1/4")]),
        "it counts for 0.00",
    ),
    "offcut of a board that is not straight": (
        lambda p: stock(p, "O2").update(bow=1),
        "the offcut rest is worth nothing, as O2 is not straight",
    ),
    "offcut with a mark": (
        lambda p: mark(p, "O2", "sap", "B", "59", "0", "60", "1"),
        "the offcut rest is worth nothing, as a sap lies in it",
    ),
    "offcut with blanks after it": (
        lambda p: node(p, "O2")["into"].insert(0, node(p, "O2")["into"].pop()),
        "the offcut rest is worth nothing, as blanks are cut from what lies after it",
    ),
    "offcut further down": (
        lambda p: (
            node(p, "O1.1.2.2").update(fate="keep", name="short", worth=1),
            wood(p, "oak").update(cost=390_041),
        ),
        "as it is not cut from the whole piece at once",
    ),
    "offcut after a cut of another kind": (
        lambda p: (second_pass(p), node(p, "O2.5").update(cut="rip")),
        "as it is not cut from the whole piece at once",
    ),
    "blank in the same pass as the offcut": (
        lambda p: (
            second_pass(p),
            node(p, "O2.5")["into"].append(
                {"id": "O2.6", "box": [0, 0, 1, 1], "blank": "f1", "face_up": "A"}
            ),
        ),
        "the offcut rest is worth nothing, as blanks are cut from what lies after it",
    ),
    "two offcuts that count": (
        lambda p: node(p, "O2.3").update(fate="keep", name="other", worth=1),
        "node O2: other and rest both have a worth",
    ),
    "more than half": (
        lambda p: rules(p)["offcuts"].update(percent=51),
        "percent should lie between 0 and 50, and is 51",
    ),
}
EVERY = {
    **STRETCHES,
    **ZONES,
    **STEPS,
    **SLICES,
    **PANELS,
    **TURNED,
    **OFFCUTS,
}


@pytest.mark.parametrize("name", EVERY)
def test_damage_beyond_straight_boards_is_refused_in_words(name: str) -> None:
    damage, words = EVERY[name]
    plan = crafted()
    damage(plan)
    objections = check(plan)["objections"]
    assert any(words in objection for objection in objections), objections


@pytest.mark.parametrize("name", MARGINS)
def test_mark_too_near_is_refused_in_words(name: str) -> None:
    damage, words = MARGINS[name]
    plan = documented()
    damage(plan)
    objections = check(plan)["objections"]
    assert any(words in objection for objection in objections), objections


SOUND: dict[str, Damage] = {
    "as it is": lambda p: None,
    "no limit to crook": lambda p: rules(p).update(crook_at_most=None),
    "crook just within the limit": lambda p: rules(p).update(crook_at_most=1016),
    "knot just out of the zone": lambda p: stock(p, "O1")["marks"][0].update(
        box=[ticks("1-1/2"), ticks("1"), ticks("2"), ticks("2")]
    ),
    "check right beside a blank that does not show": lambda p: mark(
        p, "O2", "check", "A", "24-1/8", "0", "25", "1"
    ),
    "knot in the end of a part that lies across": lambda p: (
        part(p, "bottom").update(zone=ticks("1")),
        mark(p, "S", "knot", "A", "0", "0", "1", "1"),
    ),
    "bow that a short blank hardly has": lambda p: (
        # (20.5 / 80)^2 of 1 in is about 1/16; of the whole board it would be all of it.
        stock(p, "O1").update(bow=ticks("1"))
    ),
    "knot just out of reach": lambda p: clear_legs(p, knot_from=ticks("4-7/8")),
    "sap in a zone": lambda p: mark(p, "O1", "sap", "A", "0", "1", "1", "2"),
    "set from a board turned over": lambda p: [
        node(p, name).update(face_up="B") for name in ("O2.1.1", "O2.2.1")
    ],
    "strips of one board": lambda p: part(p, "panel")["glue_up"].update(colour="any"),
    "slices a tick each too thick": lambda p: blank(p, "slats").update(
        thickness=ticks("5/8") - 3
    ),
    "offcut that claims less": lambda p: (
        node(p, "O2.4").update(worth=9_957),
        wood(p, "oak").update(cost=390_043),
    ),
    "offcut beyond a second pass of the blade": second_pass,
    "mark in the trim beyond the offcut": lambda p: (
        stock(p, "O2").update(trims=[0, ticks("1")]),
        mark(p, "O2", "split", "through", "59", "0", "60", "1"),
        # 28-7/8 of 60: 100,000 x 20 x 231 / 48,000 = 9,625.
        node(p, "O2.4").update(worth=9_625),
        wood(p, "oak").update(cost=390_375),
    ),
}


@pytest.mark.parametrize("name", SOUND)
def test_plan_that_keeps_to_the_rules_holds(name: str) -> None:
    plan = crafted()
    SOUND[name](plan)
    assert check(plan)["objections"] == []


def test_offcuts_with_a_worth_leave_the_floor_as_priced() -> None:
    plan = crafted()
    # Free parts but one: a leg at 7 units; every board gives some, none its price.
    wood(plan, "oak")["bound"] |= {"prices": {"leg": 7}, "priced": 14, "value": 14}
    assert check(plan)["objections"] == []
    wood(plan, "oak")["bound"]["value"] = 100_000
    told = check(plan)["objections"]
    assert any("whole pieces can cost 0.0014 or more" in each for each in told)


def test_check_an_inch_off_holds() -> None:
    plan = documented()
    box = [ticks("37"), ticks("1"), ticks("38"), ticks("2")]
    named(plan["stock"], "W07")["marks"].append(
        {"kind": "check", "face": "A", "box": box}
    )
    assert check(plan)["objections"] == []


def test_offcut_of_just_thirty_in_a_hundred_counts() -> None:
    plan, _ = read(crafted())
    assert plan is not None
    offcuts = Offcuts(percent=20, sizes=((1, 1),))
    # 18 of O2's 60 in are 30 in a hundred: 20 % of 30 % of 10.00.
    long, wide = ticks("18"), ticks("8")
    assert most_worth(plan.piece_of["O2"], offcuts, long, wide) == 6_000
    assert most_worth(plan.piece_of["O2"], offcuts, long - 1, wide) == 0


def test_strip_brings_the_steps_it_holds_whole_and_a_whole_panel_all() -> None:
    plan, _ = read(crafted())
    assert plan is not None
    panel = plan.part_of["panel width"]
    # Steps of 1/2 in; the panel is 9 in wide and asks for 18.
    assert steps_brought(panel, ticks("4-3/4")) == 9
    assert steps_brought(panel, ticks("5") - 1) == 9
    assert steps_brought(panel, ticks("9-1/2")) == 18
