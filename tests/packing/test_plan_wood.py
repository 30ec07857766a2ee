"""Whole woods through the packer: trees of cuts, leftovers, set-up pieces, and the checker's word on them."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.drawing.fence import off_the_fence
from tests.packing.wood_jobs import (
    make_blank,
    make_board,
    make_mark,
    make_part,
    make_sheet,
    objections,
    plan_of,
)
from yieldplan.drawing.cuts import flat
from yieldplan.model.faces import MARK_KINDS
from yieldplan.model.plan import Node
from yieldplan.units import TICKS_PER_INCH

BREAKDOWNS = ["crosscut first", "rip first", "either"]


def leaves(tree: Node) -> list[Node]:
    return list(tree.leaves())


@pytest.mark.parametrize("breakdown", BREAKDOWNS)
def test_one_part_from_one_board_leaves_one_long_offcut(breakdown: str) -> None:
    part = make_part("shelf", "20", "5")
    board = make_board("W1", "72", "5-3/8")
    plan, wood = plan_of([part], [make_blank([part])], [board], breakdown=breakdown)
    assert objections(plan) == []
    (cutting,) = wood.cuttings
    (blank,) = [leaf for leaf in leaves(cutting.tree) if leaf.blank]
    # Rough 20-1/2 from the mark at 2: the blade takes 2 to 2-1/8, and with its own kerf
    # the blank takes 20-5/8, so the next mark on half inches is 2 + 21 = 23.
    assert blank.box[0] == Fraction(17, 8) * TICKS_PER_INCH
    assert blank.box[2] == 23 * TICKS_PER_INCH
    # Rough 5-1/8 wide; 5-3/8 less two edge passes of 1/8 is just that.
    assert blank.width == Fraction(41, 8) * TICKS_PER_INCH
    (offcut,) = [leaf for leaf in leaves(cutting.tree) if leaf.fate == "keep"]
    # The far side of the mark at 23 up to the raw end at 72: not one cut more than needed.
    assert offcut.length == (72 - Fraction(185, 8)) * TICKS_PER_INCH
    assert offcut.name == "W1-A"
    assert wood.bound.value == wood.cost


def test_a_board_is_cut_around_its_marks_and_turned_where_that_helps() -> None:
    front = make_part("front", "20", "5", 2, show="clear")
    board = make_board(
        "W1",
        "50",
        "5-3/8",
        # A knot on face A over the first half, one on face B over the second.
        make_mark("knot", "A", "8", "9", "2", "3"),
        make_mark("knot", "B", "35", "36", "2", "3"),
    )
    plan, wood = plan_of([front], [make_blank([front])], [board])
    assert objections(plan) == []
    (cutting,) = wood.cuttings
    faces = [leaf.face_up for leaf in leaves(cutting.tree) if leaf.blank]
    assert faces == ["B", "A"]


def test_set_up_pieces_come_from_waste_and_never_open_a_board() -> None:
    part = make_part("rail", "20", "3")
    test = make_part("test", "8", "3", 3, show="any", back="any", set_up=True)
    plan, wood = plan_of(
        [part, test],
        [make_blank([part]), make_blank([test])],
        [make_board("W1", "48", "4"), make_board("W2", "96", "8")],
    )
    assert objections(plan) == []
    assert [cutting.piece.id for cutting in wood.cuttings] == ["W1"]
    # 48 less the trims of 2 is 44; the rail takes 21 with its kerf and two test pieces of
    # 8-1/2 take 8-5/8 each; a third does not fit the 5-3/4 that are left.
    made = [leaf.blank for leaf in leaves(wood.cuttings[0].tree) if leaf.blank]
    assert made.count("plane test") == 2
    assert wood.set_up_left == {"test": 1}
    assert not wood.missing


def test_a_part_wider_than_any_board_is_missing_with_its_reason() -> None:
    wide = make_part("top", "20", "13-7/8")
    rail = make_part("rail", "20", "3")
    plan, wood = plan_of(
        [wide, rail],
        [make_blank([wide]), make_blank([rail])],
        [make_board("W1", "48", "9-1/2")],
    )
    assert objections(plan) == []
    (missing,) = wood.missing
    assert (missing.demand, missing.count) == ("top", 1)
    assert missing.reason == (
        "needs 14 in clear width; the widest piece less its edges has 9-1/4 in"
    )
    assert wood.need == {"rail": 1}


def test_reasons_of_length_thickness_and_marks() -> None:
    long = make_part("long", "60", "3")
    thick = make_part("thick", "10", "3")
    clear = make_part("clear", "20", "3", show="clear", back="clear")
    blanks = [make_blank([part]) for part in (long, thick, clear)]
    board = make_board(
        "W1",
        "48",
        "3-1/2",
        make_mark("knot", "A", "12", "13", "1", "2"),
        make_mark("knot", "A", "30", "31", "1", "2"),
    )
    line = ("walnut 4/4",)
    plan, wood = plan_of(
        [long, thick, clear],
        blanks,
        [board],
        fits={blanks[0].id: line, blanks[1].id: (), blanks[2].id: line},
    )
    assert objections(plan) == []
    reasons = {missing.demand: missing.reason for missing in wood.missing}
    assert "needs 60-1/2 in in length" in reasons["long"]
    assert "has 44 in" in reasons["long"]
    assert "at least 15/16 in thick" in reasons["thick"]
    assert "free of the marks it may not show" in reasons["clear"]
    assert not wood.cuttings
    assert wood.cost == wood.bound.value == 0


def test_too_little_wood_makes_show_parts_first() -> None:
    show = make_part("front", "20", "3", 2, show="clear")
    back = make_part("back", "21", "3", 2)
    # 48 - 4 of trims: two blanks of 21 or 22 cells' inches, no third.
    plan, wood = plan_of(
        [show, back],
        [make_blank([show]), make_blank([back])],
        [make_board("W1", "48", "3-1/2")],
    )
    assert objections(plan) == []
    assert wood.need == {"front": 2}
    (missing,) = wood.missing
    assert (missing.demand, missing.count) == ("back", 2)
    assert "pile is too small" in missing.reason
    # Two blanks of 21-1/2 x 3-1/8 are 0.93 board feet, with 30 in the hundred 1.2.
    assert "Buy about 2 bf more of walnut 4/4" in missing.remedy


def test_a_matched_set_is_whole_or_missing_whole() -> None:
    upper = make_part("upper", "20", "5", show="clear")
    lower = make_part("lower", "20", "5", show="clear")
    fronts = make_blank([upper, lower], route="match")
    short = plan_of([upper, lower], [fronts], [make_board("W1", "40", "6")])[1]
    assert {missing.demand for missing in short.missing} == {"upper", "lower"}
    plan, long = plan_of([upper, lower], [fronts], [make_board("W1", "60", "6")])
    assert objections(plan) == []
    assert long.need == {"upper": 1, "lower": 1}
    assert len([x for x in leaves(long.cuttings[0].tree) if x.blank]) == 1


def test_gangs_may_make_spares_and_nothing_else_does() -> None:
    small = make_part("block", "6", "3", 3)
    pair = make_blank([small, small], route="gang")
    plan, wood = plan_of([small], [pair], [make_board("W1", "60", "4")])
    assert objections(plan) == []
    assert len([x for x in leaves(wood.cuttings[0].tree) if x.blank]) == 2
    assert wood.need == {"block": 3}


def test_sheets_are_cut_as_often_as_it_takes() -> None:
    # 23 + 1/8 kerf: two across 24? No: 11 wide, two abreast need 22-1/8 of 24; along,
    # 47 less the trims of 1/2 hold two of 20. Four a sheet, nine need three sheets.
    bottom = make_part("bottom", "20", "11", 9, sheet=True)
    plan, wood = plan_of([bottom], [make_blank([bottom])], [make_sheet("S1", copies=9)])
    assert objections(plan) == []
    assert [(cut.piece.id, cut.copy) for cut in wood.cuttings] == [
        ("S1", 1),
        ("S1", 2),
        ("S1", 3),
    ]
    assert wood.cost == wood.bound.value == 3 * 380_000
    assert wood.cuttings[1].tree.id == "S1/2"
    for leaf in (x for cut in wood.cuttings for x in leaves(cut.tree) if x.blank):
        assert leaf.width == 11 * TICKS_PER_INCH


def eighths(count: int) -> str:
    """So many eighths of an inch, typed as a decimal."""
    return f"{count // 8}.{count % 8 * 125:03d}"


@st.composite
def marks(draw: st.DrawFn, length: int, width: int) -> object:
    x0 = draw(st.integers(0, 8 * length - 2))
    y0 = draw(st.integers(0, 8 * width - 2))
    sides = (
        x0,
        draw(st.integers(x0 + 1, min(8 * length, x0 + 60))),
        y0,
        draw(st.integers(y0 + 1, min(8 * width, y0 + 20))),
    )
    return make_mark(
        draw(st.sampled_from(MARK_KINDS)),
        draw(st.sampled_from(["A", "B", "through"])),
        *(eighths(side) for side in sides),
    )


@settings(max_examples=30, deadline=None)
@given(data=st.data())
def test_the_checker_accepts_every_plan_and_the_fence_comes_to_its_boxes(
    data: st.DataObject,
) -> None:
    draw = data.draw
    words = st.sampled_from(["clear", "sap allowed", "sound"])
    parts = [
        make_part(
            f"p{number}",
            eighths(draw(st.integers(32, 200))),
            eighths(draw(st.integers(8, 40))),
            draw(st.integers(1, 3)),
            show=draw(words),
            back=draw(words),
        )
        for number in range(draw(st.integers(1, 4)))
    ]
    blanks = [make_blank([part]) for part in parts]
    if draw(st.booleans()):
        blanks.append(make_blank([parts[0]] * 2, route="gang"))
    test = make_part(
        "test", "5", "2", draw(st.integers(1, 3)), show="any", back="any", set_up=True
    )
    boards = []
    for number in range(draw(st.integers(1, 4))):
        length, width = draw(st.integers(16, 60)), draw(st.integers(2, 9))
        boards.append(
            make_board(
                f"W{number}",
                str(length),
                str(width),
                *draw(st.lists(marks(length, width), max_size=3)),
            )
        )
    plan, wood = plan_of(
        [*parts, test],
        [*blanks, make_blank([test])],
        boards,
        work=60_000,
        breakdown=draw(st.sampled_from(BREAKDOWNS)),
        kerf=draw(st.sampled_from([Fraction(1, 8), Fraction(3, 32)])),
        rip_step=draw(st.sampled_from([Fraction(1, 8), Fraction(1, 16)])),
        crosscut_step=draw(st.sampled_from([Fraction(1, 2), Fraction(1, 16)])),
    )
    assert objections(plan) == []
    for cutting in wood.cuttings:
        assert list(off_the_fence(cutting, wood.rules.kerf)) == []


def test_a_strip_kept_or_sawn_up_at_the_near_edge_is_straight_before_it_meets_the_fence() -> (
    None
):
    # Beside a hole at the near edge that strip is kept, or a set-up piece comes from it.
    part = make_part("rail", "66", "3", 1)
    test = make_part("test", "12", "1-1/2", show="any", back="any", set_up=True)
    for hole, parts in (("4-3/4", [part]), ("2-1/8", [part, test])):
        board = make_board(
            "W1", "72", "9", make_mark("hole", "through", "30", "31", "0", hole)
        )
        plan, wood = plan_of(parts, [make_blank([each]) for each in parts], [board])
        assert objections(plan) == []
        assert not wood.set_up_left
        (cutting,) = wood.cuttings
        assert list(off_the_fence(cutting, wood.rules.kerf)) == []
        strips = next(flat(node) for node in cutting.tree.into if node.cut == "rip")
        # Less the pass of 1/8.
        assert strips[0].box[1] == Fraction(1, 8) * TICKS_PER_INCH
        assert strips[0].fate == ("keep" if len(parts) == 1 else None)
