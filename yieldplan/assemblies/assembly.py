"""What every assembly answers: its keys in a job file, its parts, and what they make when put together."""

from __future__ import annotations

from abc import ABC, abstractmethod
from collections.abc import Mapping
from dataclasses import dataclass
from typing import ClassVar

from yieldplan.faults import Faults, Where
from yieldplan.model.job import Job
from yieldplan.model.parts import Built, Part
from yieldplan.units import Inches


@dataclass(frozen=True, kw_only=True)
class Fit:
    """A size measured over the finished work, beside the size it should have.

    Parameters
    ----------
    words
        What is measured.
    got
        Worked out from the finished parts. [in]
    asked
        What the job asks for, clearances taken off. [in]
    """

    words: str
    got: Inches
    asked: Inches


@dataclass(frozen=True, kw_only=True)
class Assembly(ABC):
    """Something the job asks for, such as a drawer.

    A subclass's fields are the keys of its table in a job file; the table is called
    by the file's name in words (`[[drawer]]`). Field types are `str`, `int`, `bool`,
    `Inches`, `Literal[...]`, `Joint`, tuples of these, `X | None`, and frozen
    dataclasses of the same (inline tables). A field with a default may be left out;
    what a shop says under `[shop.<table>]` comes before the default. Something made of
    another assembly names it as `shop_table_of`, and takes what the shop says of that
    one too (a bank of drawers what `[shop.drawer]` says). A field's
    `metadata={"words": ...}` says in one line what it is.
    """

    shop_table_of: ClassVar[str] = ""

    name: str
    where: Where

    @abstractmethod
    def build(self, job: Job, faults: Faults) -> Built:
        """Its parts, every size a sum, and cautions; what cannot be built goes to `faults`."""

    @abstractmethod
    def put_together(self, parts: Mapping[str, Part], job: Job) -> tuple[Fit, ...]:
        """What the finished parts measure when they are joined, beside what was asked.

        Worked from finished sizes and the depth of each joint, not from the sums that
        led to them: the tests hold the two against each other.
        """
