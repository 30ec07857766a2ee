"""How good a plan is, in words a shop can weigh: in feet and boards before per cent."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction

from yieldplan.measure.minimum import least_for
from yieldplan.measure.money import CENT, down_to_the_cent, say_money
from yieldplan.model.plan import Family, Plan, WoodPlan

FAMILY_IN_WORDS: dict[Family, str] = {
    "R": "rip first",
    "C": "crosscut first",
    "E": "rip or crosscut first, board by board",
    "R+": "rip first, narrow parts beside marks",
    "C+": "crosscut first, narrow parts beside marks",
    "E+": "rip or crosscut first, board by board, narrow parts beside marks",
}
"""How a plan cuts its boards, as people read it."""


def how_cut(wood: WoodPlan) -> str:
    """How the plan cuts a wood's pieces, which its floor is for."""
    if wood.is_stick:
        return "crosscut to length"
    return FAMILY_IN_WORDS[wood.rules.family]


def gap_in_words(plan: Plan, wood: WoodPlan | None = None) -> str:
    """How far what is paid may lie above the best plan of its kind.

    "no plan costs less", "less than one board foot", "less than one board", or the
    share of the cost in per cent; a foot and a board are the cheapest of those cut.

    Parameters
    ----------
    wood
        One of the plan's; all together without.
    """
    cost, floor = cost_and_floor(plan, wood)
    gap = cost - floor
    if gap <= 0:
        return "no plan costs less"
    woods = plan.woods if wood is None else (wood,)
    feet = list(_feet(woods))
    if feet and gap < min(feet):
        return "less than one board foot"
    pieces = [cut.piece.price for each in woods for cut in each.cuttings]
    if pieces and gap < min(pieces):
        things = {each.thing for each in woods}
        return f"less than one {things.pop() if len(things) == 1 else 'board'}"
    return f"{say_percent(gap_percent(plan, wood))} % of the cost"


def gap_percent(plan: Plan, wood: WoodPlan | None = None) -> Fraction:
    """The gap in parts of a hundred of the cost; 0 where nothing is paid. [%]"""
    cost, floor = cost_and_floor(plan, wood)
    return (
        max(Fraction(0), Fraction(100 * (cost - floor), cost)) if cost else Fraction(0)
    )


def cost_and_floor(plan: Plan, wood: WoodPlan | None = None) -> tuple[int, int]:
    """What is paid, less what offcuts count for, and what no plan of this kind can be below.

    Minimum orders are filled up, and belong to both. [money/10,000]
    """
    if wood is not None:
        return _filled(plan, wood), floor_with_minimum(wood, plan)
    worth = counted_for(plan.woods)
    cost = sum(_filled(plan, each) for each in plan.woods)
    return max(cost, least_for(plan, "") - worth), _least_to_pay(plan)


def _filled(plan: Plan, wood: WoodPlan) -> int:
    return max(wood.cost, least_for(plan, wood.wood) - counted_for([wood]))


def say_percent(percent: Fraction) -> str:
    """To a tenth, rounded up: a gap is never made to look smaller."""
    tenths = -(-percent.numerator * 10 // percent.denominator)
    return f"{tenths // 10}.{tenths % 10}"


def floor_of(plan: Plan) -> int:
    """What no plan of this kind can make the job cost less than. [money/10,000]

    Rounded down to the cent, and never above the total: that adds lines rounded to
    the cent, so it may lie some cents below the exact cost.
    """
    floor = down_to_the_cent(_least_to_pay(plan))
    proved = all(wood.cost == wood.bound.value for wood in plan.woods)
    owed = plan.total - counted_for(plan.woods)
    return owed if proved else min(floor, owed)


def floor_with_minimum(wood: WoodPlan, plan: Plan) -> int:
    """The floor of one wood, its minimum order among what it must come to. [money/10,000]

    Where offcuts count for something they may come off a minimum order too.
    """
    if not wood.bound.value or wood.rules.offcut_percent:
        return wood.bound.value
    return max(wood.bound.value, least_for(plan, wood.wood))


def _least_to_pay(plan: Plan) -> int:
    floor = sum(floor_with_minimum(wood, plan) for wood in plan.woods)
    if not floor or any(wood.rules.offcut_percent for wood in plan.woods):
        return floor
    return max(floor, least_for(plan, ""))


def counted_for(woods: Sequence[WoodPlan]) -> int:
    """What the offcuts kept count for in cost and floor, by the shop's word. [money/10,000]"""
    return sum(
        leaf.worth
        for wood in woods
        for cut in wood.cuttings
        for leaf in cut.tree.leaves()
    )


def less_offcuts(woods: Sequence[WoodPlan]) -> str:
    """Words for what is taken off before a cost is held against its floor; often none."""
    worth = counted_for(woods)
    return f", or {say_money(worth)} less for the offcuts it keeps" if worth else ""


def _feet(woods: Sequence[WoodPlan]) -> Iterator[int]:
    for wood in woods:
        for cutting in wood.cuttings:
            piece = cutting.piece
            if piece.per_foot is not None:
                yield piece.per_foot
            elif piece.board_feet:
                # A board priced as a piece has its price per foot too, to the cent below.
                yield int(piece.price / piece.board_feet) // CENT * CENT
