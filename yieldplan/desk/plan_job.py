"""The main story: from a job file and a yard tally to a plan that has passed the proof."""

from __future__ import annotations

import dataclasses
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field
from pathlib import Path

from yieldplan import assemblies, blanks, job, packing, plan_file, sources, stock
from yieldplan.checking import check
from yieldplan.desk.check_plan import report_of
from yieldplan.desk.what_is_left import (
    is_saved_plan,
    less_made,
    less_used,
    what_is_left,
)
from yieldplan.faults import Faults, FaultsFound
from yieldplan.measure import minimum, purchase
from yieldplan.measure.minimum_feet import short_of_feet
from yieldplan.model.plan import Plan
from yieldplan.model.report import Report
from yieldplan.sources.one_grid import on_one_grid


class PlanRefused(RuntimeError):  # noqa: N818 - named for what happened
    """The proof refused a plan we made: our mistake, and nothing is shown."""


@dataclass(frozen=True, kw_only=True)
class Outcome:
    """A plan that passed, its proof, and the document both rest on.

    Parameters
    ----------
    solutions
        The packer's own answer for each wood: what it knows is of use when the job is
        planned again with a wish less.
    """

    plan: Plan
    report: Report
    document: plan_file.Document
    solutions: Mapping[str, packing.Solution] = field(default_factory=dict)


def plan_job(
    job_file: Path,
    tallies: Sequence[Path],
    *,
    stop: packing.Stop,
    hear: Callable[[packing.Progress], None],
    since: Path | None = None,
    say_back: Callable[[Sequence[str]], None] = lambda _: None,
    hands: packing.Hands | None = None,
) -> Outcome:
    """Plan every wood of a job from the pieces offered.

    Parameters
    ----------
    tallies
        Tallies of boards; a saved plan among them offers what is left of it.
    since
        What was cut of the saved plan and found in its wood since.
    say_back
        Told what was read from short lines, in full words, before the search.
    hands
        Processes that lend a hand, also to several woods at a time; None for none. The
        plan is the same unless the clock ends the search.

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
    left = what_is_left(tallies, since, commission, faults)
    built = assemblies.parts_of(less_made(commission, left), faults)
    routes = blanks.routes(built.parts, commission, faults)
    listed = [path for path in tallies if not is_saved_plan(path)]
    boards = sources.read(listed, commission, faults, also=left.pieces)
    of_the_job = sources.sheets_and_sticks(commission, routes, built.parts)
    offered = on_one_grid(
        (*boards, *less_used(of_the_job, left, commission)), commission.shop
    )
    faults.stop_if_any()
    say_back(sources.as_read(listed, boards, commission))

    fits = stock.fits(routes, offered)
    questions = [
        packing.ask_wood(wood, built.parts, routes, offered, fits, commission)
        for wood in sorted({part.wood for part in built.parts if not part.set_up})
    ]
    solutions = packing.solve_woods(questions, stop, hear, hands)
    woods = tuple(
        packing.wood_plan(
            question, solution, built.parts, routes, offered, fits, commission
        )
        for question, solution in zip(questions, solutions, strict=True)
    )
    plan = Plan(
        job=commission,
        parts=built.parts,
        blanks=routes,
        pieces=offered,
        fits=fits,
        woods=woods,
        purchase=minimum.filled_up(purchase.lines(woods, offered), commission),
        cautions=(
            *stock.cautions(cut.piece for wood in woods for cut in wood.cuttings),
            *short_of_feet(woods, offered, commission),
            *built.cautions,
        ),
        on_the_bench=left.made,
    )
    document = plan_file.write(plan)
    report = report_of(check(document))
    if not report.passed:
        raise PlanRefused("\n".join(report.objections))
    return Outcome(
        plan=dataclasses.replace(plan, mark=document["mark"]),
        report=report,
        document=document,
        solutions={
            question.wood: solution
            for question, solution in zip(questions, solutions, strict=True)
        },
    )
