"""Counting no blank oftener than it is asked for: packer, page and checker must come to the same."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from tests.benchmarks.measure import checked
from tests.packing.from_the_page import Page
from tests.packing.plates import make_problem
from yieldplan.packing import Stop, solve
from yieldplan.packing.patterns.pricing import Pricing
from yieldplan.packing.problem import Block, Problem


def values(problem: Problem, prices: list[int]) -> list[int]:
    """By the packer, where the page says the same."""
    found = Pricing(problem).price(prices).tolist()
    pages = [Page(problem, piece) for piece in problem.bins]
    assert found == [page.greatest(prices, problem.family) for page in pages]
    return found


def with_blocks(problem: Problem, *blocks: Block) -> Problem:
    (piece,) = problem.bins
    found = tuple(block.box for block in blocks)
    return replace(problem, bins=(replace(piece, blocks=blocks, found=found),))


def is_proved_alike(problem: Problem) -> bool:
    """Whether the checker comes to the floor that the search claims."""
    solution = solve(problem, Stop(gap=Fraction(0), work=200_000), lambda _: None)
    report, _ = checked(problem, solution)
    assert report is not None
    return report["objections"] == []


def test_a_section_that_meets_one_more_mark_may_be_said_to_hold_more() -> None:
    # Two strips of the part fit beside each other, and one is asked for. A mark that one
    # of the two kinds can bear lies beyond the part, in a section a cell longer.
    clear = make_problem((9, 10), [(5, 4), (9, 4)], [1, 1], "C", copies=2, kerf=1)
    first, second = clear.items
    items = (
        replace(first, layers=((3, 1), (1, 3))),
        replace(second, layers=((0, 0), (0, 0))),
    )
    mixed = replace(clear, items=items)
    assert values(mixed, [7, 0]) == [7]
    marked = with_blocks(mixed, Block(box=(8, 9, 9, 10), on_a=0, on_b=2))
    assert values(marked, [7, 0]) == [14]
    assert is_proved_alike(marked)


def test_a_strip_that_crosses_a_mark_may_be_said_to_hold_more() -> None:
    # Rip first a mark that all shun makes two runs of one, each with the part in it.
    clear = make_problem((20, 4), [(5, 4)], [1], "R", copies=2, kerf=1)
    assert values(clear, [7]) == [7]
    shunned = replace(clear.items[0], layers=((1, 1), (1, 1)))
    marked = with_blocks(
        replace(clear, items=(shunned,)), Block(box=(9, 0, 10, 4), on_a=1, on_b=1)
    )
    assert values(marked, [7]) == [14]
    assert is_proved_alike(marked)


def test_each_step_of_a_set_minds_its_own_marks() -> None:
    # The second step has joints at its ends, the first has none: a mark that no joint may
    # hold does not keep the first from where it lies.
    plain = make_problem((17, 5), [(5, 4), (9, 4)], [1, 1], "C", copies=1, kerf=1)
    first, second = plain.items
    jointed = replace(second, zones=(2, 2), zone_bits=1)
    problem = replace(
        plain,
        items=(first, jointed),
        sets=((0, 1),),
        demands=tuple(replace(demand, rank=0) for demand in plain.demands),
    )
    marked = with_blocks(problem, Block(box=(2, 1, 3, 2), on_a=1, on_b=0))
    assert values(marked, [7, 7]) == [14]
    # It does keep the second.
    under = with_blocks(problem, Block(box=(9, 1, 10, 2), on_a=1, on_b=0))
    assert values(under, [7, 7]) == [0]
