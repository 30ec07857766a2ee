"""A quick bid in a page of text: what to buy, what it costs, what to look for first."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction
from pathlib import Path

from yieldplan.cli.plan_summary import MOST_CAUTIONS, typed
from yieldplan.cli.table import rows
from yieldplan.measure.money import say_feet, say_money
from yieldplan.model.bid import Bid, BidLine, MustFind
from yieldplan.units import UnitName, feet_and_inches, tape


def bid_summary(bid: Bid, job_file: Path, files: Sequence[Path]) -> Iterator[str]:
    """The page, line by line."""
    currency = bid.job.currency
    yield f"{bid.job.title}: a bid before any board is known"
    yield ""
    if bid.total is not None:
        yield f"The wood should cost about {say_money(bid.total)} {currency}."
    else:
        priced = sum(line.total for line in bid.lines if line.total is not None)
        yield (
            f"The lines with a price come to {say_money(priced)} {currency}; the others "
            "have none in the job file."
        )
    yield ""
    yield f"To buy ({currency})"
    yield from rows([_line(line) for line in bid.lines], align="<><>>", indent=2)
    yield ""
    yield "How that was reckoned"
    for line in bid.lines:
        yield f"  {_reckoned(line)}"
    if bid.must_find:
        yield ""
        yield "To find, hardest first"
        for found in bid.must_find:
            yield f"  {_to_find(found, bid.job.unit)}"
    if bid.cautions:
        yield ""
        yield "Mind"
        for caution in bid.cautions[:MOST_CAUTIONS]:
            yield f"  {caution.rstrip('.')}."
    yield ""
    yield "Next"
    for file in files:
        if file.suffix == ".xlsx":
            yield f"  Open {file}: its purchase list goes to the yard."
    yield "  List the boards you find there in a tally, and plan them:"
    yield f"    yieldplan plan {typed(job_file)} --stock tally.csv"


def _line(line: BidLine) -> tuple[str, ...]:
    name = f"{line.line} {line.grade}".strip()
    much = line.amount
    if line.per is None or line.total is None:
        return name, much, "", "no price", ""
    each = f"{say_money(line.per)} a {line.sold_by}"
    return name, much, "", each, say_money(line.total)


def _reckoned(line: BidLine) -> str:
    add = (
        f"add {line.add_percent} % (of what is bought, "
        f"{_percent(line.waste_percent)} % is waste)"
    )
    note = f"; {line.price_note}" if line.price_note else ""
    if line.net is None or line.rough is None:
        by = "length" if line.is_stick else "area"
        return f"{line.line}: by {by}, {add}{note}."
    return (
        f"{line.line}: parts {say_feet(line.net)} board feet, rough "
        f"{say_feet(line.rough)}, {add}{note}."
    )


def _percent(percent: Fraction) -> str:
    tenths = round(percent * 10)
    return f"{tenths // 10}.{tenths % 10}"


def _to_find(found: MustFind, unit: UnitName) -> str:
    inch = "" if unit == "in" else " mm"
    width = f"{tape(found.width, unit, join='-')}{' in' if unit == 'in' else inch}"
    length = feet_and_inches(found.length, unit) + inch
    board = "one board" if found.count == 1 else f"{found.count} pieces"
    face = {"clear": ", clear on a face", "sap allowed": ", sap allowed"}
    return (
        f"{board} of {found.line}, at least {width} wide and {length} long"
        f"{face.get(found.face, '')}, for {found.what_for}."
    )
