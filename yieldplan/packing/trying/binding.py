"""The prices at which a choice of boards is poorest for what it must make.

Given all that each board can make, the greatest share of the need that the boards of a
choice can make in shares of patterns is a linear program. Its prices are those at which
the choice looks poorest: is the share below 1 they prove it too poor, and else they tell best
which patterns cannot matter. The program is kept from choice to choice; the patterns it
has not seen yet are added as its prices ask for them.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence

import numpy as np
from ortools.linear_solver import pywraplp

from yieldplan.packing.grid.crossings import Ints

ALL = 10**9
"""What all that is needed is worth at the prices found. [money/10,000]"""
_ROUNDS = 60
_CLOSE = 1e-7


class Binding:
    """The program for any choice of some bins.

    Parameters
    ----------
    made
        By bin, a row for each pattern: how much it makes of each demand.
    """

    def __init__(self, need: Sequence[int], made: Mapping[int, Ints]) -> None:
        self._need = np.array(need, np.int64)
        self.made = dict(made)
        self._solver = pywraplp.Solver.CreateSolver("GLOP")
        if self._solver is None:
            raise RuntimeError("OR-Tools was built without GLOP")
        infinity = self._solver.infinity()
        self._price = [self._solver.NumVar(0.0, infinity, "") for _ in need]
        self._rent = {
            number: self._solver.NumVar(0.0, infinity, "") for number in sorted(made)
        }
        whole = self._solver.Constraint(1.0, 1.0)
        for price, count in zip(self._price, need, strict=True):
            whole.SetCoefficient(price, float(count))
        self._objective = self._solver.Objective()
        self._objective.SetMinimization()
        self._known: set[tuple[int, int]] = set()
        self.work = 0

    def prices(self, copies: Mapping[int, int]) -> tuple[int, ...] | None:
        """Whole prices at which these bins are about as poor as can be.

        Nothing rests on how exact they are: what they prove is worked out in integers.
        """
        for number, rent in self._rent.items():
            self._objective.SetCoefficient(rent, float(copies.get(number, 0)))
        found: tuple[int, ...] | None = None
        for _ in range(_ROUNDS):
            self.work += 300 + 30 * len(self._known) // 4
            if self._solver.Solve() != pywraplp.Solver.OPTIMAL:
                return found
            exact = np.array([price.solution_value() for price in self._price])
            found = tuple(int(price) for price in np.maximum(exact * ALL, 0))
            rents = {number: self._rent[number].solution_value() for number in copies}
            added = False
            for number in sorted(copies):
                worth = self.made[number] @ exact
                if not len(worth):
                    continue
                place = int(np.argmax(worth))
                if (
                    worth[place] > rents[number] + _CLOSE
                    and (number, place) not in self._known
                ):
                    self._add(number, place)
                    added = True
            if not added:
                break
        return found

    def _add(self, number: int, place: int) -> None:
        self._known.add((number, place))
        row = self._solver.Constraint(0.0, self._solver.infinity())
        row.SetCoefficient(self._rent[number], 1.0)
        for price, count in zip(
            self._price, self.made[number][place].tolist(), strict=True
        ):
            if count:
                row.SetCoefficient(price, -float(count))
