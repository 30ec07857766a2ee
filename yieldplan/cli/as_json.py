"""A plan or a bid as one JSON object, for another program to read.

Money is text to the cent; `gap` is parts of a hundred of the cost, rounded up.
"""

from __future__ import annotations

import json
from collections.abc import Sequence
from pathlib import Path
from typing import Any

from yieldplan.measure.gap import (
    FAMILY_IN_WORDS,
    floor_of,
    gap_in_words,
    gap_percent,
    say_percent,
)
from yieldplan.measure.money import CENT, down_to_the_cent, say_feet, say_money
from yieldplan.model.bid import Bid
from yieldplan.model.plan import Plan, WoodPlan
from yieldplan.model.price_of_a_wish import PriceOfAWish
from yieldplan.units import tape


def plan_as_json(
    plan: Plan,
    files: Sequence[Path],
    wishes: Sequence[PriceOfAWish] | None = None,
) -> str:
    """The plan's figures, what to buy, what is missing, and the files written.

    Parameters
    ----------
    wishes
        What each wish costs, where that was asked.
    """
    found: dict[str, Any] = {
        "title": plan.job.title,
        "mark": plan.mark,
        "currency": plan.job.currency,
        "complete": plan.complete,
        "cost": say_money(plan.total),
        "floor": say_money(floor_of(plan)),
        "gap": say_percent(gap_percent(plan)),
        "gap_in_words": gap_in_words(plan),
        "woods": [_wood(plan, wood) for wood in plan.woods],
        "purchase": [
            {
                "wood": line.wood,
                "line": line.line,
                "grade": line.grade,
                "pieces": [[name, copies] for name, copies in line.pieces],
                "board_feet": (
                    None if line.board_feet is None else say_feet(line.board_feet)
                ),
                "by": line.by,
                **({"pack": line.pack} if line.pack else {}),
                "per": say_money(line.per),
                "total": say_money(line.total),
            }
            for line in plan.purchase
        ],
        "missing": [
            {
                "part": missing.demand,
                "count": missing.count,
                "reason": missing.reason,
                "remedy": missing.remedy,
            }
            for wood in plan.woods
            for missing in wood.missing
        ],
        "files": [str(file) for file in files],
    }
    if wishes is not None:
        found["wishes"] = [_wish(price) for price in wishes]
    return json.dumps(found, indent=1)


def _wish(price: PriceOfAWish) -> dict[str, Any]:
    if price.unknown:
        return {"wish": price.words, "unknown": price.unknown}
    return {
        "wish": price.words,
        "costs": say_money(down_to_the_cent(price.found)),
        "at_least": say_money(down_to_the_cent(price.least)),
        "at_most": say_money(-(-price.most // CENT) * CENT),
        "woods": list(price.woods),
    }


def bid_as_json(bid: Bid, files: Sequence[Path]) -> str:
    """The bid's figures; without boards there is no floor, and nothing is missing."""
    unit = bid.job.unit
    found: dict[str, Any] = {
        "title": bid.job.title,
        "currency": bid.job.currency,
        "cost": None if bid.total is None else say_money(bid.total),
        "floor": None,
        "gap": None,
        "woods": [],
        "purchase": [
            {
                "wood": line.wood,
                "line": line.line,
                "grade": line.grade,
                "net_board_feet": None if line.net is None else say_feet(line.net),
                "rough_board_feet": (
                    None if line.rough is None else say_feet(line.rough)
                ),
                "add_percent": line.add_percent,
                "waste_percent": say_percent(line.waste_percent),
                "buy": int(line.buy),
                "by": line.sold_by,
                "per": None if line.per is None else say_money(line.per),
                "total": None if line.total is None else say_money(line.total),
                "note": line.price_note,
            }
            for line in bid.lines
        ],
        "must_find": [
            {
                "count": each.count,
                "line": each.line,
                "width": tape(each.width, unit, join="-"),
                "length": tape(each.length, unit, join="-"),
                "face": each.face,
                "for": each.what_for,
            }
            for each in bid.must_find
        ],
        "missing": [],
        "files": [str(file) for file in files],
    }
    return json.dumps(found, indent=1)


def _wood(plan: Plan, wood: WoodPlan) -> dict[str, Any]:
    return {
        "wood": wood.wood,
        "family": FAMILY_IN_WORDS[wood.rules.family],
        "cost": say_money(wood.cost),
        "floor": say_money(wood.bound.value // 100 * 100),
        "gap": say_percent(gap_percent(plan, wood)),
        "ended": wood.ended,
        "pieces": [[cut.piece.id, cut.copy] for cut in wood.cuttings],
    }
