"""Sums: which there are of some sizes, the next lower one, and what any number is the sum of."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise


def sums_of(lengths: set[int], longest: int) -> list[int]:
    """Every length up to the longest that some of these add up to, without zero."""
    # Bit n stands for length n; shifting by a length adds it to every sum at once.
    within = (1 << longest + 1) - 1
    sums = 1
    for length in sorted(lengths):
        shift = length
        while shift <= longest:
            sums |= sums << shift & within
            shift *= 2
    return [n for n in range(1, longest + 1) if sums >> n & 1]


def floors(places: Sequence[int], last: int) -> list[int]:
    """For every number up to the last, the greatest of the places not above it."""
    found: list[int] = []
    for place, beyond in pairwise([*places, last + 1]):
        found += [place] * (beyond - place)
    return found


def at_a_time(copies: int) -> list[int]:
    """Numbers such that any number of copies up to this one is the sum of some of them."""
    found = []
    take = 1
    while copies > 0:
        found.append(min(take, copies))
        copies -= take
        take *= 2
    return found
