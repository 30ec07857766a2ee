"""Narrow parts beside marks need a compiler, an extra: getting it ready while other work is done."""

from __future__ import annotations

import threading
from functools import cache
from typing import TYPE_CHECKING

from yieldplan.packing.problem import Bin, Block, Demand, Item, Problem

if TYPE_CHECKING:
    from yieldplan.packing.patterns.beside_marks import BesideMarks
    from yieldplan.packing.patterns.crosscut_first import CrosscutFirst
    from yieldplan.packing.patterns.group import Group


def beside_marks(group: Group, ways: str, plain: CrosscutFirst | None) -> BesideMarks:
    """The saw of a group that lays narrow parts beside marks."""
    # Takes a second to load, and is not there in every shop.
    from yieldplan.packing.patterns.beside_marks import BesideMarks

    return BesideMarks(group, ways, plain)


@cache
def warm_up() -> threading.Thread:
    """Load and compile in the background, once; whoever needs it sooner just waits."""
    thread = threading.Thread(target=_try_it, daemon=True)
    thread.start()
    return thread


def _try_it() -> None:
    """Price a tiny board with a slat between two panels, beside a mark: that uses every function."""
    from yieldplan.packing.patterns.pricing import Pricing

    sizes = {"rail": (8, 1), "panel": (2, 2), "slat": (2, 1)}
    board = Bin(
        name="board",
        length=9,
        width=4,
        trims=(0, 0),
        edges=(0, 0),
        blocks=(Block(box=(4, 2, 5, 3), on_a=1, on_b=1),),
        price=1,
        copies=1,
        holds=frozenset(range(len(sizes))),
    )
    pricing = Pricing(
        Problem(
            demands=tuple(Demand(name=name, need=1, rank=0, area=1) for name in sizes),
            items=tuple(
                Item(
                    name=name,
                    length=length,
                    width=width,
                    makes={number: 1},
                    layers=((1, 1), (1, 1)),
                )
                for number, (name, (length, width)) in enumerate(sizes.items())
            ),
            bins=(board,),
            family="C+",
            kerf=1,
            step_along=1,
            step_across=1,
            marks_from="zero end",
        )
    )
    pricing.price([20, 10, 5])
    pricing.pattern(0)
