"""What every source of stock answers: which files it reads, and the pieces in them."""

from __future__ import annotations

from abc import ABC, abstractmethod
from pathlib import Path
from typing import ClassVar

from yieldplan.faults import Faults
from yieldplan.model.job import Job
from yieldplan.model.pieces import Piece


class Source(ABC):
    """A kind of file that lists pieces of wood, such as a yard's tally."""

    suffixes: ClassVar[tuple[str, ...]]
    """File endings it reads, with the point, lower case."""
    is_echoed: ClassVar[bool] = False
    """Whether what was read is said back before planning: what is typed short is."""

    @abstractmethod
    def pieces(self, file: Path, job: Job, faults: Faults) -> tuple[Piece, ...]:
        """The pieces listed, board feet and price fixed; every mistake goes to `faults`."""
