"""Measures the packer on generated jobs: `python -m tests.benchmarks M --draws 3 --family C`."""

from __future__ import annotations

import argparse
import statistics
import time
from dataclasses import dataclass

from tests.benchmarks.first_fit import first_fit
from tests.benchmarks.generator import FILLS, SIZES, draw
from yieldplan.model.pieces import MONEY_PER_UNIT
from yieldplan.packing import Progress, Stop, solve


@dataclass(frozen=True)
class Measured:
    """One job."""

    first: int
    prices: int
    dive: int
    sets: int
    cost: int
    floor: int
    first_seconds: float
    seconds: float
    short: int
    by_eye: int | None

    @property
    def gap(self) -> float:
        """Percent of the cost."""
        return 100 * (1 - self.floor / self.cost) if self.cost else 0.0

    @property
    def saved(self) -> float | None:
        """Percent less than first-fit."""
        return 100 * (1 - self.cost / self.by_eye) if self.by_eye else None


def measure(size: str, fill: str, seed: int, family: str) -> Measured:
    """Plan one generated job."""
    assert family in ("R", "C", "E")
    problem = draw(SIZES[size], FILLS[fill], seed, family)  # type: ignore[arg-type]
    heard: list[float] = []
    # Processor time: the machine may be busy with other things.
    began = time.process_time()

    def hear(_: Progress) -> None:
        heard.append(time.process_time() - began)

    solution = solve(problem, Stop(), hear)
    seconds = time.process_time() - began
    cost = {stage.name: stage.cost for stage in solution.stages}
    dive = cost.get("dive", cost["prices"])
    return Measured(
        first=solution.stages[0].cost,
        prices=cost["prices"],
        dive=dive,
        sets=cost.get("board sets", dive),
        cost=solution.cost,
        floor=solution.bound.value,
        first_seconds=heard[0],
        seconds=seconds,
        short=sum(solution.short),
        by_eye=first_fit(problem) if not any(solution.short) else None,
    )


def main() -> None:
    """Print one line a job, and the medians."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("size", choices=sorted(SIZES))
    parser.add_argument("--draws", type=int, default=10)
    # Draws the search was tuned on flatter it: measure on others.
    parser.add_argument("--first", type=int, default=1, help="number of the first draw")
    parser.add_argument("--family", choices=["R", "C", "E"], default="C")
    parser.add_argument("--fill", choices=sorted(FILLS))
    chosen = parser.parse_args()
    for fill in [chosen.fill] if chosen.fill else sorted(FILLS, reverse=True):
        print(
            f"{chosen.size} {fill}, {chosen.family}: cost after first plan, prices, dive, "
            "board sets, repair; floor; gap; saved against first-fit; first plan, all [s of one core]; short"
        )
        rows = []
        for seed in range(chosen.first, chosen.first + chosen.draws):
            row = measure(chosen.size, fill, seed, chosen.family)
            rows.append(row)
            money = [row.first, row.prices, row.dive, row.sets, row.cost, row.floor]
            saved = f"{row.saved:6.1f} %" if row.saved is not None else "   ran out"
            print(
                f"{seed:3d} "
                + " ".join(f"{m / MONEY_PER_UNIT:9.2f}" for m in money)
                + f" {row.gap:6.2f} % {saved} {row.first_seconds:5.2f} {row.seconds:6.1f}"
                + (f"  short {row.short}" if row.short else ""),
                flush=True,
            )
        gaps = statistics.median(row.gap for row in rows)
        saved_all = [row.saved for row in rows if row.saved is not None]
        print(
            f"median gap {gaps:.2f} %, worst {max(row.gap for row in rows):.2f} %, saved "
            + (f"{statistics.median(saved_all):.1f} %" if saved_all else "-")
            + f" ({len(saved_all)} of {len(rows)} jobs where first-fit found room)"
            + f", first {statistics.median(row.first_seconds for row in rows):.2f} s"
            + f", all {statistics.median(row.seconds for row in rows):.1f} s"
        )


if __name__ == "__main__":
    main()
