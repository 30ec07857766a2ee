"""`yieldplan list`: every word a job file may use, by kind."""

from __future__ import annotations

import click


@click.command(short_help="List the joints, assemblies, woods and so on it knows.")
@click.argument("what", nargs=-1)
def command(what: tuple[str, ...]) -> int:
    """List what a job file can name: all of it, or one kind (joints, papers, ...)."""
    from yieldplan.cli import terminal
    from yieldplan.cli.table import rows
    from yieldplan.cli.troubles import PLANNED
    from yieldplan.desk.describe import names
    from yieldplan.faults import did_you_mean

    groups = names()
    wanted = " ".join(what).strip().lower()
    if wanted and wanted not in groups:
        raise click.UsageError(
            f'"{wanted}" is no kind of thing here. {did_you_mean(wanted, groups)}'
        )
    for number, (group, known) in enumerate(groups.items()):
        if wanted not in ("", group):
            continue
        if number and not wanted:
            terminal.say("")
        terminal.say(group)
        terminal.say(rows(known, align="<<", indent=2) if known else "  none yet")
    return PLANNED
