"""What a job wishes for beyond its parts: one kind of wish a file; the desk works out what each costs."""

from __future__ import annotations

import sys

from yieldplan.model.job import Job
from yieldplan.registry import find
from yieldplan.wishes.wish import Stated, Wish

__all__ = ["Stated", "Wish", "stated_in"]


def stated_in(job: Job) -> tuple[Stated, ...]:
    """Every wish the job states, kind by kind."""
    kinds = find(sys.modules[__name__], Wish)  # type: ignore[type-abstract]
    return tuple(
        wish for _, kind in sorted(kinds.items()) for wish in kind().stated(job)
    )
