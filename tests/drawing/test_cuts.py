"""The marks and fence settings of a board, each worked out by hand beside it."""

from __future__ import annotations

from tests.builders_plan import (
    KERF,
    Lengths,
    Strip,
    crosscut_first,
    full_plan,
    make_piece,
    rip_first,
    rules,
    ticks,
)
from yieldplan.drawing.cuts import crosscuts, flat, kept, rips
from yieldplan.model.plan import Node


def test_every_crosscut_is_marked_where_the_blade_enters_from_zero() -> None:
    board = make_piece("W1", "60", "6")
    cutting = crosscut_first(
        board,
        [("0", "2", "trim"), ("2", "30", [Strip("5", "k2")]), ("30", "60", "burn")],
    )
    marks = crosscuts(cutting.tree, rules())
    # The trim ends at 2 and the first piece at 30; what is right of 30 runs to the end.
    assert marks.at == (ticks("2"), ticks("30"))
    assert marks.origin == 0


def test_a_sheet_is_measured_from_its_fresh_end() -> None:
    sheet = next(wood for wood in full_plan().woods if wood.is_sheet)
    marks = crosscuts(sheet.cuttings[0].tree, sheet.rules)
    # 1/4 comes off first, kerf and all; then two lengths of 21-7/16, a kerf between:
    # 21-7/16, and 21-7/16 + 1/8 + 21-7/16 = 43.
    assert marks.square_off == ticks("1/4")
    figures = [marks.figure(cut) for cut in marks.at]
    assert figures == [ticks("21 7/16"), ticks("43")]


def test_a_piece_that_begins_later_than_a_kerf_is_cut_again_on_its_left() -> None:
    # 10 long, then 1/16 lost beside the kerf, then the rest: cuts at 10 and at 10-1/16.
    start = ticks("10") + KERF + ticks("1/16")
    later = Node(id="b", box=(start, 0, ticks("20"), 100), blank="k1")
    again = Node(id="r", box=(ticks("10") + KERF, 0, ticks("20"), 100), cut="crosscut", into=(later,))  # fmt: skip
    first = Node(id="a", box=(0, 0, ticks("10"), 100), blank="k1")
    board = Node(
        id="w", box=(0, 0, ticks("20"), 100), cut="crosscut", into=(first, again)
    )
    assert flat(board) == (first, later)
    assert crosscuts(board, rules()).at == (ticks("10"), ticks("10 1/16"))


def test_strips_come_off_the_fence_from_the_near_edge() -> None:
    board = make_piece("P1", "40", "8")
    tree = rip_first(
        board, [("3", [("0", "40", "k1")]), ("2 1/2", [("0", "40", "k1")])]
    ).tree
    said = [(rip.kind, rip.node.width, rip.pass_before) for rip in rips(tree)]
    # 1/8 edge + 3 + 1/8 + 2-1/2 + 1/8 leaves 8 - 5-7/8 = 2-1/8 at the far edge.
    assert said == [
        ("rip", ticks("3"), True),
        ("rip", ticks("2 1/2"), False),
        ("rest", ticks("2 1/8"), False),
    ]


def test_what_is_kept_are_blanks_and_offcuts_in_order_from_zero() -> None:
    board = make_piece("W1", "60", "6")
    pieces = Lengths((("10", "k1"), ("12", "k2")))
    tree = crosscut_first(
        board, [("0", "2", "trim"), ("2", "30", [Strip("5", pieces)]), ("30", "60", "keep")]
    ).tree  # fmt: skip
    names = [node.blank or node.name for node in kept(tree)]
    assert names == ["k1", "k2", "W1-A"]


def test_leaves_and_sawdust_of_the_builders_boards_add_up_to_the_board() -> None:
    # The plan the papers are tested on is itself a possible plan: no wood from nowhere.
    for wood in full_plan().woods:
        for cutting in wood.cuttings:
            for node in _all(cutting.tree):
                axis = 0 if node.cut == "crosscut" else 1
                for before, after in zip(node.into, node.into[1:], strict=False):
                    assert after.box[axis] - before.box[axis + 2] == KERF
                for child in node.into:
                    assert child.box[1 - axis] == node.box[1 - axis]
                    assert child.box[3 - axis] == node.box[3 - axis]
                if node.into:
                    assert node.into[0].box[axis] - node.box[axis] <= KERF
                    assert node.box[axis + 2] - node.into[-1].box[axis + 2] <= KERF


def _all(node: Node) -> list[Node]:
    return [node, *(below for child in node.into for below in _all(child))]
