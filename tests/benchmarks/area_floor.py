"""The area bound: what the parts' area costs from the boards that sell their clear wood cheapest."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from itertools import pairwise
from math import ceil

from yieldplan.packing.problem import Bin, Problem


def area_floor(problem: Problem, need: Sequence[int]) -> int:
    """What no plan of any kind costs less than, by area alone. [money/10,000]

    For jobs whose parts bear no mark that goes through the board. Boards may be cut in
    two here, and kerf, trims and the shape of a part count for nothing: the cheapest
    clear area first, until it is enough.
    """
    # Whichever way a part is made: its smallest share of an item's area.
    least = [
        min(
            Fraction(item.length * item.width, sum(item.makes.values()))
            for item in problem.items
            if demand in item.makes
        )
        for demand in range(len(need))
    ]
    left = sum(
        (count * area for count, area in zip(need, least, strict=True)), Fraction(0)
    )
    offers = sorted(
        (Fraction(piece.price, area), area * piece.copies)
        for piece in problem.bins
        if (area := clear_area(piece))
    )
    cost = Fraction(0)
    for price, area in offers:
        taken = min(left, Fraction(area))
        cost += price * taken
        left -= taken
    return ceil(cost)


def clear_area(piece: Bin) -> int:
    """Area without the marks that show on both faces. [ticks^2]"""
    marks = [
        (max(x0, 0), max(y0, 0), min(x1, piece.length), min(y1, piece.width))
        for x0, y0, x1, y1 in (
            block.box for block in piece.blocks if block.on_a and block.on_b
        )
    ]
    cuts = sorted({x for x0, _, x1, _ in marks for x in (x0, x1)})
    marked = 0
    for left, right in pairwise(cuts):
        spans = sorted((y0, y1) for x0, y0, x1, y1 in marks if x0 <= left < x1)
        top = 0
        for y0, y1 in spans:
            marked += (right - left) * max(0, y1 - max(y0, top))
            top = max(top, y1)
    return piece.length * piece.width - marked
