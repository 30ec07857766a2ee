"""Routes weighed by money in whole plans: each job worked by hand, each plan through the proof."""

from __future__ import annotations

from collections import Counter
from pathlib import Path

import pytest

from tests.system.runs import outcome_of
from yieldplan.desk.explain import explain
from yieldplan.desk.plan_job import Outcome
from yieldplan.packing import Stop

HEAD = """
title = "Routes"
unit = "in"
currency = "USD"
board_measure = "exact"
[wood.walnut]
species = "black walnut"
[[price]]
wood = "walnut"
thickness = "4/4"
per_foot = "12.00"
[[price]]
wood = "walnut"
thickness = "6/4"
per_foot = "14.00"
[shop]
{shop}
"""
SIDES = """
[[part]]
name = "side"
wood = "walnut"
length = "17-1/2"
width = "5"
thickness = "1/2"
quantity = 2
"""
TOP = """
[[part]]
name = "top"
wood = "walnut"
length = "30"
width = "14"
thickness = "3/4"
glue_up = {{ colour = "{colour}", one_piece = false }}
"""


def plan(
    folder: Path, parts: str, boards: str, shop: str = "", columns: str = ""
) -> Outcome:
    folder.mkdir(exist_ok=True)
    (folder / "job.toml").write_text(HEAD.format(shop=shop) + parts, encoding="utf-8")
    head = "id,wood,thickness,length,width" + columns + "\n"
    (folder / "tally.csv").write_text(head + boards, encoding="utf-8")
    outcome = outcome_of(folder / "job.toml", folder / "tally.csv", Stop())
    assert outcome.report.passed
    assert outcome.plan.complete
    return outcome


def cut(outcome: Outcome) -> Counter[str]:
    """Blanks cut, by route; a step of a set by "step"."""
    blanks = {blank.id: blank for blank in outcome.plan.blanks}
    return Counter(
        "step" if blanks[leaf.blank].step else blanks[leaf.blank].route
        for wood in outcome.plan.woods
        for cutting in wood.cuttings
        for leaf in cutting.tree.leaves()
        if leaf.blank is not None
    )


def boards(outcome: Outcome) -> list[str]:
    return sorted(
        cutting.piece.id for wood in outcome.plan.woods for cutting in wood.cuttings
    )


def test_two_sides_are_resawn_where_that_board_is_cheaper(tmp_path: Path) -> None:
    # W2, 24 x 6 of 6/4: 1-1/2 feet at 14.00, 21.00. It gives one blank of 18 x 5-1/4:
    # both sides. W1, 48 x 6 of 4/4: 2 feet at 12.00, 24.00, gives two.
    two = "W1,walnut,4/4,48,6\nW2,walnut,6/4,24,6\n"
    outcome = plan(tmp_path, SIDES, two)
    assert (boards(outcome), cut(outcome)) == (["W2"], Counter({"resaw": 1}))
    assert outcome.plan.total == 210_000
    said = explain(outcome.document, "side")
    assert "resawn, two from 6/4" in said
    # 94-1/2 sq in of 6/4 at 14.00 x 1-1/2 a square foot 13.78; two in a row of 4/4
    # 35-5/8 x 5-1/4 at 12.00 15.59.
    assert "next best: milled together from 4/4, about 1.80 more wood" in said
    assert "Slice 2 of it" in said


def test_a_shop_that_does_not_resaw_buys_the_other(tmp_path: Path) -> None:
    two = "W1,walnut,4/4,48,6\nW2,walnut,6/4,24,6\n"
    outcome = plan(tmp_path, SIDES, two, shop='without = ["resaw"]')
    assert boards(outcome) == ["W1"]


def test_two_sides_in_one_blank_fit_a_board_too_short_for_two(tmp_path: Path) -> None:
    # 40 less 2 off each end: marks from 2 to 38, 36 in. Alone they take 18 + 1/8, up to
    # the half inch 18-1/2, twice 37. In one blank 35-5/8 + 1/8 = 35-3/4, up to 36.
    one = "W1,walnut,4/4,40,5-1/2\n"
    outcome = plan(tmp_path, SIDES, one)
    assert cut(outcome) == Counter({"mill together": 1})


@pytest.mark.parametrize("breakdown", ["crosscut first", "either"])
def test_steps_take_less_wood_than_the_rectangle(
    tmp_path: Path, breakdown: str
) -> None:
    # Fronts 20 long, 3, 5 and 7 wide; a lid of 40 x 3 in two rails of 20 x 3 each.
    # The board, 68 x 7-5/8: three sections of 20-1/2 + 1/8, 21 each: 63 from 2 to 65, the
    # whole of it. Beside the 3-1/8 step (3 + 1/8; narrow parts take 1/8) lie 4 in: one
    # rail of 3-1/8. As a rectangle the set takes 60-3/4 x 7-1/4 and leaves no rail.
    fronts = "".join(
        f'[[part]]\nname = "{name}"\nwood = "walnut"\nlength = "20"\nwidth = "{wide}"\n'
        'thickness = "3/4"\nshow_face = "clear"\n'
        for name, wide in (("upper", "3"), ("middle", "5"), ("lower", "7"))
    )
    rail = (
        '[[part]]\nname = "rail"\nwood = "walnut"\nlength = "20"\nwidth = "3"\n'
        'thickness = "3/4"\n'
    )
    match = '[[grain_match]]\nname = "fronts"\nparts = ["upper", "middle", "lower"]\n'
    one = "W1,walnut,4/4,68,7-5/8\nW2,walnut,4/4,96,12\n"
    outcome = plan(
        tmp_path, fronts + rail + match, one, shop=f'breakdown = "{breakdown}"'
    )
    assert boards(outcome) == ["W1"]
    assert cut(outcome) == Counter({"step": 3, "plane": 1})


def test_a_panel_takes_the_widths_the_boards_have(tmp_path: Path) -> None:
    # 14 + 1/2 = 58 quarter inches. Two boards, 36 long (32 between the trims; a strip is
    # 31), 8 and 8-1/4 wide. Of 8: 7-3/4 within the edges; two strips of w and w' take
    # w + w' + 2/8 + 1/8 <= 7-3/4: 7-1/4 of width at the most on quarters. Of 8-1/4: 7-1/2.
    # Together 14-3/4: they are enough, and equal strips of 14-1/2 / 4 = 3-5/8 are too.
    two = "W1,walnut,4/4,36,8\nW2,walnut,4/4,36,8-1/4\n"
    outcome = plan(tmp_path, TOP.format(colour="any"), two)
    assert boards(outcome) == ["W1", "W2"]
    made = Counter[str]()
    blanks = {blank.id: blank for blank in outcome.plan.blanks}
    for wood in outcome.plan.woods:
        for cutting in wood.cuttings:
            for leaf in cutting.tree.leaves():
                if leaf.blank is not None:
                    made.update(blanks[leaf.blank].makes)
    assert made["top width"] in (58, 59)
    assert "strips from 4/4" in explain(outcome.document, "top")


def test_of_one_board_where_colour_asks_it(tmp_path: Path) -> None:
    # Of any boards the two short ones at 24.00 and 24.75 do. Of one board: 14-1/2 in
    # strips of 3-5/8 take 4 in a row, 4 x 31 + 3/8, or two by two, 62-1/8 long and
    # 2 x 3-7/8 + 1/8 = 7-7/8 wide: the long one, 72 x 8-1/2 at 51.00.
    three = "W1,walnut,4/4,36,8\nW2,walnut,4/4,36,8-1/4\nW3,walnut,4/4,72,8-1/2\n"
    outcome = plan(tmp_path, TOP.format(colour="one board"), three)
    assert boards(outcome) == ["W3"]
    (wood,) = outcome.plan.woods
    assert len(wood.cuttings) == 1
    assert cut(outcome) == Counter({"glue up": 1})


def test_a_pair_of_panels_is_opened_like_a_book(tmp_path: Path) -> None:
    # 22 + 1/2 by 7 + 1/4 of 6/4: 2 x 5/8 + 1/16 + 1/16 = 1-3/8.
    panels = (
        '[[part]]\nname = ["left", "right"]\nwood = "walnut"\nlength = "22"\n'
        'width = "7"\nthickness = "1/2"\nshow_face = "clear"\n'
        '[[grain_match]]\nname = "panels"\nparts = ["left", "right"]\n'
        'laid = "book-matched"\n'
    )
    outcome = plan(tmp_path, panels, "W1,walnut,4/4,96,8\nW2,walnut,6/4,30,8\n")
    assert boards(outcome) == ["W2"]
    assert "resawn as a pair from 6/4" in explain(outcome.document, "left")
