"""The bound: what no plan can cost less than, worked out again from the prices of the proof."""

from __future__ import annotations

from collections.abc import Iterator
from math import gcd

from yieldplan.checking.facts import Piece, Plan, Wood
from yieldplan.checking.grid import MOST_ALONG, MOST_CELLS, Grid, lay_out
from yieldplan.checking.pieces import greatest
from yieldplan.checking.saying import say_money
from yieldplan.checking.tables import Tables
from yieldplan.checking.wanted import Blank
from yieldplan.checking.worths import held, listed


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


def priced_is_what_the_prices_prove(
    plan: Plan, priced: dict[str, int]
) -> Iterator[str]:
    """Ensures that the priced floor is what its prices give, to the last unit."""
    for wood in plan.woods:
        is_ = priced[wood.name]
        if is_ != wood.bound.priced:
            raised = "less" if is_ < wood.bound.priced else "more"
            yield (
                f"{wood.name}: the prices prove a floor of {say_money(is_)}, {raised} than "
                f"the {say_money(wood.bound.priced)} the plan says ({is_} and "
                f"{wood.bound.priced} units)."
            )


def value_is_what_whole_pieces_can_cost(
    plan: Plan, priced: dict[str, int]
) -> Iterator[str]:
    """Ensures that the floor is the priced one, lifted to what whole pieces can cost."""
    for wood in plan.woods:
        is_ = lift(plan, wood, priced[wood.name])
        if is_ != wood.bound.value:
            yield (
                f"{wood.name}: whole pieces can cost {say_money(is_)} or more; the plan "
                f"gives its floor as {say_money(wood.bound.value)} ({is_} and "
                f"{wood.bound.value} units)."
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
    worths = greatest_worths(plan, wood)
    return sum(
        wood.bound.prices.get(part, 0) * n for part, n in wood.need.items()
    ) + sum(
        piece.copies * min(0, piece.price - worths[piece.id])
        for piece in stock_of(plan, wood)
    )


def greatest_worths(plan: Plan, wood: Wood) -> dict[str, int]:
    """The most that each piece can give in one pattern, by its name. [money/10,000]"""
    worths = {}
    for blanks, pieces in _by_blanks(plan, wood):
        grids = [lay_out(piece, wood.rules) for piece in pieces]
        tables = Tables(
            held(plan, wood, blanks),
            max(grid.along for grid in grids),
            max(grid.across for grid in grids),
        )
        # Sheets come by the dozen, all alike.
        known: dict[tuple[Grid, int, int, int], int] = {}
        for piece, grid in zip(pieces, grids, strict=True):
            alike = grid, piece.price, piece.length, piece.width
            if alike not in known:
                known[alike] = greatest(piece, wood.rules, grid, tables)
            worths[piece.id] = known[alike]
    return worths


def lift(plan: Plan, wood: Wood, priced: int) -> int:
    """The least sum of whole pieces' prices that is not below this. [money/10,000]

    Where offcuts count for something it is `priced` itself, or nothing.
    """
    if wood.rules.offcuts.percent:
        return max(0, priced)
    step = gcd(*(piece.price for piece in stock_of(plan, wood)))
    return max(0, -(-priced // step) * step) if step else 0


def stock_of(plan: Plan, wood: Wood) -> list[Piece]:
    """Every piece of the wood that was offered."""
    return [piece for piece in plan.stock if piece.wood == wood.name]


def _by_blanks(
    plan: Plan, wood: Wood
) -> Iterator[tuple[tuple[Blank, ...], list[Piece]]]:
    """The wood's pieces, together where the same blanks may come from them."""
    alike: dict[tuple[str, ...], tuple[tuple[Blank, ...], list[Piece]]] = {}
    for piece in stock_of(plan, wood):
        blanks = listed(plan, wood, piece)
        names = tuple(blank.id for blank in blanks)
        alike.setdefault(names, (blanks, []))[1].append(piece)
    yield from alike.values()


RULES = (
    bound_is_for_the_family_cut,
    set_up_pieces_have_no_price,
    grids_can_be_worked_out,
)
PROOFS = (priced_is_what_the_prices_prove, value_is_what_whole_pieces_can_cost)
