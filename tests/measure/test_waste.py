"""Where the wood goes: the shares add up to the board, to the square tick."""

from __future__ import annotations

import dataclasses
from decimal import Decimal
from fractions import Fraction

from hypothesis import given
from hypothesis import strategies as st

from tests.measure.hall_case import (
    BOARD,
    FRONTS,
    KNOT,
    TREE,
    inches,
    make_board,
    make_plan,
    make_wood_plan,
    node,
)
from yieldplan.measure.waste import WasteSplit, split
from yieldplan.model.faces import Mark
from yieldplan.model.plan import Cutting, Node, Plan
from yieldplan.units import TICKS_PER_INCH


def square_inches(area: int) -> Fraction:
    return Fraction(area, TICKS_PER_INCH**2)


def plan_of(tree: Node, *marks: Mark) -> Plan:
    board = dataclasses.replace(BOARD, marks=marks)
    cutting = Cutting(piece=board, copy=1, tree=tree, breakdown="crosscut first")
    return make_plan(woods=(make_wood_plan(cuttings=(cutting,)),))


def test_every_square_inch_of_the_hall_case_is_accounted_for() -> None:
    plan = make_plan()
    shares = split(plan.woods[0], plan)
    # The board is 60 x 8 = 480 square inches.
    assert square_inches(shares.bought) == 480
    # Two fronts of 22 x 6.
    assert square_inches(shares.parts) == 264
    # The piece as sawn runs from 2-1/8 to 47-1/2 and is 6-1/4 wide.
    sawn = inches("45-3/8") * inches("6-1/4")
    assert square_inches(shares.planing) == sawn - 264
    # End trims of 2 and of 60 - 58-1/8 = 1-7/8, over 8 of width.
    assert square_inches(shares.trim) == (2 + inches("1-7/8")) * 8
    # Three crosscuts 8 wide; three rips 45-3/8 long, two of them at the edges.
    assert square_inches(shares.kerf) == Fraction(3, 8) * (8 + inches("45-3/8"))
    # One square inch of knot in the leavings; the rest is sound and too small.
    assert square_inches(shares.defects) == 1
    leavings = inches("1-3/8") * inches("45-3/8") + inches("10-3/8") * 8
    assert square_inches(shares.misfit) == leavings - 1
    assert shares.offcuts == 0


def test_a_kept_end_is_an_offcut_with_the_marks_in_it() -> None:
    *before, rest, trim = TREE.into
    kept = dataclasses.replace(rest, fate="keep", name="W7-A")
    plan = plan_of(dataclasses.replace(TREE, into=(*before, kept, trim)), KNOT)
    shares = split(plan.woods[0], plan)
    assert square_inches(shares.offcuts) == inches("10-3/8") * 8
    assert shares.defects == 0


def test_marks_that_overlap_are_counted_once() -> None:
    # A second knot 50-1/2 to 51-1/2 x 1 to 2 covers half an inch of the first again.
    second = dataclasses.replace(KNOT, x0=inches("50-1/2"), x1=inches("51-1/2"))
    plan = plan_of(TREE, KNOT, second)
    assert square_inches(split(plan.woods[0], plan).defects) == Fraction(3, 2)


def test_a_mark_nobody_minds_is_no_defect() -> None:
    # A sound face may have knots: `FORBIDS` in model/faces.py.
    blank = dataclasses.replace(FRONTS, show_face="sound", back_face="sound")
    plan = dataclasses.replace(make_plan(), blanks=(blank,))
    assert split(plan.woods[0], plan).defects == 0


def test_a_set_up_piece_comes_out_of_the_misfit() -> None:
    plan = make_plan(blanks=(dataclasses.replace(FRONTS, set_up=True),))
    shares = split(plan.woods[0], plan)
    assert (shares.parts, shares.planing) == (0, 0)
    assert square_inches(shares.bought) == 480


@given(st.lists(st.integers(0, 10**12), min_size=7, max_size=7))
def test_the_tenths_always_add_up_to_a_hundred(areas: list[int]) -> None:
    names = list(WasteSplit().shares())
    shares = WasteSplit(**dict(zip(names, areas, strict=True)))
    percent = shares.percent()
    assert list(percent) == names
    if not shares.bought:
        assert set(percent.values()) == {Decimal(0)}
        return
    assert sum(percent.values()) == Decimal(100)
    for name, area in shares.shares().items():
        exact = Fraction(100 * area, shares.bought)
        assert abs(Fraction(percent[name]) - exact) < Fraction(1, 10)


_place = st.integers(0, 60)
_depth = st.integers(0, 8)


@given(st.lists(st.tuples(_place, _place, _depth, _depth), max_size=6))
def test_defects_are_the_union_of_the_marks_square_by_square(
    corners: list[tuple[int, int, int, int]],
) -> None:
    marks = [
        Mark(
            kind="knot",
            face="through",
            x0=Fraction(min(a, b)),
            x1=Fraction(max(a, b)),
            y0=Fraction(min(c, d)),
            y1=Fraction(max(c, d)),
        )
        for a, b, c, d in corners
        if a != b and c != d
    ]
    board = make_board("W7", marks=tuple(marks))
    leaf = node("W7", ("0", "0", "60", "8"), fate="burn")
    cutting = Cutting(piece=board, copy=1, tree=leaf, breakdown="crosscut first")
    plan = make_plan(woods=(make_wood_plan(cuttings=(cutting,)),))
    squares = {
        (x, y)
        for mark in marks
        for x in range(int(mark.x0), int(mark.x1))
        for y in range(int(mark.y0), int(mark.y1))
    }
    shares = split(plan.woods[0], plan)
    assert square_inches(shares.defects) == len(squares)
    assert square_inches(shares.misfit) == 480 - len(squares)
