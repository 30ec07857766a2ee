"""When the linear program cannot be solved: asked the other way first, and never a plan lost.

Found on a generated job (60 boards, rip first, few boards, draw 20): GLOP ended abnormally
in the middle of a dive.
"""

from __future__ import annotations

from typing import Any

import pytest

from tests.benchmarks.generator import Size, draw
from tests.benchmarks.measure import checked
from tests.packing.test_solve import made_by
from tests.packing.valid import assert_is_of_its_family
from yieldplan.packing import Solution, Stop, solve
from yieldplan.packing.floors.master import Master
from yieldplan.packing.problem import Problem

SOLVED = Master._is_solved


def a_job() -> Problem:
    return draw(Size(boards=6, kinds=4), 0.15, 4, "R")


def test_the_other_way_of_asking_is_tried_and_finds_the_same_cost(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    usual = solve(a_job(), Stop(work=1_000_000), lambda _: None)
    asked: list[object] = []

    def fails_every_first_time(self: Master, parameters: Any) -> bool:
        asked.append(parameters)
        return len(asked) % 2 == 0 and SOLVED(self, parameters)

    monkeypatch.setattr(Master, "_is_solved", fails_every_first_time)
    other = solve(a_job(), Stop(work=1_000_000), lambda _: None)
    assert len(asked) > 10
    assert_holds(other)
    assert other.bound.value == usual.bound.value


def assert_holds(solution: Solution) -> None:
    """All parts made, every blank allowed, and the floor what its proofs prove."""
    job = a_job()
    assert not any(solution.short)
    assert made_by(solution, job) == [demand.need for demand in job.demands]
    for pattern in solution.patterns:
        assert_is_of_its_family(pattern, job)
    report, _ = checked(job, solution)
    assert report is not None
    assert not report["objections"]
    assert solution.bound.value <= solution.cost


@pytest.mark.parametrize("good_until", [0, 1, 3, 6])
def test_a_program_that_is_never_solved_again_leaves_a_sound_plan(
    monkeypatch: pytest.MonkeyPatch, good_until: int
) -> None:
    calls: list[None] = []

    def gives_up(self: Master, parameters: Any) -> bool:
        calls.append(None)
        return len(calls) <= good_until and SOLVED(self, parameters)

    monkeypatch.setattr(Master, "_is_solved", gives_up)
    solution = solve(a_job(), Stop(work=400_000), lambda _: None)
    assert len(calls) > good_until
    assert solution.patterns
    assert_holds(solution)
