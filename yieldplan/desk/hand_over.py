"""Writes what is handed over: the plan file and its papers, in one folder, in one step."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from yieldplan import papers, plan_file, registry
from yieldplan.desk.output import deliver
from yieldplan.desk.plan_job import Outcome
from yieldplan.model.bid import Bid
from yieldplan.papers.paper import Paper


def names_of_papers() -> tuple[str, ...]:
    """Every paper there is, by the name people write."""
    return tuple(registry.find(papers, Paper))  # type: ignore[type-abstract]


def hand_over(
    outcome: Outcome, folder: Path, names: Sequence[str] | None = None
) -> tuple[Path, ...]:
    """The plan file and the papers of a plan that passed its proof; the files written.

    Parameters
    ----------
    names
        Papers to write; None for all.
    """

    def fill(staged: Path) -> None:
        (staged / "plan.json").write_bytes(plan_file.dump(outcome.document))
        papers.write_all(outcome.plan, outcome.report, staged, names)

    return deliver(folder, fill)


def hand_over_bid(
    bid: Bid, folder: Path, names: Sequence[str] | None = None
) -> tuple[Path, ...]:
    """The papers of a quick bid; there is no plan file without boards."""
    return deliver(folder, lambda staged: papers.write_all_bid(bid, staged, names))
