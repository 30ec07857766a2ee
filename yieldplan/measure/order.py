"""Puts names in the order a person counts them: W2 before W10."""

from __future__ import annotations

import re

_RUN = re.compile(r"([0-9]+)")


def natural(name: str) -> tuple[tuple[int, int, str], ...]:
    """A sort key under which runs of digits count as numbers.

    The name itself ends it, so that two different names never share a key.
    """
    runs = [
        (0, int(run), "") if run.isascii() and run.isdigit() else (1, 0, run)
        for run in _RUN.split(name)
        if run
    ]
    # Before every run: a name comes before those that go on from it.
    return (*runs, (-1, 0, name))
