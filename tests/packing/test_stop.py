"""When the search ends, and what it says while it runs."""

from __future__ import annotations

import threading
from dataclasses import replace
from fractions import Fraction
from itertools import pairwise

import pytest

from tests.benchmarks.generator import SIZES, Size, draw
from yieldplan.packing import Progress, Stop, solve
from yieldplan.packing.problem import Problem
from yieldplan.packing.stop import Budget


def a_job() -> Problem:
    return draw(Size(boards=8, kinds=5), 0.2, 4, "C")


def test_a_plan_is_in_hand_when_asked_to_stop_at_once() -> None:
    asked = threading.Event()
    asked.set()
    solution = solve(a_job(), Stop(asked=asked), lambda _: None)
    assert solution.ended == "asked"
    assert solution.patterns
    assert not any(solution.short)
    assert solution.bound.value <= solution.cost


def test_the_floor_heard_only_rises_and_the_cost_only_falls() -> None:
    heard: list[Progress] = []
    solution = solve(a_job(), Stop(work=600_000), heard.append, "walnut")
    assert {progress.wood for progress in heard} == {"walnut"}
    assert heard[0].stage == "first plan"
    for before, after in pairwise(heard):
        assert after.bound >= before.bound
        assert after.cost <= before.cost
        assert after.work >= before.work
    assert (heard[-1].cost, heard[-1].bound) == (solution.cost, solution.bound.value)


def test_asking_to_stop_halfway_keeps_the_best_plan_heard_of() -> None:
    asked = threading.Event()
    heard: list[Progress] = []

    def hear(progress: Progress) -> None:
        heard.append(progress)
        if progress.stage == "prices" and progress.bound:
            asked.set()

    solution = solve(a_job(), Stop(gap=Fraction(0), asked=asked), hear)
    assert solution.ended in ("asked", "proved")
    assert solution.cost == min(progress.cost for progress in heard)


def test_counted_work_is_kept_and_a_wide_gap_ends_sooner() -> None:
    long = solve(a_job(), Stop(gap=Fraction(0), work=300_000), lambda _: None)
    # A stage ends what it has begun: one dive or one round of prices at most.
    assert long.work < 600_000
    short = solve(a_job(), Stop(gap=Fraction(9, 10), work=300_000), lambda _: None)
    assert short.ended == "gap"
    assert short.work < long.work


def test_a_clock_that_has_run_out_is_said() -> None:
    solution = solve(a_job(), Stop(seconds=0.0), lambda _: None)
    assert solution.ended == "clock"
    assert solution.patterns


def test_free_wood_is_planned_by_area() -> None:
    job = a_job()
    free = replace(job, bins=tuple(replace(b, price=0) for b in job.bins))
    solution = solve(free, Stop(work=600_000), lambda _: None)
    assert (solution.cost, solution.bound.value) == (0, 0)
    assert not any(solution.bound.prices)
    used = [job.bins[pattern.bin] for pattern in solution.patterns]
    area = sum(piece.length * piece.width for piece in used)
    # The parts take a fifth of the clear area: half of all the wood is far too much.
    assert 2 * area < sum(piece.length * piece.width for piece in job.bins)


def used_up(stop: Stop) -> Budget:
    """Of a search that was allowed 100 and has done that."""
    budget = Budget(stop, 100)
    budget.spend(100)
    assert budget.is_over()
    return budget


def test_more_work_is_allowed_once() -> None:
    budget = used_up(Stop())
    assert budget.stretch()
    assert budget.used == Fraction(1, 2)
    assert not budget.is_over()
    budget.spend(100)
    assert budget.is_over()
    assert not budget.stretch()
    assert budget.ended == "work"


def test_work_that_was_said_is_kept_to() -> None:
    assert not used_up(Stop(work=100)).stretch()
    budget = Budget(Stop(share=2), 100)
    budget.spend(50)
    assert budget.is_over()
    assert not budget.stretch()


def test_what_ended_otherwise_is_not_gone_on_with() -> None:
    budget = used_up(Stop())
    budget.ended = "asked"
    assert not budget.stretch()
    assert budget.ended == "asked"


def test_of_unlike_parts_the_search_goes_on_while_the_floor_is_far(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    monkeypatch.setattr(
        "yieldplan.packing.searching.search.work_for", lambda _: 500_000
    )
    problem = draw(SIZES["U16"], 0.25, 4, "E")
    solution = solve(problem, Stop(), lambda _: None)
    assert solution.ended == "work"
    assert solution.work >= 1_000_000
    near = solve(problem, Stop(gap=Fraction(9, 10)), lambda _: None)
    assert near.ended == "gap"
