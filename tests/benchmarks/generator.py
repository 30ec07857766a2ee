"""Random boards and parts for measuring the packer: sizes of a small and of a large job.

Boards 4 to 12 in wide and 6 to 14 ft long, with two or three marks of 1 to 4 by 1 to
8 in; part kinds 1-1/2 to 8 by 8 to 60 in, asked for until their area is a given share of
the clear area offered. Everything on 1/8 in. In jobs of the sizes U hardly a part is like
another, as for a chest or two: one, two or four of each kind.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np

from yieldplan.model.plan import Family
from yieldplan.packing.problem import Bin, Block, Demand, Item, Problem

EIGHTH = 1016
"""Ticks in 1/8 in."""
PER_FOOT = 120_000
"""12.00 a board foot. [money/10,000]"""


@dataclass(frozen=True)
class Size:
    """How large a job is: boards offered, kinds of part.

    Parameters
    ----------
    are_unlike
        Whether there are few of each kind; then `kinds` is the most there may be.
    """

    boards: int
    kinds: int
    are_unlike: bool = False


SIZES = {
    "S": Size(12, 8),
    "M": Size(60, 25),
    "L": Size(400, 80),
    "XL": Size(3000, 300),
    "U16": Size(16, 60, are_unlike=True),
    "U40": Size(40, 60, are_unlike=True),
}
FILLS = {"loose": 0.55, "few": 0.25}
"""Share of the clear area that the parts take: 0.55, or 0.25 where few boards are used."""


def draw(
    size: Size, fill: float, seed: int, family: Family, *, crosscut_step: int = 4
) -> Problem:
    """One job.

    Parameters
    ----------
    fill
        Parts' area over clear area offered.
    crosscut_step
        Step of crosscut marks when the sections come first. [1/8 in]
    """
    rng = np.random.default_rng(seed)
    bins, clear = _boards(rng, size)
    kinds = [
        (int(rng.integers(8 * 8, 60 * 8 + 1)), int(rng.integers(12, 8 * 8 + 1)))
        for _ in range(size.kinds)
    ]
    if size.are_unlike:
        kinds, needs = _few_of_each(rng, kinds, fill * clear)
    else:
        share = rng.uniform(0.5, 1.5, size.kinds)
        area = float(
            sum(part * x * y for part, (x, y) in zip(share, kinds, strict=True))
        )
        needs = [max(1, round(float(part) * fill * clear / area)) for part in share]
    return Problem(
        demands=tuple(
            Demand(name=f"p{number + 1}", need=need, rank=0, area=x * y * EIGHTH**2)
            for number, (need, (x, y)) in enumerate(zip(needs, kinds, strict=True))
        ),
        items=tuple(
            Item(
                name=f"p{number + 1}",
                length=x * EIGHTH,
                width=y * EIGHTH,
                makes={number: 1},
                layers=((1, 1), (1, 1)),
            )
            for number, (x, y) in enumerate(kinds)
        ),
        bins=_holding(bins, len(kinds)),
        family=family,
        kerf=EIGHTH,
        step_along=crosscut_step * EIGHTH,
        step_across=EIGHTH,
        marks_from="zero end",
    )


def _few_of_each(
    rng: np.random.Generator, kinds: list[tuple[int, int]], area: float
) -> tuple[list[tuple[int, int]], list[int]]:
    """As many of the kinds as it takes to fill the area, and how many of each."""
    needs: list[int] = []
    for x, y in kinds:
        if area <= 0:
            break
        needs.append(int(rng.choice([1, 1, 1, 2, 2, 4])))
        area -= needs[-1] * x * y
    return kinds[: len(needs)], needs


def more_boards(size: Size, seed: int, kinds: int) -> tuple[Bin, ...]:
    """As many boards again, drawn alike, each at the mean price of a foot."""
    rng = np.random.default_rng([seed, 1])
    bins, _ = _boards(rng, size, first=size.boards, cheapest=1.0, dearest=1.0)
    return _holding(bins, kinds)


def _holding(bins: Sequence[Bin], kinds: int) -> tuple[Bin, ...]:
    """The boards, each good for all kinds of part."""
    return tuple(replace(piece, holds=frozenset(range(kinds))) for piece in bins)


def _boards(
    rng: np.random.Generator,
    size: Size,
    *,
    first: int = 0,
    cheapest: float = 0.9,
    dearest: float = 1.1,
) -> tuple[tuple[Bin, ...], int]:
    """The boards offered, and their clear area. [(1/8 in)^2]"""
    bins = []
    clear = 0
    for number in range(first, first + size.boards):
        width = int(rng.integers(4 * 8, 12 * 8 + 1))
        length = int(rng.integers(6 * 96, 14 * 96 + 1))
        blocks = []
        for _ in range(min(6, int(rng.poisson(2.5)))):
            across, along = int(rng.integers(8, 33)), int(rng.integers(8, 65))
            x = int(rng.integers(0, length - along + 1))
            y = int(rng.integers(0, max(1, width - across + 1)))
            blocks.append((x, y, x + along, min(width, y + across)))
        dear = float(rng.uniform(cheapest, dearest))
        hundredths = round(length * width / 8 / 8 / 144 * 100)
        bins.append(
            Bin(
                name=f"W{number + 1:02d}",
                length=length * EIGHTH,
                width=width * EIGHTH,
                trims=(8 * EIGHTH, 8 * EIGHTH),
                edges=(EIGHTH, EIGHTH),
                blocks=tuple(
                    Block(box=(x0 * EIGHTH, y0 * EIGHTH, x1 * EIGHTH, y1 * EIGHTH), on_a=1, on_b=1)
                    for x0, y0, x1, y1 in blocks
                ),
                # A whole cent a foot times hundredths of a foot.
                price=round(PER_FOOT * dear / 100) * hundredths,
                copies=1,
                holds=frozenset(),
            )
        )  # fmt: skip
        clear += _clear_area(length, width, blocks)
    return tuple(bins), clear


def _clear_area(
    length: int, width: int, blocks: list[tuple[int, int, int, int]]
) -> int:
    clear = np.ones((width, length), dtype=bool)
    for x0, y0, x1, y1 in blocks:
        clear[y0:y1, x0:x1] = False
    return int(clear.sum())
