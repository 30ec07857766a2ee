"""A plan carried over to nearly the same problem: what is kept is allowed there, and nothing needed is lost without reason."""

from __future__ import annotations

from dataclasses import replace

from hypothesis import given, settings
from hypothesis import strategies as st

from tests.packing.random_problems import problems
from tests.packing.test_solve import made_by, solved
from tests.packing.valid import assert_is_of_its_family
from yieldplan.packing.problem import Problem
from yieldplan.packing.searching.carried_over import carried_over
from yieldplan.packing.searching.solve import solve
from yieldplan.packing.stop import Stop


def turned_round(problem: Problem) -> Problem:
    """The same, its demands and items counted from the other end, its items named anew."""
    last_demand, last_item = len(problem.demands) - 1, len(problem.items) - 1
    return replace(
        problem,
        demands=problem.demands[::-1],
        items=tuple(
            replace(
                item,
                name=f"other {item.name}",
                makes={last_demand - d: n for d, n in item.makes.items()},
            )
            for item in problem.items[::-1]
        ),
        bins=tuple(
            replace(piece, holds=frozenset(last_item - n for n in piece.holds))
            for piece in problem.bins
        ),
        sets=tuple(tuple(last_item - n for n in steps) for steps in problem.sets),
    )


@settings(deadline=None, max_examples=60)
@given(problems())
def test_the_same_problem_in_other_numbers_keeps_the_whole_plan(
    problem: Problem,
) -> None:
    solution, other = solved(problem), turned_round(problem)
    known = carried_over(solution, problem, other)
    for pattern in known.patterns:
        assert_is_of_its_family(pattern, other)
    assert len(known.patterns) == len(solution.patterns)
    made = made_by(replace(solution, patterns=tuple(known.patterns)), other)
    assert made[::-1] == made_by(solution, problem)
    assert known.prices[::-1] == solution.bound.prices


@settings(deadline=None, max_examples=60)
@given(
    problems(),
    st.lists(st.tuples(st.integers(0, 3), st.integers(0, 3)), min_size=9, max_size=9),
    st.booleans(),
)
def test_smaller_parts_that_ask_for_less_are_cut_where_the_larger_ones_were(
    problem: Problem, less: list[tuple[int, int]], is_clear: bool
) -> None:
    solution = solved(problem)
    other = replace(
        problem,
        sets=(),
        items=tuple(
            replace(
                item,
                length=max(1, item.length - along),
                width=max(1, item.width - across),
                layers=item.layers if is_clear else ((0, 0), (0, 0)),
                zones=(0, 0),
                zone_bits=0,
            )
            for item, (along, across) in zip(problem.items, less, strict=False)
        ),
    )
    known = carried_over(solution, problem, other)
    for pattern in known.patterns:
        assert_is_of_its_family(pattern, other)
    made = made_by(replace(solution, patterns=tuple(known.patterns)), other)
    assert made == made_by(solution, problem)


@settings(deadline=None, max_examples=40)
@given(problems(), problems())
def test_what_is_carried_over_to_any_other_problem_is_allowed_there(
    problem: Problem, other: Problem
) -> None:
    known = carried_over(solved(problem), problem, other)
    for pattern in known.patterns:
        assert_is_of_its_family(pattern, other)


@settings(deadline=None, max_examples=40)
@given(problems())
def test_a_search_from_a_known_plan_never_ends_with_a_dearer_one(
    problem: Problem,
) -> None:
    first = solved(problem)
    known = carried_over(first, problem, problem)
    again = solve(problem, Stop(work=1), lambda _: None, known=known)
    if not any(first.short) and not any(again.short):
        assert again.cost <= first.cost
    assert again.bound.value <= first.cost or any(first.short)
