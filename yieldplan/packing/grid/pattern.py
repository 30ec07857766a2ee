"""A pattern: how one piece is sawn into strips and blanks, in cells."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from typing import Literal

from yieldplan.packing.problem import Problem

Breakdown = Literal["R", "C"]


@dataclass(frozen=True, slots=True)
class Cut:
    """An item in its strip, from mark `i` to mark `j`.

    Parameters
    ----------
    across
        The cells it has to itself where the strip need not be clear, from the lower edge
        to the upper one; None where the whole strip is as clear as the item asks.
    """

    i: int
    j: int
    item: int
    across: tuple[int, int] | None = None


@dataclass(frozen=True, slots=True)
class Strip:
    """A stretch across, from `u` to `v`, and what is crosscut from it."""

    u: int
    v: int
    cuts: tuple[Cut, ...]


@dataclass(frozen=True, slots=True)
class Section:
    """A stretch along, from mark `i` to mark `j`, and the strips ripped from it."""

    i: int
    j: int
    strips: tuple[Strip, ...]

    def cuts(self) -> Iterator[Cut]:
        """Every item, in order."""
        for strip in self.strips:
            yield from strip.cuts


@dataclass(frozen=True, slots=True)
class Pattern:
    """How one bin is sawn. Rip first is one section as long as the bin."""

    bin: int
    breakdown: Breakdown
    sections: tuple[Section, ...]

    def cuts(self) -> Iterator[Cut]:
        """Every item, in order."""
        for section in self.sections:
            yield from section.cuts()

    def items(self) -> list[int]:
        """Every item's index, in order."""
        return [cut.item for cut in self.cuts()]


def end_to_end(at: int, filling: Iterable[tuple[int, int]]) -> list[Cut]:
    """Items one after the other from a mark on.

    Parameters
    ----------
    filling
        Length in cells and item of each.
    """
    cuts = []
    for length, item in filling:
        cuts.append(Cut(at, at + length, item))
        at += length
    return cuts


def makes_of(pattern: Pattern, problem: Problem) -> list[int]:
    """How many of each demand the pattern makes."""
    made = [0] * len(problem.demands)
    for number in pattern.items():
        for demand, count in problem.items[number].makes.items():
            made[demand] += count
    return made


def left_after(
    patterns: Iterable[Pattern], need: Sequence[int], problem: Problem
) -> list[int]:
    """How many of each demand these patterns leave to be made."""
    left = list(need)
    for pattern in patterns:
        for number in pattern.items():
            take(number, left, problem)
    return left


def is_wanted(number: int, left: Sequence[int], problem: Problem) -> bool:
    """Whether an item still serves what is left, without making what nobody asked for."""
    item = problem.items[number]
    if item.may_spare:
        return any(left[demand] > 0 for demand in item.makes)
    return all(left[demand] >= count for demand, count in item.makes.items())


def take(number: int, left: list[int], problem: Problem) -> None:
    """Count an item as made."""
    for demand, count in problem.items[number].makes.items():
        left[demand] = max(0, left[demand] - count)


def cut_to_demand(
    pattern: Pattern, left: Sequence[int], problem: Problem
) -> tuple[Pattern, list[int]]:
    """The pattern without what is not needed, and what is still left to make then.

    Strips and sections keep their places, also where they are empty now, so that
    something else may be put into them.
    """
    open_ = list(left)
    sections = []
    for section in pattern.sections:
        strips = []
        for strip in section.strips:
            cuts = []
            for cut in strip.cuts:
                if is_wanted(cut.item, open_, problem):
                    take(cut.item, open_, problem)
                    cuts.append(cut)
            is_same = len(cuts) == len(strip.cuts)
            strips.append(strip if is_same else Strip(strip.u, strip.v, tuple(cuts)))
        sections.append(Section(section.i, section.j, tuple(strips)))
    return Pattern(pattern.bin, pattern.breakdown, tuple(sections)), open_


def tidy(pattern: Pattern, sizes: Sequence[tuple[int, int]]) -> Pattern:
    """The pattern without empty strips and sections, each no larger than it must be."""
    sections = []
    for section in pattern.sections:
        strips = tuple(
            replace(
                strip,
                v=max(
                    cut.across[1] if cut.across else strip.u + sizes[cut.item][1]
                    for cut in strip.cuts
                ),
            )
            for strip in section.strips
            if strip.cuts
        )
        if not strips:
            continue
        end = section.j
        if pattern.breakdown == "C":
            end = max(cut.j for strip in strips for cut in strip.cuts)
        sections.append(replace(section, j=end, strips=strips))
    return replace(pattern, sections=tuple(sections))
