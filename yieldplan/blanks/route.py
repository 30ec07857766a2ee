"""What every route answers: which blanks it offers for the parts of a job."""

from __future__ import annotations

from abc import ABC, abstractmethod
from collections.abc import Iterator, Sequence
from typing import ClassVar

from yieldplan.faults import Faults
from yieldplan.model.blanks import Blank
from yieldplan.model.job import Job
from yieldplan.model.parts import Part


class Route(ABC):
    """A way from stock to part. A part may have several; the packer chooses by money."""

    may_be_left_out: ClassVar[bool] = True
    """Whether a shop can do without it (`without` under `[shop]`)."""

    @abstractmethod
    def blanks(
        self, parts: Sequence[Part], job: Job, faults: Faults
    ) -> Iterator[Blank]:
        """Every blank this route offers for any of the parts.

        The id may be left empty; `blanks.routes` numbers them.
        """
