"""The floor of whole boards: no choice of boards cheaper than this is rich enough, whatever the parts are worth.

Column generation lets a third of a board be bought; nobody sells that. Here the program
is over whole boards (`set_tree`), with one row for every price vector (`set_rows`). The
cheapest choice no row rules out is tried: can it make everything, in shares of patterns?
Where it cannot, that gives a row more. What is proved in the end is kept as a tree.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from fractions import Fraction
from math import gcd

from ortools.linear_solver import pywraplp

from yieldplan.model.pieces import MONEY_PER_UNIT as MONEY
from yieldplan.packing.filling.first_plan import all_copies
from yieldplan.packing.filling.yard import Column, Yard
from yieldplan.packing.floors.bound import Certificate
from yieldplan.packing.floors.limited import off_of
from yieldplan.packing.floors.proofs import SetsProof
from yieldplan.packing.floors.set_program import nearly_met
from yieldplan.packing.floors.set_rows import Row, row_against, row_of
from yieldplan.packing.floors.set_tree import SetTree
from yieldplan.packing.stop import Budget

MOST_NODES = 16_000
"""Nodes of a tree: what plain Python goes through in seconds."""
_ROWS_FIRST = 48
"""Price vectors to begin with, the last met first."""
_SMALL = 60
"""Nodes of a tree up to which one of fewer rows is looked for."""
_MORE_NODES = 4
"""How many times as many nodes it may have."""
_NODES_EACH = 500
"""Nodes of the solver for one choice; more of them are seldom worth a row."""
_FOR_ROWS = Fraction(1, 2)
"""Share of the work for finding rows; the rest is for the tree."""


def set_floor(
    yard: Yard,
    need: Sequence[int],
    short_price: Sequence[int],
    certificate: Certificate,
    columns: Sequence[Column],
    rows: Sequence[Sequence[int]],
    limit: int,
    budget: Budget,
    share: Fraction = Fraction(1),
) -> Certificate:
    """A certificate with a tree over choices of boards, where that lifts the floor.

    Parameters
    ----------
    columns
        Patterns known already.
    rows
        Price vectors met, the earliest first.
    limit
        Cost of the best plan: nothing above it is looked at. [money/10,000]
    share
        Part of all allowed work that may be used up when it ends.
    """
    problem = yard.problem
    step = gcd(*(piece.price for piece in problem.bins))
    if problem.offcut_percent or not step or certificate.value >= limit:
        return certificate
    copies = all_copies(yard)
    search = _Search(yard, need, columns, copies, limit, budget, share)
    search.begin(certificate, rows)
    if not search.rows:
        return certificate
    search.find_rows()
    counts = [copies.get(number, 0) for number in range(len(problem.bins))]
    near = nearly_met(yard.price, counts, search.rows, limit)
    tree = SetTree(yard.price, counts, near, step, limit)
    while not budget.is_over(share):
        chosen = tree.run(budget, MOST_NODES, share)
        row = search.against(chosen) if chosen else None
        if row is None:
            break
        tree.add_row(row)
    # A plan in hand costs a multiple of the step; more than it costs is never true.
    least = min(tree.least, limit // step * step)
    if least <= certificate.value:
        return certificate
    if tree.num_nodes <= _SMALL:
        tree = of_fewer_rows(tree, yard.price, counts, step, least, budget)
    kept, used = tree.proof()
    return certificate.with_sets(SetsProof(least, tuple(row.row for row in used), kept))


def of_fewer_rows(
    tree: SetTree,
    price: Sequence[int],
    counts: Sequence[int],
    step: int,
    least: int,
    budget: Budget,
) -> SetTree:
    """A tree that proves the same by few rows, where one is found: the checker works out every row."""
    rows = tree.most_used_first()
    many = 1
    while many < len(rows):
        smaller = SetTree(price, counts, rows[:many], step, least)
        smaller.run(budget, _MORE_NODES * tree.num_nodes, Fraction(1))
        if smaller.least >= least:
            return smaller
        many *= 2
    return tree


class _Search:
    """Looks for rows that rule out the cheapest choices of boards."""

    def __init__(
        self,
        yard: Yard,
        need: Sequence[int],
        columns: Sequence[Column],
        copies: Mapping[int, int],
        limit: int,
        budget: Budget,
        share: Fraction,
    ) -> None:
        self.yard, self.need, self.columns = yard, need, columns
        self.copies, self.limit = copies, limit
        self.budget, self.share = budget, share
        self.rows: list[Row] = []
        self._until = budget.used + (share - budget.used) * _FOR_ROWS

    def begin(self, certificate: Certificate, met: Sequence[Sequence[int]]) -> None:
        """Work out the first rows, the best prices first."""
        off = off_of(certificate)
        vectors = [certificate.prices, *(tuple(prices) for prices in reversed(met))]
        for number, prices in enumerate(dict.fromkeys(vectors[:_ROWS_FIRST])):
            if self.budget.is_over(self._until):
                break
            row = row_of(
                self.yard, self.need, prices, {} if number else off, self.budget
            )
            if row is not None:
                self.rows.append(row)

    def find_rows(self) -> None:
        """Try the cheapest choice no row rules out, until one will do."""
        while not self.budget.is_over(self._until):
            chosen = self._choice()
            row = self.against(chosen) if chosen else None
            if row is None or any(row is known for known in self.rows):
                # (The solver's rounding may pass over a row that is known.)
                return
            self.rows.append(row)

    def against(self, chosen: Mapping[int, int]) -> Row | None:
        """A row that the choice does not meet; None where it can make everything."""
        for row in self.rows:
            if sum(int(row.values[n]) * k for n, k in chosen.items()) < row.need:
                return row
        found = row_against(self.yard, self.need, chosen, self.columns, self.budget)
        if found is None:
            return None
        worth = sum(int(found.values[number]) * n for number, n in chosen.items())
        return found if worth < found.need else None

    def _choice(self) -> dict[int, int] | None:
        """The cheapest choice that meets all rows, as far as the solver finds it.

        It only says where to look, so its floating point does no harm.
        """
        solver = pywraplp.Solver.CreateSolver("SCIP")
        if solver is None:
            raise RuntimeError("OR-Tools was built without SCIP")
        solver.SetSolverSpecificParametersAsString(
            f"limits/nodes = {_NODES_EACH}\nmisc/catchctrlc = FALSE"
        )
        take = {n: solver.IntVar(0, k, "") for n, k in sorted(self.copies.items())}
        for row in self.rows:
            solver.Add(
                sum(int(row.values[n]) / row.need * each for n, each in take.items())
                >= 1.0
            )
        price = self.yard.price
        solver.Minimize(sum(price[n] / MONEY * each for n, each in take.items()))
        status = solver.Solve()
        size = len(self.rows) * len(take)
        self.budget.spend(30_000 + 30 * size + solver.nodes() * (200 + size // 2))
        if status not in (pywraplp.Solver.OPTIMAL, pywraplp.Solver.FEASIBLE):
            return None
        chosen = {n: round(each.solution_value()) for n, each in take.items()}
        chosen = {n: count for n, count in chosen.items() if count}
        if sum(price[n] * count for n, count in chosen.items()) >= self.limit:
            return None
        return chosen
