"""Stands in for the solver and the papers, so that the front door can be tested alone."""

from __future__ import annotations

import dataclasses
from collections.abc import Callable, Sequence
from pathlib import Path
from typing import Any

import pytest

from tests.measure.hall_case import make_plan
from yieldplan import papers, plan_file
from yieldplan.checking import check
from yieldplan.desk import plan_job as story
from yieldplan.desk.check_plan import report_of
from yieldplan.desk.plan_job import Outcome
from yieldplan.model.plan import Plan


def outcome_of(plan: Plan) -> Outcome:
    """The plan with its true proof."""
    document = plan_file.write(plan)
    return Outcome(
        plan=dataclasses.replace(plan, mark=document["mark"]),
        report=report_of(check(document)),
        document=document,
    )


def no_papers(monkeypatch: pytest.MonkeyPatch) -> None:
    """One text file in place of every paper."""

    def write(*given: Any) -> tuple[Path, ...]:
        folder = next(each for each in given if isinstance(each, Path))
        file = folder / "workbook.xlsx"
        file.write_bytes(b"a workbook")
        return (file,)

    monkeypatch.setattr(papers, "write_all", write, raising=False)
    monkeypatch.setattr(papers, "write_all_bid", write, raising=False)


def plans(
    monkeypatch: pytest.MonkeyPatch, make: Callable[..., Outcome] | None = None
) -> list[dict[str, Any]]:
    """Let `plan_job` give the hall case; the list fills with what it was asked."""
    asked: list[dict[str, Any]] = []

    def plan_job(job: Path, tallies: Sequence[Path], **said: Any) -> Outcome:
        asked.append({"job": job, "stock": tuple(tallies), **said})
        return make(**said) if make is not None else outcome_of(make_plan())

    monkeypatch.setattr(story, "plan_job", plan_job)
    no_papers(monkeypatch)
    return asked
