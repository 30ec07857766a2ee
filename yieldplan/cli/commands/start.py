"""`yieldplan start`: a job file, a tally that fits it, and an empty tally page."""

from __future__ import annotations

from pathlib import Path

import click


@click.command(short_help="Write a job and a tally to begin with.")
@click.argument("folder", type=click.Path(path_type=Path), default=Path())
@click.option(
    "--unit",
    type=click.Choice(["in", "mm"]),
    default="in",
    show_default=True,
    help="Unit of a bare number in the job.",
)
def command(folder: Path, unit: str) -> int:
    """Write a job file with its notes, a tally that fits it and an empty tally page.

    The pair plans as it is. They go into FOLDER, or here.
    """
    from yieldplan.cli import terminal
    from yieldplan.cli.plan_summary import typed
    from yieldplan.cli.troubles import PLANNED
    from yieldplan.desk.start import start

    files = start(folder, "mm" if unit == "mm" else "in")
    terminal.say("Written")
    terminal.say(f"  {file}" for file in files)
    job = next(file for file in files if file.suffix == ".toml")
    tally = next(file for file in files if file.suffix == ".csv")
    terminal.say(["Next", f"  yieldplan plan {typed(job)} --stock {typed(tally)}"])
    return PLANNED
