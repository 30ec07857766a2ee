"""Plans sheet jobs: `python -m tests.benchmarks.sheets --draws 3 --seconds 30 --json`.

A kitchen of plywood carcasses, about 200 parts from whole sheets, as a shop would ask for
it; with parts that may lie across and without, from one size of sheet and from three; and
plates of a published instance, each kind many times. Kerf and trim as in the shop.
"""

from __future__ import annotations

import argparse
import json
import sys
import tomllib
from collections import Counter
from collections.abc import Callable
from dataclasses import asdict, dataclass, replace
from fractions import Fraction
from pathlib import Path

import numpy as np

from tests.benchmarks.area_floor import area_floor
from tests.benchmarks.clock import GAPS, Clock
from tests.benchmarks.measure import checked, percent, solve_with
from tests.packing.plates import make_problem
from yieldplan.model.plan import Family
from yieldplan.packing import Problem, Stop

INCH = 8128
"""Ticks in an inch."""
SIXTEENTH = INCH // 16
INSTANCES = Path(__file__).parents[1] / "reference" / "cutting_instances.toml"

Sizes = Counter[tuple[int, int]]
"""Length and width of a part in 1/16 in, and how many of it."""


def kitchen(number: int) -> Sizes:
    """Base and wall cabinets of 3/4 in sheets until there are 200 parts."""
    rng = np.random.default_rng([number, 200])
    parts: Sizes = Counter()
    board, shelf_play = 12, 2
    while parts.total() < 200:
        width = 16 * int(rng.choice([12, 15, 18, 21, 24, 27, 30, 33, 36]))
        inside = width - 2 * board
        if rng.random() < 0.6:
            high, deep = 16 * 30 + 8, 16 * 23 + 4
            parts[high, deep] += 2
            parts[inside, deep] += 1
            parts[inside, 4 * 16] += 2
            parts[width, 4 * 16] += 1
            parts[inside - shelf_play, deep - 16] += int(rng.integers(1, 3))
        else:
            high, deep = 16 * int(rng.choice([30, 36, 42])), 16 * 11 + 8
            parts[high, deep] += 2
            parts[inside, deep] += 2
            parts[inside - shelf_play, deep - 8] += int(rng.integers(1, 4))
            parts[inside, 3 * 16] += 1
    return parts


def posed(
    parts: Sizes,
    sheets: list[tuple[int, int, int]],
    family: Family,
    *,
    turned: bool,
) -> Problem:
    """The sheets and what is cut from them, 1/8 in of kerf and 1/4 in of trim.

    Parameters
    ----------
    sheets
        Length and width [1/16 in] and price [money/10,000] of each size offered.
    turned
        Whether parts may lie across.
    """
    sizes = [(length * SIXTEENTH, width * SIXTEENTH) for length, width in sorted(parts)]
    needs = [parts[size] for size in sorted(parts)]
    plain = make_problem(
        (sheets[0][0] * SIXTEENTH, sheets[0][1] * SIXTEENTH),
        sizes,
        needs,
        family,
        copies=sum(needs),
        kerf=2 * SIXTEENTH,
    )
    across = [
        replace(item, name=f"{item.name} across", length=item.width, width=item.length)
        for item in plain.items
        if item.length != item.width
    ]
    items = (*plain.items, *across) if turned else plain.items
    trim = (4 * SIXTEENTH, 4 * SIXTEENTH)
    bins = tuple(
        replace(
            plain.bins[0],
            name=f"sheet {number}",
            length=length * SIXTEENTH,
            width=width * SIXTEENTH,
            price=price,
            trims=trim,
            edges=trim,
            holds=frozenset(range(len(items))),
        )
        for number, (length, width, price) in enumerate(sheets, start=1)
    )
    return replace(
        plain,
        items=items,
        bins=bins,
        step_along=SIXTEENTH,
        step_across=SIXTEENTH,
        marks_from="trimmed end",
    )


FOUR_BY_EIGHT = (96 * 16, 48 * 16, 840_000)
FIVE_BY_TEN = (120 * 16, 60 * 16, 1_290_000)
FIVE_BY_FIVE = (60 * 16, 60 * 16, 690_000)


def plates(number: int) -> Sizes:
    """The kinds of a published plate instance in inches, each asked for 10 to 40 times."""
    instances = tomllib.loads(INSTANCES.read_text(encoding="utf-8"))["two_d"]
    (instance,) = (each for each in instances if each["id"] == "cgcut2")
    rng = np.random.default_rng([number, 40])
    return Counter(
        {
            (length * 16, width * 16): int(rng.integers(10, 41))
            for length, width, _ in instance["items"]
        }
    )


JOBS: dict[str, Callable[[int, Family], Problem]] = {
    "grained": lambda n, f: posed(kitchen(n), [FOUR_BY_EIGHT], f, turned=False),
    "turned": lambda n, f: posed(kitchen(n), [FOUR_BY_EIGHT], f, turned=True),
    "sizes": lambda n, f: posed(
        kitchen(n), [FOUR_BY_EIGHT, FIVE_BY_TEN, FIVE_BY_FIVE], f, turned=True
    ),
    "plates": lambda n, f: posed(plates(n), [FOUR_BY_EIGHT], f, turned=False),
}


@dataclass(frozen=True, kw_only=True)
class Sheeted:
    """How one job went; money in 1/10,000."""

    name: str
    draw: int
    family: str
    parts: int
    kinds: int
    sheets: int
    cost: int
    floor: int
    area_floor: int
    gap: float
    proved: bool
    first_plan_s: float
    gap_at: dict[str, float | None]
    seconds: float
    checked: bool
    check_s: float
    objections: list[str]
    short: int


def run(
    name: str, number: int, family: Family, seconds: float, workers: int = 1
) -> Sheeted:
    """Plan one job; stop when it is proved, or by the clock."""
    problem = JOBS[name](number, family)
    clock = Clock()
    stop = Stop(gap=Fraction(0), seconds=seconds)
    solution = solve_with(problem, stop, clock.hear, workers)
    took = clock.seconds()
    clock.end(took, solution)
    report, check_seconds = checked(problem, solution, is_sheet=True)
    assert report is not None
    cost, floor = solution.cost, solution.bound.value
    return Sheeted(
        name=name,
        draw=number,
        family=family,
        parts=sum(demand.need for demand in problem.demands),
        kinds=len(problem.demands),
        sheets=len(solution.patterns),
        cost=cost,
        floor=floor,
        area_floor=area_floor(problem, solution.need),
        gap=percent(cost - floor, cost),
        proved=cost == floor and not any(solution.short),
        first_plan_s=round(clock.whole()[0][0], 3),
        gap_at={str(gap): clock.gap_at(gap) for gap in GAPS},
        seconds=round(took, 3),
        checked=not report["objections"],
        check_s=round(check_seconds, 3),
        objections=report["objections"][:5],
        short=sum(solution.short),
    )


def main(arguments: list[str]) -> int:
    """Print every job; 1 when the checker objects to one."""
    parser = argparse.ArgumentParser(
        prog="python -m tests.benchmarks.sheets",
        description=__doc__,
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )
    parser.add_argument("jobs", nargs="*", help=", ".join(JOBS))
    parser.add_argument("--draws", type=int, default=3)
    parser.add_argument("--first", type=int, default=1)
    parser.add_argument("--family", choices=["R", "C", "E"], default="E")
    parser.add_argument("--seconds", type=float, default=30)
    parser.add_argument(
        "--workers", type=int, default=2, help="processes; the plan is the same"
    )
    parser.add_argument("--json", action="store_true")
    chosen = parser.parse_args(arguments)
    holds = True
    for name in chosen.jobs or JOBS:
        for number in range(chosen.first, chosen.first + chosen.draws):
            row = run(name, number, chosen.family, chosen.seconds, chosen.workers)
            print(json.dumps(asdict(row)) if chosen.json else _line(row), flush=True)
            holds = holds and row.checked
    return int(not holds)


def _line(row: Sheeted) -> str:
    words = "proved" if row.proved else f"gap {row.gap:.2f} %"
    words += f", SHORT {row.short}" if row.short else ""
    words += "" if row.checked else f", REFUSED {row.objections}"
    at = row.gap_at["2"]
    return (
        f"{row.name:8} {row.draw:3d} {row.family} {row.parts:4d} parts of {row.kinds:3d} kinds, "
        f"{row.sheets:3d} sheets, {row.cost / 10_000:9.2f}, floor {row.floor / 10_000:9.2f} "
        f"(area {row.area_floor / 10_000:9.2f}), first plan {row.first_plan_s:.2f} s, 2 % "
        f"{'never' if at is None else f'at {at:.2f} s'}, all {row.seconds:.1f} s, check "
        f"{row.check_s:.1f} s, {words}"
    )


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
