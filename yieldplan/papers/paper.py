"""What every paper answers: which files it writes for a plan."""

from __future__ import annotations

from abc import ABC, abstractmethod
from pathlib import Path

from yieldplan.model.bid import Bid
from yieldplan.model.plan import Plan
from yieldplan.model.report import Report


class Paper(ABC):
    """A paper that is handed over. It reads a plan and stores nothing in it."""

    @abstractmethod
    def write(self, plan: Plan, report: Report, folder: Path) -> tuple[Path, ...]:
        """Write the paper for a checked plan; the files written, inside `folder`."""

    def write_bid(self, bid: Bid, folder: Path) -> tuple[Path, ...]:
        """Write the paper for a quick bid (no boards known); nothing by default."""
        return ()
