"""Jobs whose parts were cut out of boards first: what those boards cost is a price a floor must not pass.

Every board is broken down at random, rip first or crosscut first, the way the page allows;
what falls out is what the job asks for. Other boards are offered beside them, mostly dearer.
Half of the jobs have few kinds of part and leave waste; in the others every stretch that is
clear is cut up without any, so that hardly a plan is cheaper.
"""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass, replace

import numpy as np

from tests.benchmarks.break_down import cut_up, few_kinds
from yieldplan.model.plan import Family
from yieldplan.packing.grid.pattern import Pattern
from yieldplan.packing.problem import Bin, Block, Demand, Item, Problem

EIGHTH = 1016
"""Ticks in 1/8 in."""


@dataclass(frozen=True)
class Planted:
    """A job, and a plan of its family that makes everything it asks for.

    Parameters
    ----------
    cost
        Of that plan. [money/10,000]
    """

    problem: Problem
    plan: tuple[Pattern, ...]
    cost: int


def plant(seed: int) -> Planted:
    """One job; kerf, steps, trims and family are drawn too."""
    rng = np.random.default_rng([seed, 7])
    family: Family = ("R", "C", "E")[int(rng.integers(3))]
    empty = Problem(
        demands=(),
        items=(),
        bins=tuple(_board(rng, number) for number in range(int(rng.integers(3, 13)))),
        family=family,
        # Not a whole number of steps, more often than not.
        kerf=int(rng.integers(300, 2000)),
        step_along=int(rng.integers(3, 9)) * EIGHTH // 2,
        step_across=int(rng.integers(400, 1500)),
        marks_from="zero end" if rng.random() < 0.5 else "trimmed end",
    )
    kinds = int(rng.integers(2, 13))
    sizes = [
        (int(rng.integers(8, 49)) * 8 * EIGHTH // 4, int(rng.integers(12, 45)) * EIGHTH)
        for _ in range(kinds)
    ]
    posed = replace(
        empty,
        items=tuple(
            Item(
                name=f"p{number + 1}",
                length=length,
                width=width,
                makes={number: 1},
                layers=((1, 1), (1, 1)),
            )
            for number, (length, width) in enumerate(sizes)
        ),
    )
    used = rng.permutation(len(empty.bins))[
        : max(1, int(rng.integers(len(empty.bins))))
    ]
    order = sorted(int(place) for place in used)
    if rng.random() < 0.5:
        posed, plan = cut_up(rng, posed, order[:2])
    else:
        plan = [
            pattern for n in order if (pattern := few_kinds(rng, posed, n)).sections
        ]
    # Boards all of marks give nothing.
    return _asked(posed, plan) if plan else plant(seed + 10**6)


def _board(rng: np.random.Generator, number: int) -> Bin:
    length = int(rng.integers(40, 145)) * 8 * EIGHTH + int(rng.integers(EIGHTH))
    width = int(rng.integers(32, 97)) * EIGHTH + int(rng.integers(EIGHTH))
    blocks = []
    for _ in range(min(6, int(rng.poisson(2.0)))):
        x = int(rng.integers(0, length - 1))
        y = int(rng.integers(0, width - 1))
        x1 = min(length, x + int(rng.integers(1, 64)) * EIGHTH)
        y1 = min(width, y + int(rng.integers(1, 32)) * EIGHTH)
        face = int(rng.integers(3))
        blocks.append(Block(box=(x, y, x1, y1), on_a=int(face < 2), on_b=int(face > 0)))
    area = length * width // (8 * EIGHTH) ** 2
    return Bin(
        name=f"W{number + 1:02d}",
        length=length,
        width=width,
        trims=(int(rng.integers(0, 3 * 8)) * EIGHTH, int(rng.integers(0, 2 * 8 * EIGHTH))),
        edges=(int(rng.integers(0, 2 * EIGHTH)), int(rng.integers(0, EIGHTH))),
        blocks=tuple(blocks),
        price=area * int(rng.integers(600, 1000)),
        copies=1,
        holds=frozenset(),
    )  # fmt: skip


def _asked(posed: Problem, plan: list[Pattern]) -> Planted:
    """The job that asks for what the plan makes, and for nothing else."""
    made = Counter(item for pattern in plan for item in pattern.items())
    names = sorted(made)
    place = {item: number for number, item in enumerate(names)}
    items = [posed.items[item] for item in names]
    problem = replace(
        posed,
        demands=tuple(
            Demand(
                name=item.name,
                need=made[number],
                rank=0,
                area=item.length * item.width,
            )
            for number, item in zip(names, items, strict=True)
        ),
        items=tuple(
            replace(item, makes={number: 1}) for number, item in enumerate(items)
        ),
        bins=tuple(
            replace(piece, holds=frozenset(range(len(items)))) for piece in posed.bins
        ),
    )
    renamed = tuple(
        replace(
            pattern,
            sections=tuple(
                replace(
                    section,
                    strips=tuple(
                        replace(
                            strip,
                            cuts=tuple(
                                replace(cut, item=place[cut.item]) for cut in strip.cuts
                            ),
                        )
                        for strip in section.strips
                    ),
                )
                for section in pattern.sections
            ),
        )
        for pattern in plan
    )
    problem, cost = _priced(problem, plan)
    return Planted(problem, renamed, cost)


def _priced(problem: Problem, plan: list[Pattern]) -> tuple[Problem, int]:
    """The boards of the plan a fifth cheaper than they were, and what they cost."""
    used = {pattern.bin for pattern in plan}
    bins = tuple(
        replace(piece, price=piece.price * 4 // 5) if number in used else piece
        for number, piece in enumerate(problem.bins)
    )
    return replace(problem, bins=bins), sum(bins[number].price for number in used)
