"""What strips beside each other can hold in a clear height, none led by an item oftener than the job asks for.

Every strip is led by the widest item in it (`strip_table`), so a stack holds at most as
many strips led by an item as are asked for. Where that is more than the height has room
for anyhow, any number is allowed: that is quicker.
"""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from yieldplan.packing.grid.crossings import Ints
from yieldplan.packing.patterns.group import Group
from yieldplan.packing.patterns.strip_table import Good, Led
from yieldplan.packing.patterns.values import Sums, at_a_time


class StackTable:
    """Best stack of strips in a clear height, for every section length that is a sum."""

    def __init__(self, group: Group, heights: Sums, num_lengths: int) -> None:
        self.group = group
        self._num_lengths = num_lengths
        self.heights = heights
        self.work = len(heights.totals) * (12 + len(group.widths) * num_lengths // 200)
        for shape in group.shapes:
            for item in shape.items:
                most = group.at_most[item]
                if most < group.widest // shape.width:
                    steps = len(at_a_time(most))
                    self.work += 20 + steps * group.widest * num_lengths // 800
        self.value: Ints = np.zeros((0, 0), np.int64)
        self._best: Ints = np.zeros((0, 0), np.int64)
        self._column: Ints = np.zeros(0, np.int64)
        self._few: list[tuple[int, int, Led]] = []
        self._any: list[tuple[int, Led]] = []

    def reprice(self, led: Sequence[Led]) -> None:
        """Work the table out again: `value[height, length]`, by the places of their totals.

        Parameters
        ----------
        led
            Of `StripTable`.
        """
        widest = self.group.widest
        self._few, self._any = [], []
        for each in led:
            wide = int(self.group.widths[each.good.width_index])
            most = each.good.at_most
            if most < widest // wide:
                self._few.append((wide, most, each))
            elif wide <= widest:
                self._any.append((wide, each))
        worths = np.array([each.worth for each in led], np.int64)
        worths = worths.reshape(len(led), self._num_lengths)
        # Any other length is worth what the next shorter one is, the first ones nothing.
        rises = (np.diff(worths, axis=1, prepend=0) > 0).any(axis=0)
        columns = np.flatnonzero(rises)
        value = np.zeros((widest + 1, len(columns)), np.int64)
        for wide, most, each in self._few:
            worth = np.maximum(each.worth[columns], 0)
            for take in at_a_time(most):
                high = take * wide
                if high <= widest:
                    found = value[:-high] + take * worth
                    np.maximum(value[high:], found, out=value[high:])
        self._any_number(value, columns)
        self._best = np.zeros((widest + 1, 1 + len(columns)), np.int64)
        self._best[:, 1:] = value
        self._column = np.cumsum(rises)
        self.value = self._best[self.heights.totals][:, self._column]

    def _any_number(self, value: Ints, columns: Ints) -> None:
        """Raise the stacks by strips that there may be any number of."""
        best = np.zeros(len(columns), np.int64)
        widths: list[int] = []
        worths: list[Ints] = []
        for wide, each in self._any:
            # A strip no dearer than a narrower or shorter one need not be looked at.
            worth = each.worth[columns]
            if (worth > best).any():
                widths.append(wide)
                worths.append(np.maximum(worth, 0))
                np.maximum(best, worth, out=best)
        if not widths:
            return
        wide_, worth_ = np.array(widths), np.array(worths)
        for height in range(int(wide_[0]), len(value)):
            fit = int(np.searchsorted(wide_, height, side="right"))
            found = value[height - wide_[:fit]] + worth_[:fit]
            np.maximum(value[height], found.max(axis=0), out=value[height])
            np.maximum(value[height], value[height - 1], out=value[height])

    def trace(self, height: int, length: int) -> list[Good]:
        """A best stack, as what leads its strips, for places of height and length."""
        tall = int(self.heights.totals[height])
        column = self._best[: tall + 1, self._column[length]].tolist()
        # Of a width the dearest strip alone.
        dearest: dict[int, tuple[int, Good]] = {}
        for wide, each in self._any:
            worth = int(each.worth[length])
            if worth > 0 and worth > dearest.get(wide, (0,))[0]:
                dearest[wide] = worth, each.good
        stacked: list[Good] = []
        while column[tall] > 0:
            if column[tall] == column[tall - 1]:
                tall -= 1
                continue
            for wide, (worth, good) in dearest.items():
                if wide <= tall and column[tall - wide] + worth == column[tall]:
                    stacked.append(good)
                    tall -= wide
                    break
            else:
                stacked += self._of_the_few(tall, length)
                break
        return sorted(stacked, key=lambda good: (-good.width_index, good.item))

    def _of_the_few(self, tall: int, length: int) -> list[Good]:
        """A best stack of strips that there may not be any number of."""
        best = np.zeros(tall + 1, np.int64)
        passes = []
        for wide, most, each in self._few:
            worth = int(each.worth[length])
            for take in at_a_time(most):
                high = take * wide
                if worth > 0 and high <= tall:
                    found = best[:-high] + take * worth
                    passes.append((high, take, each.good, found > best[high:]))
                    np.maximum(best[high:], found, out=best[high:])
        stacked: list[Good] = []
        for high, take, good, is_in in reversed(passes):
            if high <= tall and is_in[tall - high]:
                stacked += [good] * take
                tall -= high
        return stacked
