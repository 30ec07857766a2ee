"""The main story: from a job file and a yard tally to a plan that has passed the proof."""

from __future__ import annotations

import dataclasses
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from pathlib import Path

from yieldplan import assemblies, blanks, job, packing, plan_file, sources, stock
from yieldplan.checking import check
from yieldplan.desk.check_plan import report_of
from yieldplan.faults import Faults, FaultsFound
from yieldplan.measure import purchase
from yieldplan.model.plan import Plan
from yieldplan.model.report import Report


class PlanRefused(RuntimeError):  # noqa: N818 - named for what happened
    """The proof refused a plan we made: our mistake, and nothing is shown."""


@dataclass(frozen=True, kw_only=True)
class Outcome:
    """A plan that passed, its proof, and the document both rest on."""

    plan: Plan
    report: Report
    document: plan_file.Document


def plan_job(
    job_file: Path,
    tallies: Sequence[Path],
    *,
    stop: packing.Stop,
    hear: Callable[[packing.Progress], None],
) -> Outcome:
    """Plan every wood of a job from the pieces offered.

    Raises
    ------
    FaultsFound
        With every mistake of the job and its tallies.
    PlanRefused
        When the independent checker does not pass the plan.
    """
    faults = Faults()
    commission = job.read(job_file, faults)
    if commission is None:
        raise FaultsFound(faults)
    built = assemblies.parts_of(commission, faults)
    routes = blanks.routes(built.parts, commission, faults)
    offered = (
        *sources.read(tallies, commission, faults),
        *sources.sheets_and_sticks(commission, routes, built.parts),
    )
    faults.stop_if_any()

    fits = stock.fits(routes, offered)
    woods = tuple(
        packing.plan_wood(
            wood, built.parts, routes, offered, fits, commission, stop, hear
        )
        for wood in sorted({part.wood for part in built.parts if not part.set_up})
    )
    plan = Plan(
        job=commission,
        parts=built.parts,
        blanks=routes,
        pieces=offered,
        fits=fits,
        woods=woods,
        purchase=purchase.lines(woods),
        cautions=built.cautions,
    )
    document = plan_file.write(plan)
    report = report_of(check(document))
    if not report.passed:
        raise PlanRefused("\n".join(report.objections))
    return Outcome(
        plan=dataclasses.replace(plan, mark=document["mark"]),
        report=report,
        document=document,
    )
