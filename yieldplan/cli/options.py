"""How the words behind a command are read: files, per cent, names of papers."""

from __future__ import annotations

import os
from fractions import Fraction
from pathlib import Path

import click

JOB = click.Path(path_type=Path, exists=False)
"""A file to read. One that is not there is an unreadable file, not a mistyped word."""


def percent(
    _ctx: click.Context, _param: click.Parameter, said: str | None
) -> Fraction | None:
    """Parts of a hundred, `0.5` or `0.5%`, as a share, exactly."""
    if said is None:
        return None
    text = said.strip().removesuffix("%").strip()
    digits = text.replace(".", "", 1)
    if not (digits.isascii() and digits.isdecimal()) or text.startswith("."):
        raise click.BadParameter(f'"{said}" is not per cent. Write it like 0.5')
    share = Fraction(text) / 100
    if share >= 1:
        raise click.BadParameter(
            f"{said} per cent is the whole cost. Write it like 0.5"
        )
    return share


def workers(
    _ctx: click.Context, _param: click.Parameter, said: int | None
) -> int | None:
    """How many; left out, as many as there are cores this process may use."""
    return cores() if said is None else said


def cores() -> int:
    """Cores this process may use."""
    if hasattr(os, "sched_getaffinity"):
        return len(os.sched_getaffinity(0))
    return os.cpu_count() or 1


def papers(
    _ctx: click.Context, _param: click.Parameter, said: str | None
) -> tuple[str, ...] | None:
    """Names of papers with commas between."""
    if said is None:
        return None
    from yieldplan.desk.hand_over import names_of_papers
    from yieldplan.faults import did_you_mean

    known = names_of_papers()
    names = tuple(filter(None, (name.strip() for name in said.split(","))))
    for name in names:
        if name not in known:
            raise click.BadParameter(
                f'"{name}" is no paper. {did_you_mean(name, known)}'
            )
    if not names:
        raise click.BadParameter(f"Name a paper. Known here: {', '.join(known)}")
    return names


def must_be_readable(*files: Path) -> None:
    """Look whether every file can be opened.

    Raises
    ------
    OSError
        For the first that cannot: nothing in it can be wrong yet.
    """
    for file in files:
        with file.open("rb"):
            pass


def plan_file_at(path: Path) -> Path:
    """The plan file meant: the file itself, or the one in that folder."""
    return path / "plan.json" if path.is_dir() else path
