"""Minimum orders in board feet: what is short of them, and boards that would make it up."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence
from fractions import Fraction

from yieldplan.measure.money import say_feet, say_money
from yieldplan.measure.order import natural
from yieldplan.measure.packs import left_whole
from yieldplan.model.job import Job
from yieldplan.model.pieces import Piece
from yieldplan.model.plan import WoodPlan


def short_of_feet(
    woods: Sequence[WoodPlan], offered: Sequence[Piece], job: Job
) -> Iterator[str]:
    """A sentence for each minimum order in board feet that what is bought does not reach.

    The boards it names are no part of the plan or of its cost.
    """
    bought: Counter[str] = Counter()
    for wood in woods:
        bought.update(cut.piece.id for cut in wood.cuttings if cut.piece.price)
        bought.update({piece.id: count for piece, count in left_whole(wood, offered)})
    orders = [(name, job.woods[name].minimum_feet) for name in sorted(job.woods)]
    for name, least in [*orders, ("", job.minimum_feet)]:
        pieces = [p for p in offered if p.board_feet and name in ("", p.wood)]
        feet = sum((_feet(piece) * bought[piece.id] for piece in pieces), Fraction(0))
        if least is None or not 0 < feet < Fraction(least):
            continue
        short = Fraction(least) - feet
        left = [p for p in pieces if p.price and not p.pack and not bought[p.id]]
        yield (
            f"The minimum order{f' of {name}' if name else ''} is {least} board feet, and "
            f"{say_feet(feet)} are bought: {say_feet(short)} more must be, which is not "
            f"in the cost. {_say_more(enough(short, left))}"
        )


def _feet(piece: Piece) -> Fraction:
    return piece.board_feet or Fraction(0)


def _say_more(more: Sequence[Piece] | None) -> str:
    if more is None:
        return "The boards offered do not make it up"
    feet = sum(map(_feet, more), Fraction(0))
    price = sum(piece.price for piece in more)
    names = ", ".join(sorted((piece.id for piece in more), key=natural))
    return f"For instance {names}: {say_feet(feet)} board feet for {say_money(price)}"


def enough(short: Fraction, left: Sequence[Piece]) -> list[Piece] | None:
    """Boards that make it up: the cheapest one that does, or cheap ones by the foot if those cost less."""
    by_the_foot = sorted(
        left, key=lambda piece: (piece.price / _feet(piece), natural(piece.id))
    )
    taken: list[Piece] = []
    feet = Fraction(0)
    for piece in by_the_foot:
        if feet >= short:
            break
        taken.append(piece)
        feet += _feet(piece)
    # What the dearer ones to come made needless goes again.
    for piece in sorted(taken, key=lambda piece: (-piece.price, natural(piece.id))):
        if feet - _feet(piece) >= short:
            taken.remove(piece)
            feet -= _feet(piece)
    one = [[piece] for piece in left if _feet(piece) >= short]
    ways = [*one, *([taken] if feet >= short else [])]
    return min(ways, key=lambda way: sum(p.price for p in way)) if ways else None
