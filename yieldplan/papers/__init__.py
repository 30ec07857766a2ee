"""What is handed over: one paper a file or folder, derived from the plan."""

from __future__ import annotations

import sys
from collections.abc import Collection
from pathlib import Path

from yieldplan import registry
from yieldplan.model.bid import Bid
from yieldplan.model.plan import Plan
from yieldplan.model.report import Report
from yieldplan.papers.paper import Paper


def write_all(
    plan: Plan, report: Report, folder: Path, names: Collection[str] | None = None
) -> tuple[Path, ...]:
    """Write every paper of a checked plan into a folder, or only those named.

    Raises
    ------
    ValueError
        When a name is no paper's.
    """
    return tuple(
        path for paper in _papers(names) for path in paper.write(plan, report, folder)
    )


def write_all_bid(
    bid: Bid, folder: Path, names: Collection[str] | None = None
) -> tuple[Path, ...]:
    """Write every paper of a quick bid into a folder, or only those named.

    Raises
    ------
    ValueError
        When a name is no paper's.
    """
    return tuple(
        path for paper in _papers(names) for path in paper.write_bid(bid, folder)
    )


def _papers(names: Collection[str] | None) -> list[Paper]:
    known = registry.find(sys.modules[__name__], Paper)  # type: ignore[type-abstract]
    unknown = sorted(set(names or ()) - set(known))
    if unknown:
        raise ValueError(f"no paper is called {', '.join(unknown)}: {', '.join(known)}")
    return [paper() for name, paper in known.items() if names is None or name in names]
