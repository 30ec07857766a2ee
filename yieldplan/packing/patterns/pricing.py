"""The best pattern of every board at given prices of the parts, for the family the shop saws by."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

import numpy as np

from yieldplan.packing.grid.crossings import Ints
from yieldplan.packing.grid.pattern import Breakdown, Pattern
from yieldplan.packing.patterns.crosscut_first import CrosscutFirst
from yieldplan.packing.patterns.fast import beside_marks
from yieldplan.packing.patterns.group import groups_of, most_of
from yieldplan.packing.patterns.rip_first import RipFirst
from yieldplan.packing.patterns.values import shape_values
from yieldplan.packing.problem import Problem

if TYPE_CHECKING:
    from yieldplan.packing.patterns.beside_marks import BesideMarks


class Pricing:
    """Prices the bins of one problem.

    After `price`, `pattern` gives the pattern behind a value, until prices change.
    """

    def __init__(self, problem: Problem) -> None:
        self.problem = problem
        self._groups = groups_of(problem)
        self._saws: list[list[RipFirst | CrosscutFirst]] = []
        self._beside: dict[int, BesideMarks] = {}
        self._ways = ways = "CR" if problem.family[0] == "E" else problem.family[0]
        for group in self._groups:
            crosscut = CrosscutFirst(group) if "C" in ways else None
            table = crosscut.table if crosscut else None
            rip = RipFirst(group, table) if "R" in ways else None
            self._saws.append([saw for saw in (crosscut, rip) if saw is not None])
        self._group_of = {
            faces.bin: place
            for place, group in enumerate(self._groups)
            for faces in group.bins
        }
        self._bins = sorted(self._group_of)
        self._saw: dict[int, RipFirst | CrosscutFirst | BesideMarks] = {}
        self.work = 0
        self.is_plain = not problem.family.endswith("+")
        """Whether no part lies beside a mark: set it for a first plan in a wider family, whose patterns these are too; what is priced then proves no floor of it."""

    @property
    def bins(self) -> list[int]:
        """Every bin something can be cut from."""
        return list(self._bins)

    @property
    def round_work(self) -> int:
        """Units of work that pricing every bin once takes."""
        return sum(
            saw.work(len(group.bins))
            for group, saws in zip(self._groups, self._saws, strict=True)
            for saw in saws
        ) + sum(
            self._saw_beside(place).work(len(group.bins))
            for place, group in enumerate(self._groups)
            if not self.is_plain
        )

    def _saw_beside(self, place: int) -> BesideMarks:
        """The saw of a group for parts beside marks; loaded when it is first asked for."""
        if place not in self._beside:
            group = self._groups[place]
            crosscut = self._saws[place][0]
            plain = crosscut if isinstance(crosscut, CrosscutFirst) else None
            self._beside[place] = beside_marks(group, self._ways, plain)
        return self._beside[place]

    def price(
        self,
        prices: Sequence[int],
        bins: Sequence[int] | None = None,
        *,
        left: Sequence[int] | None = None,
        is_quick: bool = False,
    ) -> Ints:
        """The greatest value of one pattern of each bin, which the floor rests on.

        Where narrow parts may lie beside marks it may be more than `pattern` is worth, on
        boards that are not straight and where sets are cut in steps.

        Parameters
        ----------
        prices
            Of each demand; whole numbers, 0 or more.
        bins
            Bins to price, all without; the others get 0.
        left
            Of each demand, what is left to make: a strip of clear wood holds an item no
            oftener than that takes, instead of no oftener than the job asks for it. Then
            it proves no floor.
        is_quick
            Whether to rip first only, where the shop saws either way: in a third of the
            time. Then it proves no floor.
        """
        item_value = self._item_value(prices)
        best = np.zeros(len(self.problem.bins), np.int64)
        at_most = np.zeros(len(self.problem.bins), np.int64)
        self._saw = {}
        asked = None if bins is None else set(bins)
        for place, group in enumerate(self._groups):
            here = [
                faces.bin for faces in group.bins if asked is None or faces.bin in asked
            ]
            if not here:
                continue
            asked_for = (
                group.at_most
                if left is None
                else [most_of(item, left, self.problem) for item in self.problem.items]
            )
            values = shape_values(group, item_value, asked_for)
            saws = self._saws[place]
            for saw in saws[-1:] if is_quick else saws:
                self.work += saw.work(len(here))
                for number, value in zip(
                    here, saw.reprice(values, here, item_value), strict=True
                ):
                    if number not in self._saw or value > best[number]:
                        best[number] = value
                        self._saw[number] = saw
            if self.is_plain:
                continue
            beside = self._saw_beside(place)
            self.work += beside.work(len(here))
            found, most = beside.reprice(values, here, item_value)
            at_most[here] = most
            for number, value in zip(here, found, strict=True):
                # Only where it gains something: it takes more cuts.
                if value > best[number]:
                    best[number] = value
                    self._saw[number] = beside
        return best if self.is_plain else at_most

    def saw_at(
        self,
        number: int,
        prices: Sequence[int],
        left: Sequence[int],
        breakdown: Breakdown | None = None,
    ) -> RipFirst | CrosscutFirst:
        """The saw that makes most of one bin where so much is left to make, for its sections or strips one by one.

        Parameters
        ----------
        breakdown
            The saw wanted, where it is known.
        """
        place = self._group_of[number]
        item_value = self._item_value(prices)
        at_most = [most_of(item, left, self.problem) for item in self.problem.items]
        values = shape_values(self._groups[place], item_value, at_most)
        best, chosen = -1, self._saws[place][0]
        for saw in self._saws[place]:
            if breakdown not in (None, saw.breakdown):
                continue
            self.work += saw.work(1)
            (value,) = saw.reprice(values, [number], item_value).tolist()
            if value > best:
                best, chosen = value, saw
        return chosen

    def _item_value(self, prices: Sequence[int]) -> list[int]:
        return [
            sum(count * prices[demand] for demand, count in item.makes.items())
            for item in self.problem.items
        ]

    def pattern(self, number: int) -> Pattern:
        """A best pattern of a bin that was priced last."""
        self.work += 300
        return self._saw[number].pattern(number)

    def patterns(self, number: int) -> list[Pattern]:
        """The best pattern that each saw has for a bin that was priced last, the best first.

        Of a stick the best ones with each item in them follow.
        """
        best = self._saw[number]
        saws = self._saws[self._group_of[number]]
        others = [saw for saw in saws if saw is not best]
        found = [saw.pattern(number) for saw in (best, *others)]
        for saw in saws:
            if isinstance(saw, (RipFirst, CrosscutFirst)):
                found += saw.others(number)
        self.work += 300 * len(found)
        return found
