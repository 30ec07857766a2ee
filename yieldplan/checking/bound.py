"""The bound: what no plan can cost less than, worked out again from the prices of the proof."""

from __future__ import annotations

from collections.abc import Iterator

from yieldplan.checking.facts import Plan, Wood
from yieldplan.checking.further import Row
from yieldplan.checking.grid import MOST_ALONG, MOST_CELLS, lay_out
from yieldplan.checking.packs import saved, step_of_what_is_sold
from yieldplan.checking.saying import say_money
from yieldplan.checking.values import Values, stock_of


def bound_is_for_the_family_cut(plan: Plan) -> Iterator[str]:
    """Ensures that the bound speaks of the family of patterns the wood is cut by."""
    for wood in plan.woods:
        if wood.bound.family != wood.rules.family:
            yield (
                f"{wood.name} is cut by family {wood.rules.family}; its bound is for "
                f"family {wood.bound.family}."
            )


def set_up_pieces_have_no_price(plan: Plan) -> Iterator[str]:
    """Ensures that pieces nothing demands are worth nothing in the bound."""
    for wood in plan.woods:
        for demand, price in sorted(wood.bound.prices.items()):
            if price and plan.part_of[demand].set_up:
                yield (
                    f"{wood.name}: {demand} is a set-up piece, and the bound prices it at "
                    f"{say_money(price)}."
                )


def grids_can_be_worked_out(plan: Plan) -> Iterator[str]:
    """Ensures that no piece has so many cells that its bound cannot be worked out again."""
    for wood in plan.woods:
        for piece in stock_of(plan, wood):
            grid = lay_out(piece, wood.rules)
            if (
                max(grid.along, grid.across) > MOST_ALONG
                or (grid.along + 1) * (grid.across + 1) > MOST_CELLS
            ):
                yield (
                    f"{wood.name}, {piece.id}: {grid.along} by {grid.across} cells are too "
                    f"fine a grid; {MOST_ALONG} either way, and {MOST_CELLS} in all, are "
                    "the most that is worked out again."
                )


def priced_is_what_the_prices_prove(wood: Wood, priced: int) -> Iterator[str]:
    """Ensures that the priced floor is what its prices give, to the last unit."""
    if priced != wood.bound.priced:
        raised = "less" if priced < wood.bound.priced else "more"
        yield (
            f"{wood.name}: the prices prove a floor of {say_money(priced)}, {raised} than "
            f"the {say_money(wood.bound.priced)} the plan says ({priced} and "
            f"{wood.bound.priced} units)."
        )


def bound_is_not_above_the_cost(plan: Plan) -> Iterator[str]:
    """Ensures that no plan is cheaper than what is called the least it can cost."""
    for wood in plan.woods:
        if wood.bound.value > wood.cost:
            yield (
                f"{wood.name} costs {say_money(wood.cost)}, less than its floor of "
                f"{say_money(wood.bound.value)}."
            )


def price_out(plan: Plan, wood: Wood) -> int:
    """What the prices prove that no plan for `need` can cost less than. [money/10,000]"""
    return price_out_from(Values(plan, wood), wood)


def price_out_from(values: Values, wood: Wood) -> int:
    """The same, from values that are shared with other proofs. [money/10,000]"""
    row = Row(wood.bound.prices, wood.bound.limited)
    worths = values.at_row(row)
    return values.need_at(row.prices) + saved(values.pieces, worths)


def greatest_worths(plan: Plan, wood: Wood) -> dict[str, int]:
    """The most that each piece can give in one pattern, by its name. [money/10,000]"""
    return Values(plan, wood).at(wood.bound.prices)


def lift(plan: Plan, wood: Wood, priced: int) -> int:
    """The least sum of whole pieces' prices that is not below this. [money/10,000]

    Where offcuts count for something it is `priced` itself, or nothing.
    """
    if wood.rules.offcuts.percent:
        return max(0, priced)
    step = step_of_prices(plan, wood)
    return max(0, -(-priced // step) * step) if step else 0


def step_of_prices(plan: Plan, wood: Wood) -> int:
    """What every sum of whole pieces' prices is a multiple of; 0 where all are free. [money/10,000]"""
    return step_of_what_is_sold(stock_of(plan, wood))


RULES = (
    bound_is_for_the_family_cut,
    set_up_pieces_have_no_price,
    grids_can_be_worked_out,
)
