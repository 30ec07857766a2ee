"""The cheapest plan that patterns known already can make, by a program in whole numbers.

Dives choose one pattern after the other and cannot take a choice back. What they met on
their ways, taken together, often holds a better plan than any of them found: column
generation people call the program over it the restricted master. It proves nothing, for
the best plan may need a pattern that was not met.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import reduce
from math import gcd

from ortools.sat.python import cp_model

from yieldplan.packing.filling.packed import Packed, packed
from yieldplan.packing.filling.yard import Column, Yard
from yieldplan.packing.improving.dives import Common, Found
from yieldplan.packing.stop import Stop

_WORK_OF_A_SECOND = 1_500_000
"""A second by the solver's own clock, which counts its work and runs alike everywhere."""


@dataclass(frozen=True)
class BestOfKnown:
    """The program over the patterns that all tasks of a wave begin with.

    Parameters
    ----------
    work
        At most.
    most
        So many of the patterns that pay best: of few of them the solver finds the better
        plans in a second, of all of them the best in an hour.
    """

    work: int
    most: int

    def do(self, yard: Yard, shared: Common, stop: Stop) -> Found:
        """Do it."""
        if stop.asked.is_set() or stop.seconds == 0:
            return Found(None, [], 0)
        columns = _cheapest(shared.columns, shared.need)[: self.most]
        model = cp_model.CpModel()
        takes = [model.new_int_var(0, _most(column, shared), "") for column in columns]
        for demand, need in enumerate(shared.need):
            made = [
                (take, column.makes[demand])
                for take, column in zip(takes, columns, strict=True)
                if column.makes[demand]
            ]
            if need:
                model.add(sum(min(n, need) * take for take, n in made) >= need)
        of_bin: dict[int, list[cp_model.IntVar]] = {}
        for take, column in zip(takes, columns, strict=True):
            of_bin.setdefault(column.bin, []).append(take)
        for number, of_it in of_bin.items():
            model.add(sum(of_it) <= shared.copies.get(number, 0))
        unit = reduce(gcd, (column.cost for column in columns), 0) or 1
        cost = sum(
            take * (column.cost // unit)
            for take, column in zip(takes, columns, strict=True)
        )
        model.add(cost <= (min(shared.limit, _most_cost(columns, shared)) - 1) // unit)
        model.minimize(cost)
        return self._solved(model, takes, columns, yard, shared, stop)

    def _solved(
        self,
        model: cp_model.CpModel,
        takes: Sequence[cp_model.IntVar],
        columns: Sequence[Column],
        yard: Yard,
        shared: Common,
        stop: Stop,
    ) -> Found:
        solver = cp_model.CpSolver()
        solver.parameters.num_workers = 1
        solver.parameters.linearization_level = 2
        solver.parameters.max_deterministic_time = self.work / _WORK_OF_A_SECOND
        if stop.seconds is not None:
            solver.parameters.max_time_in_seconds = stop.seconds
        status = solver.solve(model)
        work = 1000 + int(_WORK_OF_A_SECOND * solver.response_proto.deterministic_time)
        if status not in (cp_model.OPTIMAL, cp_model.FEASIBLE):
            return Found(None, [], work)
        patterns = [
            column.pattern
            for take, column in zip(takes, columns, strict=True)
            for _ in range(solver.value(take))
        ]
        plan: Packed = packed(patterns, shared.need, yard)
        return Found(plan if plan.cost < shared.limit else None, [], work)


def _cheapest(columns: Sequence[Column], need: Sequence[int]) -> list[Column]:
    """Of columns that make the same of what is needed from the same bin, the cheapest."""
    best: dict[tuple[int, ...], Column] = {}
    for column in columns:
        makes = map(min, column.makes, need)
        key = (column.bin, *makes)
        if key not in best or column.cost < best[key].cost:
            best[key] = column
    return list(best.values())


def _most(column: Column, shared: Common) -> int:
    """How often a column can be of use."""
    wanted = [
        -(-need // made)
        for need, made in zip(shared.need, column.makes, strict=True)
        if need and made
    ]
    return min(shared.copies.get(column.bin, 0), max(wanted, default=0))


def _most_cost(columns: Sequence[Column], shared: Common) -> int:
    """What all of them cost together and a little more."""
    return 1 + sum(column.cost * _most(column, shared) for column in columns)
