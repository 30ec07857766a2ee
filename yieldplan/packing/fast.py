"""Narrow parts beside marks need a compiler, an extra: getting it ready while other work is done."""

from __future__ import annotations

import threading
from functools import cache
from typing import TYPE_CHECKING

from yieldplan.packing.problem import Bin, Block, Demand, Item, Problem

if TYPE_CHECKING:
    from yieldplan.packing.beside_marks import BesideMarks
    from yieldplan.packing.crosscut_first import CrosscutFirst
    from yieldplan.packing.group import Group


def beside_marks(group: Group, ways: str, plain: CrosscutFirst | None) -> BesideMarks:
    """The saw of a group that lays narrow parts beside marks."""
    # Takes a second to load, and is not there in every shop.
    from yieldplan.packing.beside_marks import BesideMarks

    return BesideMarks(group, ways, plain)


@cache
def warm_up() -> threading.Thread:
    """Load and compile in the background, once; whoever needs it sooner just waits."""
    thread = threading.Thread(target=_try_it, daemon=True)
    thread.start()
    return thread


def _try_it() -> None:
    """Plan a tiny board: every function is compiled on the way."""
    from yieldplan.packing.pricing import Pricing

    pricing = Pricing(
        Problem(
            demands=(Demand(name="part", need=1, rank=0, area=1),),
            items=(
                Item(
                    name="part", length=2, width=1, makes={0: 1}, layers=((1, 1),) * 2
                ),
            ),
            bins=(
                Bin(
                    name="board",
                    length=8,
                    width=4,
                    trims=(0, 0),
                    edges=(0, 0),
                    blocks=(Block(box=(3, 1, 4, 2), on_a=1, on_b=1),),
                    price=1,
                    copies=1,
                    holds=frozenset((0,)),
                ),
            ),
            family="C+",
            kerf=1,
            step_along=1,
            step_across=1,
            marks_from="zero end",
        )
    )
    pricing.price([1])
    pricing.pattern(0)
