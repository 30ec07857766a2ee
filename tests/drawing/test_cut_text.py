"""The cutting list of a board in words, written out by hand."""

from __future__ import annotations

import dataclasses
from itertools import pairwise

import pytest

from tests.builders_plan import (
    Lengths,
    Strip,
    crosscut_first,
    full_plan,
    make_mark,
    make_piece,
    stress_plan,
    ticks,
)
from yieldplan.drawing.cut_text import cutting_list
from yieldplan.drawing.cuts import rips
from yieldplan.drawing.found import found, mark_in_words
from yieldplan.drawing.saw import Saw
from yieldplan.model.plan import Cutting, Node, Plan
from yieldplan.units import parse_length, tape


def _of(plan: Plan, board: str, *, numbered: bool = False) -> list[str]:
    cutting, saw = _cutting(plan, board)
    return cutting_list(cutting, saw, numbered=numbered)


def _cutting(plan: Plan, board: str) -> tuple[Cutting, Saw]:
    blanks = {blank.id: blank for blank in plan.blanks}
    for wood in plan.woods:
        for cutting in wood.cuttings:
            if cutting.piece.id == board:
                return cutting, Saw(blanks=blanks, unit="in", rules=wood.rules)
    raise AssertionError(board)


def test_a_crosscut_first_board_is_told_section_by_section() -> None:
    # A section from mark to mark is a kerf shorter: 50 - 6 - 1/8 = 43-7/8.
    # Across 8-1/4: 1/8 + 5-1/2 + 1/8 + 2-3/8 leaves 1/8, which the blade takes.
    assert _of(full_plan(), "W1") == [
        "1. Chalk strokes across the joints of fronts (2 matched) before sawing; from zero: upper/front, lower/front.",
        "2. Crosscut at 6, 50, 54, 77, 106 from the zero end, blade right of every mark. 0 to 6 is trim, 50 to 54 is burn, 106 to the end is trim.",
        "3. 6 to 50, 43 7/8 long: joint the near edge; rip 5 1/2: fronts (2 matched) [ ]; rip 2 3/8: burn.",
        "4. 54 to 77, 22 7/8 long: joint the near edge; rip 2 3/4: divider TURN OVER, face B up [ ]; rip 2 3/4: divider [ ]; rest 2 3/8: burn.",
        "5. 77 to 106, 28 7/8 long: KEEP W1-A, 8 1/4 × 28 7/8 [ ].",
        "6. Mill fronts (2 matched) in one piece, then cut it into its 2 parts.",
    ]


def test_what_is_sawn_alike_is_told_once_with_a_box_for_each() -> None:
    # Three sections of 11-1/2 less a kerf, each ripped twice at 2-1/2 and the first of
    # the strips crosscut in two: 3 x (2 + 1) pieces. 6 less 2 x 2-1/2 and 3 x 1/8 is 5/8.
    board = make_piece("W4", "40", "6")
    pair = Lengths((("5 1/2", "k4"), ("5 1/2", "k4")))
    strips = [Strip("2 1/2", pair), Strip("2 1/2", "k4")]
    marks = ("2", "13 1/2", "25", "36 1/2")
    cutting = crosscut_first(
        board,
        [("0", "2", "trim"), *((a, b, strips) for a, b in pairwise(marks)), ("36 1/2", "40", "trim")],
    )  # fmt: skip
    _, saw = _cutting(full_plan(), "P2")
    boxes = " ".join(["[ ]"] * 3)
    assert cutting_list(cutting, saw, numbered=False)[1] == (
        "2. 2 to 13 1/2, 13 1/2 to 25 and 25 to 36 1/2, each 11 3/8 long:"
        " joint the near edge;"
        f" rip 2 1/2: (crosscut it: 2 at 5 1/2: side {boxes} {boxes}, rest burn);"
        f" rip 2 1/2: side {boxes}; rest 5/8: burn."
    )


def test_the_same_setting_in_a_row_is_told_once() -> None:
    board = make_piece("W4", "40", "9")
    cutting = crosscut_first(
        board, [("0", "2", "trim"), ("2", "38", [Strip("2 1/2", "k4")] * 3)]
    )
    _, saw = _cutting(full_plan(), "P2")
    # 9 less 1/8 + 3 x (2-1/2 + 1/8) is 1.
    assert cutting_list(cutting, saw, numbered=False)[1] == (
        "2. 2 to 38, 35 7/8 long: joint the near edge;"
        " rip 2 1/2, 3 times: side [ ] [ ] [ ]; rest 1: burn."
    )


def test_a_rip_first_board_is_told_strip_by_strip() -> None:
    # 13 wide: 1/8 + 5-1/2 + 1/8 + 6-1/8 + 1/8 leaves 1.
    assert _of(full_plan(), "P1")[:2] == [
        "1. Whole length, from the near edge: joint the near edge; rip 5 1/2; rip 6 1/8; rest 1: burn. Then crosscut each strip from its own zero end, blade right of every mark.",
        "2. Strip 1, 5 1/2 wide: 2 to 22 1/2: side [ ]; 22 1/2 to 43: side [ ]; 43 to 63 1/2: side [ ]; 63 1/2 to 84: side [ ]; 84 to the end: burn.",
    ]


def test_a_strip_crosscut_again_gives_lengths_off_the_stop() -> None:
    assert _of(full_plan(), "P2")[2] == (
        "3. 24 1/2 to 47, 22 3/8 long: joint the near edge;"
        " rip 4 7/8: (crosscut it: 22: back [ ], rest burn); rip 2: burn."
    )


def test_a_sheet_is_squared_before_it_is_measured() -> None:
    assert _of(full_plan(), "bottom")[0] == (
        "1. Square the zero end, 1/4 off. Crosscut at 21 7/16, 43 from the fresh end,"
        " blade right of every mark."
    )


@pytest.mark.parametrize("board", ["W1", "W2", "P1", "P2", "bottom"])
def test_every_blank_and_offcut_has_one_box_to_tick(board: str) -> None:
    cutting, saw = _cutting(full_plan(), board)
    carried = [n for n in cutting.tree.leaves() if n.blank or n.fate == "keep"]
    said = " ".join(cutting_list(cutting, saw, numbered=False))
    assert said.count("[ ]") == len(carried)


def test_numbers_in_the_list_are_those_on_the_picture() -> None:
    said = " ".join(_of(stress_plan(), "W88", numbered=True))
    assert all(f"({number}) " in said for number in range(1, 32))


def test_a_mark_is_written_as_it_was_measured() -> None:
    knot = make_mark("knot A 31-1/2 32-1/2 2 3-1/2")
    split = make_mark("split through 0 7 0 6")
    assert mark_in_words(knot, "in") == "knot A 31 1/2 to 32 1/2 × 2 to 3 1/2"
    assert mark_in_words(split, "in") == "split 0 to 7 × 0 to 6, through"


def test_what_was_found_closes_the_list_and_a_clear_board_says_nothing() -> None:
    assert found(_cutting(full_plan(), "P1")[0], "in").startswith("Found: knot A 56")
    assert found(_cutting(full_plan(), "P2")[0], "in") == ""


def test_wood_lost_at_the_near_edge_is_taken_off_not_ripped_against_the_fence() -> None:
    # A wavy edge cannot run along a fence: 3/8 burnt and a kerf of 1/8 come off first.
    plan = full_plan()
    cutting, saw = _cutting(plan, "P2")
    end, far = ticks("40"), ticks("6 1/8")
    waste = Node(id="w", box=(0, 0, end, ticks("3/8")), fate="burn")
    side = Node(id="s", box=(0, ticks("1/2"), end, ticks("6")), blank="k4")
    tree = Node(id="t", box=(0, 0, end, far), cut="rip", into=(waste, side))
    assert [rip.kind for rip in rips(tree)] == ["edge", "rip"]
    board = dataclasses.replace(cutting, tree=tree)
    assert cutting_list(board, saw, numbered=False) == [
        "1. Whole length, from the near edge: take 1/2 off the near edge; rip 5 1/2: side [ ]."
    ]


def test_a_crooked_board_says_so_and_what_to_do_before_the_first_rip() -> None:
    cutting, _ = _cutting(full_plan(), full_plan().pieces[0].id)
    far = parse_length("7-1/4")
    piece = dataclasses.replace(
        cutting.piece, crook=parse_length("3/8"), width_far=far, marks=()
    )
    assert found(dataclasses.replace(cutting, piece=piece), "in") == (
        f"Found: tapers from {tape(piece.width)} at zero to 7 1/4; crook 3/8. Joint the"
        " near edge of each piece straight before it is ripped."
    )
