"""A tree over sets of boards that proves the same by fewer rows, each of which the checker must work out."""

from __future__ import annotations

import itertools
import random
from fractions import Fraction

import numpy as np

from yieldplan.packing.floors.proofs import PriceRow
from yieldplan.packing.floors.set_floor import of_fewer_rows
from yieldplan.packing.floors.set_rows import Row
from yieldplan.packing.floors.set_tree import SetTree
from yieldplan.packing.stop import Budget, Stop

_LIMIT = 60
_COPIES = [4, 4, 4]


def drawn(seed: int) -> tuple[list[int], list[Row]]:
    """Prices of three boards, and six rows."""
    dice = random.Random(seed)
    price = [dice.randrange(5, 12) for _ in _COPIES]
    rows = [
        Row(
            PriceRow((number,)),
            np.array([dice.randrange(4, 16) for _ in _COPIES], np.int64),
            40,
        )
        for number in range(6)
    ]
    return price, rows


def rows_of(tree: SetTree) -> list[Row]:
    return tree.proof()[1]


def test_fewer_rows_prove_as_much_and_no_more_than_is_true() -> None:
    before = after = 0
    for seed in range(30):
        price, rows = drawn(seed)
        tree = SetTree(price, _COPIES, rows, 1, _LIMIT)
        tree.run(Budget(Stop(), 10**9), 1000, Fraction(1))
        budget = Budget(Stop(), 10**9)
        small = of_fewer_rows(tree, price, _COPIES, 1, tree.least, budget)
        assert small.least >= tree.least
        # By enumeration: the cheapest choice that the rows it keeps do not rule out.
        cheapest = min(
            sum(each * count for each, count in zip(price, counts, strict=True))
            for counts in itertools.product(range(5), repeat=3)
            if all(int(row.values @ counts) >= row.need for row in rows_of(small))
        )
        assert min(small.least, _LIMIT) <= cheapest
        assert len(rows_of(small)) <= len(rows_of(tree))
        before += len(rows_of(tree))
        after += len(rows_of(small))
    assert after < before
