"""`yieldplan plan`: from a job and a yard's tally to a proved plan; without one, a bid."""

from __future__ import annotations

from collections.abc import Sequence
from contextlib import nullcontext
from fractions import Fraction
from pathlib import Path

import click

from yieldplan.cli.options import JOB, must_be_readable, papers, percent, workers


@click.command(short_help="Plan the cuts of a job from a yard's tally.")
@click.argument("job", type=JOB)
@click.option(
    "--stock",
    multiple=True,
    type=JOB,
    metavar="FILE",
    help="A tally of boards (CSV, XLSX or text), or a saved plan.json: then what is left "
    "of it is planned. May be given more than once.",
)
@click.option(
    "--since",
    type=JOB,
    metavar="FILE",
    help="What was cut of the saved plan since, and found in its wood: a line each, "
    "such as W07 cut, W07.2 knot 3 to 5, W07.3.1 spoiled.",
)
@click.option(
    "--out",
    type=click.Path(path_type=Path),
    metavar="FOLDER",
    help="Where the papers go. Left out: a folder beside the job, called after it.",
)
@click.option(
    "--papers",
    "names",
    callback=papers,
    metavar="NAMES",
    help="Papers to write, with commas between (see: yieldplan list papers).",
)
@click.option(
    "--wishes",
    is_flag=True,
    help="Say what each wish of the job costs: matched grain, clear backs, one-board "
    "panels, routes left out, the last 1/4 in of an opening. Plans again for each.",
)
@click.option("--json", "as_json", is_flag=True, help="Print one JSON object instead.")
@click.option(
    "--gap",
    callback=percent,
    metavar="PERCENT",
    help="Stop when the floor is within so much of the cost. Left out: 0.5.",
)
@click.option(
    "--seconds",
    type=click.IntRange(min=1),
    metavar="N",
    help="Search this long for each wood, or until the gap is reached. Left out: a "
    "counted amount of work, so that the same input gives the same plan.",
)
@click.option(
    "--workers",
    type=click.IntRange(min=1),
    callback=workers,
    metavar="N",
    help="Search with so many processes side by side; 1 does all in one. Left out: one for "
    "each core. The plan is the same, unless --seconds ends the search.",
)
def command(
    job: Path,
    stock: tuple[Path, ...],
    out: Path | None,
    names: tuple[str, ...] | None,
    wishes: bool,
    as_json: bool,
    gap: Fraction | None,
    seconds: int | None,
    since: Path | None,
    workers: int,
) -> int:
    """Plan the cuts of JOB from the boards of a tally.

    Writes a workbook and plan.json, and says what the plan costs, what to buy and how
    good it is proved to be. Without --stock it makes a quick bid: what to buy from net
    and rough board feet and the shop's waste; a job of nothing but sheets and sticks
    needs no tally and is planned. Ctrl-C keeps the best plan found.
    """
    if since is not None and wishes:
        raise click.UsageError(
            "--wishes and --since do not go together: wishes are priced before the saw turns."
        )
    if since is not None and not any(file.suffix.lower() == ".json" for file in stock):
        raise click.UsageError("--since needs the plan it speaks of: --stock plan.json")
    must_be_readable(job, *stock, *([since] if since is not None else []))
    if not stock and not _needs_no_tally(job):
        if gap is not None or seconds is not None or wishes:
            raise click.UsageError(
                "--gap, --seconds and --wishes need --stock: a bid does no search."
            )
        return _bid(job, out, names, as_json=as_json)
    return _plan(
        job,
        stock,
        out,
        names,
        wishes=wishes,
        as_json=as_json,
        gap=gap,
        seconds=seconds,
        since=since,
        workers=workers,
    )


def _needs_no_tally(job: Path) -> bool:
    from yieldplan.desk.quick_bid import needs_no_tally

    return needs_no_tally(job)


def _plan(
    job: Path,
    stock: Sequence[Path],
    out: Path | None,
    names: Sequence[str] | None,
    *,
    wishes: bool,
    as_json: bool,
    gap: Fraction | None,
    seconds: int | None,
    since: Path | None,
    workers: int,
) -> int:
    from yieldplan.cli import stoppable, terminal
    from yieldplan.cli.as_json import plan_as_json
    from yieldplan.cli.plan_summary import plan_summary
    from yieldplan.cli.troubles import NEEDS_WORK, PLANNED
    from yieldplan.cli.wishes_summary import wishes_summary
    from yieldplan.desk.hand_over import hand_over
    from yieldplan.desk.output import look_before
    from yieldplan.desk.plan_job import plan_job
    from yieldplan.desk.wishes import price_wishes
    from yieldplan.packing import Stop, hands

    folder = out or job.with_name(f"{job.stem}_plan")
    look_before(folder)
    stop = Stop(seconds=seconds) if gap is None else Stop(gap=gap, seconds=seconds)
    prices = None
    with hands(workers) or nullcontext() as lent:
        outcome = stoppable.run(
            lambda hear: plan_job(
                job,
                stock,
                stop=stop,
                hear=hear,
                since=since,
                say_back=lambda lines: terminal.say(lines, to_errors=True),
                hands=lent,
            ),
            stop.asked,
        )
        files = hand_over(outcome, folder, names)
        if not as_json:
            terminal.say(plan_summary(outcome.plan, files))
        if wishes and not stop.asked.is_set():
            prices = stoppable.run(
                lambda hear: price_wishes(outcome, stop, hear, lent),
                stop.asked,
                "Stopped before all wishes were priced; the plan is written.",
            )
    if as_json:
        terminal.say(plan_as_json(outcome.plan, files, prices), fold_lines=False)
    elif prices is not None:
        terminal.say(wishes_summary(prices, outcome.plan.job.currency))
    return PLANNED if outcome.plan.complete else NEEDS_WORK


def _bid(
    job: Path, out: Path | None, names: Sequence[str] | None, *, as_json: bool
) -> int:
    from yieldplan.cli import terminal
    from yieldplan.cli.as_json import bid_as_json
    from yieldplan.cli.bid_summary import bid_summary
    from yieldplan.cli.troubles import PLANNED
    from yieldplan.desk.hand_over import hand_over_bid
    from yieldplan.desk.output import look_before
    from yieldplan.desk.quick_bid import quick_bid

    folder = out or job.with_name(f"{job.stem}_bid")
    look_before(folder)
    bid = quick_bid(job)
    files = hand_over_bid(bid, folder, names)
    if as_json:
        terminal.say(bid_as_json(bid, files), fold_lines=False)
    else:
        terminal.say(bid_summary(bid, job, files))
    return PLANNED
