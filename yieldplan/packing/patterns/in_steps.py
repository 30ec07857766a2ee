"""Sets cut in steps: a row of sections, one part of the set in each at the near edge, and stock beside the lower ones.

A set of graduated fronts cut as one rectangle throws away what stands beside its lower
fronts. In steps that wood is ripped off within each section and serves other parts.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from yieldplan.packing.grid.crossings import Ints
from yieldplan.packing.grid.pattern import Cut, Section, Strip
from yieldplan.packing.grid.rooms import Room
from yieldplan.packing.patterns.group import Group, Steps
from yieldplan.packing.patterns.sections import Sections
from yieldplan.packing.patterns.values import LOW


@dataclass(frozen=True)
class _Placed:
    """One set on one board: where it may begin, and the rows beside its steps.

    Parameters
    ----------
    may
        For each mark, 0 where the set may begin there, else `LOW`.
    rows
        For each step and mark, the row of what is left beside the step.
    """

    place: int
    may: Ints
    rows: Ints


class InSteps:
    """The sets of one group, on its straight boards."""

    def __init__(self, group: Group, sections: Sections) -> None:
        self.group = group
        self._sections = sections
        self._placed: list[list[_Placed]] = [
            [
                found
                for place, faces in enumerate(group.bins)
                if faces.is_straight and (found := self._on(steps, place)) is not None
            ]
            for steps in group.sets
        ]

    def _on(self, steps: Steps, place: int) -> _Placed | None:
        faces, size = self.group.bins[place], self.group.longest + 1
        grid = faces.grid
        total = sum(steps.lengths)
        if total > grid.along or max(steps.widths) > grid.across:
            return None
        begins = np.arange(grid.along - total + 1)
        ends = np.cumsum(steps.lengths)
        starts = ends - np.array(steps.lengths)
        is_clear = steps.begins(grid.along, faces.blocks)
        if not is_clear.any():
            return None
        may = np.full(size, LOW, np.int64)
        may[: len(begins)][is_clear] = 0
        along = self._sections.along[place]
        rows = np.zeros((len(steps.items), size), np.int64)
        for step, width in enumerate(steps.widths):
            base = self._sections.base(place, Room(grid.across, near=width))
            if base:
                ended = along.ended[begins + starts[step]]
                begun = along.begun[begins + ends[step]]
                rows[step, : len(begins)] = base + ended * along.columns + begun
        return _Placed(place, may, rows)

    def reprice(
        self, item_value: Sequence[int], values: Ints, places: Sequence[int]
    ) -> None:
        """Value of every set at every mark of the boards asked for.

        Parameters
        ----------
        values
            Of the sections, row by length.
        """
        column = {place: number for number, place in enumerate(places)}
        floor = self._sections.lengths.floor
        self.best: list[tuple[int, Ints]] = []
        """For each set, its cells along, and its value by mark and board."""
        for steps, placed in zip(self.group.sets, self._placed, strict=True):
            worth = sum(item_value[number] for number in steps.items)
            found = np.full((self.group.longest + 1, len(places)), LOW, np.int64)
            for on in placed:
                if on.place in column and worth:
                    value = on.may + worth
                    for step, long in enumerate(steps.lengths):
                        value = value + values[on.rows[step], int(floor[long])]
                    found[:, column[on.place]] = value
            self.best.append((sum(steps.lengths), found))

    def at_most(
        self, item_value: Sequence[int], stacks: Ints, places: Sequence[int]
    ) -> list[Ints]:
        """For each set, what it is worth by mark and board if no mark lies beside its steps.

        Parameters
        ----------
        stacks
            Worth of strips beside each other in clear wood, by height and length in cells.
        """
        column = {place: number for number, place in enumerate(places)}
        found = []
        for steps, placed in zip(self.group.sets, self._placed, strict=True):
            worth = sum(item_value[number] for number in steps.items)
            most = np.full((self.group.longest + 1, len(places)), LOW, np.int64)
            for on in placed:
                if on.place in column and worth:
                    across = self.group.bins[on.place].grid.across
                    beside = sum(
                        int(stacks[across - wide, long])
                        for wide, long in zip(steps.widths, steps.lengths, strict=True)
                    )
                    most[:, column[on.place]] = on.may + worth + beside
            found.append(most)
        return found

    @property
    def work(self) -> int:
        """Units of work that pricing the sets takes."""
        return sum(
            10 + len(steps.items) * self.group.longest // 100
            for steps, placed in zip(self.group.sets, self._placed, strict=True)
            for _ in placed
        )

    def trace(self, number: int, place: int, i: int) -> list[Section]:
        """The sections of a set that begins at a mark, with what lies beside its steps."""
        steps = self.group.sets[number]
        (on,) = (each for each in self._placed[number] if each.place == place)
        floor = self._sections.lengths.floor
        sections = []
        at = i
        for step, (item, long, width) in enumerate(
            zip(steps.items, steps.lengths, steps.widths, strict=True)
        ):
            row = int(on.rows[step, i])
            beside = (
                self._sections.strips(row, int(floor[long]), at, near=width)
                if row
                else []
            )
            own = Strip(0, width, (Cut(at, at + long, item),))
            sections.append(Section(at, at + long, (own, *beside)))
            at += long
        return sections
