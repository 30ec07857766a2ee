"""Goes over a plan file again with the independent proof, and says what it found."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from yieldplan import plan_file
from yieldplan.checking import check
from yieldplan.checking.__main__ import DoubledKeyError, load
from yieldplan.model.report import Report


@dataclass(frozen=True, kw_only=True)
class CheckedPlan:
    """A plan file and the verdict on it.

    Parameters
    ----------
    costs
        Wood to what its pieces cost, added up again. [money/10,000]
    """

    document: plan_file.Document
    report: Report
    costs: Mapping[str, int]


def check_plan(path: Path) -> CheckedPlan:
    """Read a plan file and work every cut, figure and floor of it out again.

    Raises
    ------
    NotAPlan
        When the file is not a plan of this version.
    OSError
        When it cannot be read.
    """
    document = plan_file.read(path)
    found = check(document) | _doubled(path)
    return CheckedPlan(
        document=document, report=report_of(found), costs=dict(found["costs"])
    )


def report_of(found: Mapping[str, Any]) -> Report:
    """The plain findings of the proof as the model has them."""
    return Report(
        objections=tuple(found["objections"]),
        floors=dict(found["floors"]),
        checked=tuple(found["checked"]),
    )


def _doubled(path: Path) -> dict[str, Any]:
    """An objection where the file says the same thing twice; Python keeps only the last."""
    try:
        load(path)
    except DoubledKeyError as trouble:
        return {"objections": [str(trouble)]}
    except ValueError as trouble:
        raise plan_file.NotAPlan(f"{path.name}: {trouble}") from trouble
    return {}
