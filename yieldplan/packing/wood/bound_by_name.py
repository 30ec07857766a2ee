"""The floor and its proofs, from numbers of demands and bins to names of parts and pieces."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from yieldplan.model import proofs as named
from yieldplan.model.plan import Bound
from yieldplan.packing.floors import proofs
from yieldplan.packing.patterns.group import counts_as_asked
from yieldplan.packing.problem import Problem
from yieldplan.packing.searching.solution import Solution


def bound_by_name(solution: Solution, problem: Problem) -> Bound:
    """The solution's floor as the plan keeps it.

    A demand that nothing is needed of has no price: whatever serves it serves no one.
    """
    found = solution.bound
    by_name = _ByName(problem, solution.need)
    return Bound(
        value=found.value,
        priced=found.priced,
        family=problem.family,
        prices=by_name.prices(found.prices),
        as_asked=counts_as_asked(problem),
        limited=by_name.limited(found.limited),
        sets=by_name.sets(found.sets) if found.sets is not None else None,
        tried=named.TriedProof(
            least=found.tried.least, rows=by_name.rows(found.tried.rows)
        )
        if found.tried is not None
        else None,
        packs=named.PacksProof(
            least=found.packs.least, rows=by_name.rows(found.packs.rows)
        )
        if found.packs is not None
        else None,
    )


class _ByName:
    def __init__(self, problem: Problem, need: Sequence[int]) -> None:
        self._problem = problem
        self._need = need

    def prices(self, prices: Sequence[int]) -> Mapping[str, int]:
        return {
            demand.name: price
            for demand, price, count in zip(
                self._problem.demands, prices, self._need, strict=True
            )
            if count
        }

    def limited(self, limited: Sequence[proofs.Limited]) -> tuple[named.Limited, ...]:
        return tuple(
            named.Limited(
                stock=tuple(self._problem.bins[number].name for number in each.bins),
                prices=self.prices(each.prices),
            )
            for each in limited
        )

    def rows(self, rows: Sequence[proofs.PriceRow]) -> tuple[named.PriceRow, ...]:
        return tuple(
            named.PriceRow(
                prices=self.prices(row.prices), limited=self.limited(row.limited)
            )
            for row in rows
        )

    def sets(self, sets: proofs.SetsProof) -> named.SetsProof:
        return named.SetsProof(
            least=sets.least, rows=self.rows(sets.rows), tree=self._tree(sets.tree)
        )

    def _tree(self, node: proofs.Branch | proofs.Leaf) -> named.Branch | named.Leaf:
        if isinstance(node, proofs.Leaf):
            return named.Leaf(weights=node.weights, of=node.of)
        return named.Branch(
            stock=self._problem.bins[node.bin].name,
            at_most=node.at_most,
            no_more=self._tree(node.no_more),
            more=self._tree(node.more),
        )
