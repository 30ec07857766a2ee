"""The linear program behind the floor of whole boards: shares of boards, at least the need of every row."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray
from ortools.linear_solver import pywraplp

from yieldplan.model.pieces import MONEY_PER_UNIT as MONEY
from yieldplan.packing.floors.set_rows import Row
from yieldplan.packing.grid.crossings import Ints

OF = 10**6
"""Weights are counted in parts of this."""
HEAVIEST = 10**14
_NEAR = 0.001
"""Share of its need by which a row may be exceeded and still be kept."""

Shares = NDArray[np.float64]


def nearly_met(
    price: Sequence[int], copies: Sequence[int], rows: Sequence[Row], limit: int
) -> list[Row]:
    """The rows that the cheapest shares of bins meet with little to spare.

    Most price vectors met on the way are of no use to any leaf, and every row makes every
    node slower.
    """
    program = Program(price, copies, limit)
    for row in rows:
        program.add(row)
    none = np.zeros(len(price), np.int64)
    _, shares = program.solve(none, np.array(copies, np.int64))
    return [row for row in rows if float(row.values @ shares) <= (1 + _NEAR) * row.need]


class Program:
    """The linear program of a node: shares of bins, at least the need of every row."""

    def __init__(self, price: Sequence[int], copies: Sequence[int], limit: int) -> None:
        self._solver = pywraplp.Solver.CreateSolver("GLOP")
        if self._solver is None:
            raise RuntimeError("OR-Tools was built without GLOP")
        # Only bounds change from node to node: the dual simplex goes on from the last.
        self._solver.SetSolverSpecificParametersAsString(
            "use_dual_simplex:true use_preprocessing:false"
        )
        self._price = [each / MONEY for each in price]
        self._dear = 10.0 * max(1, limit) / MONEY
        self._take = [self._solver.NumVar(0.0, float(n), "") for n in copies]
        self._short: list[pywraplp.Variable] = []
        self._rows: list[pywraplp.Constraint] = []
        self._need: list[int] = []
        self._objective = self._solver.Objective()
        self._objective.SetMinimization()
        self._ask_for_money()

    def add(self, row: Row) -> None:
        constraint = self._solver.Constraint(1.0, self._solver.infinity())
        for take, value in zip(self._take, row.values.tolist(), strict=True):
            if value:
                constraint.SetCoefficient(take, value / row.need)
        short = self._solver.NumVar(0.0, self._solver.infinity(), "")
        constraint.SetCoefficient(short, 1.0)
        self._objective.SetCoefficient(short, self._dear)
        self._short.append(short)
        self._rows.append(constraint)
        self._need.append(row.need)

    def solve(self, low: Ints, high: Ints) -> tuple[Ints, Shares]:
        """Weights of the rows and shares of the bins."""
        for take, least, most in zip(
            self._take, low.tolist(), high.tolist(), strict=True
        ):
            take.SetBounds(float(least), float(most))
        return self._solved(MONEY * OF)

    def ray(self) -> tuple[Ints, Shares]:
        """The same where nothing is asked but to meet the rows."""
        for take in self._take:
            self._objective.SetCoefficient(take, 0.0)
        for short in self._short:
            self._objective.SetCoefficient(short, 1.0)
        found = self._solved(max(self._need))
        self._ask_for_money()
        return found

    @property
    def is_poor(self) -> bool:
        """Whether the shares found last leave some row unmet."""
        return any(short.solution_value() > 1e-9 for short in self._short)

    def _ask_for_money(self) -> None:
        for take, price in zip(self._take, self._price, strict=True):
            self._objective.SetCoefficient(take, price)
        for short in self._short:
            self._objective.SetCoefficient(short, self._dear)

    def _solved(self, scale: int) -> tuple[Ints, Shares]:
        if self._solver.Solve() != pywraplp.Solver.OPTIMAL:
            # No weights prove little, and truly.
            none = np.zeros(len(self._rows), np.int64)
            middle = np.array([(t.lb() + t.ub()) / 2 for t in self._take])
            return none, middle
        weights = np.array(
            [
                min(HEAVIEST, int(max(0.0, row.dual_value()) * scale / need))
                for row, need in zip(self._rows, self._need, strict=True)
            ],
            np.int64,
        )
        shares = np.array([take.solution_value() for take in self._take])
        return weights, shares
