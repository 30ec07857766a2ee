"""Half a plan is cut, a knot turns up, and the rest is planned: all is made once, and only new wood is paid."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from fractions import Fraction
from pathlib import Path
from typing import Any

import pytest

from yieldplan import packing, plan_file
from yieldplan.checking import check
from yieldplan.desk.plan_job import Outcome, plan_job

JOB = """\
title = "A low table"
unit = "in"
currency = "USD"
board_measure = "exact"

[shop]
breakdown = "{breakdown}"

[wood.ash]
species = "white ash"

[sheet.ply]
product = "birch plywood"
thickness = "1/2"
size = ["24", "48"]
price = "20.00"
quantity = 2

[[part]]
name = "rail"
quantity = 6
wood = "ash"
length = "20"
width = "3"
thickness = "3/4"
show_face = "clear"

[[part]]
name = "top"
quantity = 1
wood = "ash"
length = "30"
width = "12"
thickness = "3/4"
strips = 3

[[part]]
name = "cleat"
quantity = 3
wood = "ash"
length = "16"
width = "1-1/2"
thickness = "3/4"

[[part]]
name = "drawer bottom"
quantity = 3
sheet = "ply"
length = "20"
width = "18"
"""
TALLY = """\
id,thickness,length,width,price_per_foot,lot,marks
A1,4/4,8',7-1/2,6.00,3,
A2,4/4,8',8,6.00,3,knot A 40 to 42 x 2 to 4
A3,4/4,10',7,6.50,4,
A4,4/4,8',6,7.00,,
A5,4/4,9',9,8.00,,split 0 to 6
"""
ASKED = {"rail": 6, "top": 1, "cleat": 3, "drawer bottom": 3}


class Bench:
    """A folder with a job, its tally and its plans, one after another."""

    def __init__(self, folder: Path, breakdown: str = "crosscut first") -> None:
        self.folder = folder
        self.job = folder / "job.toml"
        self.job.write_text(JOB.format(breakdown=breakdown), encoding="utf-8")
        (folder / "tally.csv").write_text(TALLY, encoding="utf-8")

    def plan(self, *stock: str, since: str | None = None, name: str) -> Outcome:
        notes = None
        if since is not None:
            notes = self.folder / f"{name}.since.txt"
            notes.write_text(since, encoding="utf-8")
        outcome = plan_job(
            self.job,
            [self.folder / each for each in stock],
            stop=packing.Stop(share=5),
            hear=lambda _: None,
            since=notes,
        )
        # Every plan must also pass as it is written, on a bare Python.
        raw = plan_file.dump(outcome.document)
        (self.folder / name).write_bytes(raw)
        assert check(plan_file.read(self.folder / name))["objections"] == []
        return outcome


@pytest.fixture(params=["crosscut first", "rip first", "either"])
def bench(request: pytest.FixtureRequest, tmp_path: Path) -> Bench:
    return Bench(tmp_path, request.param)


def nodes(document: dict[str, Any]) -> Iterator[tuple[dict[str, Any], list[str]]]:
    """Every node with the nodes above it."""

    def below(
        node: dict[str, Any], above: list[str]
    ) -> Iterator[tuple[dict[str, Any], list[str]]]:
        yield node, above
        for child in node.get("into", ()):
            yield from below(child, [*above, node["id"]])

    for wood in document["woods"]:
        for cutting in wood["cuttings"]:
            yield from below(cutting["tree"], [])


def makes(document: dict[str, Any]) -> dict[str, dict[str, int]]:
    return {blank["id"]: blank["makes"] for blank in document["blanks"]}


def made_by(document: dict[str, Any]) -> Counter[str]:
    """What all the blanks of a plan make, strips counted singly."""
    found: Counter[str] = Counter()
    for node, _ in nodes(document):
        if "blank" in node:
            found.update(makes(document)[node["blank"]])
    return found


def test_without_notes_the_boards_are_offered_as_they_were(bench: Bench) -> None:
    first = bench.plan("tally.csv", name="first.json")
    again = bench.plan("first.json", name="again.json")
    assert again.document["stock"] == first.document["stock"]
    assert again.document["woods"] == first.document["woods"]
    assert again.plan.total == first.plan.total


def test_when_all_is_cut_nothing_is_left_to_plan(bench: Bench) -> None:
    bench.plan("tally.csv", name="first.json")
    rest = bench.plan("first.json", since="all cut", name="rest.json")
    assert rest.document["on_the_bench"] == ASKED
    assert not rest.document["woods"]
    assert rest.plan.total == 0


def test_half_the_plan_is_cut_a_knot_turns_up_and_the_rest_is_planned(
    bench: Bench,
) -> None:
    first = bench.plan("tally.csv", name="first.json")
    document = first.document
    ash = next(wood for wood in document["woods"] if wood["wood"] == "ash")
    begun = [cutting["tree"] for cutting in ash["cuttings"]]
    assert len(begun) > 1
    # One board is sawn up. Of another one only the first cuts are made, and a knot opens
    # across a rail of it that is not sawn out yet.
    trees = {tree["id"] for tree in begun}
    victim, above = next(
        (node, above)
        for node, above in nodes(document)
        if len(above) > 1
        and above[0] in trees
        and "rail" in makes(document).get(node.get("blank", ""), {})
    )
    begun.sort(key=lambda tree: bool(tree["id"] == above[0]))
    begun = [begun[0], begun[-1]]
    opened = begun[1]["into"]
    notes = (
        f"{begun[0]['id']} all cut\n{begun[1]['id']} cut\n"
        f"{victim['id']} knot A 2 to 3\n{victim['id']} knot B 2 to 3\n"
    )
    rest = bench.plan("first.json", since=notes, name="rest.json")

    # Everything asked for is made once over both: by the blanks that lie free and have
    # no new mark, and by the second plan. Strips of half a top are taken up again.
    delivered = rest.document["on_the_bench"]
    first_cut = {
        begun[1]["id"],
        *(n["id"] for n, up in nodes(document) if begun[0]["id"] in (n["id"], *up)),
    }
    free = Counter[str]()
    for node, up in nodes(document):
        if "blank" in node and up and set(up) <= first_cut:
            free.update(makes(document)[node["blank"]])
    assert free["rail"] + free["cleat"] > 0
    again = made_by(rest.document)
    for name in ("rail", "cleat", "drawer bottom"):
        assert min(free[name], ASKED[name]) == delivered.get(name, 0)
        gangs = [
            b for b in rest.document["blanks"] if b["may_spare"] and name in b["makes"]
        ]
        assert free[name] + again[name] == ASKED[name] or gangs
        assert free[name] + again[name] >= ASKED[name]
    assert (delivered.get("top", 0), again["top strip"]) in ((1, 0), (0, 3))
    assert rest.plan.complete

    # The wood on the bench is paid for; boards not begun cost what they cost.
    was = {piece["id"]: piece for piece in document["stock"]}
    for piece in rest.document["stock"]:
        if piece["id"] in was:
            assert piece["price"] == was[piece["id"]]["price"]
            assert piece["id"] not in {tree["id"] for tree in begun}
        else:
            assert piece["price"] == 0
    begun_ids = {tree["id"] for tree in begun}
    bought = {c.piece.id for wood in rest.plan.woods for c in wood.cuttings}
    assert rest.plan.total == sum(
        line.total for line in rest.plan.purchase if line.per > 0
    )
    assert not bought & begun_ids

    # The knot lies where it was found, in the frame of the piece that is left.
    holder = next(node for node in opened if node["id"] in (victim["id"], *above))
    piece = next(p for p in rest.document["stock"] if p["id"] == holder["id"])
    into = 2 * 8128 + victim["box"][0] - holder["box"][0]
    knots = {(m["face"], m["box"][0]) for m in piece["marks"] if m["kind"] == "knot"}
    assert {("A", into), ("B", into)} <= knots


def test_sections_on_the_bench_give_what_they_were_sawn_for(bench: Bench) -> None:
    # Only the first cuts are made, everywhere: the second plan may cut on as the first
    # would have, so it is complete and needs no new wood.
    first = bench.plan("tally.csv", name="first.json")
    assert first.plan.complete
    notes = "".join(f"{n['id']} cut\n" for n, up in nodes(first.document) if not up)
    rest = bench.plan("first.json", since=notes, name="rest.json")
    assert rest.plan.complete
    assert rest.plan.total == 0


def test_pieces_and_nodes_keep_their_names_apart_over_three_plans(
    bench: Bench,
) -> None:
    first = bench.plan("tally.csv", name="first.json")
    boards = [n["id"] for n, above in nodes(first.document) if not above]
    second = bench.plan("first.json", since=f"{boards[0]} cut", name="second.json")
    pieces = [n["id"] for n, above in nodes(second.document) if not above]
    third = bench.plan("second.json", since=f"{pieces[0]} all cut", name="third.json")
    made = Counter(third.document["on_the_bench"])
    still = Counter({part["id"]: part["quantity"] for part in third.document["parts"]})
    # What the three plans have delivered, and what the third still makes.
    assert {name: made[name] + still[name] for name in ASKED} == ASKED


def test_a_bought_board_costs_nothing_again(bench: Bench) -> None:
    bench.plan("tally.csv", name="first.json")
    rest = bench.plan("first.json", since="all bought", name="rest.json")
    assert rest.plan.total == 2 * 20_0000 or rest.plan.total == 20_0000
    assert all(w.cost == 0 for w in rest.plan.woods if w.wood == "ash")


def test_a_spoiled_part_is_asked_for_again_and_its_wood_is_gone(
    tmp_path: Path,
) -> None:
    bench = Bench(tmp_path)
    first = bench.plan("tally.csv", name="first.json")
    rail = next(
        node["id"]
        for node, above in nodes(first.document)
        if makes(first.document).get(node.get("blank", "")) == {"rail": 1}
        or "rail" in makes(first.document).get(node.get("blank", ""), {})
    )
    notes = f"all cut\n{rail} spoiled\n"
    rest = bench.plan("first.json", since=notes, name="rest.json")
    assert rest.document["on_the_bench"]["rail"] < 6
    assert rail not in {piece["id"] for piece in rest.document["stock"]}


def test_a_part_of_an_earlier_plan_may_be_spoiled_later(tmp_path: Path) -> None:
    bench = Bench(tmp_path)
    bench.plan("tally.csv", name="first.json")
    bench.plan("first.json", since="all cut", name="second.json")
    third = bench.plan("second.json", since="rail spoiled", name="third.json")
    assert third.document["on_the_bench"]["rail"] == 5
    (part,) = third.document["parts"]
    assert (part["id"], part["quantity"]) == ("rail", 1)


def test_a_begun_sheet_is_no_longer_to_be_had(tmp_path: Path) -> None:
    bench = Bench(tmp_path)
    first = bench.plan("tally.csv", name="first.json")
    sheet = next(
        n["id"] for n, above in nodes(first.document) if n["id"].startswith("ply")
    )
    rest = bench.plan("first.json", since=f"{sheet} cut", name="rest.json")
    whole = next(piece for piece in rest.plan.pieces if piece.id == "ply")
    assert whole.copies == 1  # of two
    begun = [p for p in rest.plan.pieces if p.wood == "ply" and p.id != "ply"]
    assert begun
    assert all(piece.price == 0 and piece.is_sheet for piece in begun)
    assert {piece.length for piece in begun} <= {
        Fraction(n["box"][2] - n["box"][0], 8128) for n, _ in nodes(first.document)
    }
