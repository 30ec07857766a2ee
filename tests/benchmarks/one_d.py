"""Plans one-dimensional instances to the proof: `python -m tests.benchmarks.one_d --draws 3 --json`.

One line an instance, a summary a class. The classes stand in `sticks.py`.
"""

from __future__ import annotations

import argparse
import json
import statistics
import sys
from collections.abc import Iterable
from dataclasses import asdict, dataclass
from fractions import Fraction

from tests.benchmarks.clock import Clock
from tests.benchmarks.measure import checked, percent, solve_with
from tests.benchmarks.sticks import CLASSES, draw_sticks
from yieldplan.packing import Stop


@dataclass(frozen=True, kw_only=True)
class Proved:
    """How one instance went.

    Parameters
    ----------
    cost, floor
        [money/10,000]
    known_s
        When the cost came down to what it is in the end. [s]
    """

    name: str
    draw: int
    parts: int
    kinds: int
    sticks: int
    known: int | None
    cost: int
    floor: int
    gap: float
    proved: bool
    first_plan_s: float
    known_s: float
    seconds: float
    checked: bool
    check_s: float
    objections: list[str]
    short: int


def run(name: str, number: int, seconds: float, workers: int = 1) -> Proved:
    """Plan one instance; stop when it is proved, or by the clock."""
    drawn = draw_sticks(name, number)
    problem = drawn.problem()
    clock = Clock()
    stop = Stop(gap=Fraction(0), seconds=seconds)
    solution = solve_with(problem, stop, clock.hear, workers)
    took = clock.seconds()
    clock.end(took, solution)
    report, check_seconds = checked(problem, solution)
    assert report is not None
    cost, floor = solution.cost, solution.bound.value
    return Proved(
        name=name,
        draw=number,
        parts=sum(drawn.parts.values()),
        kinds=len(drawn.parts),
        sticks=len(solution.patterns),
        known=drawn.known,
        cost=cost,
        floor=floor,
        gap=percent(cost - floor, cost),
        proved=cost == floor and not any(solution.short),
        first_plan_s=round(clock.whole()[0][0], 3),
        known_s=next(round(at, 3) for at, said in clock.whole() if said.cost == cost),
        seconds=round(took, 3),
        checked=not report["objections"],
        check_s=round(check_seconds, 3),
        objections=report["objections"][:5],
        short=sum(solution.short),
    )


def main(arguments: list[str]) -> int:
    """Print every instance; 1 when the checker objects to one."""
    parser = argparse.ArgumentParser(
        prog="python -m tests.benchmarks.one_d",
        description=__doc__,
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )
    parser.add_argument("classes", nargs="*", help=", ".join(CLASSES))
    parser.add_argument("--draws", type=int, default=3)
    parser.add_argument("--first", type=int, default=1)
    parser.add_argument("--seconds", type=float, default=60)
    parser.add_argument(
        "--workers", type=int, default=2, help="processes; the plan is the same"
    )
    parser.add_argument("--json", action="store_true")
    chosen = parser.parse_args(arguments)
    seen = []
    for name in chosen.classes or CLASSES:
        of_class = []
        for number in range(chosen.first, chosen.first + chosen.draws):
            row = run(name, number, chosen.seconds, chosen.workers)
            of_class.append(row)
            print(json.dumps(asdict(row)) if chosen.json else _line(row), flush=True)
        seen += of_class
        if not chosen.json:
            print(_summary(name, of_class), flush=True)
    if not chosen.json:
        print(_summary("all", seen))
    return int(not all(row.checked for row in seen))


def _line(row: Proved) -> str:
    words = "proved" if row.proved else f"gap {row.gap:.2f} %"
    words += f", SHORT {row.short}" if row.short else ""
    words += "" if row.checked else f", REFUSED {row.objections}"
    known = f" (known {row.known})" if row.known else ""
    return (
        f"{row.name:10} {row.draw:3d} {row.parts:5d} parts {row.kinds:4d} kinds "
        f"{row.sticks:4d} sticks{known} {row.seconds:6.2f} s, found at {row.known_s:.2f} s, "
        f"{words}"
    )


def _summary(name: str, rows: Iterable[Proved]) -> str:
    seconds = [row.seconds for row in rows]
    return (
        f"{name}: proved {sum(row.proved for row in rows)} of {len(seconds)}, mean "
        f"{statistics.mean(seconds):.2f} s, at most {max(seconds):.2f} s"
    )


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
