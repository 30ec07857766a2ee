"""Problems of unmarked plates or rolls, for published instances and sums by hand."""

from __future__ import annotations

from yieldplan.model.plan import Family
from yieldplan.packing.problem import Bin, Demand, Item, Problem

ROLL = 145_000
"""What one roll or board costs. [money/10,000]"""


def make_problem(
    stock: tuple[int, int],
    sizes: list[tuple[int, int]],
    needs: list[int],
    family: Family,
    copies: int,
    *,
    kerf: int = 0,
    price: int = ROLL,
) -> Problem:
    """Copies of one unmarked plate or roll, and what is cut from them."""
    return Problem(
        demands=tuple(
            Demand(name=f"d{number}", need=need, rank=1, area=length * width)
            for number, (need, (length, width)) in enumerate(
                zip(needs, sizes, strict=True)
            )
        ),
        items=tuple(
            Item(
                name=f"i{number}",
                length=length,
                width=width,
                makes={number: 1},
                layers=((0, 0), (0, 0)),
            )
            for number, (length, width) in enumerate(sizes)
        ),
        bins=(
            Bin(
                name="stock",
                length=stock[0],
                width=stock[1],
                trims=(0, 0),
                edges=(0, 0),
                blocks=(),
                price=price,
                copies=copies,
                holds=frozenset(range(len(sizes))),
            ),
        ),
        family=family,
        kerf=kerf,
        step_along=1,
        step_across=1,
        marks_from="zero end",
    )
