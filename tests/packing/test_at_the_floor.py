"""Plans at the floor, and lists that are given up before they fill the memory."""

from __future__ import annotations

from fractions import Fraction

import numpy as np
import pytest

from tests.benchmarks.planted import plant
from tests.benchmarks.sticks import draw_sticks
from yieldplan.packing import Stop, solve
from yieldplan.packing.listing.allowance import Allowance, TooMany
from yieldplan.packing.listing.ways import WaysOf


@pytest.mark.parametrize("number", [1, 2, 3])
def test_triplets_fill_a_third_as_many_sticks(number: int) -> None:
    """E. Falkenauer, Journal of Heuristics 2 (1996) 5-30: three parts fill a stick without any waste."""
    drawn = draw_sticks("t60", number)
    solution = solve(drawn.problem(), Stop(gap=Fraction(0)), lambda _: None)
    assert len(solution.patterns) == drawn.known == 20
    assert solution.ended == "proved"


def test_of_very_many_kinds_not_every_strip_is_listed() -> None:
    """A planted job of 39 kinds without waste: its strips alone would fill any memory."""
    problem = plant(124).problem
    need = [demand.need for demand in problem.demands]
    nothing = np.zeros((1, len(need)), np.int64)
    least = np.zeros(1, np.int64)
    ways_of = WaysOf(problem, need)
    largest = max(
        range(len(problem.bins)),
        key=lambda n: problem.bins[n].length * problem.bins[n].width,
    )
    with pytest.raises(TooMany):
        ways_of.ways(largest, nothing, least, Allowance(300_000))
