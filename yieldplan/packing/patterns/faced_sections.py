"""Sections crossed by marks that some items may bear and others not: worked out strip by strip across them."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from yieldplan.packing.grid.crossings import Crossings, Ints
from yieldplan.packing.patterns.group import Group
from yieldplan.packing.patterns.strip_table import StripTable

_CHUNK = 48
"""Sections worked out together, so that the tables stay in the processor's cache."""


@dataclass(frozen=True)
class FacedSection:
    """A section of one bin, by the marks it meets.

    Parameters
    ----------
    across
        Crossings of the bin's blocks, from edge to edge.
    mask_of
        For each pair of counts of `across`, which face rules the strip may serve.
    first, last
        Places of the shortest and longest section there is among the lengths.
    """

    bin_place: int
    across: Crossings
    mask_of: Ints
    first: int
    last: int


class FacedSections:
    """All such sections of one group."""

    def __init__(self, group: Group) -> None:
        self.group = group
        self._sections: list[FacedSection] = []
        self._rows: list[int] = []

    def add(self, section: FacedSection, row: int) -> None:
        """Keep a section and the row its values go to."""
        self._sections.append(section)
        self._rows.append(row)

    def __len__(self) -> int:
        return len(self._sections)

    def work(self, num_bins: int) -> int:
        """Units of work one round over so many bins takes."""
        share = num_bins / len(self.group.bins)
        cells = sum(section.last + 1 - section.first + 60 for section in self._sections)
        size = self.group.widest * len(self.group.widths)
        return int(share * size * cells) // 700

    def reprice(self, table: StripTable, wanted: set[int], values: Ints) -> None:
        """Fill in the rows of the wanted bins."""
        numbers = [
            number
            for number, section in enumerate(self._sections)
            if section.bin_place in wanted
        ]
        # Alike in length together, so that little is worked out in vain.
        numbers.sort(key=lambda number: (self._sections[number].last, number))
        for start in range(0, len(numbers), _CHUNK):
            chunk = numbers[start : start + _CHUNK]
            sections = [self._sections[number] for number in chunk]
            first = min(section.first for section in sections)
            last = max(section.last for section in sections) + 1
            best = self._stack(sections, table, slice(first, last))
            for place, number in enumerate(chunk):
                section = sections[place]
                values[self._rows[number], section.first : section.last + 1] = best[
                    section.across.size,
                    place,
                    section.first - first : section.last + 1 - first,
                ]

    def _stack(
        self, sections: Sequence[FacedSection], table: StripTable, lengths: slice
    ) -> Ints:
        widths = self.group.widths
        strips = np.ascontiguousarray(table.value[:, :, lengths])
        size = max(section.across.size for section in sections)
        mask = np.zeros((len(sections), size + 1, len(widths)), np.int64)
        for place, section in enumerate(sections):
            across = section.across
            ends = np.arange(across.size + 1)[:, None]
            starts = np.maximum(ends - widths[None, :], 0)
            counts = across.ended[starts] * across.columns + across.begun[ends]
            mask[place, : across.size + 1] = section.mask_of[counts]
        best = np.zeros((size + 1, len(sections), strips.shape[2]), np.int64)
        for v in range(1, size + 1):
            np.copyto(best[v], best[v - 1])
            for width_index, width in enumerate(widths.tolist()):
                if width > v:
                    break
                found = strips[mask[:, v, width_index], width_index]
                found += best[v - width]
                np.maximum(best[v], found, out=best[v])
        return best

    def trace(
        self, row: int, table: StripTable, length: int
    ) -> list[tuple[int, int, int]]:
        """A best stack in one section, as (start, place of width, place of mask)."""
        section = self._sections[self._rows.index(row)]
        across = section.across
        values = table.value[:, :, length].tolist()
        masks = section.mask_of.tolist()
        begun = across.begun.tolist()
        from_ = (across.ended * across.columns).tolist()
        widths = self.group.widths.tolist()
        best = [0] * (across.size + 1)
        how: list[tuple[int, int, int] | None] = [None] * (across.size + 1)
        for v in range(1, across.size + 1):
            best[v] = best[v - 1]
            for width_index, width in enumerate(widths):
                u = v - width
                if u < 0:
                    break
                mask = masks[from_[u] + begun[v]]
                value = values[mask][width_index]
                if value > 0 and best[u] + value > best[v]:
                    best[v] = best[u] + value
                    how[v] = (u, width_index, mask)
        found: list[tuple[int, int, int]] = []
        v = across.size
        while v > 0:
            step = how[v]
            if step is None:
                v -= 1
                continue
            found.append(step)
            v = step[0]
        return found[::-1]
