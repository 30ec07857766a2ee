"""The best pattern of every board at given prices of the parts, for the family the shop saws by."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from yieldplan.packing.crosscut_first import CrosscutFirst
from yieldplan.packing.crossings import Ints
from yieldplan.packing.group import groups_of
from yieldplan.packing.pattern import Pattern
from yieldplan.packing.problem import Problem
from yieldplan.packing.rip_first import RipFirst
from yieldplan.packing.tables import shape_values


class Pricing:
    """Prices the bins of one problem.

    After `price`, `pattern` gives the pattern behind a value, until prices change.
    """

    def __init__(self, problem: Problem) -> None:
        self.problem = problem
        self._groups = groups_of(problem)
        self._saws: list[list[RipFirst | CrosscutFirst]] = []
        for group in self._groups:
            saws: list[RipFirst | CrosscutFirst] = []
            if problem.family in ("C", "E"):
                saws.append(CrosscutFirst(group))
            if problem.family in ("R", "E"):
                saws.append(RipFirst(group))
            self._saws.append(saws)
        self._group_of = {
            faces.bin: place
            for place, group in enumerate(self._groups)
            for faces in group.bins
        }
        self._saw: dict[int, RipFirst | CrosscutFirst] = {}
        self.work = 0

    @property
    def bins(self) -> list[int]:
        """Every bin something can be cut from."""
        return sorted(self._group_of)

    @property
    def round_work(self) -> int:
        """Units of work that pricing every bin once takes."""
        return sum(
            saw.work(len(group.bins))
            for group, saws in zip(self._groups, self._saws, strict=True)
            for saw in saws
        )

    def price(self, prices: Sequence[int], bins: Sequence[int] | None = None) -> Ints:
        """The greatest value of one pattern of each bin.

        Parameters
        ----------
        prices
            Of each demand; whole numbers, 0 or more.
        bins
            Bins to price, all without; the others get 0.
        """
        item_value = [
            sum(count * prices[demand] for demand, count in item.makes.items())
            for item in self.problem.items
        ]
        best = np.zeros(len(self.problem.bins), np.int64)
        self._saw = {}
        for place, group in enumerate(self._groups):
            here = [
                faces.bin for faces in group.bins if bins is None or faces.bin in bins
            ]
            if not here:
                continue
            values = shape_values(group, item_value)
            for saw in self._saws[place]:
                self.work += saw.work(len(here))
                for number, value in zip(
                    here, saw.reprice(values, here, item_value), strict=True
                ):
                    if number not in self._saw or value > best[number]:
                        best[number] = value
                        self._saw[number] = saw
        return best

    def pattern(self, number: int) -> Pattern:
        """A best pattern of a bin that was priced last."""
        self.work += 300
        return self._saw[number].pattern(number)
