"""What the packer answers: patterns, what they cost, what they leave out, and the floor under them."""

from __future__ import annotations

from dataclasses import dataclass

from yieldplan.model.plan import Stage
from yieldplan.packing.floors.bound import Certificate
from yieldplan.packing.grid.pattern import Pattern
from yieldplan.packing.stop import Ended


@dataclass(frozen=True, kw_only=True)
class Solution:
    """What the packer answers.

    Parameters
    ----------
    need
        Of each demand, what is made: what was asked for less what is short.
    short
        Of each demand, what could not be made.
    cost
        Sum of the prices of the bins cut, less what their offcuts count for.
        [money/10,000]
    worths
        Of each pattern, what its offcut counts for. [money/10,000]
    bound
        Proves what no plan of the family for `need` can cost less than.
    """

    need: tuple[int, ...]
    short: tuple[int, ...]
    patterns: tuple[Pattern, ...]
    cost: int
    worths: tuple[int, ...]
    bound: Certificate
    stages: tuple[Stage, ...]
    ended: Ended
    work: int
