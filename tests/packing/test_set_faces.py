"""All steps of a set show the same face of the board, also where one alone could show either."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest

from tests.packing.plates import make_problem
from yieldplan.packing import Stop, solve
from yieldplan.packing.grid.pattern import Cut, Pattern, Section, Strip
from yieldplan.packing.problem import Block, Demand, Item, Problem
from yieldplan.packing.wood.trees import tree_of

ON_A = Block(box=(10, 4, 20, 8), on_a=1, on_b=0)
"""A knot on face A alone, in the way of the first step."""


def two_steps(*blocks: Block) -> Problem:
    """A set of a wide and a narrow step, sawn from one board with these marks."""
    plain = make_problem((110, 12), [(50, 10), (50, 4)], [1, 1], "C", copies=1)
    shows_either = ((1, 0), (0, 1))
    return replace(
        plain,
        items=tuple(replace(item, layers=shows_either) for item in plain.items),
        bins=(replace(plain.bins[0], blocks=blocks),),
        sets=((0, 1),),
    )


@pytest.mark.parametrize(("blocks", "face"), [((), "A"), ((ON_A,), "B")])
def test_one_face_shows_of_all_steps(blocks: tuple[Block, ...], face: str) -> None:
    problem = two_steps(*blocks)
    solution = solve(problem, Stop(gap=Fraction(0)), lambda _: None)
    assert not any(solution.short)
    tree = tree_of(solution.patterns[0], problem, exact=False)
    shown = [leaf.face_up for leaf in tree.leaves() if leaf.blank]
    assert shown == [face, face]


def test_what_lies_beside_a_step_may_show_the_other_face() -> None:
    """The small part bears no mark on B, where nothing is, nor on A; it is laid A up."""
    plain = two_steps(ON_A)
    small = Item(
        name="small",
        length=20,
        width=3,
        makes={2: 1},
        layers=((0, 0), (0, 0)),
    )
    problem = replace(
        plain,
        demands=(*plain.demands, Demand(name="small", need=1, rank=1, area=60)),
        items=(*plain.items, small),
        bins=(replace(plain.bins[0], holds=frozenset({0, 1, 2})),),
    )
    pattern = Pattern(
        0,
        "C",
        (
            Section(0, 50, (Strip(0, 10, (Cut(0, 50, 0),)),)),
            Section(
                50,
                100,
                (Strip(0, 4, (Cut(50, 100, 1),)), Strip(4, 7, (Cut(50, 70, 2),))),
            ),
        ),
    )
    leaves = tree_of(pattern, problem, exact=False).leaves()
    shown = {leaf.blank: leaf.face_up for leaf in leaves if leaf.blank}
    assert shown == {"i0": "B", "i1": "B", "small": "A"}
