"""Bins that may hold the same items, with those items as shapes in cells.

Items that take the same cells and bear the same marks are one shape: whatever the prices
are, only the dearest of them is worth cutting.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cached_property

import numpy as np

from yieldplan.packing.grid.cells import CellBlock, Grid, grid_of, size_of, zones_of
from yieldplan.packing.grid.crossings import Bools, Ints
from yieldplan.packing.patterns.bin_faces import (
    BinFaces,
    Layers,
    Rule,
    faces_of,
    is_forbidden_up,
    rules_of_all,
)
from yieldplan.packing.problem import Item, Problem

_ANY = 1 << 30
"""More than any board holds."""


@dataclass(frozen=True)
class Shape:
    """Items alike to the saw.

    Parameters
    ----------
    length, width
        [cells]
    width_index
        Place of its width among the group's widths.
    face_class
        Place of its face rule among the group's rules.
    zones
        Cells at its zero end and at its far end where its joints are cut.
    """

    length: int
    width: int
    width_index: int
    face_class: int
    items: tuple[int, ...]
    zones: tuple[int, int] = (0, 0)


@dataclass(frozen=True)
class Steps:
    """A set that is cut in steps: one item a section, in order, at the near edge.

    Parameters
    ----------
    items
        From the zero end on.
    lengths, widths
        Of each step. [cells]
    layers
        What each step may not bear, each way up, its zones among it.
    """

    items: tuple[int, ...]
    lengths: tuple[int, ...]
    widths: tuple[int, ...]
    layers: tuple[Layers, ...]

    def begins(self, along: int, blocks: Sequence[CellBlock]) -> Bools:
        """By mark, as far as there is room, whether a set may begin there: all its steps clear, with one face up.

        Parameters
        ----------
        along
            Of the bin. [cells]
        """
        begins = np.arange(along - sum(self.lengths) + 1)
        ends = np.cumsum(self.lengths)
        is_clear = np.zeros(len(begins), np.bool_)
        for way in (0, 1):
            is_so = np.ones(len(begins), np.bool_)
            for end, long, wide, layers in zip(
                ends, self.lengths, self.widths, self.layers, strict=True
            ):
                for block in blocks:
                    if block.u0 < wide and is_forbidden_up(block, layers[way]):
                        past = begins + end - long >= block.i1
                        is_so &= past | (begins + end <= block.i0)
            is_clear |= is_so
        return is_clear


@dataclass(frozen=True)
class Group:
    """Bins that hold the same items.

    Parameters
    ----------
    at_most
        Of every item of the problem, how often a clear run is said to hold it at the most.
    """

    bins: tuple[BinFaces, ...]
    shapes: tuple[Shape, ...]
    widths: Ints
    rules: tuple[Rule, ...]
    at_most: tuple[int, ...]
    sets: tuple[Steps, ...] = ()

    @property
    def all_rules(self) -> int:
        """The bit set of every face rule."""
        return (1 << len(self.rules)) - 1

    @cached_property
    def longest(self) -> int:
        """Most cells along. [cells]"""
        return max(faces.grid.along for faces in self.bins)

    @cached_property
    def widest(self) -> int:
        """Most cells across. [cells]"""
        return max(faces.grid.across for faces in self.bins)


def groups_of(problem: Problem) -> list[Group]:
    """The problem's usable bins, by what they may hold."""
    by_holds: dict[tuple[int, ...], list[tuple[int, Grid]]] = {}
    for number, piece in enumerate(problem.bins):
        grid = grid_of(piece, problem)
        if grid.is_usable and piece.holds:
            by_holds.setdefault(tuple(sorted(piece.holds)), []).append((number, grid))
    everyone = rules_of_all(problem)
    return [
        group
        for holds, bins in sorted(by_holds.items())
        if (group := _group(holds, bins, everyone, problem)) is not None
    ]


def _group(
    holds: Sequence[int],
    bins: Sequence[tuple[int, Grid]],
    everyone: Sequence[Rule],
    problem: Problem,
) -> Group | None:
    longest = max(grid.along for _, grid in bins)
    widest = max(grid.across for _, grid in bins)
    alike: dict[tuple[int, int, Rule, tuple[int, int]], list[int]] = {}
    in_sets = problem.in_sets()
    for number in holds:
        item = problem.items[number]
        size = size_of(item, problem)
        if size.along <= longest and size.across <= widest:
            zones = zones_of(item, problem)
            rule = (item.layers, item.zone_bits if any(zones) else 0)
            # A step of a set is a shape that nothing makes: only its set is cut.
            key = (size.along, size.across, rule, zones)
            alike.setdefault(key, []).extend([] if number in in_sets else [number])
    if not alike:
        return None
    asked = [demand.need for demand in problem.demands]
    widths = sorted({width for _, width, _, _ in alike})
    rules = sorted({rule for _, _, rule, _ in alike})
    sets = tuple(
        _steps(steps, problem) for steps in problem.sets if set(steps) <= set(holds)
    )
    return Group(
        bins=tuple(
            faces_of(number, grid, rules, everyone, problem) for number, grid in bins
        ),
        shapes=tuple(
            Shape(
                length,
                width,
                widths.index(width),
                rules.index(rule),
                tuple(items),
                zones,
            )
            for (length, width, rule, zones), items in sorted(alike.items())
        ),
        widths=np.array(widths, np.int64),
        rules=tuple(rules),
        at_most=tuple(most_of(item, asked, problem) for item in problem.items),
        sets=sets,
    )


def counts_as_asked(problem: Problem) -> bool:
    """Whether values count items no oftener than they are asked for; not in the wider families."""
    return not problem.family.endswith("+")


def most_of(item: Item, left: Sequence[int], problem: Problem) -> int:
    """How many of an item make all that is left to make of each thing it makes; more are cut in vain."""
    if not counts_as_asked(problem):
        return _ANY
    return max(
        (-(-left[demand] // count) for demand, count in item.makes.items()), default=0
    )


def _steps(steps: Sequence[int], problem: Problem) -> Steps:
    sizes = [size_of(problem.items[number], problem) for number in steps]
    layers = []
    for number in steps:
        item = problem.items[number]
        zone = item.zone_bits if any(zones_of(item, problem)) else 0
        (a_up, b_up) = ((on_a | zone, on_b | zone) for on_a, on_b in item.layers)
        layers.append((a_up, b_up))
    return Steps(
        items=tuple(steps),
        lengths=tuple(size.along for size in sizes),
        widths=tuple(size.across for size in sizes),
        layers=tuple(layers),
    )
