"""What every kind of wish answers: which wishes of its kind a job states, and the job without each of them."""

from __future__ import annotations

from abc import ABC, abstractmethod
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from yieldplan.model.job import Job

_NAMED = 3


@dataclass(frozen=True, kw_only=True)
class Stated:
    """A wish that a job states.

    Parameters
    ----------
    words
        The wish, as one would say it: `fronts matched`, `clear backs of A1/front`.
    without
        The same job without it.
    """

    words: str
    without: Job


class Wish(ABC):
    """A kind of wish: something a job asks for that could be let go to save wood."""

    @abstractmethod
    def stated(self, job: Job) -> Iterator[Stated]:
        """Every wish of this kind in the job, in the order of the job file."""


def named_by(assembly: object) -> str:
    """The name an assembly has in the job file."""
    return str(getattr(assembly, "name", ""))


def named(names: Sequence[str]) -> str:
    """A few names and how many more: `A1, A2, B1 and 3 more`."""
    if len(names) <= _NAMED + 1:
        *first, last = names
        return f"{', '.join(first)} and {last}" if first else last
    return f"{', '.join(names[:_NAMED])} and {len(names) - _NAMED} more"
