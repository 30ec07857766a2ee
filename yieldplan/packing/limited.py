"""No board needs to make more of a part than is needed: lower prices for the boards that would.

The best pattern of a board at given prices may hold a part more often than anybody asked
for it. Then a little is taken off the part's price for this board, and what is taken off
is added for as many as are needed: no pattern that holds no more than is needed is worth
more than both together (Lagrangian relaxation of the limits). How much to take off comes
from the program over patterns itself: a board's shares of patterns may together hold no
more of a part than is needed for the board's share, and the price of that row is it.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction

from ortools.linear_solver import pywraplp

from yieldplan.model.pieces import MONEY_PER_UNIT as MONEY
from yieldplan.packing.bound import Certificate, lifted
from yieldplan.packing.crossings import Ints
from yieldplan.packing.first_plan import all_copies
from yieldplan.packing.problem import Problem
from yieldplan.packing.proofs import Limited
from yieldplan.packing.stop import Budget
from yieldplan.packing.yard import Column, Yard

_ROUNDS = 60
_SMOOTH = 0.3
"""How much of the best prices so far stays in the prices asked next."""
_CLOSED = 0.0003
"""Share of the program's cost at which the floor counts as reached."""

Off = dict[int, dict[int, float]]
"""Bin to demand to what is taken off its price there. [money/10,000]"""


def may_be_limited(problem: Problem) -> tuple[bool, ...]:
    """For each demand, whether no plan makes more of it than is needed."""
    spared = {
        demand for item in problem.items if item.may_spare for demand in item.makes
    }
    return tuple(number not in spared for number in range(len(problem.demands)))


def limited_floor(
    yard: Yard,
    need: Sequence[int],
    short_price: Sequence[int],
    certificate: Certificate,
    columns: Iterable[Column],
    budget: Budget,
    share: Fraction = Fraction(1),
) -> Certificate:
    """A certificate with lower prices for some bins, where that lifts the floor.

    Parameters
    ----------
    columns
        Patterns known already.
    share
        Part of all allowed work that may be used up when it ends.
    """
    limiting = Limiting(yard, need, short_price, all_copies(yard))
    for column in columns:
        limiting.add(column)
    best = certificate
    centre: tuple[list[float], Off] | None = None
    for _ in range(_ROUNDS):
        if budget.is_over(share):
            break
        answer = limiting.solve()
        budget.spend(limiting.work)
        if answer is None:
            break
        asked = answer if centre is None else _between(centre, answer)
        found, columns_met = _priced(yard, need, asked, budget)
        if found.priced > best.priced:
            best, centre = found, (asked.prices, asked.off)
        added = sum(
            limiting.add(column)
            for column in columns_met
            if answer.gain(column, need) > 0.5 + column.cost
        )
        if answer.cost - best.priced <= _CLOSED * answer.cost:
            break
        if not added:
            if centre is None:
                break
            centre = None
    if best is certificate:
        return certificate
    return replace(
        best,
        sets=certificate.sets,
        tried=certificate.tried,
        value=max(best.value, certificate.value),
    )


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


def off_of(certificate: Certificate) -> Off:
    """What a certificate takes off its prices, by bin."""
    return {
        number: {
            demand: float(price - lower)
            for demand, (price, lower) in enumerate(
                zip(certificate.prices, each.prices, strict=True)
            )
            if lower < price
        }
        for each in certificate.limited
        for number in each.bins
    }


def _between(centre: tuple[list[float], Off], answer: Asked) -> Asked:
    """The program's prices, drawn toward those that were best so far."""
    prices, off = centre
    keep, move = _SMOOTH, 1 - _SMOOTH
    return replace(
        answer,
        prices=[
            keep * old + move * new
            for old, new in zip(prices, answer.prices, strict=True)
        ],
        off={
            number: {
                demand: keep * off.get(number, {}).get(demand, 0.0)
                + move * answer.off.get(number, {}).get(demand, 0.0)
                for demand in sorted(
                    {*off.get(number, {}), *answer.off.get(number, {})}
                )
            }
            for number in sorted({*off, *answer.off})
        },
    )


def _priced(
    yard: Yard, need: Sequence[int], asked: Asked, budget: Budget
) -> tuple[Certificate, list[Column]]:
    """What these prices prove, in whole numbers, and the patterns behind it."""
    problem, pricing = yard.problem, yard.pricing
    before = pricing.work
    # Where nothing is needed a price would only raise the boards' values.
    prices = [
        max(0, int(price)) if count else 0
        for price, count in zip(asked.prices, need, strict=True)
    ]
    values = pricing.price(prices)
    columns = [
        yard.column(pricing.pattern(number))
        for number in pricing.bins
        if values[number] > 0.97 * (yard.price[number] + asked.rents.get(number, 0))
    ]
    lesser, limited = limited_values(yard, need, prices, values, asked.off, columns)
    budget.spend(pricing.work - before)
    priced = sum(
        price * count for price, count in zip(prices, need, strict=True)
    ) + sum(
        piece.copies * min(0, piece.price - int(value))
        for piece, value in zip(problem.bins, lesser, strict=True)
    )
    kept = tuple(
        each
        for each in (
            replace(one, bins=tuple(n for n in one.bins if values[n] > yard.price[n]))
            for one in limited
        )
        if each.bins
    )
    return (
        Certificate(tuple(prices), priced, lifted(priced, problem), limited=kept),
        columns,
    )


def limited_values(
    yard: Yard,
    need: Sequence[int],
    prices: Sequence[int],
    values: Ints,
    off: Off,
    columns: list[Column],
) -> tuple[Ints, tuple[Limited, ...]]:
    """The lesser values of bins at prices with something taken off.

    Parameters
    ----------
    values
        Of all bins at the full prices. [money/10,000]
    columns
        The patterns met are added here.
    """
    may = may_be_limited(yard.problem)
    lesser = values.copy()
    lower_of: dict[tuple[int, ...], list[int]] = {}
    for number in sorted(off):
        less = off[number]
        lower = tuple(
            max(0, min(price, price - int(less.get(demand, 0)))) if ok else price
            for demand, (price, ok) in enumerate(zip(prices, may, strict=True))
        )
        if lower != tuple(prices):
            lower_of.setdefault(lower, []).append(number)
    limited = []
    for lower, bins in lower_of.items():
        found = yard.pricing.price(lower, bins)
        columns.extend(yard.column(yard.pricing.pattern(n)) for n in bins if found[n])
        added = sum(
            (price - lowered) * count
            for price, lowered, count in zip(prices, lower, need, strict=True)
        )
        better = [n for n in bins if int(found[n]) + added < values[n]]
        for number in better:
            lesser[number] = int(found[number]) + added
        if better:
            limited.append(Limited(tuple(better), lower))
    return lesser, tuple(limited)


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
