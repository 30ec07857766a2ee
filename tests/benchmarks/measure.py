"""One generated job, planned and checked: what it costs, how soon, and how much memory it takes.

Each job runs in a process of its own, so that no job's memory is another's.
"""

from __future__ import annotations

import multiprocessing
import resource
import sys
import threading
import time
from collections.abc import Callable
from concurrent.futures import ProcessPoolExecutor
from dataclasses import asdict, dataclass, field
from fractions import Fraction
from pathlib import Path
from typing import Any

from tests.benchmarks.area_floor import area_floor
from tests.benchmarks.document import document
from tests.benchmarks.first_fit import first_fit
from tests.benchmarks.generator import FILLS, SIZES, draw, more_boards
from yieldplan.checking import check
from yieldplan.model.pieces import MONEY_PER_UNIT
from yieldplan.model.plan import Family
from yieldplan.packing import Problem, Progress, Solution, Stop, solve

GAPS = (5, 3, 2, 1)
"""Percent of the cost: how long it takes to come so near the floor."""
INCOMPLETE = "too little wood"
"""The stage in which a search looks for its first plan that leaves nothing out."""


@dataclass(frozen=True, kw_only=True)
class Task:
    """Which job, and how long to look."""

    size: str
    fill: str
    draw: int
    family: Family
    seconds: float | None = None
    gap: Fraction = Fraction(0)
    workers: int = 1
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


@dataclass
class Clock:
    """Wall time of every better plan and floor."""

    began: float = field(default_factory=time.monotonic)
    heard: list[tuple[float, Progress]] = field(default_factory=list)
    is_short: bool = False
    """Whether the plan handed back leaves something out."""

    def hear(self, progress: Progress) -> None:
        """Note when it was said."""
        self.heard.append((self.seconds(), progress))

    def seconds(self) -> float:
        """Since the search began."""
        return time.monotonic() - self.began

    def end(self, seconds: float, solution: Solution) -> None:
        """The last word: what is handed back, whether it was said before or not."""
        self.is_short = any(solution.short)
        last = Progress(
            wood="",
            stage="end",
            cost=solution.cost,
            bound=solution.bound.value,
            work=solution.work,
        )
        self.heard.append((seconds, last))

    def whole(self) -> list[tuple[float, Progress]]:
        """What was said of plans that make all that the last one makes.

        Where the search says that wood is short, what it had before left parts out; the
        last word of that stage makes everything, or else asks for less from then on.
        """
        short = [
            place
            for place, (_, said) in enumerate(self.heard)
            if said.stage == INCOMPLETE
        ]
        if not short:
            return self.heard
        return self.heard[short[-1] + self.is_short :]

    def gap_at(self, percent: int) -> float | None:
        """Seconds until the floor was that near the cost."""
        return next(
            (
                round(seconds, 3)
                for seconds, said in self.whole()
                if said.bound and 100 * (said.cost - said.bound) <= percent * said.cost
            ),
            None,
        )


def measure(task: Task) -> Measured:
    """Plan one job in a process of its own."""
    context = multiprocessing.get_context("spawn")
    with ProcessPoolExecutor(1, mp_context=context) as pool:
        return pool.submit(measure_here, task).result()


def measure_here(task: Task) -> Measured:
    """Plan one job, then hold the plan against the checker, first-fit and the area."""
    problem = draw(SIZES[task.size], FILLS[task.fill], task.draw, task.family)
    clock, memory = Clock(), Memory()
    stop = Stop(gap=task.gap, seconds=task.seconds)
    solution = solve_with(problem, stop, clock.hear, task.workers)
    seconds = clock.seconds()
    memory_mb = memory.peak_mb()
    clock.end(seconds, solution)
    report, check_seconds = checked(problem, solution, is_checked=task.is_checked)
    eye = (
        first_fit(problem, more_boards(SIZES[task.size], task.draw))
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
    if workers != 1:
        raise ValueError("the search has one worker")
    return solve(problem, stop, hear)


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


class Memory:
    """Most memory this process and its workers hold at one time, sampled for the workers."""

    _EVERY = 0.2
    """[s]"""

    def __init__(self) -> None:
        self._workers = 0.0
        self._over = threading.Event()
        self._watch = threading.Thread(target=self._sample, daemon=True)
        self._watch.start()

    def peak_mb(self) -> float:
        """End the watch. Shared pages count in every process that holds them."""
        self._over.set()
        self._watch.join()
        own = _status("self", "VmHWM")
        if own is None:
            # Where there is no /proc: kilobytes on Linux, bytes on a Mac.
            peak = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss
            peak += resource.getrusage(resource.RUSAGE_CHILDREN).ru_maxrss
            return peak / (1 << 20 if sys.platform == "darwin" else 1 << 10)
        return own + self._workers

    def _sample(self) -> None:
        while not self._over.wait(self._EVERY):
            children = [
                _status(str(child.pid), "VmRSS") or 0.0
                for child in multiprocessing.active_children()
            ]
            self._workers = max(self._workers, sum(children))


def _status(process: str, key: str) -> float | None:
    try:
        lines = Path(f"/proc/{process}/status").read_text("ascii").splitlines()
    except OSError:
        return None
    found = (line.split() for line in lines if line.startswith(f"{key}:"))
    return next((int(words[1]) / 1024 for words in found), None)


def as_line(row: Measured) -> dict[str, Any]:
    """One job as a JSON line."""
    return asdict(row)
