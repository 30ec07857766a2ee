"""The benchmarks themselves, at sizes that take a second: what they print, and that they would notice what is wrong."""

from __future__ import annotations

import json
import xml.etree.ElementTree as ET
from dataclasses import replace
from fractions import Fraction
from typing import Any

import pytest

from tests.benchmarks import curve, one_d, outside, sheets
from tests.benchmarks.__main__ import main
from tests.benchmarks.area_floor import area_floor, clear_area
from tests.benchmarks.clock import Clock
from tests.benchmarks.document import document
from tests.benchmarks.first_fit import first_fit
from tests.benchmarks.generator import FILLS, SIZES, Size, draw, more_boards
from tests.benchmarks.measure import Task, as_line, checked, measure_here
from tests.benchmarks.planted import plant
from tests.benchmarks.sticks import CLASSES, draw_sticks
from tests.packing.exact_model import cheapest
from tests.packing.plates import make_problem
from tests.packing.valid import assert_is_of_its_family
from yieldplan.checking import check
from yieldplan.packing import Progress, Stop, solve
from yieldplan.packing.problem import Block

TINY = Size(boards=3, kinds=3)
QUICK = Stop(work=20_000)


def hear_nothing(_: Progress) -> None:
    """Nobody watches."""


def test_one_json_line_a_job_with_all_that_is_asked_for(
    capfd: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setitem(SIZES, "S", TINY)
    # In this process: a new one would not know the tiny size.
    monkeypatch.setattr("tests.benchmarks.__main__.measure", measure_here)
    given = [
        "S",
        "--draws",
        "1",
        "--seconds",
        "0.1",
        "--family",
        "C",
        "--workers",
        "1",
        "--json",
    ]
    assert main(given) == 0
    rows = [json.loads(line) for line in capfd.readouterr().out.splitlines()]
    # Both fills.
    assert [(row["fill"], row["draw"]) for row in rows] == [("loose", 1), ("few", 1)]
    for row in rows:
        asked = [
            "cost",
            "floor",
            "gap",
            "first_plan_s",
            "seconds",
            "memory_mb",
            "family",
        ]
        assert set(asked) <= set(row)
        assert row["floor"] <= row["cost"]
        assert row["gap"] == pytest.approx(
            100 * (row["cost"] - row["floor"]) / row["cost"], abs=1e-3
        )
        assert row["area_floor"] <= row["cost"]
        assert row["checked"] is True
        assert row["objections"] == []
        assert 0 < row["first_plan_s"] <= row["seconds"]


def test_a_plan_that_is_damaged_is_refused() -> None:
    problem = draw(TINY, 0.2, 1, "C")
    solution = solve(problem, QUICK, hear_nothing)
    report, _ = checked(problem, solution)
    assert report is not None
    assert report["objections"] == []
    bound = solution.bound
    too_high = replace(bound, value=bound.value + 1)
    for wrong in (
        replace(solution, cost=solution.cost - 1),
        replace(solution, bound=too_high),
        replace(solution, patterns=solution.patterns[1:], worths=solution.worths[1:]),
    ):
        report, _ = checked(problem, wrong)
        assert report is not None
        assert report["objections"]


def test_a_sheet_part_that_lies_across_is_said_to_be_turned() -> None:
    problem = sheets.posed(
        sheets.Sizes({(160, 480): 2}), [(600, 170, 1000)], "R", turned=True
    )
    # 600 x 170 sixteenths: a part of 160 x 480 lies only across, one a sheet.
    solution = solve(problem, QUICK, hear_nothing)
    assert len(solution.patterns) == 2
    written = document(problem, solution, is_sheet=True)
    assert [blank["turned"] for blank in written["blanks"]] == [False, True]
    assert check(written)["objections"] == []


def test_the_area_bound_by_hand() -> None:
    # 10 x 10 with a mark of 4 x 5 reaching 2 over its end: 100 - 2 x 5 = 90 is clear.
    plate = make_problem((10, 10), [(5, 6)], [2], "R", copies=1, price=180)
    (piece,) = plate.bins
    marked = replace(piece, blocks=(Block(box=(8, 1, 12, 6), on_a=1, on_b=1),))
    assert clear_area(marked) == 90
    # Two parts of 30 from wood at 180/90 = 2 for each unit of area: 60 x 2.
    assert area_floor(replace(plate, bins=(marked,)), [2]) == 120


def test_marks_that_overlap_are_counted_once() -> None:
    (piece,) = make_problem((10, 10), [(1, 1)], [1], "R", copies=1).bins
    boxes = [(0, 0, 4, 4), (2, 2, 6, 6), (3, 0, 5, 3)]
    blocks = tuple(Block(box=box, on_a=1, on_b=1) for box in boxes)
    # 16 + 16 - 4 shared = 28; of the third's 2 x 3, x 3 to 4 has y 0 to 3 in the first,
    # x 4 to 5 has y 2 to 3 in the second: 2 more.
    assert clear_area(replace(piece, blocks=blocks)) == 100 - 30


def test_first_fit_buys_more_boards_when_it_runs_out() -> None:
    # One board holds two parts end to end; four are asked for.
    problem = make_problem((20, 4), [(10, 4)], [4], "R", copies=1, price=7)
    assert first_fit(problem) is None
    spare = replace(problem.bins[0], name="more", price=9)
    eye = first_fit(problem, (spare, replace(spare, name="and more")))
    assert eye is not None
    assert (eye.cost, eye.bought) == (7 + 9, 1)


@pytest.mark.parametrize("size", ["U16", "U40"])
def test_of_unlike_parts_there_are_few_of_each_and_every_board_holds_all(
    size: str,
) -> None:
    problem = draw(SIZES[size], FILLS["few"], 3, "E")
    kinds = len(problem.demands)
    assert kinds <= sum(each.need for each in problem.demands) <= 3 * kinds
    assert all(piece.holds == frozenset(range(kinds)) for piece in problem.bins)


def test_more_boards_are_drawn_like_those_offered() -> None:
    offered, more = draw(TINY, 0.2, 4, "R").bins, more_boards(TINY, 4, 3)
    assert len(more) == len(offered)
    assert not {piece.name for piece in offered} & {piece.name for piece in more}


def test_a_draw_is_the_same_every_time() -> None:
    for fill in FILLS.values():
        assert draw(SIZES["S"], fill, 5, "E") == draw(SIZES["S"], fill, 5, "E")
    assert draw_sticks("u120", 3) == draw_sticks("u120", 3)
    assert plant(8) == plant(8)


def heard(*said: tuple[float, str, int, int]) -> Clock:
    clock = Clock()
    for seconds, stage, cost, bound in said:
        progress = Progress(wood="", stage=stage, cost=cost, bound=bound, work=0)
        clock.heard.append((seconds, progress))
    return clock


def test_seconds_to_a_gap_begin_with_the_first_whole_plan() -> None:
    # The first plan was cheap since it left parts out: 100 over 99 is no 1 %.
    clock = heard(
        (1.0, "first plan", 100, 0),
        (2.0, "prices", 100, 99),
        (3.0, "too little wood", 110, 99),
        (4.0, "dive", 104, 99),
        (5.0, "dive", 101, 99),
    )
    assert clock.whole()[0][0] == 3.0
    # 5 in 104 is 4.8 %; 2 in 101 is 1.98 %.
    assert (clock.gap_at(5), clock.gap_at(2), clock.gap_at(1)) == (4.0, 5.0, None)


@pytest.mark.parametrize("name", CLASSES)
def test_sticks_of_a_class_fit_their_stock(name: str) -> None:
    drawn = draw_sticks(name, 1)
    longest = max(length for length, _ in drawn.stock)
    assert all(0 < size <= longest for size in drawn.parts)
    if drawn.known is not None:
        # Triplets fill their stick to the last unit.
        total = sum(size * count for size, count in drawn.parts.items())
        assert total == drawn.known * longest


def test_a_small_class_of_sticks_is_proved(monkeypatch: pytest.MonkeyPatch) -> None:
    few = one_d.draw_sticks("schwerin1", 1)
    sizes = dict(list(few.parts.items())[:4])
    monkeypatch.setattr(one_d, "draw_sticks", lambda *_: replace(few, parts=sizes))
    row = one_d.run("schwerin1", 1, seconds=5)
    assert row.proved
    assert row.checked


@pytest.mark.parametrize("seed", range(6))
def test_planted_plans_are_of_their_family_and_make_what_is_asked(seed: int) -> None:
    planted = plant(seed)
    made = [0] * len(planted.problem.demands)
    for pattern in planted.plan:
        assert_is_of_its_family(pattern, planted.problem)
        for item in pattern.items():
            made[item] += 1
    assert made == [demand.need for demand in planted.problem.demands]


def test_the_outside_checks_find_nothing_wrong_in_a_few_jobs() -> None:
    tally = outside.against_exact(2, 3, work=5_000)
    assert tally.wrong == []
    assert tally.counts["cost not below the exact one"] == 2


def test_the_outside_checks_would_notice() -> None:
    tally = outside.Tally()
    tally.note("two is three", of="a job", holds=False)
    assert tally.wrong == ["NOT SO: two is three: 'a job'"]


def test_nothing_asked_for_costs_nothing() -> None:
    problem = make_problem((10, 4), [(5, 4), (4, 4)], [0, 0], "R", copies=2)
    assert cheapest(problem) == 0
    # One of the second kind takes one board.
    assert (
        cheapest(outside.asking_for(problem, [0, 1]))
        == problem.bins[0].price // 1000 * 1000
    )


def row_of(boards: int, at: float | None, **over: Any) -> dict[str, Any]:
    return {
        "boards": boards,
        "parts": 10 * boards,
        "fill": "few",
        "family": "E",
        "memory_mb": 50 + boards,
        "gap_at": {"3": at, "2": None},
        **over,
    }


def test_the_curve_is_drawn_and_says_who_never_came_so_near() -> None:
    picture = curve.svg([row_of(60, 1.0), row_of(400, 20.0), row_of(3000, None)])
    root = ET.fromstring(picture)
    words = " ".join("".join(text.itertext()) for text in root.iter() if text.text)
    assert "to 3 %; never: 1 of 1 with 3,000" in words
    assert "to 2 %; never: 1 of 1 with 60, 1 of 1 with 400, 1 of 1 with 3,000" in words


def test_a_task_is_measured_the_same_in_text_and_json() -> None:
    task = Task(
        size="S",
        fill="few",
        draw=1,
        family="C",
        seconds=0.1,
        workers=1,
        gap=Fraction(0),
        by_eye=False,
    )
    line = as_line(measure_here(task))
    assert json.loads(json.dumps(line)) == line
