"""`yieldplan check`: goes over a plan file again with the independent proof."""

from __future__ import annotations

from pathlib import Path

import click

from yieldplan.cli.options import JOB, plan_file_at


@click.command(short_help="Go over a plan file again, cut by cut.")
@click.argument("plan", type=JOB)
def command(plan: Path) -> int:
    """Work every cut, figure and floor of PLAN out again.

    PLAN is a plan.json or the folder it lies in. A program of its own does it, which
    shares nothing with the one that made the plan.
    """
    from yieldplan.cli import terminal
    from yieldplan.cli.troubles import NEEDS_WORK, PLANNED
    from yieldplan.cli.verdict import verdict
    from yieldplan.desk.check_plan import check_plan

    checked = check_plan(plan_file_at(plan))
    terminal.say(verdict(checked))
    return PLANNED if checked.report.passed else NEEDS_WORK
