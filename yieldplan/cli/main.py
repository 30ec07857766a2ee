"""The program's door: finds the command asked for, and says in words what went wrong."""

from __future__ import annotations

import importlib
import pkgutil
import sys
from collections.abc import Sequence

import click

from yieldplan.cli import commands, terminal
from yieldplan.cli.troubles import STOPPED, known, tell

_STORY = ("start", "parts", "plan", "explain", "check", "list", "describe")
"""The order in which a shop meets the commands; one not named here comes after them."""


class LazyGroup(click.Group):
    """A group whose commands are the files of `cli/commands`, imported when used."""

    def list_commands(self, ctx: click.Context) -> list[str]:
        """Every command there is a file for, in the order of the story."""
        found = {info.name for info in pkgutil.iter_modules(commands.__path__)}
        known_order = [name for name in _STORY if name in found]
        return known_order + sorted(found.difference(_STORY))

    def get_command(self, ctx: click.Context, cmd_name: str) -> click.Command | None:
        """The command of that name; None when there is no file for it."""
        if cmd_name not in self.list_commands(ctx):
            return None
        module = importlib.import_module(f"{commands.__name__}.{cmd_name}")
        command = module.command
        if not isinstance(command, click.Command):
            raise TypeError(f"{module.__name__}.command is no command")
        return command


@click.group(
    cls=LazyGroup,
    context_settings={"help_option_names": ["-h", "--help"]},
    epilog="Exit codes: 0 planned; 1 the job or the stock needs work, or a part is "
    "missing; 2 mistyped; 3 could not read or write; 130 stopped before any plan.",
)
@click.version_option(package_name="yieldplan", prog_name="yieldplan")
def program() -> None:
    """From a woodworking commission to lumber.

    Reads a job file and a yard's tally; gives the parts, what to buy, and a cutting
    plan with the floor that no plan of its kind can cost less than.
    """


def main(arguments: Sequence[str] | None = None) -> int:
    """Run the program; gives the exit code."""
    terminal.prepare()
    try:
        code = program.main(
            None if arguments is None else list(arguments),
            prog_name="yieldplan",
            standalone_mode=False,
        )
        sys.stdout.flush()
    except click.ClickException as mistake:
        mistake.show()
        return mistake.exit_code
    except click.Abort:
        return STOPPED
    except BrokenPipeError:
        # Whoever read our output (head, less) has seen enough.
        terminal.close_quietly()
        return 0
    except known() as trouble:
        return tell(trouble)
    return code if isinstance(code, int) else 0
