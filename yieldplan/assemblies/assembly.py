"""What every assembly answers: its keys in a job file, and the parts it is made of."""

from __future__ import annotations

from abc import ABC, abstractmethod
from dataclasses import dataclass

from yieldplan.faults import Faults, Where
from yieldplan.model.job import Job
from yieldplan.model.parts import Built


@dataclass(frozen=True, kw_only=True)
class Assembly(ABC):
    """Something the job asks for, such as a drawer.

    A subclass's fields are the keys of its table in a job file; the table is called
    by the file's name in words (`[[drawer]]`). Field types are `str`, `int`, `bool`,
    `Inches`, `Literal[...]`, `Joint`, tuples of these, `X | None`, and frozen
    dataclasses of the same (inline tables). A field with a default may be left out;
    what a shop says under `[shop.<table>]` comes before the default. A field's
    `metadata={"words": ...}` says in one line what it is.
    """

    name: str
    where: Where

    @abstractmethod
    def build(self, job: Job, faults: Faults) -> Built:
        """Its parts, every size a sum, and cautions; what cannot be built goes to `faults`."""
