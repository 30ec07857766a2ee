"""Puts parts that are still needed into the empty places of a pattern, dearest first."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from yieldplan.packing.filling.yard import Yard
from yieldplan.packing.grid.pattern import (
    Cut,
    Pattern,
    Section,
    Strip,
    is_wanted,
    take,
)


@dataclass(frozen=True)
class _Wanted:
    item: int
    length: int
    width: int


def refill(
    pattern: Pattern, left: Sequence[int], prices: Sequence[int], yard: Yard
) -> tuple[Pattern, list[int]]:
    """The pattern with more in it, and what is still left to make.

    Parameters
    ----------
    left
        What is needed beyond what the pattern makes.
    prices
        Of the demands, to tell which item to place first.
    """
    return _Refill(pattern, list(left), prices, yard).run()


class _Refill:
    def __init__(
        self, pattern: Pattern, left: list[int], prices: Sequence[int], yard: Yard
    ) -> None:
        self.pattern = pattern
        self.left = left
        self.yard = yard
        self.wanted = [
            _Wanted(number, yard.sizes[number].along, yard.sizes[number].across)
            for number in yard.wanted(pattern.bin, left, prices)
        ]
        # Most gaps are smaller than any of them; that is seen at once.
        self.shortest = min((wanted.length for wanted in self.wanted), default=0)
        self.narrowest = min((wanted.width for wanted in self.wanted), default=0)

    def run(self) -> tuple[Pattern, list[int]]:
        if not self.wanted:
            return self.pattern, self.left
        grid = self.yard.grids[self.pattern.bin]
        sections = []
        for section in self._sections(grid.along):
            self.room = self.yard.room(
                self.pattern.bin, self.pattern.breakdown, section.i, section.j
            )
            strips = [self._in_strip(section, strip) for strip in section.strips]
            strips.extend(self._new_strips(section, strips, self.room.across))
            strips.sort(key=lambda strip: strip.u)
            if any(strip.cuts for strip in strips):
                sections.append(Section(section.i, section.j, tuple(strips)))
        pattern = self.pattern
        return Pattern(pattern.bin, pattern.breakdown, tuple(sections)), self.left

    def _sections(self, along: int) -> Iterator[Section]:
        """The pattern's sections, and empty ones between them (crosscut first only)."""
        if self.pattern.breakdown == "R":
            yield from self.pattern.sections
            return
        at = 0
        for section in (*self.pattern.sections, Section(along, along, ())):
            if section.i - at >= self.shortest:
                yield Section(at, section.i, ())
            at = section.j
            if section.j > section.i:
                yield section

    def _in_strip(self, section: Section, strip: Strip) -> Strip:
        if strip.v - strip.u < self.narrowest:
            return strip
        more: list[Cut] = []
        for start, end in _gaps(section, strip):
            if end - start >= self.shortest:
                more += self._fill(section, start, end, strip.u, strip.v)
        if not more:
            return strip
        cuts = sorted((*strip.cuts, *more), key=lambda cut: cut.i)
        return Strip(strip.u, strip.v, tuple(cuts))

    def _new_strips(
        self, section: Section, strips: Sequence[Strip], across: int
    ) -> Iterator[Strip]:
        at = 0
        for u, v in [*sorted((s.u, s.v) for s in strips), (across, across)]:
            while self.wanted and u - at >= self.narrowest:
                strip = self._new_strip(section, at, u)
                if strip is None:
                    break
                yield strip
                at = strip.v
            at = max(at, v)

    def _new_strip(self, section: Section, low: int, high: int) -> Strip | None:
        bottoms = self._starts(low, high, across=True)
        for wanted in self.wanted:
            if wanted.length > section.j - section.i or wanted.width > high - low:
                continue
            for u in bottoms:
                v = u + wanted.width
                if v > high:
                    continue
                cuts = self._fill(section, section.i, section.j, u, v)
                if cuts:
                    return Strip(u, v, tuple(cuts))
        return None

    def _fill(
        self, section: Section, start: int, end: int, u: int, v: int
    ) -> list[Cut]:
        """Items from `start` to `end` of a strip, one after the other."""
        found: list[Cut] = []
        for begin in self._starts(start, end, across=False):
            at = max([begin, *(cut.j for cut in found)])
            placed = True
            while placed:
                placed = False
                for wanted in self.wanted:
                    if wanted.width > v - u or at + wanted.length > end:
                        continue
                    if self._may_lie(section, wanted, at, u, v):
                        found.append(Cut(at, at + wanted.length, wanted.item))
                        self._take(wanted)
                        at += wanted.length
                        placed = True
                        break
        return found

    def _starts(self, low: int, high: int, *, across: bool) -> list[int]:
        blocks = self.yard.grids[self.pattern.bin].blocks
        ends = {block.u1 if across else block.i1 for block in blocks}
        return sorted({low, *(end for end in ends if low < end < high)})

    def _may_lie(
        self, section: Section, wanted: _Wanted, at: int, u: int, v: int
    ) -> bool:
        i, j = at, at + wanted.length
        if self.pattern.breakdown == "C":
            i, j = section.i, section.j
        return self.yard.may_lie(
            wanted.item,
            self.pattern.bin,
            i,
            j,
            u,
            v,
            self.pattern.breakdown,
            self.room,
        )

    def _take(self, wanted: _Wanted) -> None:
        take(wanted.item, self.left, self.yard.problem)
        rivals = self.yard.rivals[wanted.item]
        self.wanted = [
            other
            for other in self.wanted
            if other.item not in rivals
            or is_wanted(other.item, self.left, self.yard.problem)
        ]


def _gaps(section: Section, strip: Strip) -> list[tuple[int, int]]:
    gaps = []
    at = section.i
    for cut in strip.cuts:
        if cut.i > at:
            gaps.append((at, cut.i))
        at = cut.j
    if section.j > at:
        gaps.append((at, section.j))
    return gaps
