"""`yieldplan describe`: one joint, assembly or other thing, with its keys and an example."""

from __future__ import annotations

import click


@click.command(short_help="Describe one of them: what it is, its keys, an example.")
@click.argument("name", nargs=-1, required=True)
def command(name: tuple[str, ...]) -> int:
    """Describe NAME: what it is, what can be set about it, how it is written."""
    from yieldplan.cli import terminal
    from yieldplan.cli.troubles import PLANNED
    from yieldplan.desk.describe import describe, names
    from yieldplan.faults import did_you_mean

    wanted = " ".join(name).strip()
    known = {each.casefold(): each for group in names().values() for each, _ in group}
    plain = wanted.casefold().replace("_", " ")
    if plain not in known:
        raise click.UsageError(
            f'"{wanted}" is not known here. {did_you_mean(wanted, known.values())}'
        )
    terminal.say(describe(known[plain]))
    return PLANNED
