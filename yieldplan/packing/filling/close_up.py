"""Moves what is cut from a board together toward its zero end and its near edge: what is left is one piece, and no waste lies between."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import replace

from yieldplan.packing.filling.yard import Yard
from yieldplan.packing.grid.pattern import Cut, Pattern, Section, Strip


def closed_up(pattern: Pattern, yard: Yard) -> Pattern:
    """The same blanks from the same board, without the gaps that marks do not ask for.

    A section, or a blank in its strip, moves to the first place where everything in it
    may lie; so does a strip then, or a cut would part it from a narrow strip of waste. A
    board that is not straight stays as it is: there a place has its own width.
    """
    if not yard.problem.bins[pattern.bin].is_straight:
        return pattern
    if pattern.breakdown == "R":
        (section,) = pattern.sections
        strips = tuple(
            _closed_strip(strip, section, pattern.bin, yard) for strip in section.strips
        )
        section = _closed_across(replace(section, strips=strips), pattern, yard)
        return replace(pattern, sections=(section,))
    moved: list[Section] = []
    at = 0
    for run in _runs(pattern, yard):
        start = run[0].i
        for i in _places(at, start, _ends_along(pattern.bin, yard)):
            there = [_shifted(section, i - start) for section in run]
            if all(_may_lie(section, pattern.bin, yard) for section in there) and (
                len(run) == 1 or _one_face(there, pattern.bin, yard)
            ):
                break
        at = there[-1].j
        if len(run) == 1:
            there = [_closed_across(there[0], pattern, yard)]
        moved += there
    return replace(pattern, sections=tuple(moved))


def _runs(pattern: Pattern, yard: Yard) -> Iterator[list[Section]]:
    """Sections one by one, those of a set in steps together."""
    sections = list(pattern.sections)
    while sections:
        firsts = {cut.item for cut in sections[0].cuts()}
        long = next((len(s) for s in yard.problem.sets if s[0] in firsts), 1)
        yield sections[:long]
        sections = sections[long:]


def _places(low: int, high: int, ends: Iterable[int]) -> list[int]:
    """From `low` to where it lies now, where something may begin: behind marks, which end there."""
    return [*sorted({low, *(end for end in ends if low < end < high)} - {high}), high]


def _ends_along(bin_: int, yard: Yard) -> set[int]:
    return {block.i1 for block in yard.grids[bin_].blocks}


def _closed_across(section: Section, pattern: Pattern, yard: Yard) -> Section:
    """The strips together toward the near edge."""
    ends = {block.u1 for block in yard.grids[pattern.bin].blocks}
    strips: list[Strip] = []
    at = 0
    for strip in section.strips:
        there = (_moved_across(strip, u - strip.u) for u in _places(at, strip.u, ends))
        moved = next(
            each
            for each in there
            if each.u == strip.u
            or all(
                yard.cut_may_lie(cut, pattern.bin, section, each, pattern.breakdown)
                for cut in each.cuts
            )
        )
        strips.append(moved)
        at = moved.v
    return replace(section, strips=tuple(strips))


def _moved_across(strip: Strip, by: int) -> Strip:
    cuts = (
        cut
        if cut.across is None
        else replace(cut, across=(cut.across[0] + by, cut.across[1] + by))
        for cut in strip.cuts
    )
    return Strip(strip.u + by, strip.v + by, tuple(cuts))


def _shifted(section: Section, by: int) -> Section:
    return Section(
        section.i + by,
        section.j + by,
        tuple(
            replace(
                strip,
                cuts=tuple(replace(c, i=c.i + by, j=c.j + by) for c in strip.cuts),
            )
            for strip in section.strips
        ),
    )


def _may_lie(section: Section, bin_: int, yard: Yard) -> bool:
    return all(
        yard.cut_may_lie(cut, bin_, section, strip, "C")
        for strip in section.strips
        for cut in strip.cuts
    )


def _one_face(run: list[Section], bin_: int, yard: Yard) -> bool:
    """Whether one face of the board can show in every step of a set."""
    in_sets = yard.in_sets
    faces = [
        yard.faces_up(cut.item, bin_, cut.i, cut.j, strip.u, strip.v)
        for section in run
        for strip in section.strips
        for cut in strip.cuts
        if cut.item in in_sets
    ]
    return any(all(face in may for may in faces) for face in "AB")


def _closed_strip(strip: Strip, section: Section, bin_: int, yard: Yard) -> Strip:
    cuts: list[Cut] = []
    at = 0
    for cut in strip.cuts:
        there = (
            replace(cut, i=i, j=i + cut.j - cut.i)
            for i in _places(at, cut.i, _ends_along(bin_, yard))
        )
        moved = next(
            each
            for each in there
            if each.i == cut.i or yard.cut_may_lie(each, bin_, section, strip, "R")
        )
        cuts.append(moved)
        at = moved.j
    return replace(strip, cuts=tuple(cuts))
