"""Holds the packer against others: an exact model by another solver, and jobs whose price is known.

`python -m tests.benchmarks.outside --jobs 2000 --planted 300`

- Small random jobs (kerfs that are not one cell, marks, faces, trims, copies, sets in
  steps, crooked boards): the cheapest plan by enumeration and HiGHS. No cost may lie below
  it, no floor above it, and what is called proved must equal it.
- Planted jobs: no floor may lie above what the boards cost that the parts were cut from.
- Random prices of parts, on both: no certificate may lie above a plan that exists.
- Each plan goes through the checker, where plan.json has words for the job.
"""

from __future__ import annotations

import argparse
import random
import sys
import time
from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field, replace
from fractions import Fraction

from hypothesis import HealthCheck, Phase, given, seed, settings

from tests.benchmarks.goods import NotOnThePage
from tests.benchmarks.measure import checked
from tests.benchmarks.planted import Planted, plant
from tests.packing.exact_model import cheapest
from tests.packing.random_problems import problems
from tests.packing.valid import assert_is_of_its_family
from yieldplan.packing import Problem, Solution, Stop, solve
from yieldplan.packing.floors.bound import certify
from yieldplan.packing.patterns.pricing import Pricing
from yieldplan.packing.problem import Bin

SMALL_WORK, PLANTED_WORK = 100_000, 100_000
_MOST_SAID = 3
"""Jobs that are wrong and written out."""
TRIES = 5
"""Vectors of random prices for each job."""


@dataclass
class Tally:
    """What was seen, and everything that was wrong."""

    counts: Counter[str] = field(default_factory=Counter)
    wrong: list[str] = field(default_factory=list)
    over: list[Fraction] = field(default_factory=list)
    """Cost over the exact or the planted one, as a share of that."""

    def note(self, words: str, *, of: object, holds: bool) -> None:
        """Count it, or keep the job it is wrong of."""
        self.counts[words] += 1
        if not holds:
            self.wrong.append(f"NOT SO: {words}: {of!r}")


def against_exact(jobs: int, seed_of: int, work: int = SMALL_WORK) -> Tally:
    """So many small random jobs."""
    tally = Tally()
    round_ = 0
    while tally.counts["jobs"] < jobs:

        @seed(1000 * seed_of + round_)
        @settings(
            max_examples=min(100, 4 * jobs),
            database=None,
            deadline=None,
            phases=[Phase.generate],
            suppress_health_check=list(HealthCheck),
        )
        @given(problem=problems(longest=24, widest=12, most_bins=4))
        def each(problem: Problem) -> None:
            if tally.counts["jobs"] < jobs:
                problem = replace(problem, offcut_percent=0)
                is_plain = tally.counts["jobs"] % 2 == 1
                _hold_small(_plain(problem) if is_plain else problem, tally, work)
                _say_where(tally.counts["jobs"], tally)

        each()
        round_ += 1
    return tally


def _plain(problem: Problem) -> Problem:
    """The problem with joints, routes and gangs that plan.json has words for."""
    makers = Counter(demand for item in problem.items for demand in item.makes)
    items = []
    for item in problem.items:
        alone = len(item.makes) == 1 and makers[min(item.makes)] == 1
        is_said = alone and all(item.zones) and item.length > max(item.zones)
        bits = problem.items[0].zone_bits or 1
        items.append(
            replace(item, zone_bits=bits)
            if is_said
            else replace(item, zones=(0, 0), zone_bits=0)
        )
    bins = tuple(
        replace(piece, holds=_said_to_hold(piece, problem)) for piece in problem.bins
    )
    return replace(problem, items=tuple(items), bins=bins)


def _said_to_hold(piece: Bin, problem: Problem) -> frozenset[int]:
    """Whole sets from straight boards only, nothing long from twisted ones."""
    held = {
        number
        for number in piece.holds
        if not piece.is_twisted
        or problem.items[number].length <= problem.twisted_at_most
    }
    for steps in problem.sets:
        if not (piece.is_straight and held >= set(steps)):
            held -= set(steps)
    return frozenset(held)


def _hold_small(problem: Problem, tally: Tally, work: int) -> None:
    stop = Stop(gap=Fraction(0), work=work)
    solution = solve(problem, stop, lambda _: None)
    if any(solution.short):
        _hold_plan(problem, solution, tally)
        # Mostly there is too little wood. What can be made of it is a job of its own.
        whole = cheapest(problem)
        tally.counts["called short, though a plan exists"] += whole is not None
        problem = asking_for(problem, solution.need)
        if not any(solution.need):
            return
        solution = solve(problem, stop, lambda _: None)
        if any(solution.short):
            # So little work is not what a user's job gets.
            tally.counts["called short again, with little work"] += 1
            solution = solve(problem, Stop(gap=Fraction(0)), lambda _: None)
        tally.note(
            "what was made once is made again",
            of=problem,
            holds=not any(solution.short),
        )
    tally.counts["jobs"] += 1
    _hold_plan(problem, solution, tally)
    exact = cheapest(problem)
    tally.note("a plan where there is one", of=problem, holds=exact is not None)
    if exact is None or any(solution.short):
        return
    cost, floor = solution.cost, solution.bound.value
    tally.note("cost not below the exact one", of=problem, holds=cost >= exact)
    tally.note("floor not above the exact cost", of=problem, holds=floor <= exact)
    if floor == cost:
        tally.note("proved and equal", of=problem, holds=cost == exact)
    tally.counts["cost is the exact one"] += cost == exact
    tally.counts["floor is the exact cost"] += floor == exact
    if exact:
        tally.over.append(Fraction(cost - exact, exact))
    _hold_prices(problem, exact, tally)


def asking_for(problem: Problem, need: Sequence[int]) -> Problem:
    """The problem with so many of each demand, none of some perhaps."""
    return replace(
        problem,
        demands=tuple(
            replace(demand, need=count)
            for demand, count in zip(problem.demands, need, strict=True)
        ),
    )


def against_planted(jobs: int, seed_of: int, work: int = PLANTED_WORK) -> Tally:
    """So many planted jobs."""
    tally = Tally()
    for number in range(jobs):
        _hold_planted(plant(seed_of * 10**6 + number), tally, work)
        _say_where(number + 1, tally)
    return tally


def _say_where(done: int, tally: Tally) -> None:
    """A word now and then, aside: thousands of jobs take hours."""
    if done % 25 == 0:
        print(f"{done} jobs, {len(tally.wrong)} wrong", file=sys.stderr, flush=True)


def _hold_planted(planted: Planted, tally: Tally, work: int) -> None:
    tally.counts["planted jobs"] += 1
    problem = planted.problem
    for pattern in planted.plan:
        assert_is_of_its_family(pattern, problem)
    solution = solve(problem, Stop(gap=Fraction(0), work=work), lambda _: None)
    _hold_plan(problem, solution, tally)
    holds = solution.bound.value <= planted.cost
    tally.note("floor not above the planted cost", of=problem, holds=holds)
    if any(solution.short):
        tally.counts["planted, and found to be short of wood"] += 1
    elif planted.cost:
        tally.over.append(Fraction(solution.cost - planted.cost, planted.cost))
        tally.counts["no dearer than planted"] += solution.cost <= planted.cost
    _hold_prices(problem, planted.cost, tally)


def _hold_plan(problem: Problem, solution: Solution, tally: Tally) -> None:
    for pattern in solution.patterns:
        assert_is_of_its_family(pattern, problem)
    try:
        report, _ = checked(problem, solution)
    except NotOnThePage:
        tally.counts["no words for it in plan.json"] += 1
        return
    assert report is not None
    objections = report["objections"]
    tally.note("passed by the checker", of=(problem, objections), holds=not objections)


def _hold_prices(problem: Problem, cost: int, tally: Tally) -> None:
    """Prices at random: whole boards' area shared out, more or less, some parts for nothing."""
    dice = random.Random(len(problem.bins) + 1000 * cost)
    need = [demand.need for demand in problem.demands]
    pricing = Pricing(problem)
    all_prices = sum(piece.price * piece.copies for piece in problem.bins)
    area = sum(piece.length * piece.width * piece.copies for piece in problem.bins)
    for _ in range(TRIES):
        prices = [
            int(all_prices * demand.area * dice.choice([0, 500, 1000, 1500]) // area)
            * dice.randrange(500, 1500)
            // 10**6
            for demand in problem.demands
        ]
        floor = certify(prices, need, pricing).value
        holds = floor <= cost
        tally.note("random prices prove no more", of=(problem, prices), holds=holds)


def said(tally: Tally) -> Iterator[str]:
    """The tally in lines."""
    for words, count in tally.counts.items():
        yield f"{count:7d}  {words}"
    if tally.over:
        mean = sum(tally.over) / len(tally.over)
        yield f"cost over it: {100 * float(mean):.2f} % in the mean, {100 * float(max(tally.over)):.2f} % at most"
    yield f"{len(tally.wrong)} wrong"
    yield from tally.wrong[:_MOST_SAID]


def main(arguments: list[str]) -> int:
    """Print both tallies; 1 when anything was wrong."""
    parser = argparse.ArgumentParser(
        prog="python -m tests.benchmarks.outside",
        description=__doc__,
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )
    parser.add_argument("--jobs", type=int, default=2000, help="small random jobs")
    parser.add_argument("--planted", type=int, default=300, help="planted jobs")
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--work", type=int, help="units of work for each job")
    chosen = parser.parse_args(arguments)
    is_wrong = False
    for count, run, work in (
        (chosen.jobs, against_exact, SMALL_WORK),
        (chosen.planted, against_planted, PLANTED_WORK),
    ):
        if not count:
            continue
        began = time.monotonic()
        tally = run(count, chosen.seed, chosen.work or work)
        print("\n".join(said(tally)), flush=True)
        print(f"{time.monotonic() - began:.0f} s", flush=True)
        is_wrong = is_wrong or bool(tally.wrong)
    return int(is_wrong)


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
