"""`yieldplan parts`: the parts of a job with their finished sizes, and how those add up."""

from __future__ import annotations

from pathlib import Path

import click

from yieldplan.cli.options import JOB, must_be_readable


@click.command(short_help="List the parts of a job, with the sums if asked.")
@click.argument("job", type=JOB)
@click.option("--sums", is_flag=True, help="Under each part, how its sizes add up.")
def command(job: Path, sums: bool) -> int:
    """List the parts of JOB: how many, finished size, wood and show face."""
    from yieldplan.cli import terminal
    from yieldplan.cli.parts_list import parts_list
    from yieldplan.cli.troubles import PLANNED
    from yieldplan.desk.quick_bid import parts_of

    must_be_readable(job)
    commission, built = parts_of(job)
    terminal.say(parts_list(commission, built, with_sums=sums))
    return PLANNED
