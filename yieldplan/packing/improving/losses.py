"""Which boards of a plan to cut anew: those that lose most, and others."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from yieldplan.packing.grid.pattern import Pattern
from yieldplan.packing.problem import Problem


def worth_of(pattern: Pattern, prices: Sequence[int], problem: Problem) -> int:
    """What its parts are worth. [money/10,000]"""
    return sum(
        prices[demand] * count
        for number in pattern.items()
        for demand, count in problem.items[number].makes.items()
    )


def drawn_by_loss(
    losses: Sequence[int], count: int, others: float, rng: np.random.Generator
) -> set[int]:
    """So many places, the rather the more is lost there.

    Parameters
    ----------
    others
        Weight of a board that loses nothing, in parts of the mean loss.
    """
    loss = np.array(losses, float)
    weight = loss + max(1.0, others * float(loss.mean()))
    drawn = rng.choice(len(loss), size=count, replace=False, p=weight / weight.sum())
    return {int(place) for place in drawn}
