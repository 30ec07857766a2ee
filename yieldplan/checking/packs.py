"""Whole packs: bought together or not at all, in what is paid and in the floor under it."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from math import gcd
from typing import NamedTuple

from yieldplan.checking.facts import Piece, Plan, Wood
from yieldplan.checking.further import Packs
from yieldplan.checking.saying import say_money
from yieldplan.checking.values import Values, stock_of

MOST_CHOICES = 200_000
"""Choices of packs that are gone through, at most."""


def packs_are_of_one_wood_and_line(plan: Plan) -> Iterator[str]:
    """Ensures that boards sold together are of one wood and one line of stock."""
    first: dict[str, Piece] = {}
    for piece in plan.stock:
        if not piece.pack:
            continue
        other = first.setdefault(piece.pack, piece)
        if (piece.wood, piece.line) != (other.wood, other.line):
            yield (
                f"Pack {piece.pack} holds {other.id} of {other.line} and {piece.id} of "
                f"{piece.line}; a pack is of one wood and line."
            )


def beside_packs_offcuts_are_worth_nothing(plan: Plan) -> Iterator[str]:
    """Ensures that a wood of which packs are offered counts no offcut."""
    for wood in plan.woods:
        if wood.rules.offcuts.percent and packs_of(stock_of(plan, wood)):
            yield f"{wood.name} has packs, and its offcuts are said to count for something."


RULES = (packs_are_of_one_wood_and_line, beside_packs_offcuts_are_worth_nothing)


def packs_of(pieces: Iterable[Piece]) -> dict[str, list[Piece]]:
    """The pieces of each pack, by its name."""
    packs: dict[str, list[Piece]] = {}
    for piece in pieces:
        if piece.pack:
            packs.setdefault(piece.pack, []).append(piece)
    return packs


def price_of(pieces: Iterable[Piece]) -> int:
    """What all copies of the pieces cost. [money/10,000]"""
    return sum(piece.price * piece.copies for piece in pieces)


def packs_bought(plan: Plan, wood: Wood) -> dict[str, list[Piece]]:
    """Every pack that the wood cuts a piece of, with all its pieces."""
    cut = {plan.piece_of[cutting.stock].pack for cutting in wood.cuttings}
    packs = packs_of(plan.stock)
    return {name: packs[name] for name in sorted(cut - {""})}


def step_of_what_is_sold(pieces: Sequence[Piece]) -> int:
    """What every sum of packs' and single pieces' prices is a multiple of; 0 where all are free. [money/10,000]"""
    packs = packs_of(pieces).values()
    singly = (piece.price for piece in pieces if not piece.pack)
    return gcd(*(price_of(pack) for pack in packs), *singly)


def saved(pieces: Sequence[Piece], values: dict[str, int]) -> int:
    """What single pieces and packs that are worth more than their price take off a floor. [money/10,000]"""
    together = [
        *packs_of(pieces).values(),
        *([piece] for piece in pieces if not piece.pack),
    ]
    return sum(
        min(0, sum(each.copies * (each.price - values[each.id]) for each in sold))
        for sold in together
    )


class _Row(NamedTuple):
    """What a row says: the worth that is asked of packs, and what each can be worth."""

    asked: int
    worths: tuple[int, ...]


def packs_cost_as_much(wood: Wood, proof: Packs, values: Values) -> Iterator[str]:
    """Ensures that no choice of packs makes a plan that costs less than `least`.

    Of a choice every row says how much must be bought besides, in pieces of no pack.
    Packs that cost `least` or more are looked at no further: adding packs makes no
    choice cheaper.
    """
    # The dearest first: then little is left to add when a choice is nearly too dear.
    packs = sorted(
        packs_of(values.pieces).items(), key=lambda pack: (-price_of(pack[1]), pack[0])
    )
    prices = [price_of(pieces) for _, pieces in packs]
    singly = [piece for piece in values.pieces if not piece.pack]
    step = gcd(*(piece.price for piece in singly))
    rows = []
    for each in proof.rows:
        worth = values.at_row(each)
        of_packs = (sum(p.copies * worth[p.id] for p in pack) for _, pack in packs)
        needed = values.need_at(each.prices) + saved(singly, worth)
        rows.append(_Row(needed, tuple(of_packs)))
    seen = 0
    # A choice: packs decided on, what those taken cost, what each row still asks.
    waiting: list[tuple[int, int, tuple[int, ...], tuple[str, ...]]] = [
        (0, 0, tuple(row.asked for row in rows), ())
    ]
    while waiting:
        at, paid, asked, taken = waiting.pop()
        if paid >= proof.least:
            continue
        if at < len(packs):
            less = (ask - row.worths[at] for ask, row in zip(asked, rows, strict=True))
            waiting.append((at + 1, paid, asked, taken))
            waiting.append(
                (at + 1, paid + prices[at], tuple(less), (*taken, packs[at][0]))
            )
            continue
        seen += 1
        if seen > MOST_CHOICES:
            yield (
                f"{wood.name}: more than {MOST_CHOICES} choices of packs cost less than "
                f"{say_money(proof.least)}; that is too large a proof."
            )
            return
        rest = max(0, *asked) if asked else 0
        if rest and not step:
            continue
        lifted = -(-rest // step) * step if step else 0
        if paid + lifted < proof.least:
            said = f"packs {', '.join(taken)}" if taken else "no pack"
            yield (
                f"{wood.name}: with {said} the rows prove {say_money(paid + lifted)}; the "
                f"plan says that any choice of packs costs {say_money(proof.least)}."
            )
            return
