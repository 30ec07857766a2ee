"""One generated job, planned and checked: what it costs, how soon, and how much memory it takes.

Each job runs in a process of its own, so that no job's memory is another's.
"""

from __future__ import annotations

import multiprocessing
import time
from collections.abc import Callable
from concurrent.futures import ProcessPoolExecutor
from dataclasses import asdict, dataclass, field
from fractions import Fraction
from typing import Any

from tests.benchmarks.area_floor import area_floor
from tests.benchmarks.clock import GAPS, Clock
from tests.benchmarks.document import document
from tests.benchmarks.first_fit import first_fit
from tests.benchmarks.generator import FILLS, SIZES, draw, more_boards
from tests.benchmarks.memory import Memory, cpu
from yieldplan.checking import check
from yieldplan.model.pieces import MONEY_PER_UNIT
from yieldplan.model.plan import Family
from yieldplan.packing import Problem, Progress, Solution, Stop, solve
from yieldplan.packing.searching.crew import hands


@dataclass(frozen=True, kw_only=True)
class Task:
    """Which job, and how long to look."""

    size: str
    fill: str
    draw: int
    family: Family
    seconds: float | None = None
    gap: Fraction = Fraction(0)
    workers: int = 2
    by_eye: bool = True
    is_checked: bool = True


@dataclass(frozen=True, kw_only=True)
class Measured:
    """What came of it.

    Parameters
    ----------
    cost, floor, by_eye, area_floor
        In whole units of the currency.
    gap
        The floor below the cost. [% of the cost]
    first_plan_s
        Until there was a plan that leaves nothing out.
    cpu_s
        Seconds of a core, workers' too: on a busy machine far less than `seconds`.
    gap_at
        Percent to the seconds after which the floor was so near; None: never.
    by_eye_bought
        Boards that first-fit had to buy besides those offered.
    saved
        Less than first-fit. [% of what that costs]
    area_floor
        What no plan of any kind costs less than, by area alone.
    checked
        Whether the checker found nothing to object to.
    short
        Parts left out; then cost and floor are for what is made.
    """

    size: str
    fill: str
    draw: int
    family: str
    boards: int
    kinds: int
    parts: int
    cost: float
    floor: float
    gap: float
    first_plan_s: float
    seconds: float
    cpu_s: float
    memory_mb: float
    gap_at: dict[str, float | None]
    by_eye: float | None
    by_eye_bought: int | None
    saved: float | None
    area_floor: float
    proved: bool
    checked: bool | None
    check_s: float | None
    objections: list[str]
    short: int
    ended: str
    work: int
    workers: int
    stages: dict[str, float] = field(default_factory=dict)


def measure(task: Task) -> Measured:
    """Plan one job in a process of its own."""
    context = multiprocessing.get_context("spawn")
    with ProcessPoolExecutor(1, mp_context=context) as pool:
        return pool.submit(measure_here, task).result()


def measure_here(task: Task) -> Measured:
    """Plan one job, then hold the plan against the checker, first-fit and the area."""
    problem = draw(SIZES[task.size], FILLS[task.fill], task.draw, task.family)
    clock, memory, cpu_began = Clock(), Memory(), cpu()
    stop = Stop(gap=task.gap, seconds=task.seconds)
    solution = solve_with(problem, stop, clock.hear, task.workers)
    seconds, cpu_seconds = clock.seconds(), cpu() - cpu_began
    memory_mb = memory.peak_mb()
    clock.end(seconds, solution)
    report, check_seconds = checked(problem, solution, is_checked=task.is_checked)
    eye = (
        first_fit(
            problem,
            more_boards(SIZES[task.size], task.draw, len(problem.demands)),
        )
        if task.by_eye and not any(solution.short)
        else None
    )
    return Measured(
        size=task.size,
        fill=task.fill,
        draw=task.draw,
        family=task.family,
        boards=len(problem.bins),
        kinds=len(problem.demands),
        parts=sum(demand.need for demand in problem.demands),
        cost=_money(solution.cost),
        floor=_money(solution.bound.value),
        gap=percent(solution.cost - solution.bound.value, solution.cost),
        first_plan_s=round(clock.whole()[0][0], 3),
        seconds=round(seconds, 3),
        cpu_s=round(cpu_seconds, 3),
        memory_mb=round(memory_mb, 1),
        gap_at={str(gap): clock.gap_at(gap) for gap in GAPS},
        by_eye=None if eye is None else _money(eye.cost),
        by_eye_bought=None if eye is None else eye.bought,
        saved=None if eye is None else percent(eye.cost - solution.cost, eye.cost),
        area_floor=_money(area_floor(problem, solution.need)),
        proved=solution.cost == solution.bound.value and not any(solution.short),
        checked=None if report is None else not report["objections"],
        check_s=None if report is None else round(check_seconds, 3),
        objections=[] if report is None else report["objections"][:5],
        short=sum(solution.short),
        ended=solution.ended,
        work=solution.work,
        workers=task.workers,
        stages={stage.name: _money(stage.cost) for stage in solution.stages},
    )


def solve_with(
    problem: Problem, stop: Stop, hear: Callable[[Progress], None], workers: int
) -> Solution:
    """Planned by so many processes."""
    executor = hands(workers)
    if executor is None:
        return solve(problem, stop, hear)
    with executor:
        return solve(problem, stop, hear, executor=executor)


def checked(
    problem: Problem,
    solution: Solution,
    *,
    is_checked: bool = True,
    is_sheet: bool = False,
) -> tuple[dict[str, Any] | None, float]:
    """The checker's report on the plan, and how long it took. [s]

    The cost and the floor that it worked out are added to its objections where they are
    not the ones claimed.
    """  # fmt: skip
    if not is_checked:
        return None, 0.0
    written = document(problem, solution, is_sheet=is_sheet)
    began = time.monotonic()
    report = check(written)
    seconds = time.monotonic() - began
    for what, claimed in (("costs", solution.cost), ("floors", solution.bound.value)):
        found = list(report[what].values())
        if found != [claimed]:
            report["objections"].append(f"{what}: {claimed} claimed, {found} found")
    return report, seconds


def percent(part: int, whole: int) -> float:
    """A share, to a hundredth of a percent for people to read."""
    return round(100 * part / whole, 4) if whole else 0.0


def _money(units: int) -> float:
    return units / MONEY_PER_UNIT


def as_line(row: Measured) -> dict[str, Any]:
    """One job as a JSON line."""
    return asdict(row)
