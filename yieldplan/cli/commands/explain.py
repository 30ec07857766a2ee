"""`yieldplan explain`: why a part is the size it is, and where it lies."""

from __future__ import annotations

from pathlib import Path

import click

from yieldplan.cli.options import JOB, plan_file_at


@click.command(short_help="Say why a part is this size and where it lies.")
@click.argument("plan", type=JOB)
@click.argument("part", nargs=-1, required=True)
def command(plan: Path, part: tuple[str, ...]) -> int:
    """Say why PART is the size it is, and out of which board it comes.

    PLAN is a plan.json or the folder it lies in.
    """
    from yieldplan.cli import terminal
    from yieldplan.cli.troubles import MISTYPED, NEEDS_WORK, PLANNED
    from yieldplan.cli.verdict import verdict
    from yieldplan.desk.check_plan import check_plan
    from yieldplan.desk.explain import explain
    from yieldplan.faults import FaultsFound

    checked = check_plan(plan_file_at(plan))
    if not checked.report.passed:
        terminal.say(verdict(checked), to_errors=True)
        return NEEDS_WORK
    try:
        said = explain(checked.document, " ".join(part))
    except FaultsFound as mistyped:
        terminal.say((str(fault) for fault in mistyped.faults), to_errors=True)
        return MISTYPED
    terminal.say(said)
    return PLANNED
