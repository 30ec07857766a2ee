"""Sticks of several lengths, sheets of several sizes, parts turned on a sheet, planed boards beside rough ones."""

from __future__ import annotations

from collections import Counter
from pathlib import Path

import pytest

from yieldplan import packing
from yieldplan.desk.plan_job import Outcome, plan_job
from yieldplan.model.plan import Node

HEAD = 'title = "A job"\nunit = "in"\ncurrency = "USD"\n'
POPLAR = """
[stick.poplar]
product = "poplar 1x4 S4S"
width = "3-1/2"
thickness = "3/4"
lengths = [
  { length = "8'", price = "6.00" },
  { length = "12'", price = "8.00" },
]
"""
EIGHT = '  { length = "12\'", price = "8.00" },\n'


def sticks(name: str, length: str, quantity: int) -> str:
    return (
        f'[[part]]\nname = "{name}"\nstick = "poplar"\nlength = "{length}"\n'
        f"quantity = {quantity}\n"
    )


def outcome(folder: Path, text: str, tally: str = "") -> Outcome:
    job = folder / "job.toml"
    job.write_text(HEAD + text, encoding="utf-8")
    tallies = []
    if tally:
        tallies.append(folder / "tally.csv")
        tallies[0].write_text(tally, encoding="utf-8")
    return plan_job(job, tallies, stop=packing.Stop(share=5), hear=lambda _: None)


def bought(made: Outcome) -> dict[str, int]:
    """Purchase line to how many."""
    return {
        line.line: sum(copies for _, copies in line.pieces)
        for line in made.plan.purchase
    }


def nodes(node: Node) -> list[Node]:
    return [node, *(each for child in node.into for each in nodes(child))]


def test_the_cheapest_mix_of_lengths_is_bought_and_proved(tmp_path: Path) -> None:
    made = outcome(tmp_path, POPLAR + sticks("rail", "45", 5))
    # 1/2 trimmed off each end. Of 8 ft 95 are left: 2 × 45 + 1/8 = 90-1/8. Of 12 ft 143:
    # 3 × 45 + 2/8 = 135-1/4. Five rails: 12 ft + 8 ft = 14.00; 2 × 12 ft = 16.00;
    # 3 × 8 ft = 18.00.
    assert bought(made) == {"poplar 8 ft": 1, "poplar 12 ft": 1}
    (wood,) = made.plan.woods
    # Floor: a rail is worth 8/3, five are 13.33; whole sticks cost a multiple of 2.00.
    assert (wood.cost, wood.bound.value) == (140_000, 140_000)


@pytest.mark.parametrize(
    ("length", "count"),
    # Two of 47-7/16 and a kerf are 95, just what the trims leave of 96; two of 47-1/2 are
    # 95-1/8.
    [("47-7/16", 2), ("47-1/2", 4)],
)
def test_trims_and_kerf_count_to_the_sixteenth(
    tmp_path: Path, length: str, count: int
) -> None:
    made = outcome(tmp_path, POPLAR.replace(EIGHT, "") + sticks("rail", length, 4))
    assert bought(made) == {"poplar 8 ft": count}
    (wood,) = made.plan.woods
    assert wood.bound.value == wood.cost


@pytest.mark.parametrize("breakdown", ["crosscut first", "rip first", "either"])
def test_a_stick_is_only_crosscut_however_the_shop_breaks_boards_down(
    tmp_path: Path, breakdown: str
) -> None:
    shop = f'[shop]\nbreakdown = "{breakdown}"\n'
    text = shop + POPLAR + sticks("rail", "30-1/8", 4) + sticks("stub", "5", 9)
    (wood,) = outcome(tmp_path, text).plan.woods
    cuts = [each for cut in wood.cuttings for each in nodes(cut.tree)]
    assert {each.cut for each in cuts if each.into} == {"crosscut"}
    assert {each.width for each in cuts} == {wood.cuttings[0].tree.width}
    assert wood.rules.family == "R"


def test_an_inch_tape_and_a_width_off_the_grid_do_not_lose_a_stick(
    tmp_path: Path,
) -> None:
    # 0.7 in is no whole number of ticks: rounded apart, part and stick would not meet.
    text = POPLAR.replace('"3-1/2"', '"0.7"').replace('"3/4"', '"0.3"')
    made = outcome(tmp_path, text + sticks("rail", "45", 5))
    assert made.plan.complete
    assert bought(made) == {"poplar 8 ft": 1, "poplar 12 ft": 1}


def test_what_is_left_of_a_stick_is_kept_by_its_length(tmp_path: Path) -> None:
    # 95 − 45 − 1/8: 49-7/8 and the end trim are left, over the 24 in that are kept;
    # of 3 × 30 + 2/8 = 90-1/4 nothing worth keeping.
    for length, quantity, kept in (("45", 1, 1), ("30", 3, 0)):
        text = POPLAR.replace(EIGHT, "") + sticks("rail", length, quantity)
        (wood,) = outcome(tmp_path, text).plan.woods
        leaves = [leaf for cut in wood.cuttings for leaf in cut.tree.leaves()]
        assert [leaf.fate for leaf in leaves].count("keep") == kept


def test_joints_lengthen_a_part_of_a_stick_too(tmp_path: Path) -> None:
    text = (
        POPLAR.replace(EIGHT, "")
        + '[[part]]\nname = "rail"\nstick = "poplar"\nquantity = 2\n'
        + 'between = { clear = "45-3/8", joint = "mortise and tenon" }\n'
    )
    made = outcome(tmp_path, text)
    (part,) = (part for part in made.plan.parts if not part.set_up)
    # 45-3/8 + 2 tenons of 1 = 47-3/8; two and a kerf are 94-7/8 of 95.
    assert part.length.value == 47 + 3 / 8
    assert bought(made) == {"poplar 8 ft": 1}


def sheet(sizes: str, *more: str) -> str:
    keys = "\n".join(more)
    return (
        f'[sheet.ply]\nproduct = "birch plywood"\nthickness = "1/2"\n{sizes}\n{keys}\n'
    )


def panels(length: str, width: str, quantity: int, *more: str) -> str:
    keys = "\n".join(more)
    return (
        f'[[part]]\nname = "panel"\nsheet = "ply"\nlength = "{length}"\n'
        f'width = "{width}"\nquantity = {quantity}\n{keys}\n'
    )


TWO_SIZES = (
    'sizes = [{ size = ["48", "96"], price = "60.00" },'
    ' { size = ["48", "48"], price = "40.00" }]'
)


def test_sheets_of_two_sizes_are_mixed_where_that_is_cheapest(tmp_path: Path) -> None:
    made = outcome(tmp_path, sheet(TWO_SIZES) + panels("46", "46", 3))
    # 1/4 trimmed all round. 48 × 96 holds two (2 × 46 + 1/8 of 95-1/2), 48 × 48 one.
    # Three panels: 60 + 40 = 100; 2 × 60 = 120; 3 × 40 = 120.
    assert bought(made) == {"ply 1/2 in 48 × 96": 1, "ply 1/2 in 48 × 48": 1}
    (wood,) = made.plan.woods
    # Floor: 30 a panel is 90; whole sheets cost a multiple of 20.
    assert (wood.cost, wood.bound.value) == (1_000_000, 1_000_000)


def test_a_size_of_which_there_is_one_is_bought_once(tmp_path: Path) -> None:
    scarce = TWO_SIZES.replace('price = "60.00"', 'price = "60.00", quantity = 1')
    made = outcome(tmp_path, sheet(scarce) + panels("46", "46", 4))
    # 2 × 60 = 120 would be cheapest; with one of them 60 + 2 × 40 = 140.
    assert bought(made) == {"ply 1/2 in 48 × 96": 1, "ply 1/2 in 48 × 48": 2}


ONE_SIZE = 'size = ["48", "96"]\nprice = "60.00"'


@pytest.mark.parametrize(
    ("grain", "turn", "count"),
    [
        # Along the sheet 47 goes twice into 95-1/2, and 30 once into 47-1/2: two a sheet.
        # Across it 30 goes three times into 95-1/2 (90-1/4), and 47 once: three.
        ("", "", 2),
        ("grain = false", "", 1),
        # What the part says overrules the face.
        ("", "turn = true", 1),
        ("grain = false", "turn = false", 2),
    ],
)
def test_turning_saves_a_sheet_where_the_face_allows(
    tmp_path: Path, grain: str, turn: str, count: int
) -> None:
    text = sheet(ONE_SIZE, grain) + panels("47", "30", 3, turn)
    made = outcome(tmp_path, text)
    assert bought(made) == {"ply 1/2 in": count}
    assert made.report.passed
    turned = {blank["id"] for blank in made.document["blanks"] if blank["turned"]}
    (wood,) = made.plan.woods
    assert wood.bound.value == wood.cost
    lies = Counter(
        leaf.blank in turned
        for cut in wood.cuttings
        for leaf in cut.tree.leaves()
        if leaf.blank is not None
    )
    assert lies == ({True: 3} if count == 1 else {False: 3})
    for blank in made.document["blanks"]:
        (place,) = blank["inside"]
        length, width, _ = made.document["parts"][0]["size"]
        across = [width, length]
        assert place["size"] == (across if blank["turned"] else [length, width])


WALNUT = """
[wood.walnut]
species = "black walnut"
[[part]]
name = "shelf"
wood = "walnut"
length = "40"
width = "5"
thickness = "3/4"
"""


@pytest.mark.parametrize(
    ("rough", "surfaced", "line"),
    [
        ("30.00", "25.00", "walnut 13/16 surfaced"),
        ("30.00", "35.00", "walnut 4/4"),
    ],
)
def test_rough_or_planed_is_chosen_by_money_and_the_purchase_line_says_which(
    tmp_path: Path, rough: str, surfaced: str, line: str
) -> None:
    # 3/4 asks for 15/16 of rough stock, or 3/4 of planed.
    tally = (
        "id,wood,thickness,length,width,price_for_piece\n"
        f"R1,walnut,4/4,60,7,{rough}\nS1,walnut,13/16 surfaced,60,7,{surfaced}\n"
    )
    made = outcome(tmp_path, WALNUT, tally)
    assert bought(made) == {line: 1}
    (wood,) = made.plan.woods
    assert wood.bound.value == wood.cost


def test_sticks_sheets_and_boards_stand_side_by_side_in_one_job(tmp_path: Path) -> None:
    tally = "id,wood,thickness,length,width,price_for_piece\nR1,walnut,4/4,60,7,30\n"
    text = (
        POPLAR
        + sheet(TWO_SIZES)
        + WALNUT
        + sticks("rail", "45", 2)
        + panels("46", "46", 1)
    )
    made = outcome(tmp_path, text, tally)
    assert [line.board_feet is None for line in made.plan.purchase] == [True, True, False]  # fmt: skip
    assert bought(made) == {"ply 1/2 in 48 × 48": 1, "poplar 8 ft": 1, "walnut 4/4": 1}
