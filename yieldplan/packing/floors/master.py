"""The linear program over known patterns: which share of each to cut, and what that makes each part worth."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

import numpy as np
from ortools.linear_solver import pywraplp

from yieldplan.model.pieces import MONEY_PER_UNIT as MONEY
from yieldplan.packing.filling.yard import Column
from yieldplan.packing.problem import Problem


@dataclass(frozen=True)
class Shares:
    """A solution of the program.

    Parameters
    ----------
    cost
        [money/10,000]
    use
        Share of each column.
    short
        How much of each demand is left unmade.
    prices
        What one more of each demand costs. [money/10,000]
    rents
        For each bin, what one copy less of it would cost. [money/10,000]
    """

    cost: float
    use: list[float]
    short: list[float]
    prices: list[float]
    rents: list[float]


class Unsolved(RuntimeError):  # noqa: N818 - named for what happened
    """GLOP gave up on the program, however it was asked (rounding, not a mistake in it)."""


class Master:
    """Covers demands by columns; what is not covered costs `short_price` each."""

    def __init__(
        self,
        problem: Problem,
        need: Sequence[float],
        copies: Mapping[int, int],
        short_price: Sequence[int],
    ) -> None:
        self._solver = pywraplp.Solver.CreateSolver("GLOP")
        if self._solver is None:
            raise RuntimeError("OR-Tools was built without GLOP")
        self._infinity = self._solver.infinity()
        self._need = [
            self._solver.Constraint(float(count), self._infinity) for count in need
        ]
        self._copies = {
            number: self._solver.Constraint(-self._infinity, float(count))
            for number, count in sorted(copies.items())
        }
        self._num_bins = len(problem.bins)
        self._objective = self._solver.Objective()
        self._objective.SetMinimization()
        self._short = []
        for row, cost in zip(self._need, short_price, strict=True):
            missing = self._solver.NumVar(0.0, self._infinity, "")
            row.SetCoefficient(missing, 1.0)
            self._objective.SetCoefficient(missing, cost / MONEY)
            self._short.append(missing)
        self._use: list[pywraplp.Variable] = []
        self.columns: list[Column] = []
        # What each column makes, and how much of it counts now.
        # Small numbers: with thousands of columns of hundreds of demands it is worth it.
        self._makes = np.zeros((64, len(self._need)), np.int32)
        self._counted = np.zeros((64, len(self._need)), np.int32)

    def add(self, columns: Sequence[Column], left: Sequence[int]) -> None:
        """Offer more patterns, counting no more of a demand than is left."""
        first = len(self.columns)
        while first + len(columns) > len(self._makes):
            self._makes = np.concatenate([self._makes, np.zeros_like(self._makes)])
            self._counted = np.concatenate(
                [self._counted, np.zeros_like(self._counted)]
            )
        for place, column in enumerate(columns, first):
            share = self._solver.NumVar(0.0, self._infinity, "")
            self._objective.SetCoefficient(share, column.cost / MONEY)
            self._copies[column.bin].SetCoefficient(share, 1.0)
            self._makes[place] = column.makes
            self._use.append(share)
        self.columns += columns
        self._count(left, first)

    def set_left(self, left: Sequence[int]) -> None:
        """Ask for so much; columns count no more than that."""
        for row, count in zip(self._need, left, strict=True):
            row.SetLb(float(count))
        self._count(left, 0)

    def _count(self, left: Sequence[int], first: int) -> None:
        """Set what counts of the columns from the first one on."""
        rows = slice(first, len(self.columns))
        counted = np.minimum(self._makes[rows], np.array(left, np.int32))
        changed = np.nonzero(counted != self._counted[rows])
        for place, demand, count in zip(
            changed[0].tolist(),
            changed[1].tolist(),
            counted[changed].tolist(),
            strict=True,
        ):
            self._need[demand].SetCoefficient(self._use[first + place], float(count))
        self._counted[rows] = counted

    def set_short_price(self, short_price: Sequence[int]) -> None:
        """Change what a part left unmade costs."""
        for missing, cost in zip(self._short, short_price, strict=True):
            self._objective.SetCoefficient(missing, cost / MONEY)

    def set_copies(self, number: int, copies: int) -> None:
        """Change how many copies of a bin there are."""
        self._copies[number].SetUb(float(copies))

    def solve(self) -> Shares:
        """The cheapest shares.

        Neither plan nor floor rests on these figures: patterns are whole, and the floor
        is worked out from whole prices. They only say where to look.

        Raises
        ------
        Unsolved
            When GLOP does not find them in either way of asking.
        """
        # Rarely its rounding runs away with it; the other algorithm then finds the end.
        if not self._is_solved(pywraplp.MPSolverParameters()):
            other = pywraplp.MPSolverParameters()
            other.SetIntegerParam(other.LP_ALGORITHM, other.DUAL)
            other.SetIntegerParam(other.PRESOLVE, other.PRESOLVE_OFF)
            if not self._is_solved(other):
                raise Unsolved("GLOP ended without a solution")
        rents = [0.0] * self._num_bins
        for number, row in self._copies.items():
            rents[number] = -row.dual_value() * MONEY
        return Shares(
            cost=self._objective.Value() * MONEY,
            use=[share.solution_value() for share in self._use],
            short=[missing.solution_value() for missing in self._short],
            prices=[row.dual_value() * MONEY for row in self._need],
            rents=rents,
        )

    def cost_with(self, place: int) -> float:
        """What the program would cost if a pattern were cut once as a whole; infinite where it is not solved. [money/10,000]"""
        share = self._use[place]
        share.SetLb(1.0)
        is_solved = self._is_solved(pywraplp.MPSolverParameters())
        cost = float(self._objective.Value() * MONEY) if is_solved else math.inf
        share.SetLb(0.0)
        return cost

    def leave_out(self, place: int) -> None:
        """Do without a pattern from now on."""
        self._use[place].SetUb(0.0)

    def _is_solved(self, parameters: pywraplp.MPSolverParameters) -> bool:
        return bool(self._solver.Solve(parameters) == pywraplp.Solver.OPTIMAL)

    @property
    def work(self) -> int:
        """Units of work one solution takes, about."""
        rows = len(self._need) + len(self._copies)
        return 500 + rows * (20 + len(self._use) // 20)
