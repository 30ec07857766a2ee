"""The floor by sets of pieces: no choice of whole pieces that costs less is rich enough, leaf by leaf."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import NamedTuple

from yieldplan.checking.facts import Piece, Plan, Wood
from yieldplan.checking.further import Branch, Leaf, Sets
from yieldplan.checking.saying import say_money

MOST_TOLD = 5
"""Leaves that fail are told one by one up to here."""


class Richness(NamedTuple):
    """What a row proves: what the need is worth at its prices, and each piece at the most."""

    need: int
    values: Mapping[str, int]


@dataclass
class Turn:
    """A branch on the way to a leaf, what was allowed before it, and whether it takes more."""

    branch: Branch
    before: tuple[int, int]
    takes_more: bool = False


def least_is_a_sum_of_prices(wood: Wood, least: int, step: int) -> Iterator[str]:
    """Ensures that what sets of pieces prove is a sum that whole pieces can cost."""
    if not step or least % step:
        yield (
            f"{wood.name}: sets of pieces are said to prove {say_money(least)}; whole "
            f"pieces cost multiples of {say_money(step)}."
        )


def every_leaf_is_too_poor(
    plan: Plan, wood: Wood, sets: Sets, rows: Sequence[Richness], step: int
) -> Iterator[str]:
    """Ensures that whatever is taken of each piece, what costs less than `least` is too poor.

    A plan takes some number of copies of each piece, and belongs to the leaf that its
    numbers lead to. By every row the pieces it takes are worth what is needed; so,
    with any weights, it costs no less than the leaf comes to.
    """
    pieces = [piece for piece in plan.stock if piece.wood == wood.name]
    leaves = _Leaves(pieces, rows)
    allowed = {piece.id: (0, piece.copies) for piece in pieces}
    way: list[Turn] = []
    failed = 0
    for number, node in enumerate(sets.tree, 1):
        if isinstance(node, Branch):
            fewest, most = allowed[node.stock]
            if not fewest <= node.at_most < most:
                yield (
                    f"{wood.name}: node {number} of the tree of sets parts at most "
                    f"{node.at_most} of {node.stock} from more; from {fewest} to {most} "
                    "of it are left to choose from there."
                )
                return
            way.append(Turn(node, (fewest, most)))
            allowed[node.stock] = fewest, node.at_most
            continue
        proved = leaves.comes_to(node, allowed)
        if proved <= node.of * (sets.least - step):
            failed += 1
            if failed <= MOST_TOLD:
                yield (
                    f"{wood.name}: node {number} of the tree of sets ({_said(way)}) proves "
                    f"no more than {say_money(proved // node.of)}; above "
                    f"{say_money(sets.least - step)} is wanted."
                )
        _turn(way, allowed)
    if failed > MOST_TOLD:
        yield f"{wood.name}: {failed - MOST_TOLD} more nodes of the tree prove too little."


def _turn(way: list[Turn], allowed: dict[str, tuple[int, int]]) -> None:
    """Goes back to the last branch whose other way has not been seen, and takes that."""
    while way:
        turn = way[-1]
        fewest, most = turn.before
        if not turn.takes_more:
            turn.takes_more = True
            allowed[turn.branch.stock] = turn.branch.at_most + 1, most
            return
        allowed[turn.branch.stock] = fewest, most
        way.pop()


def _said(way: Sequence[Turn]) -> str:
    """Which choices a way leads to, in words; the last few turns of it."""
    if not way:
        return "any choice"
    said = [
        f"{turn.branch.stock} {turn.branch.at_most + 1} times or more"
        if turn.takes_more
        else f"{turn.branch.stock} {turn.branch.at_most} times at most"
        for turn in way[-6:]
    ]
    return ("..., " if len(way) > 6 else "") + ", ".join(said)


class _Leaves:
    """What leaves come to."""

    def __init__(self, pieces: Sequence[Piece], rows: Sequence[Richness]) -> None:
        self.names = [piece.id for piece in pieces]
        self.prices = [piece.price for piece in pieces]
        self.needs = [row.need for row in rows]
        self.values = [[row.values[name] for name in self.names] for row in rows]

    def comes_to(self, leaf: Leaf, allowed: Mapping[str, tuple[int, int]]) -> int:
        """The least that choices at a leaf cost, times `of`."""
        total = 0
        costs = [leaf.of * price for price in self.prices]
        for row, weight in leaf.weights:
            total += weight * self.needs[row]
            costs = [
                cost - weight * value
                for cost, value in zip(costs, self.values[row], strict=True)
            ]
        for name, cost in zip(self.names, costs, strict=True):
            fewest, most = allowed[name]
            total += (fewest if cost > 0 else most) * cost
        return total
