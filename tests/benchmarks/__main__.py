"""Measures the packer on generated jobs: `python -m tests.benchmarks M --draws 3 --seconds 60 --json`.

One line a job. `--json` prints it as JSON (what its entries are stands in `measure.py`),
`--csv` as a row of a spreadsheet, else as text with the medians below. All seconds are by the clock on
the wall. Without `--seconds` the search stops by counted work, as it does for a user.
"""

from __future__ import annotations

import argparse
import csv
import json
import statistics
import sys
from collections.abc import Iterable, Iterator
from fractions import Fraction
from itertools import groupby
from typing import get_args

from tests.benchmarks.clock import GAPS
from tests.benchmarks.generator import FILLS, SIZES
from tests.benchmarks.measure import Measured, Task, as_line, measure
from yieldplan.model.plan import Family


def main(arguments: list[str]) -> int:
    """Print the jobs one by one; 1 when the checker objects to one of them."""
    chosen = _options().parse_args(arguments)
    rows = _measured(chosen)
    if chosen.json:
        seen = list(_as_json(rows))
    elif chosen.csv:
        seen = list(_as_csv(rows))
    else:
        seen = list(_as_text(rows))
    return 0 if all(row.checked is not False for row in seen) else 1


def _options() -> argparse.ArgumentParser:
    parser = argparse.ArgumentParser(
        prog="python -m tests.benchmarks",
        description=__doc__,
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )
    parser.add_argument("size", choices=sorted(SIZES))
    parser.add_argument("--draws", type=int, default=10)
    # Draws the search was tuned on flatter it: measure on others.
    parser.add_argument("--first", type=int, default=1, help="number of the first draw")
    parser.add_argument("--family", choices=get_args(Family), default="E")
    parser.add_argument("--fill", choices=sorted(FILLS), help="both, when left out")
    parser.add_argument("--seconds", type=float, help="for each job")
    parser.add_argument(
        "--workers", type=int, default=2, help="processes; the plan is the same"
    )
    parser.add_argument(
        "--gap",
        type=Fraction,
        default=Fraction(0),
        help="percent of the cost at which a search may stop; 0, the default, goes on to the proof",
    )
    parser.add_argument("--no-by-eye", action="store_true", help="leave first-fit out")
    parser.add_argument("--no-check", action="store_true", help="leave the checker out")
    kind = parser.add_mutually_exclusive_group()
    kind.add_argument("--json", action="store_true")
    kind.add_argument("--csv", action="store_true")
    return parser


def _measured(chosen: argparse.Namespace) -> Iterator[Measured]:
    for fill in [chosen.fill] if chosen.fill else sorted(FILLS, reverse=True):
        for number in range(chosen.first, chosen.first + chosen.draws):
            yield measure(
                Task(
                    size=chosen.size,
                    fill=fill,
                    draw=number,
                    family=chosen.family,
                    seconds=chosen.seconds,
                    gap=chosen.gap / 100,
                    workers=chosen.workers,
                    by_eye=not chosen.no_by_eye,
                    is_checked=not chosen.no_check,
                )
            )


def _as_json(rows: Iterable[Measured]) -> Iterator[Measured]:
    for row in rows:
        print(json.dumps(as_line(row)), flush=True)
        yield row


def _as_csv(rows: Iterable[Measured]) -> Iterator[Measured]:
    out = csv.writer(sys.stdout)
    for place, row in enumerate(rows):
        line = as_line(row)
        for name in ("stages", "objections"):
            del line[name]
        line |= {f"to_{gap}": seconds for gap, seconds in line.pop("gap_at").items()}
        if place == 0:
            out.writerow(line)
        out.writerow(line.values())
        sys.stdout.flush()
        yield row


def _as_text(rows: Iterable[Measured]) -> Iterator[Measured]:
    for fill, of_fill in groupby(rows, key=lambda row: row.fill):
        print(
            f"{fill}: draw, cost, floor, gap, saved against first-fit, first plan, all [s], "
            f"s to {', '.join(f'{gap} %' for gap in GAPS)}, memory, check [s]"
        )
        seen = []
        for row in of_fill:
            print(_line(row), flush=True)
            seen.append(row)
            yield row
        print(_medians(seen))


def _line(row: Measured) -> str:
    saved = "-" if row.saved is None else f"{row.saved:.1f} %"
    if row.by_eye_bought:
        saved += f" (+{row.by_eye_bought})"
    at = " ".join(_seconds(row.gap_at[str(gap)]) for gap in GAPS)
    words = [f"short {row.short}"] if row.short else []
    words += ["proved"] if row.proved else []
    words += ["REFUSED: " + "; ".join(row.objections)] if row.objections else []
    return (
        f"{row.draw:3d} {row.cost:10.2f} {row.floor:10.2f} {row.gap:6.2f} % {saved:>14} "
        f"{row.first_plan_s:6.2f} {row.seconds:6.1f}  {at} {row.memory_mb:6.0f} MB "
        f"{_seconds(row.check_s)} {', '.join(words)}"
    )


def _medians(rows: list[Measured]) -> str:
    saved = [row.saved for row in rows if row.saved is not None]
    reached = []
    for gap in GAPS:
        at = [row.gap_at[str(gap)] for row in rows]
        # A job that never comes so near counts as longer than any.
        median = statistics.median(float("inf") if s is None else s for s in at)
        never = sum(seconds is None for seconds in at)
        reached.append(
            f"{gap} % {'never' if median == float('inf') else f'{median:.1f} s'}"
            + (f" ({never} never)" if never else "")
        )
    return (
        f"median of {len(rows)}: gap {statistics.median(row.gap for row in rows):.2f} %, "
        f"worst {max(row.gap for row in rows):.2f} %; proved {sum(r.proved for r in rows)}; "
        + (f"saved {statistics.median(saved):.1f} %; " if saved else "")
        + f"first plan {statistics.median(row.first_plan_s for row in rows):.2f} s; "
        f"{', '.join(reached)}; memory {max(row.memory_mb for row in rows):.0f} MB at most; "
        f"checked {sum(row.checked is True for row in rows)}"
    )


def _seconds(seconds: float | None) -> str:
    return "     -" if seconds is None else f"{seconds:6.2f}"


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
