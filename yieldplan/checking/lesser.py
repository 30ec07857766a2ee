"""The form of further proofs: lower prices only where no copy makes more than is needed, rows and pieces that are there."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator

from yieldplan.checking.facts import Plan, Wood
from yieldplan.checking.further import Branch, Leaf, Limited, Row
from yieldplan.checking.saying import say_money


def further_proofs_name_what_is_there(plan: Plan) -> Iterator[str]:
    """Ensures that rows price parts of the job, and pieces and rows named are there."""
    for wood in plan.woods:
        pieces = {piece.id for piece in plan.stock if piece.wood == wood.name}
        for where, row in _rows(wood):
            for prices in (row.prices, *(each.prices for each in row.limited)):
                for part in prices:
                    if part not in plan.part_of:
                        yield f"{where} prices {part!r}, which is no part of the file."
            for stock in (name for each in row.limited for name in each.stock):
                if stock not in pieces:
                    yield f"{where} has lesser values for {stock!r}, no {wood.name}."
        sets = wood.bound.sets
        for node in sets.tree if sets else ():
            if isinstance(node, Branch) and node.stock not in pieces:
                yield f"{wood.name}: the tree of sets names {node.stock!r}, no {wood.name}."
            if sets and isinstance(node, Leaf):
                for number, _ in node.weights:
                    if number >= len(sets.rows):
                        yield (
                            f"{wood.name}: the tree of sets weighs row {number}; there are "
                            f"{len(sets.rows)} rows, counted from 0."
                        )


def lower_prices_are_lower(plan: Plan) -> Iterator[str]:
    """Ensures that lower prices hold for parts of which no copy makes more than is needed."""
    for wood in plan.woods:
        spared = {
            part
            for blank in plan.blanks
            if blank.may_spare and blank.wood == wood.name
            for part in blank.makes
        }
        for where, row in _rows(wood):
            for limited in row.limited:
                yield from _not_lower(where, row, limited, spared)
            listed = Counter(stock for each in row.limited for stock in each.stock)
            for stock, count in listed.items():
                if count > 1:
                    yield f"{where} has lesser values for {stock} {count} times."


def rows_price_no_set_up_pieces(plan: Plan) -> Iterator[str]:
    """Ensures that pieces nothing demands are worth nothing in further proofs either."""
    for wood in plan.woods:
        for where, row in _rows(wood):
            for prices in (row.prices, *(each.prices for each in row.limited)):
                for part, price in sorted(prices.items()):
                    # The first prices have an objection of their own.
                    first = prices is wood.bound.prices
                    if price and plan.part_of[part].set_up and not first:
                        yield (
                            f"{where} prices {part}, a set-up piece, at "
                            f"{say_money(price)}."
                        )


def sets_and_trials_are_for_whole_pieces(plan: Plan) -> Iterator[str]:
    """Ensures that choices of whole pieces are weighed only where offcuts count for nothing."""
    for wood in plan.woods:
        percent = wood.rules.offcuts.percent
        for words, proof in (
            ("sets of pieces", wood.bound.sets),
            ("trying", wood.bound.tried),
        ):
            if proof is not None and percent:
                yield (
                    f"{wood.name}: its floor is to be proved by {words}, and offcuts count "
                    f"for {percent} in a hundred of their price."
                )


def trials_are_of_plain_families(plan: Plan) -> Iterator[str]:
    """Ensures that no floor is proved by trying where narrow parts may lie beside marks."""
    for wood in plan.woods:
        family = wood.rules.family
        if wood.bound.tried is not None and family not in ("R", "C", "E"):
            yield (
                f"{wood.name}: its floor is to be proved by trying, and it is cut by family "
                f"{family}; that can be tried for R, C and E only."
            )


def counting_as_asked_is_of_plain_families(plan: Plan) -> Iterator[str]:
    """Ensures that no value counts blanks as asked where narrow parts may lie beside marks."""
    for wood in plan.woods:
        family = wood.rules.family
        if wood.bound.as_asked and family not in ("R", "C", "E"):
            yield (
                f"{wood.name}: its floor counts blanks as asked, and it is cut by family "
                f"{family}; that is done for R, C and E only."
            )


def _rows(wood: Wood) -> Iterator[tuple[str, Row]]:
    """Every row of a wood's proofs, and how it is called."""
    bound = wood.bound
    yield f"{wood.name}: the bound", Row(bound.prices, bound.limited)
    for words, proof in (
        ("sets", bound.sets),
        ("tried", bound.tried),
        ("packs", bound.packs),
    ):
        for number, row in enumerate(proof.rows if proof else ()):
            yield f"{wood.name}: row {number} of `{words}`", row


def _not_lower(
    where: str, row: Row, limited: Limited, spared: set[str]
) -> Iterator[str]:
    for part in sorted({*row.prices, *limited.prices}):
        price, lower = row.prices.get(part, 0), limited.prices.get(part, 0)
        if lower > price:
            yield (
                f"{where} prices {part} at {say_money(price)}, and for fewer pieces at "
                f"{say_money(lower)}, which is not lower."
            )
        elif lower < price and part in spared:
            yield (
                f"{where} prices {part} at {say_money(price)}, and lower for fewer pieces; "
                "but blanks may bring spares of it."
            )


NAMES = (further_proofs_name_what_is_there,)
RULES = (
    lower_prices_are_lower,
    rows_price_no_set_up_pieces,
    sets_and_trials_are_for_whole_pieces,
    trials_are_of_plain_families,
    counting_as_asked_is_of_plain_families,
)
