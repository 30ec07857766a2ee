"""Further proofs of a floor worked out again in plain Python, written from `plan_format.md` alone."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from functools import lru_cache
from math import gcd

from tests.packing.from_the_page import Page
from yieldplan.packing.floors.proofs import Branch, Leaf, Limited, PriceRow, SetsProof
from yieldplan.packing.problem import Problem


@lru_cache(4000)
def _greatest(problem_id: int, number: int, prices: tuple[int, ...]) -> int:
    problem = _PROBLEMS[problem_id]
    return Page(problem, problem.bins[number]).greatest(prices, problem.family)


_PROBLEMS: dict[int, Problem] = {}


def _worth(problem: Problem, number: int, prices: Sequence[int]) -> int:
    _PROBLEMS[id(problem)] = problem
    return _greatest(id(problem), number, tuple(prices))


def values_of(
    problem: Problem,
    need: Sequence[int],
    prices: Sequence[int],
    limited: Sequence[Limited],
) -> list[int]:
    """V of every bin, the lesser where lower prices prove one."""
    spared = {
        demand for item in problem.items if item.may_spare for demand in item.makes
    }
    values = [_worth(problem, n, prices) for n in range(len(problem.bins))]
    listed = [number for each in limited for number in each.bins]
    assert len(set(listed)) == len(listed)
    for each in limited:
        off = [p - lower for p, lower in zip(prices, each.prices, strict=True)]
        assert min(off) >= 0
        assert min(each.prices) >= 0
        assert not any(off[demand] for demand in spared)
        added = sum(less * count for less, count in zip(off, need, strict=True))
        for number in each.bins:
            lesser = _worth(problem, number, each.prices) + added
            values[number] = min(values[number], lesser)
    return values


def priced(
    problem: Problem,
    need: Sequence[int],
    prices: Sequence[int],
    limited: Sequence[Limited],
) -> int:
    """`priced` of the page."""
    values = values_of(problem, need, prices, limited)
    return sum(p * n for p, n in zip(prices, need, strict=True)) + sum(
        piece.copies * min(0, piece.price - value)
        for piece, value in zip(problem.bins, values, strict=True)
    )


def holds(problem: Problem, need: Sequence[int], sets: SetsProof) -> bool:
    """Whether every leaf of the tree holds."""
    step = gcd(*(piece.price for piece in problem.bins))
    if not step or sets.least % step:
        return False
    values = [values_of(problem, need, r.prices, r.limited) for r in sets.rows]
    asked = [_asked(row, need) for row in sets.rows]

    def walk(node: Branch | Leaf, ways: Mapping[int, tuple[int, int]]) -> bool:
        if isinstance(node, Branch):
            low, high = ways[node.bin]
            if not low <= node.at_most < high:
                return False
            return walk(node.no_more, {**ways, node.bin: (low, node.at_most)}) and walk(
                node.more, {**ways, node.bin: (node.at_most + 1, high)}
            )
        total = sum(weight * asked[row] for row, weight in node.weights)
        for number, piece in enumerate(problem.bins):
            left = node.of * piece.price - sum(
                weight * values[row][number] for row, weight in node.weights
            )
            total += min(x * left for x in ways[number])
        return total > node.of * (sets.least - step)

    return walk(
        sets.tree, {n: (0, piece.copies) for n, piece in enumerate(problem.bins)}
    )


def _asked(row: PriceRow, need: Sequence[int]) -> int:
    return sum(p * n for p, n in zip(row.prices, need, strict=True))
