"""What the proof found, in words for the terminal."""

from __future__ import annotations

from collections.abc import Iterator

from yieldplan.desk.check_plan import CheckedPlan
from yieldplan.measure.gap import FAMILY_IN_WORDS
from yieldplan.measure.money import down_to_the_cent, say_money

MOST_OBJECTIONS = 40
"""Beyond this the file is damaged through and through."""


def verdict(checked: CheckedPlan) -> Iterator[str]:
    """The verdict, line by line."""
    report, plan = checked.report, checked.document
    if not report.passed:
        yield "REFUSED. This plan does not hold:"
        for objection in report.objections[:MOST_OBJECTIONS]:
            yield f"  {objection}"
        if len(report.objections) > MOST_OBJECTIONS:
            yield f"  and {len(report.objections) - MOST_OBJECTIONS} more."
        return
    currency = plan["currency"]
    yield f"{plan['title']} (plan {plan['mark']}) holds."
    for wood in plan["woods"]:
        name = wood["wood"]
        cost, floor = checked.costs[name], report.floors[name]
        least = (
            "no plan of this kind costs less"
            if floor == cost
            else f"no plan of this kind costs less than {say_money(down_to_the_cent(floor))}"
        )
        how = FAMILY_IN_WORDS[wood["rules"]["family"]]
        yield f"  {name}, {how}: {say_money(cost)} {currency}; {least}."
    yield "Checked"
    yield from (f"  {each}." for each in report.checked)
    missing = [
        f"{count} of {part}"
        for wood in plan["woods"]
        for part, count in wood["missing"].items()
        if count
    ]
    if missing:
        yield f"INCOMPLETE. Not in this plan: {', '.join(missing)}."
