"""Branch and bound over which boards are taken, kept as a tree that anybody can check in whole numbers.

The lowest node is branched on first, so that at any time the leaves together prove the
least of their bounds. A node's program is solved in floating point; what its weights prove
is worked out in integers, and only that counts.
"""

from __future__ import annotations

import heapq
from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction

import numpy as np

from yieldplan.packing.floors.proofs import Branch, Leaf
from yieldplan.packing.floors.set_program import HEAVIEST, OF, Program, Shares
from yieldplan.packing.floors.set_rows import Row
from yieldplan.packing.grid.crossings import Ints
from yieldplan.packing.stop import Budget

_LARGEST = 2.0**62
_DEEPEST = 390
_WHOLE = 1e-6


@dataclass(frozen=True)
class _Answer:
    """What a node's program says: weights of the rows, their bound times `OF`, shares of bins."""

    weights: Ints
    bound: int
    shares: Shares


class _Node:
    """Choices with at least `low` and at most `high` copies of each bin."""

    def __init__(self, low: Ints, high: Ints, depth: int) -> None:
        self.low, self.high, self.depth = low, high, depth
        self.answer: _Answer | None = None
        self.on: tuple[int, int] | None = None
        self.into: tuple[_Node, _Node] | None = None


class SetTree:
    """The tree over all choices of bins.

    Parameters
    ----------
    price, copies
        Of each bin; bins nothing can be cut from have no copies here.
    step
        Greatest common divisor of the prices: every choice costs a multiple of it.
    limit
        What a plan costs: nothing above it is worth proving. [money/10,000]
    """

    def __init__(
        self,
        price: Sequence[int],
        copies: Sequence[int],
        rows: Sequence[Row],
        step: int,
        limit: int,
    ) -> None:
        self._price = np.array(price, np.int64)
        self._copies = np.array(copies, np.int64)
        self._step, self._limit = step, limit
        self._program = Program(price, copies, limit)
        self.rows: list[Row] = []
        for row in rows:
            self._add(row)
        self._root = _Node(np.zeros_like(self._copies), self._copies.copy(), 0)
        self._solve(self._root)
        self.num_nodes = 1
        self._open = [(self._bound(self._root), 0, self._root)]

    @property
    def work(self) -> int:
        """Units of work one node takes, about."""
        return 250 + len(self.rows) * len(self._price) // 4

    @property
    def least(self) -> int:
        """What the leaves prove: no choice that is rich enough costs less. [money/10,000]"""
        return max(0, -(-self._open[0][0] // (OF * self._step)) * self._step)

    def _add(self, row: Row) -> None:
        self.rows.append(row)
        self._program.add(row)
        self._values = np.array([each.values for each in self.rows], np.int64)
        self._need = np.array([each.need for each in self.rows], np.int64)

    def add_row(self, row: Row) -> None:
        """One more row; the lowest node is asked again."""
        self._add(row)
        _, number, node = heapq.heappop(self._open)
        self._solve(node)
        heapq.heappush(self._open, (self._bound(node), number, node))

    def run(self, budget: Budget, most: int, share: Fraction) -> dict[int, int] | None:
        """Branch until the limit is proved, or the nodes or the work are used up.

        Returns
        -------
        dict or None
            A choice that no row proves too poor and that is as cheap as any such: its
            bins with copies. Only another row can lift the floor then.
        """
        while self.least < self._limit and self.num_nodes < most:
            if budget.is_over(share):
                break
            _, _, node = self._open[0]
            assert node.answer is not None
            on = self._branch_on(node, node.answer.shares)
            if on is None:
                taken = np.rint(node.answer.shares).astype(int)
                return {n: int(k) for n, k in enumerate(taken) if k}
            if node.depth >= _DEEPEST:
                break
            heapq.heappop(self._open)
            self._split(node, on)
            budget.spend(2 * self.work)
        return None

    def _split(self, node: _Node, on: int) -> None:
        assert node.answer is not None
        at_most = min(
            max(int(np.floor(node.answer.shares[on])), int(node.low[on])),
            int(node.high[on]) - 1,
        )
        fewer, more = node.high.copy(), node.low.copy()
        fewer[on], more[on] = at_most, at_most + 1
        node.on = (on, at_most)
        node.into = (
            _Node(node.low, fewer, node.depth + 1),
            _Node(more, node.high, node.depth + 1),
        )
        for child in node.into:
            self._solve(child)
            # What held above holds below too.
            above = self._proved(node.answer.weights, child)
            assert child.answer is not None
            if above > child.answer.bound:
                child.answer = _Answer(node.answer.weights, above, child.answer.shares)
            self.num_nodes += 1
            heapq.heappush(self._open, (self._bound(child), self.num_nodes, child))

    def _branch_on(self, node: _Node, shares: Shares) -> int | None:
        """The bin that is taken least wholly; None where all are whole and rich enough."""
        parted = np.where(node.low < node.high, np.abs(shares - np.rint(shares)), 0.0)
        on = int(np.argmax(parted))
        if parted[on] > _WHOLE:
            return on
        taken = np.rint(shares).astype(np.int64)
        if not (self._values @ taken < self._need).any():
            return None
        # Whole, but a little too poor: some bin has to be told apart.
        open_ = np.flatnonzero(node.low < node.high)
        return int(open_[0]) if len(open_) else None

    def _bound(self, node: _Node) -> int:
        assert node.answer is not None
        return node.answer.bound

    def _proved(self, weights: Ints, node: _Node) -> int:
        num = len(weights)
        roughly = weights.astype(float)
        size = roughly @ self._need[:num] + float(
            node.high @ (OF * self._price + roughly @ self._values[:num])
        )
        if size > _LARGEST:
            # Too large to be added up in 64 bits: then it proves nothing.
            return 0
        left = OF * self._price - weights @ self._values[:num]
        return int(
            weights @ self._need[:num]
            + np.minimum(node.low * left, node.high * left).sum()
        )

    def _solve(self, node: _Node) -> None:
        weights, shares = self._program.solve(node.low, node.high)
        bound = self._proved(weights, node)
        if bound < OF * self._limit and self._program.is_poor:
            ray, other = self._program.ray()
            gain = self._gain(ray, node)
            if gain > 0:
                times = -(-OF * 2 * self._limit // gain)
                if times * max(1, int(ray.max())) <= HEAVIEST:
                    heavier = self._proved(ray * times, node)
                    if heavier > bound:
                        weights, bound = ray * times, heavier
            shares = other
        node.answer = _Answer(weights, bound, shares)

    def _gain(self, ray: Ints, node: _Node) -> int:
        """By how much weighted rows miss, however many copies are taken."""
        need = sum(int(w) * each.need for w, each in zip(ray, self.rows, strict=True))
        worth = sum(
            int(w) * int(node.high @ each.values)
            for w, each in zip(ray, self.rows, strict=True)
        )
        return need - worth

    # -- as it is kept -----------------------------------------------------------

    def proof(self) -> tuple[Branch | Leaf, list[Row]]:
        """The tree, and the rows its leaves use, renumbered."""
        leaves = [node.answer for _, _, node in self._open]
        used = sorted(
            {int(r) for each in leaves if each for r in np.flatnonzero(each.weights)}
        )
        place = {row: number for number, row in enumerate(used)}
        return self._kept(self._root, place), [self.rows[row] for row in used]

    def most_used_first(self) -> list[Row]:
        """The rows its leaves use, those that count for most in front."""
        weights = [node.answer.weights for _, _, node in self._open if node.answer]
        counts = [0] * len(self.rows)
        for each in weights:
            for row in np.flatnonzero(each):
                counts[row] += int(each[row]) * self.rows[row].need
        used = [row for row, count in enumerate(counts) if count]
        used.sort(key=lambda row: (-counts[row], row))
        return [self.rows[row] for row in used]

    def _kept(self, node: _Node, place: dict[int, int]) -> Branch | Leaf:
        if node.into is None or node.on is None:
            assert node.answer is not None
            return Leaf(
                tuple(
                    (place[row], int(weight))
                    for row, weight in enumerate(node.answer.weights)
                    if weight
                ),
                OF,
            )
        fewer, more = node.into
        return Branch(*node.on, self._kept(fewer, place), self._kept(more, place))
