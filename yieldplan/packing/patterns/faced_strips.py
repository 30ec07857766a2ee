"""Strips crossed by marks that some items may bear and others not: worked out mark by mark along them."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

from yieldplan.packing.grid.crossings import Ints
from yieldplan.packing.grid.pattern import Cut
from yieldplan.packing.patterns.bin_faces import BinFaces
from yieldplan.packing.patterns.group import Group, Shape
from yieldplan.packing.patterns.values import LOW, ShapeValues

Bools = npt.NDArray[np.bool_]


@dataclass(frozen=True)
class FacedStrip:
    """A strip of one bin, by the marks it meets.

    Parameters
    ----------
    met
        Bit set of the bin's blocks.
    widest
        The widest strip that meets these. [cells]
    """

    faces: BinFaces
    met: int
    widest: int


class FacedStrips:
    """All such strips of one group; each is worked out for every width at once."""

    def __init__(self, group: Group) -> None:
        self.group = group
        self._strips: list[FacedStrip] = []
        self._reach: list[Ints] = []
        self._zone_reach: list[Ints] = []
        self._shut = np.array(
            [
                [
                    0 if shape.width_index <= width else LOW
                    for width in range(len(group.widths))
                ]
                for shape in group.shapes
            ],
            np.int64,
        )

    def add(self, strip: FacedStrip) -> int:
        """Keep a strip; its number."""
        self._strips.append(strip)
        self._reach.append(self._reach_of(strip, strip.faces.forbidden))
        in_zones = [(zone,) for zone in strip.faces.in_zones]
        self._zone_reach.append(self._reach_of(strip, in_zones))
        return len(self._strips) - 1

    def _reach_of(self, strip: FacedStrip, ways_up: Sequence[tuple[int, ...]]) -> Ints:
        """For each face rule and mark, how far a clear stretch from there may go.

        Parameters
        ----------
        ways_up
            For each rule, the blocks forbidden one way up, or another.
        """
        size = strip.faces.grid.along
        reach = np.zeros((len(self.group.rules), self.group.longest + 1), np.int64)
        for rule, faces_up in enumerate(ways_up):
            for forbidden in faces_up:
                ends = np.full(size + 1, size, np.int64)
                for place, block in enumerate(strip.faces.blocks):
                    if strip.met & forbidden & 1 << place:
                        # From before its end a stretch may go no further than its start.
                        ends[: block.i1] = np.minimum(ends[: block.i1], block.i0)
                np.maximum(reach[rule, : size + 1], ends, out=reach[rule, : size + 1])
        return reach

    def work(self, num_bins: int) -> int:
        """Units of work one round over so many bins takes."""
        if not self._strips:
            return 0
        rows = len(self._strips) * num_bins // len(self.group.bins) + 1
        size = len(self.group.shapes) * rows * len(self.group.widths)
        return self.group.longest * (30 + size // 300)

    def reprice(self, values: ShapeValues, numbers: Sequence[int]) -> Ints:
        """Value of each strip for each width at new prices."""
        group = self.group
        worth = np.flatnonzero(values.value > 0)
        self._worth = [int(shape) for shape in worth]
        self._values = values
        self._row = {number: row for row, number in enumerate(numbers)}
        shapes = [group.shapes[shape] for shape in self._worth]
        reach = np.stack([self._reach[number] for number in numbers])
        num_rows, num_widths = len(numbers), len(group.widths)
        best = np.zeros((group.longest + 1, num_rows, num_widths), np.int64)
        lengths = np.array([shape.length for shape in shapes], np.int64)
        rules = np.array([shape.face_class for shape in shapes], np.int64)
        gain = (self._shut[worth] + values.value[worth, None])[:, None, :]
        # May the shape start at this mark of this strip?
        starts = np.arange(group.longest + 1)
        may = reach[:, rules, :].transpose(1, 0, 2) >= starts + lengths[:, None, None]
        self._keep_zones_clear(may, shapes, numbers)
        self._may = may
        for mark in range(1, group.longest + 1):
            np.copyto(best[mark], best[mark - 1])
            fit = np.flatnonzero(lengths <= mark)
            if not len(fit):
                continue
            before = mark - lengths[fit]
            found = best[before] + gain[fit]
            found[~may[fit, :, before]] = LOW
            np.maximum(best[mark], found.max(axis=0), out=best[mark])
        self._best = best
        value: Ints = best[group.longest].copy()
        widest = np.array([self._strips[number].widest for number in numbers])
        value[group.widths[None, :] > widest[:, None]] = 0
        return value

    def _keep_zones_clear(
        self, may: Bools, shapes: Sequence[Shape], numbers: Sequence[int]
    ) -> None:
        """Rule out the starts where a joint would be cut into a mark."""
        if not any(any(shape.zones) for shape in shapes):
            return
        size = self.group.longest + 1
        starts = np.arange(size)
        zone_reach = np.stack([self._zone_reach[number] for number in numbers])
        for place, shape in enumerate(shapes):
            reach = zone_reach[:, shape.face_class, :]
            near, far = shape.zones
            if near:
                may[place] &= reach >= starts + near
            if far:
                begins = np.minimum(starts + shape.length - far, size - 1)
                may[place] &= reach[:, begins] >= starts + shape.length

    def trace(self, number: int, width_index: int) -> list[Cut]:
        """A best filling of a strip that was priced last."""
        row = self._row[number]
        best = self._best[:, row, width_index]
        cuts: list[Cut] = []
        mark = self.group.longest
        while best[mark] > 0:
            if best[mark] == best[mark - 1]:
                mark -= 1
                continue
            for place, shape in enumerate(self._worth):
                rule = self.group.shapes[shape]
                start = mark - rule.length
                if (
                    start >= 0
                    and rule.width_index <= width_index
                    and self._may[place, row, start]
                    and best[start] + self._values.value[shape] == best[mark]
                ):
                    cuts.append(Cut(start, mark, self._values.item[shape]))
                    mark = start
                    break
            else:
                raise ValueError("a strip's value has no filling behind it")
        return cuts[::-1]
