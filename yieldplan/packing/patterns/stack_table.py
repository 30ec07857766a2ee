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

_AT_ONCE = 256
"""Lengths looked at in one go: so many that a core keeps their stacks at hand."""


class StackTable:
    """Best stack of strips in a clear height, for every section length that is a sum."""

    def __init__(self, group: Group, num_lengths: int) -> None:
        self.group = group
        self._num_lengths = num_lengths
        self._sums = Sums.of_more_and_more(group.widths.tolist(), group.widest)
        self.heights = heights = self._sums[-1]
        self.work = len(heights.totals) * (12 + len(group.widths) * num_lengths // 200)
        for shape in group.shapes:
            for item in shape.items:
                most = group.at_most[item]
                if most < group.widest // shape.width:
                    rows = len(self._sums[shape.width_index + 1].totals)
                    steps = len(at_a_time(most))
                    self.work += 20 + steps * rows * num_lengths // 1600
        self.value: Ints = np.zeros((0, 0), np.int64)
        self._best: Ints = np.zeros((0, 0), np.int64)
        self._column: Ints = np.zeros(0, np.int64)
        self._few: list[tuple[int, int, Led]] = []
        self._any: list[tuple[int, Led]] = []
        self._traced: dict[tuple[int, int], list[Good]] = {}

    def reprice(self, led: Sequence[Led]) -> None:
        """Work the table out again: `value[height, length]`, by the places of their totals.

        Parameters
        ----------
        led
            Of `StripTable`.
        """
        widest = self.group.widest
        self._few, self._any = [], []
        self._traced = {}
        dearest = np.zeros(self._num_lengths, np.int64)
        for each in led:
            wide = int(self.group.widths[each.good.width_index])
            most = each.good.at_most
            # They come by width: a strip no dearer than a narrower one, of which there may
            # be any number, need not be looked at.
            if wide > widest or not (each.worth > dearest).any():
                continue
            if most < widest // wide:
                self._few.append((wide, most, each))
            else:
                self._any.append((wide, each))
                np.maximum(dearest, each.worth, out=dearest)
        worths = np.array([each.worth for each in led], np.int64)
        worths = worths.reshape(len(led), self._num_lengths)
        # Any other length is worth what the next shorter one is, the first ones nothing.
        rises = (np.diff(worths, axis=1, prepend=0) > 0).any(axis=0)
        columns = np.flatnonzero(rises)
        value = np.zeros((len(self.heights.totals), len(columns)), np.int64)
        for first in range(0, len(columns), _AT_ONCE):
            some = slice(first, first + _AT_ONCE)
            value[:, some] = self._few_of_each(columns[some])
        self._any_number(value, columns)
        self._best = np.zeros((len(value), 1 + len(columns)), np.int64)
        self._best[:, 1:] = value
        self._column = np.cumsum(rises)
        self.value = self._best[:, self._column]

    def _few_of_each(self, columns: Ints) -> Ints:
        """Stacks of strips that there may not be any number of, by height and column.

        They come by width, and the narrow ones alone have few sums: few rows at first.
        """
        sums = self._sums[0]
        value = np.zeros((1, len(columns)), np.int64)
        for wide, most, each in self._few:
            of_these = self._sums[each.good.width_index + 1]
            if sums is not of_these:
                value = value[sums.floor[of_these.totals]]
                sums, room = of_these, np.empty_like(value)
            worth = np.maximum(each.worth[columns], 0)
            for take in at_a_time(most):
                start, before = sums.under(take * wide)
                found = room[: len(before)]
                np.take(value, before, axis=0, out=found, mode="clip")
                found += take * worth
                np.maximum(value[start:], found, out=value[start:])
        return value[sums.floor[self.heights.totals]]

    def _any_number(self, value: Ints, columns: Ints) -> None:
        """Raise the stacks by strips that there may be any number of."""
        totals, floor = self.heights.totals, self.heights.floor
        best: dict[int, Ints] = {}
        for wide, each in self._any:
            worth = np.maximum(each.worth[columns], 0)
            best[wide] = np.maximum(best[wide], worth) if wide in best else worth
        widths, worths = np.array(list(best), np.int64), np.array(list(best.values()))
        room = np.empty_like(worths)
        for place in range(1, len(value)):
            fit = int(np.searchsorted(widths, totals[place], side="right"))
            if fit:
                found = room[:fit]
                before = floor[totals[place] - widths[:fit]]
                np.take(value, before, axis=0, out=found, mode="clip")
                found += worths[:fit]
                np.maximum(value[place], found.max(axis=0), out=value[place])
            np.maximum(value[place], value[place - 1], out=value[place])

    def trace(self, height: int, length: int) -> list[Good]:
        """A best stack, as what leads its strips, for places of height and length."""
        key = (height, length)
        if key not in self._traced:
            self._traced[key] = self._stacked(height, length)
        return self._traced[key]

    def _stacked(self, height: int, length: int) -> list[Good]:
        totals, floor = self.heights.totals, self.heights.floor
        column = self._best[: height + 1, self._column[length]].tolist()
        # Of a width the dearest strip alone.
        dearest: dict[int, tuple[int, Good]] = {}
        for wide, each in self._any:
            worth = int(each.worth[length])
            if worth > 0 and worth > dearest.get(wide, (0,))[0]:
                dearest[wide] = worth, each.good
        stacked: list[Good] = []
        while column[height] > 0:
            if column[height] == column[height - 1]:
                height -= 1
                continue
            for wide, (worth, good) in dearest.items():
                left = int(totals[height]) - wide
                if left >= 0 and column[floor[left]] + worth == column[height]:
                    stacked.append(good)
                    height = int(floor[left])
                    break
            else:
                stacked += self._of_the_few(height, length)
                break
        return sorted(stacked, key=lambda good: (-good.width_index, good.item))

    def _of_the_few(self, height: int, length: int) -> list[Good]:
        """A best stack of strips that there may not be any number of."""
        best = np.zeros(len(self.heights.totals), np.int64)
        passes = []
        for wide, most, each in self._few:
            worth = int(each.worth[length])
            for take in at_a_time(most) if worth > 0 else ():
                start, before = self.heights.under(take * wide)
                found = best[before] + take * worth
                passes.append((start, before, take, each.good, found > best[start:]))
                np.maximum(best[start:], found, out=best[start:])
        stacked: list[Good] = []
        for start, before, take, good, is_in in reversed(passes):
            if height >= start and is_in[height - start]:
                stacked += [good] * take
                height = int(before[height - start])
        return stacked
