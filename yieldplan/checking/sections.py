"""Crosscut first: the most from sections over the full width, with sets that run on through them."""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Iterator
from typing import NamedTuple

from yieldplan.checking.grid import Block, Grid
from yieldplan.checking.obstacles import Soft, obstacles_crosscut, split, within
from yieldplan.checking.tables import Tables
from yieldplan.checking.worths import Harm, Held, Set, StepItem


class Span(NamedTuple):
    """Lengths of a section that meet the same obstacles and are as wide. [cells]

    Parameters
    ----------
    first, last
        Places among the lengths worth cutting; `last` is no longer of them.
    met
        The obstacles met, as bits.
    lost
        What crook takes.
    height
        What is left across.
    """

    first: int
    last: int
    met: int
    lost: int
    height: int


class Sections:
    """The sections of one piece.

    Parameters
    ----------
    grid
        The piece in cells.
    tables
        For blanks that may come from it.
    """

    def __init__(self, grid: Grid, tables: Tables) -> None:
        self.grid = grid
        self.tables = tables
        self.obstacles = obstacles_crosscut(grid, tables.held)
        self._worths: dict[tuple[int, int, int, int], list[int]] = {}
        self._longest = grid.along
        self._drops: list[int] = []
        self._turns = {obstacle.along[0] for obstacle in self.obstacles}
        if grid.uneven:
            room, lost = grid.uneven.room, grid.uneven.lost
            self._longest = len(lost) - 1
            self._drops = [n - 1 for n in range(1, len(lost)) if lost[n] > lost[n - 1]]
            self._turns |= {
                at - 1 for at in range(1, len(room)) if room[at] != room[at - 1]
            }

    def worths(self) -> list[int]:
        """Family C: the most from sections that end at a mark or before it."""
        along, tables = self.grid.along, self.tables
        lengths = tables.lengths
        begin, sets_begin = self._starts()
        best = [0] * (along + 1)
        for start in range(along + 1):
            gained = start == 0
            if start:
                gained = best[start] > best[start - 1]
                best[start] = max(best[start], best[start - 1])
            so_far = best[start]
            if gained or start in begin:
                for span in self._spans(start):
                    worths = self._section(span.met, span.lost, span.height)
                    for number in range(span.first, span.last):
                        end = start + lengths[number]
                        if so_far + worths[number] > best[end]:
                            best[end] = so_far + worths[number]
            if gained or start in sets_begin:
                for each in tables.held.sets:
                    end = start + sum(step.long for step in each.steps)
                    if end <= along:
                        best[end] = max(best[end], so_far + self._set(each, start))
        return best

    def _starts(self) -> tuple[set[int], set[int]]:
        """Where a section, and a set, cannot slide toward the zero end without loss."""
        everywhere = set(range(self.grid.along + 1))
        if self.tables.clear and self.grid.uneven:
            return everywhere, everywhere
        begin = {obstacle.along[1] for obstacle in self.obstacles}
        if self.tables.clear:
            # Beside the steps of a set more marks may be said to leave more.
            return begin, everywhere
        if self.grid.uneven:
            room = self.grid.uneven.room
            # A piece that widens: a section further on is wider.
            begin |= {at for at in range(1, len(room)) if room[at] > room[at - 1]}
        sets_begin: set[int] = set()
        for each in self.tables.held.sets:
            offset = 0
            for step in each.steps:
                sets_begin |= {block.along[1] - offset for block in self.grid.blocks}
                offset += step.long
        return begin, sets_begin

    def _spans(self, start: int) -> Iterator[Span]:
        """The lengths of a section from here, by what they meet and how wide they are."""
        lengths, uneven = self.tables.lengths, self.grid.uneven
        longest = min(self.grid.along - start, self._longest)
        untils = {at - start for at in self._turns if at > start}
        untils |= {*self._drops, longest}
        done = 0
        for until in sorted(untils):
            last = bisect_right(lengths, min(until, longest))
            if last <= done:
                continue
            long = lengths[done]
            lost, height = 0, self.grid.across
            if uneven:
                lost = uneven.lost[long]
                height = min(uneven.room[start], uneven.room[start + long]) - lost
            if height > 0:
                met = self._met(start, start + long)
                yield Span(done, last, met, lost, height)
            done = last

    def _met(self, start: int, end: int) -> int:
        met = 0
        for number, obstacle in enumerate(self.obstacles):
            if obstacle.along[0] >= end:
                break
            if obstacle.along[1] > start:
                met |= 1 << number
        return met

    def _section(self, met: int, lost: int, height: int, taken: int = 0) -> list[int]:
        """Worths of strips one beside the other, by length; the first cells may be taken."""
        key = met, lost, height, taken
        if key not in self._worths:
            everyone = self.tables.held.everyone
            blocks = [
                Soft(obstacle.across[0] - lost, obstacle.across[1], obstacle.harm)
                for number, obstacle in enumerate(self.obstacles)
                if met >> number & 1
            ]
            if taken:
                blocks.append(Soft(0, taken, Harm(everyone, everyone)))
            soft, runs = split(blocks, height, everyone)
            is_mixed = any(
                obstacle.is_mixed
                and met >> number & 1
                and obstacle.across[0] - lost < height
                and obstacle.across[1] > taken
                for number, obstacle in enumerate(self.obstacles)
            )
            stacks = [
                self.tables.stack(
                    end - start, within(soft, start, end), is_mixed=is_mixed
                )
                for start, end in runs
            ]
            none = [0] * len(self.tables.lengths)
            self._worths[key] = [sum(each) for each in zip(none, *stacks, strict=True)]
        return self._worths[key]

    def _set(self, each: Set, start: int) -> int:
        """The worth of a set and of what lies beside its steps; 0 where it may not lie."""
        if not set_may_lie(each, start, self.grid, self.tables.held):
            return 0
        total = each.worth
        for step in each.steps:
            end = start + step.long
            number = bisect_right(self.tables.lengths, step.long) - 1
            if number >= 0:
                met = self._met(start, end)
                beside = self._section(met, 0, self.grid.across, step.wide)
                total += beside[number]
            start = end
        return total


def set_may_lie(each: Set, start: int, grid: Grid, held: Held) -> bool:
    """Whether a set may begin at a mark: its steps clear, with one face up for all."""
    faces = [True, True]
    for step in each.steps:
        end = start + step.long
        if step.wide > grid.across:
            return False
        for block in grid.blocks:
            if _meets(block, start, end, step.wide):
                for number, barred in enumerate(_barred(held, step, block)):
                    faces[number] &= not barred
        start = end
    return any(faces)


def _barred(held: Held, step: StepItem, block: Block) -> tuple[bool, bool]:
    if step.asks.zoned and held.is_in_zones(block):
        return True, True
    return step.asks.barred(block)


def _meets(block: Block, start: int, end: int, wide: int) -> bool:
    """Whether a block lies in a section's cells from the near edge so far. [cells]"""
    return (
        block.along[0] < end
        and block.along[1] > start
        and block.across[0] < wide
        and block.across[1] > 0
    )
