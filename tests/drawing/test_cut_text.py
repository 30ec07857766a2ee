"""The cutting list of a board in words, written out by hand."""

from __future__ import annotations

import pytest

from tests.builders_plan import full_plan, make_mark, stress_plan
from yieldplan.drawing.board_scene import Saw
from yieldplan.drawing.cut_text import cutting_list, found, mark_in_words
from yieldplan.model.plan import Cutting, Plan


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
        "2. Crosscut at 6, 50, 54, 77, 106 from the zero end, blade right of every mark.",
        "3. 6 to 50, 43 7/8 long: joint the near edge; rip 5 1/2: fronts (2 matched) [ ]; rip 2 3/8: burn.",
        "4. 54 to 77, 22 7/8 long: joint the near edge; rip 2 3/4: divider TURN OVER, face B up [ ]; rip 2 3/4: divider [ ]; rest 2 3/8: burn.",
        "5. 77 to 106, 28 7/8 long: KEEP W1-A, 8 1/4 × 28 7/8 [ ].",
        "6. Not used: 0 to 6 trim, 50 to 54 burn, 106 to the end trim.",
        "7. Mill fronts (2 matched) in one piece, then cut it into its 2 parts.",
    ]


def test_a_rip_first_board_is_told_strip_by_strip() -> None:
    # 13 wide: 1/8 + 5-1/2 + 1/8 + 6-1/8 + 1/8 leaves 1.
    assert _of(full_plan(), "P1")[:2] == [
        "1. Whole length, from the near edge: joint the near edge; rip 5 1/2; rip 6 1/8; rest 1: burn. Then crosscut each strip from its own zero end, blade right of every mark.",
        "2. Strip 1, 5 1/2 wide: 2 to 22 1/2: side [ ]; 22 1/2 to 43: side [ ]; 43 to 63 1/2: side [ ]; 63 1/2 to 84: side [ ]; 84 to the end: burn.",
    ]


def test_a_strip_crosscut_again_gives_lengths_off_the_stop() -> None:
    assert _of(full_plan(), "P2")[2] == (
        "3. 24 1/2 to 47, 22 3/8 long: joint the near edge;"
        " rip 4 7/8: (crosscut it: 22 back [ ], rest burn); rip 2: burn."
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
