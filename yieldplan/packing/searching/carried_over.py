"""A plan carried over to nearly the same question: what may still be cut like that, and what it was worth."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from yieldplan.packing.filling.known import Known
from yieldplan.packing.filling.yard import Yard
from yieldplan.packing.grid.cells import size_of
from yieldplan.packing.grid.pattern import Cut, Pattern, Section, Strip
from yieldplan.packing.problem import Bin, Item, Problem
from yieldplan.packing.searching.solution import Solution

Made = tuple[tuple[int, int], ...]
"""How many of which demands, by number."""


def carried_over(solution: Solution, old: Problem, new: Problem) -> Known:
    """What the solution of one problem says about another one of the same boards.

    A blank is cut as another one that makes the same parts, is no larger, and may lie
    there; what has none such is left out of its pattern.
    """
    worth = dict(zip(_names(old), solution.bound.prices, strict=True))
    prices = tuple(worth.get(name, 0) for name in _names(new))
    grid = (new.family, new.kerf, new.step_along, new.step_across, new.marks_from)
    if grid != (old.family, old.kerf, old.step_along, old.step_across, old.marks_from):
        return Known(prices=prices)
    return Known(tuple(_Carrier(old, new).patterns(solution)), (), prices)


def _names(problem: Problem) -> list[str]:
    return [demand.name for demand in problem.demands]


class _Carrier:
    def __init__(self, old: Problem, new: Problem) -> None:
        self.old, self.new = old, new
        self.yard = Yard(new)
        self.bins = {piece.name: number for number, piece in enumerate(new.bins)}
        places = {name: number for number, name in enumerate(_names(new))}
        self._places = [places.get(name, -1) for name in _names(old)]
        self._others = self._by_what_they_make()
        self._as = [self._single(item) for item in old.items]
        for steps in old.sets:
            same = next((each for each in new.sets if self._is_same(steps, each)), ())
            for number, other in zip(steps, same, strict=False):
                # A set stays a set, as a whole, where the new problem has it too.
                self._as[number] = [other]

    def patterns(self, solution: Solution) -> Iterator[Pattern]:
        """Each as far as it holds for the new problem."""
        for pattern in solution.patterns:
            piece = self.old.bins[pattern.bin]
            number = self.bins.get(piece.name)
            if number is None or not _is_same_board(piece, self.new.bins[number]):
                continue
            sections = tuple(self._sections(replace(pattern, bin=number)))
            if sections:
                yield replace(pattern, bin=number, sections=sections)

    def _sections(self, pattern: Pattern) -> Iterator[Section]:
        for section in pattern.sections:
            strips = tuple(
                replace(strip, cuts=cuts)
                for strip in section.strips
                if (cuts := tuple(self._cuts(pattern, section, strip)))
            )
            if strips:
                yield replace(section, strips=strips)

    def _cuts(self, pattern: Pattern, section: Section, strip: Strip) -> Iterator[Cut]:
        for cut in strip.cuts:
            for number in self._as[cut.item]:
                size = self.yard.sizes[number]
                low = cut.across[0] if cut.across else 0
                other = Cut(
                    cut.i,
                    cut.i + size.along,
                    number,
                    (low, low + size.across) if cut.across else None,
                )
                if number in self.new.bins[pattern.bin].holds and self.yard.cut_may_lie(
                    other, pattern.bin, section, strip, pattern.breakdown
                ):
                    yield other
                    break

    # -- which item as which ---------------------------------------------------

    def _by_what_they_make(self) -> dict[Made, list[int]]:
        found: dict[Made, list[int]] = {}
        for number, item in enumerate(self.new.items):
            found.setdefault(tuple(sorted(item.makes.items())), []).append(number)
        return found

    def _made(self, item: Item) -> Made:
        """What an old item makes, by the new problem's numbers."""
        return tuple(
            sorted(
                (self._places[demand], count) for demand, count in item.makes.items()
            )
        )

    def _single(self, item: Item) -> list[int]:
        """Items outside of sets that fit where this one does, the largest first."""
        size, in_sets = size_of(item, self.old), self.yard.in_sets
        fitting = [
            number
            for number in self._others.get(self._made(item), ())
            if number not in in_sets
            and self.yard.sizes[number].along <= size.along
            and self.yard.sizes[number].across <= size.across
        ]
        sizes = self.yard.sizes
        return sorted(fitting, key=lambda n: (-sizes[n].along * sizes[n].across, n))

    def _is_same(self, steps: Sequence[int], others: Sequence[int]) -> bool:
        """Whether a set of the new problem is cut just like one of the old."""
        return len(steps) == len(others) and all(
            self._made(old) == tuple(sorted(new.makes.items()))
            and size_of(old, self.old) == size_of(new, self.new)
            and old.layers == new.layers
            for old, new in (
                (self.old.items[one], self.new.items[other])
                for one, other in zip(steps, others, strict=True)
            )
        )


def _is_same_board(one: Bin, other: Bin) -> bool:
    return replace(one, holds=other.holds) == other
