"""A plan in a page of text: what it costs, what to buy, how good it is, what to do next."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from pathlib import Path

from yieldplan.cli.table import rows
from yieldplan.measure.gap import (
    counted_for,
    floor_of,
    gap_in_words,
    gap_percent,
    how_cut,
    less_offcuts,
)
from yieldplan.measure.minimum import least_for, say_minimum
from yieldplan.measure.money import down_to_the_cent, say_feet, say_money
from yieldplan.measure.order import natural
from yieldplan.measure.packs import say_left_whole, say_line
from yieldplan.model.plan import Plan, PurchaseLine, WoodPlan

MOST_CAUTIONS = 5
"""More is not read; the workbook has them all."""


def plan_summary(plan: Plan, files: Sequence[Path]) -> Iterator[str]:
    """The page, line by line."""
    yield f"{plan.job.title} (plan {plan.mark})"
    yield ""
    yield _cost(plan)
    if not plan.complete:
        yield ""
        yield from _missing(plan)
    yield ""
    yield from _to_buy(plan)
    if len(plan.woods) > 1 or any(_is_open(plan, wood) for wood in plan.woods):
        yield ""
        yield from _how_good(plan)
    left = [
        f"{n} {name}" for wood in plan.woods for name, n in wood.set_up_left.items()
    ]
    if left:
        yield ""
        yield f"No waste is large enough for these set-up pieces: {', '.join(left)}."
    if plan.cautions:
        yield ""
        yield from _cautions(plan.cautions)
    yield ""
    yield from _next(plan, files)


def _cost(plan: Plan) -> str:
    money = f"{say_money(plan.total)} {plan.job.currency}{less_offcuts(plan.woods)}"
    if not any(wood.cuttings for wood in plan.woods):
        return "Nothing is cut: no part can be made of the wood offered."
    what, of_this_kind = "It costs", "no plan of this kind"
    if not plan.complete:
        what, of_this_kind = "What can be made costs", f"{of_this_kind} for as much"
    owed = plan.total - counted_for(plan.woods)
    if not _is_open(plan) or floor_of(plan) >= owed:
        return f"{what} {money}; {of_this_kind} costs less."
    floor = f"{say_money(floor_of(plan))} {plan.job.currency}"
    return (
        f"{what} {money}; {of_this_kind} costs less than {floor}. "
        f"The difference is {gap_in_words(plan)}."
    )


def _is_open(plan: Plan, wood: WoodPlan | None = None) -> bool:
    return gap_percent(plan, wood) > 0


def _missing(plan: Plan) -> Iterator[str]:
    yield "INCOMPLETE. Missing:"
    for wood in plan.woods:
        alike: dict[tuple[str, str], list[str]] = {}
        for each in wood.missing:
            parts = alike.setdefault((each.reason, each.remedy), [])
            parts.append(each.said)
        for (reason, remedy), parts in alike.items():
            yield f"  {wood.wood}, {', '.join(parts)}: {reason}."
            yield f"    {remedy}."


def _to_buy(plan: Plan) -> Iterator[str]:
    if not plan.purchase:
        yield "There is nothing to buy."
        return
    yield f"To buy ({plan.job.currency})"
    things = {"": "", **{wood.wood: wood.thing for wood in plan.woods}}
    table = [_bought(line, things[line.wood]) for line in plan.purchase]
    table.append(("together", "", "", "", say_money(plan.total)))
    yield from rows(table, align="<><>>", indent=2)
    boards = [
        name
        for line in plan.purchase
        if things[line.wood] == "board"
        for name, _ in line.pieces
    ]
    if boards:
        yield f"Boards to pull: {', '.join(sorted(boards, key=natural))}."
    if whole := say_left_whole(plan):
        yield whole
    yield from say_minimum(plan)


def _bought(line: PurchaseLine, thing: str) -> tuple[str, ...]:
    if line.by == "minimum":
        least = f"{say_money(line.per)} at least"
        return say_line(line), "to fill it up", "", least, say_money(line.total)
    count = sum(copies for _, copies in line.pieces)
    if line.by == "foot" and line.board_feet is not None:
        how_much = f"{say_feet(line.board_feet)} board feet"
        per = f"{say_money(line.per)} a foot"
    else:
        how_much, per = "", f"{say_money(line.per)} each"
    if line.by == "pack":
        per = "for all"
    return (
        say_line(line),
        f"{count} {thing}{'' if count == 1 else 's'}",
        how_much,
        per,
        say_money(line.total),
    )


def _how_good(plan: Plan) -> Iterator[str]:
    yield "How good it is"
    for wood in plan.woods:
        if not wood.cuttings:
            # What cannot be made at all costs nothing, and that proves nothing.
            continue
        said = f"  {wood.wood}, {how_cut(wood)}: {say_money(wood.cost)}"
        if not _is_open(plan, wood):
            least = least_for(plan, wood.wood)
            order = (
                f", of a minimum order of {say_money(least)}"
                if wood.cost < least
                else ""
            )
            yield f"{said}{order}; no plan costs less."
            continue
        why = f"; {wood.ended}" if wood.ended else ""
        yield (
            f"{said}, floor {say_money(down_to_the_cent(wood.bound.value))}, the difference is "
            f"{gap_in_words(plan, wood)}{why}."
        )
    yield "  A separate program worked every cut and floor out again, and agrees."


def _cautions(cautions: Sequence[str]) -> Iterator[str]:
    yield "Mind"
    for caution in cautions[:MOST_CAUTIONS]:
        yield f"  {caution.rstrip('.')}."
    if len(cautions) > MOST_CAUTIONS:
        yield f"  The workbook has {len(cautions) - MOST_CAUTIONS} more."


def _next(plan: Plan, files: Sequence[Path]) -> Iterator[str]:
    yield "Next"
    if not plan.complete:
        yield "  Add wood for what is missing to the tally and run this again."
    workbook = next((f for f in files if f.suffix == ".xlsx"), None)
    if workbook is not None:
        yield f"  Open {workbook}: pull the boards, saw from the cut diagrams."
    sheets = next((f for f in files if f.name == "cutting_sheets.pdf"), None)
    if sheets is not None:
        yield f"  Print {sheets} for the saw."
    if workbook is not None and any(wood.thing == "board" for wood in plan.woods):
        yield "  A mark the tally lacks: write it into the tally and plan again."
    if any(_is_open(plan, wood) for wood in plan.woods):
        yield "  The floor may be out of reach, or the plan not yet the best: to search"
        yield "    longer, add --seconds 60."
    plan_file = next((f for f in files if f.name == "plan.json"), None)
    parts = [part.id for part in plan.parts if not part.set_up]
    if plan_file is not None and parts:
        yield "  Ask why a part is its size, and where it lies:"
        yield f"    yieldplan explain {typed(plan_file)} {typed(parts[0])}"


def typed(word: str | Path) -> str:
    """The word as one types it in a command."""
    return f'"{word}"' if " " in str(word) else str(word)
