"""Breaks a board down at random, rip first or crosscut first, the way `plan_format.md` allows."""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise

import numpy as np

from tests.packing.from_the_page import Page
from yieldplan.model.plan import Family
from yieldplan.packing.grid.pattern import Breakdown, Cut, Pattern, Section, Strip
from yieldplan.packing.problem import Bin, Item, Problem


def few_kinds(rng: np.random.Generator, problem: Problem, number: int) -> Pattern:
    """A board with sections, strips and blanks taken as they come, where no mark lies."""
    breakdown = _breakdown(rng, problem.family)
    page = Page(problem, problem.bins[number])
    takes = [page.takes(item) for item in range(len(problem.items))]

    def is_clear(i: int, j: int, u: int, v: int) -> bool:
        return not any(
            page.meets(block.box, i, j, u, v) for block in problem.bins[number].blocks
        )

    def strip(i: int, j: int, u: int) -> Strip | None:
        v = u + takes[int(rng.integers(len(takes)))][1]
        if v > page.across or (breakdown == "C" and not is_clear(i, j, u, v)):
            return None
        cuts, at = [], i
        for _ in range(40):
            item = int(rng.integers(len(takes)))
            long, wide = takes[item]
            if wide > v - u or at + long > j:
                continue
            if breakdown == "C" or is_clear(at, at + long, u, v):
                cuts.append(Cut(at, at + long, item))
                at += long
            else:
                at += 1
        return Strip(u, v, tuple(cuts)) if cuts else None

    def strips(i: int, j: int) -> tuple[Strip, ...]:
        found, u = [], 0
        for _ in range(30):
            one = strip(i, j, u)
            if one is None:
                u += int(rng.random() < 0.3)
                continue
            found.append(one)
            u = one.v
        return tuple(found)

    if breakdown == "R":
        sections = [Section(0, page.along, strips(0, page.along))]
    else:
        sections, i = [], 0
        while i < page.along:
            items = rng.integers(len(takes), size=int(rng.integers(1, 4)))
            j = i + sum(takes[int(item)][0] for item in items)
            if j <= page.along:
                sections.append(Section(i, j, strips(i, j)))
                i = j
            i += int(rng.integers(0, 6)) + (j > page.along)
    return Pattern(number, breakdown, tuple(one for one in sections if one.strips))


def cut_up(
    rng: np.random.Generator, posed: Problem, used: list[int]
) -> tuple[Problem, list[Pattern]]:
    """Boards cut up without waste but for their marks, every part a size of its own."""
    items: list[Item] = []
    plan = []

    def blank(i: int, j: int, u: int, v: int) -> Cut:
        step_x, step_y = posed.step_along, posed.step_across
        # The largest blank of these cells, or a little less.
        length = (j - i) * step_x - posed.kerf - int(rng.integers(step_x))
        width = (v - u) * step_y - posed.kerf - int(rng.integers(step_y))
        items.append(
            Item(
                name=f"p{len(items) + 1}",
                length=max(1, length),
                width=max(1, width),
                makes={0: 1},
                layers=((1, 1), (1, 1)),
            )
        )
        return Cut(i, j, len(items) - 1)

    for number in used:
        page, piece = Page(posed, posed.bins[number]), posed.bins[number]
        # A blank has wood of its own beyond its kerf.
        long, wide = (
            posed.kerf // step + 2 for step in (posed.step_along, posed.step_across)
        )
        breakdown = _breakdown(rng, posed.family)

        def is_clear(
            i: int, j: int, u: int, v: int, page: Page = page, piece: Bin = piece
        ) -> bool:
            return not any(page.meets(block.box, i, j, u, v) for block in piece.blocks)

        def rows(start: int, end: int, least: int, most: int) -> list[tuple[int, int]]:
            """A stretch cut at random, nothing left over and nothing too small."""
            marks = [start]
            for mark in sorted(int(m) for m in rng.integers(start, end, size=most)):
                if mark - marks[-1] >= least and end - mark >= least:
                    marks.append(mark)
            return list(pairwise([*marks, end]))

        sections = []
        ends = [(0, page.along)] if breakdown == "R" else rows(0, page.along, long, 4)
        for i, j in ends:
            strips = []
            for u, v in rows(0, page.across, wide, 3):
                cells = [
                    blank(a, b, u, v)
                    for a, b in rows(i, j, long, 6 if breakdown == "R" else 2)
                    if is_clear(*((a, b) if breakdown == "R" else (i, j)), u, v)
                ]
                if cells:
                    strips.append(Strip(u, v, tuple(cells)))
            if strips:
                sections.append(Section(i, j, tuple(strips)))
        if sections:
            plan.append(Pattern(number, breakdown, tuple(sections)))
    return replace(posed, items=tuple(items)), plan


def _breakdown(rng: np.random.Generator, family: Family) -> Breakdown:
    if family == "E":
        return "R" if rng.random() < 0.5 else "C"
    return "R" if family == "R" else "C"
