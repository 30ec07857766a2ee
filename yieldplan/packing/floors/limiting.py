"""The program over patterns in which no board makes more of a part than is needed."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from ortools.linear_solver import pywraplp

from yieldplan.model.pieces import MONEY_PER_UNIT as MONEY
from yieldplan.packing.filling.yard import Column, Yard
from yieldplan.packing.problem import Problem

Off = dict[int, dict[int, float]]
"""Bin to demand to what is taken off its price there. [money/10,000]"""


def may_be_limited(problem: Problem) -> tuple[bool, ...]:
    """For each demand, whether no plan makes more of it than is needed."""
    spared = {
        demand for item in problem.items if item.may_spare for demand in item.makes
    }
    return tuple(number not in spared for number in range(len(problem.demands)))


@dataclass(frozen=True)
class Asked:
    """Prices of the demands, what is taken off them for bins, and the program's cost."""

    prices: list[float]
    off: Off
    rents: dict[int, float]
    cost: float

    def gain(self, column: Column, need: Sequence[int]) -> float:
        """What a column is worth above its bin's rent."""
        off = self.off.get(column.bin, {})
        worth = sum(
            made * price for made, price in zip(column.makes, self.prices, strict=True)
        )
        return (
            worth
            - sum(less * (column.makes[d] - need[d]) for d, less in off.items())
            - self.rents.get(column.bin, 0.0)
        )


class Limiting:
    """The program over patterns, with rows that keep boards from making too much.

    Patterns are counted as they are. For a board and a part that some pattern of it holds
    too often there is a row: sum of (made - needed) x share is at most 0.
    """

    def __init__(
        self,
        yard: Yard,
        need: Sequence[int],
        short_price: Sequence[int],
        copies: Mapping[int, int],
    ) -> None:
        self._need = list(need)
        self._may = may_be_limited(yard.problem)
        self._solver = pywraplp.Solver.CreateSolver("GLOP")
        if self._solver is None:
            raise RuntimeError("OR-Tools was built without GLOP")
        infinity = self._solver.infinity()
        self._rows = [self._solver.Constraint(float(count), infinity) for count in need]
        self._copies = {
            number: self._solver.Constraint(-infinity, float(count))
            for number, count in sorted(copies.items())
        }
        self._limits: dict[tuple[int, int], pywraplp.Constraint] = {}
        self._objective = self._solver.Objective()
        self._objective.SetMinimization()
        for row, cost in zip(self._rows, short_price, strict=True):
            short = self._solver.NumVar(0.0, infinity, "")
            row.SetCoefficient(short, 1.0)
            self._objective.SetCoefficient(short, cost / MONEY)
        self._known: set[tuple[int, int, tuple[int, ...]]] = set()
        self._of_bin: dict[int, list[tuple[pywraplp.Variable, tuple[int, ...]]]] = {}
        self._num = 0

    @property
    def work(self) -> int:
        """Units of work one solution takes, about."""
        rows = len(self._rows) + len(self._copies) + len(self._limits)
        return 500 + rows * (20 + self._num // 20)

    def add(self, column: Column) -> bool:
        """Offer one more pattern, unless one like it is known."""
        key = (column.bin, column.cost, column.makes)
        if key in self._known:
            return False
        self._known.add(key)
        share = self._solver.NumVar(0.0, self._solver.infinity(), "")
        self._num += 1
        self._objective.SetCoefficient(share, column.cost / MONEY)
        self._copies[column.bin].SetCoefficient(share, 1.0)
        of_bin = self._of_bin.setdefault(column.bin, [])
        of_bin.append((share, column.makes))
        for demand, count in enumerate(column.makes):
            if count:
                self._rows[demand].SetCoefficient(share, float(count))
            at = (column.bin, demand)
            over = count - self._need[demand]
            if at in self._limits:
                self._limits[at].SetCoefficient(share, float(over))
            elif over > 0 and self._may[demand] and self._need[demand]:
                row = self._solver.Constraint(-self._solver.infinity(), 0.0)
                self._limits[at] = row
                for other, makes in of_bin:
                    row.SetCoefficient(other, float(makes[demand] - self._need[demand]))
        return True

    def solve(self) -> Asked | None:
        """Prices, and what is to be taken off them; None where GLOP gave up."""
        if self._solver.Solve() != pywraplp.Solver.OPTIMAL:
            return None
        off: Off = {}
        for (number, demand), row in sorted(self._limits.items()):
            less = -row.dual_value() * MONEY
            if less > 0.5:
                off.setdefault(number, {})[demand] = less
        return Asked(
            prices=[row.dual_value() * MONEY for row in self._rows],
            off=off,
            rents={
                number: -row.dual_value() * MONEY
                for number, row in self._copies.items()
            },
            cost=self._objective.Value() * MONEY,
        )
