"""The money: board feet times price, line by line, rounded once a line and added up."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence

from yieldplan.checking.facts import Piece, Plan, PurchaseLine, Wood
from yieldplan.checking.packs import packs_bought, price_of
from yieldplan.checking.saying import say_feet, say_money

CENT = 100
"""[money/10,000]"""

Heading = tuple[str, str, str, str, int, str]
"""Wood, line, grade, by foot, by piece or by pack, the price of one, and the pack."""


def prices_are_feet_times_price(plan: Plan) -> Iterator[str]:
    """Ensures that a piece priced by the foot costs exactly its board feet times that."""
    for piece in plan.stock:
        if piece.per_foot is None:
            continue
        if piece.feet is None:
            yield f"{piece.id} is priced by the board foot and has no board feet."
        elif piece.feet * piece.per_foot != piece.price * 100:
            yield (
                f"{piece.id}: {say_feet(piece.feet)} board feet at "
                f"{say_money(piece.per_foot)} do not make its price of "
                f"{say_money(piece.price)}."
            )


def cost_is_what_the_pieces_cost(plan: Plan) -> Iterator[str]:
    """Ensures that a wood costs what the pieces and packs bought cost, less what offcuts are worth."""
    for wood in plan.woods:
        cost = cost_of(plan, wood)
        if cost != wood.cost:
            yield (
                f"{wood.name}: the pieces bought, less the offcuts, cost {say_money(cost)}; the plan says "
                f"{say_money(wood.cost)}."
            )


def what_is_cut_is_bought(plan: Plan) -> Iterator[str]:
    """Ensures that every copy cut, and what its pack holds, stands on the one purchase line it belongs to."""
    cut: dict[Heading, Counter[str]] = {}
    for wood in plan.woods:
        for name, pieces in packs_bought(plan, wood).items():
            cut[_heading_of_pack(name, pieces)] = Counter(
                {piece.id: piece.copies for piece in pieces}
            )
        for cutting in wood.cuttings:
            piece = plan.piece_of[cutting.stock]
            if piece.pack:
                continue
            cut.setdefault(_heading_of(piece), Counter())[piece.id] += 1
    bought: dict[Heading, Counter[str]] = {}
    for line in plan.purchase:
        if line.by == "minimum":
            # It buys no piece that anyone has chosen.
            continue
        heading = _heading(line)
        if heading in bought:
            yield f"Two purchase lines are one: {_said(heading)}."
        count = bought.setdefault(heading, Counter())
        for stock, copies in line.pieces:
            count[stock] += copies
            if copies < 1:
                yield f"Purchase line {_said(heading)} buys {copies} of {stock}."
    for heading in sorted({*cut, *bought}):
        one, other = cut.get(heading, Counter()), bought.get(heading, Counter())
        for stock in sorted({*one, *other}):
            if one[stock] != other[stock]:
                yield (
                    f"{stock}: {one[stock]} {'in the pack' if heading[5] else 'cut'}, "
                    f"{other[stock]} bought under {_said(heading)}."
                )
        if heading not in cut and not bought[heading]:
            yield f"Purchase line {_said(heading)} buys nothing."


def lines_carry_their_board_feet(plan: Plan) -> Iterator[str]:
    """Ensures that a line's board feet are those of its pieces, and null where one has none."""
    for line in plan.purchase:
        if line.by == "minimum":
            continue
        feet = _feet(plan, line)
        if feet != line.feet:
            is_, says = (
                "none" if each is None else say_feet(each) for each in (feet, line.feet)
            )
            yield (
                f"Purchase line {_said(_heading(line))}: its pieces have {is_} board feet, "
                f"the line says {says}."
            )


def totals_are_rounded_once_a_line(plan: Plan) -> Iterator[str]:
    """Ensures that a line's total is its exact amount, rounded half up to the cent."""
    for line in plan.purchase:
        if line.by == "minimum":
            continue
        # Hundredths of a 1/10,000, so that board feet stay whole numbers.
        count = sum(copies for _, copies in line.pieces) * 100
        counted = {"foot": _feet(plan, line) or 0, "piece": count, "pack": 100}
        amount = line.per * counted[line.by]
        total = (2 * amount + 100 * CENT) // (200 * CENT) * CENT
        if total != line.total:
            yield (
                f"Purchase line {_said(_heading(line))} comes to {say_money(total)}; "
                f"the plan says {say_money(line.total)}."
            )


def the_total_adds_the_lines(plan: Plan) -> Iterator[str]:
    """Ensures that the sum to pay is the sum of the purchase lines."""
    total = sum(line.total for line in plan.purchase)
    if total != plan.total:
        yield (
            f"The purchase lines add up to {say_money(total)}; the plan says "
            f"{say_money(plan.total)}."
        )


def minimum_orders_are_filled_up(plan: Plan) -> Iterator[str]:
    """Ensures that what is bought comes to each minimum order, by a line for what is lacking."""
    lines = [line for line in plan.purchase if line.by != "minimum"]
    for wood, least in plan.minimum:
        paid = sum(line.total for line in lines if wood in ("", line.wood))
        if 0 < paid < least:
            lines.append(_filling(wood, least, paid))
    wanted = [line for line in lines if line.by == "minimum"]
    said = [line for line in plan.purchase if line.by == "minimum"]
    if said != wanted:
        yield (
            f"To fill up minimum orders {_of_orders(wanted)} must be paid; the plan "
            f"pays {_of_orders(said)}."
        )
    if plan.purchase[len(plan.purchase) - len(said) :] != tuple(said):
        yield "Lines that fill up minimum orders stand after the others."


def _filling(wood: str, least: int, paid: int) -> PurchaseLine:
    return PurchaseLine(
        wood=wood,
        line="minimum order",
        grade="",
        pieces=(),
        feet=None,
        by="minimum",
        per=least,
        total=least - paid,
    )


def _of_orders(lines: Sequence[PurchaseLine]) -> str:
    said = (f"{say_money(n.total)} for {n.wood or 'the whole order'}" for n in lines)
    return ", ".join(said) or "nothing"


def cost_of(plan: Plan, wood: Wood) -> int:
    """What the pieces and packs a wood is cut from cost, less the offcuts' worth. [money/10,000]"""
    pieces = (plan.piece_of[cutting.stock] for cutting in wood.cuttings)
    singly = sum(piece.price for piece in pieces if not piece.pack)
    packs = sum(map(price_of, packs_bought(plan, wood).values()))
    worth = sum(
        node.worth for cutting in wood.cuttings for node in cutting.tree.every()
    )
    return singly + packs - worth


def _feet(plan: Plan, line: PurchaseLine) -> int | None:
    total = 0
    for stock, copies in line.pieces:
        feet = plan.piece_of[stock].feet
        if feet is None:
            return None
        total += feet * copies
    return total


def _heading_of(piece: Piece) -> Heading:
    if piece.per_foot is None:
        return piece.wood, piece.line, piece.grade, "piece", piece.price, ""
    return piece.wood, piece.line, piece.grade, "foot", piece.per_foot, ""


def _heading_of_pack(name: str, pieces: Sequence[Piece]) -> Heading:
    grades = {piece.grade for piece in pieces}
    grade = grades.pop() if len(grades) == 1 else ""
    first = pieces[0]
    return first.wood, first.line, grade, "pack", price_of(pieces), name


def _heading(line: PurchaseLine) -> Heading:
    return line.wood, line.line, line.grade, line.by, line.per, line.pack


def _said(heading: Heading) -> str:
    _, line, grade, by, per, pack = heading
    if pack:
        return f"{line}, pack {pack} at {say_money(per)}"
    return f"{line}{' ' + grade if grade else ''} at {say_money(per)} a {by}"


RULES = (
    prices_are_feet_times_price,
    cost_is_what_the_pieces_cost,
    what_is_cut_is_bought,
    lines_carry_their_board_feet,
    totals_are_rounded_once_a_line,
    the_total_adds_the_lines,
    minimum_orders_are_filled_up,
)
