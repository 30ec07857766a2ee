"""The floors: what each wood cannot cost less than, by its prices or a further proof, whichever says most."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from yieldplan.checking import bound, lesser
from yieldplan.checking.by_sets import (
    Richness,
    every_leaf_is_too_poor,
    least_is_a_sum_of_prices,
)
from yieldplan.checking.facts import Plan, Wood
from yieldplan.checking.further import Leaf, Row, Sets
from yieldplan.checking.packs import packs_cost_as_much
from yieldplan.checking.saying import say_money
from yieldplan.checking.trying import nothing_cheaper_makes_everything
from yieldplan.checking.values import Values

BY_PRICES = "whole pieces"
BY_SETS = "sets of pieces"
BY_TRYING = "choices of pieces"
BY_PACKS = "choices of packs"


@dataclass(frozen=True)
class Floor:
    """What a wood cannot cost less than, and what shows it. [money/10,000]

    Parameters
    ----------
    how
        How, in words, where it takes more than its prices.
    """

    value: int
    by: str
    how: str = ""


def prove(plan: Plan) -> tuple[dict[str, Floor], list[str]]:
    """The floor of every wood, worked out again, and what is wrong with floors as printed."""
    objections = [
        objection for rule in (*bound.RULES, *lesser.RULES) for objection in rule(plan)
    ]
    if objections:
        return {}, objections
    floors: dict[str, Floor] = {}
    for wood in plan.woods:
        floor, told = _prove(plan, wood)
        floors[wood.name] = floor
        objections += told
    return floors, objections


def _prove(plan: Plan, wood: Wood) -> tuple[Floor, list[str]]:
    values = Values(plan, wood)
    priced = bound.price_out_from(values, wood)
    known = [Floor(bound.lift(plan, wood, priced), BY_PRICES)]
    objections = list(bound.priced_is_what_the_prices_prove(wood, priced))
    for floor, told in _further(plan, wood, values):
        trouble = list(told)
        objections += trouble
        if not trouble:
            known.append(floor)
    # Of two that prove the same the plainer one is named.
    greatest = max(known, key=lambda each: each.value)
    objections += _value_is_the_greatest_floor(wood, greatest)
    return greatest, objections


def _further(
    plan: Plan, wood: Wood, values: Values
) -> Iterator[tuple[Floor, Iterator[str]]]:
    """Each further floor, and what is wrong with its proof."""
    proofs = wood.bound
    rows = Rows(values)
    if proofs.sets is not None:
        leaves = sum(isinstance(node, Leaf) for node in proofs.sets.tree)
        how = (
            f"by {len(proofs.sets.rows)} rows of prices: in {leaves} cases, together all "
            "choices of whole pieces, those that cost less are too poor"
        )
        floor = Floor(proofs.sets.least, BY_SETS, how)
        yield floor, _sets(plan, wood, proofs.sets, rows)
    if proofs.tried is not None:
        rich = (rows.richness(row) for row in proofs.tried.rows)
        told = nothing_cheaper_makes_everything(
            plan, wood, proofs.tried, [*rich], values
        )
        how = "by trying: no choice of whole pieces that costs less makes everything"
        yield Floor(proofs.tried.least, BY_TRYING, how), told
    if proofs.packs is not None:
        told = packs_cost_as_much(wood, proofs.packs, values)
        yield Floor(proofs.packs.least, BY_PACKS, "by choices of packs"), told


def _sets(plan: Plan, wood: Wood, sets: Sets, rows: Rows) -> Iterator[str]:
    step = bound.step_of_prices(plan, wood)
    trouble = list(least_is_a_sum_of_prices(wood, sets.least, step))
    yield from trouble
    if not trouble:
        rich = [rows.richness(row) for row in sets.rows]
        yield from every_leaf_is_too_poor(plan, wood, sets, rich, step)


def _value_is_the_greatest_floor(wood: Wood, floor: Floor) -> Iterator[str]:
    """Ensures that the printed floor is the greatest that is proved, to the last unit."""
    if floor.value != wood.bound.value:
        yield (
            f"{wood.name}: {floor.by} can cost {say_money(floor.value)} or more; the plan "
            f"gives its floor as {say_money(wood.bound.value)} ({floor.value} and "
            f"{wood.bound.value} units)."
        )


class Rows:
    """Values by rows of prices, each worked out once though several proofs use it."""

    def __init__(self, values: Values) -> None:
        self.values = values
        self._known: dict[object, Richness] = {}

    def richness(self, row: Row) -> Richness:
        key = _frozen(row)
        if key not in self._known:
            need = self.values.need_at(row.prices)
            self._known[key] = Richness(need, self.values.at_row(row))
        return self._known[key]


def _frozen(row: Row) -> object:
    return (
        tuple(sorted(row.prices.items())),
        tuple((each.stock, *sorted(each.prices.items())) for each in row.limited),
    )
