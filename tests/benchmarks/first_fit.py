"""The shop's way, by eye: longest blank first, cheapest boards first, first clear place from the zero end.

Same family, trims, kerf and steps as the packer. A blank goes into a strip up to a quarter
wider than itself, else into a new strip, else into any strip it fits. Where the boards
offered run out, more may be bought: a packer's plan then had less to choose from.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field, replace

from yieldplan.packing.filling.yard import Yard
from yieldplan.packing.problem import Bin, Problem


@dataclass
class _Strip:
    u: int
    v: int
    taken: list[tuple[int, int]] = field(default_factory=list)


@dataclass
class _Section:
    i: int
    j: int
    strips: list[_Strip] = field(default_factory=list)


class _Board:
    def __init__(self, yard: Yard, number: int, breakdown: str) -> None:
        self.yard = yard
        self.number = number
        self.breakdown = breakdown
        self.grid = yard.grids[number]
        rip = breakdown == "R"
        self.sections = [_Section(0, self.grid.along)] if rip else []

    def place(self, item: int) -> bool:
        size = self.yard.sizes[item]
        if size.along > self.grid.along or size.across > self.grid.across:
            return False
        for snug in (True, False):
            for section in self.sections:
                if self._in_strip(section, item, snug):
                    return True
            if snug:
                for section in self.sections:
                    if self._new_strip(section, item):
                        return True
                if self.breakdown == "C" and self._new_section(item):
                    return True
        return False

    def _in_strip(self, section: _Section, item: int, snug: bool) -> bool:
        width = self.yard.sizes[item].across
        for strip in section.strips:
            have = strip.v - strip.u
            if width > have or (snug and 4 * have > 5 * width):
                continue
            if self._into(section, strip, item):
                return True
        return False

    def _into(self, section: _Section, strip: _Strip, item: int) -> bool:
        length = self.yard.sizes[item].along
        starts = {section.i, *(end for _, end in strip.taken)}
        if self.breakdown == "R":
            starts |= {block.i1 for block in self.grid.blocks}
        for at in sorted(starts):
            end = at + length
            if end > section.j or any(at < b and end > a for a, b in strip.taken):
                continue
            i, j = (at, end) if self.breakdown == "R" else (section.i, section.j)
            if self.yard.may_lie(item, self.number, i, j, strip.u, strip.v):
                strip.taken.append((at, end))
                return True
        return False

    def _new_strip(self, section: _Section, item: int) -> bool:
        size = self.yard.sizes[item]
        if size.along > section.j - section.i:
            return False
        tops = {strip.v for strip in section.strips}
        for u in sorted({0} | tops | {block.u1 for block in self.grid.blocks}):
            v = u + size.across
            if v > self.grid.across or any(
                u < strip.v and v > strip.u for strip in section.strips
            ):
                continue
            strip = _Strip(u, v)
            if self._into(section, strip, item):
                section.strips.append(strip)
                return True
        return False

    def _new_section(self, item: int) -> bool:
        length = self.yard.sizes[item].along
        last = max((section.j for section in self.sections), default=0)
        for i in sorted({last, *(b.i1 for b in self.grid.blocks if b.i1 > last)}):
            if i + length > self.grid.along:
                break
            section = _Section(i, i + length)
            if self._new_strip(section, item):
                self.sections.append(section)
                return True
        return False


@dataclass(frozen=True)
class ByEye:
    """What the boards opened cost, and how many of them were bought besides those offered.

    Parameters
    ----------
    cost
        [money/10,000]
    """

    cost: int
    bought: int


def first_fit(problem: Problem, more: Sequence[Bin] = ()) -> ByEye | None:
    """The shop's plan, the better of two ways where either may be; None when the wood runs out.

    Parameters
    ----------
    more
        Boards that may be bought, in this order, once those offered hold no more.
    """
    # By eye nothing is fitted in beside a mark: as the plain family allows.
    plain = problem.family.removesuffix("+")
    ways = "RC" if plain == "E" else plain
    plans = [_plan(problem, breakdown, more) for breakdown in ways]
    return min(
        (plan for plan in plans if plan is not None),
        key=lambda plan: (plan.cost, plan.bought),
        default=None,
    )


def _plan(problem: Problem, breakdown: str, more: Sequence[Bin]) -> ByEye | None:
    offered = len(problem.bins)
    yard = Yard(replace(problem, bins=(*problem.bins, *more)))
    maker = {
        demand: item for item, one in enumerate(problem.items) for demand in one.makes
    }
    blanks = sorted(
        (
            maker[number]
            for number, demand in enumerate(problem.demands)
            for _ in range(demand.need)
        ),
        key=lambda item: (
            -problem.items[item].length,
            -problem.items[item].width,
            item,
        ),
    )
    order = sorted(
        range(offered),
        key=lambda number: (
            problem.bins[number].price
            / (problem.bins[number].length * problem.bins[number].width),
            number,
        ),
    )
    order += range(offered, offered + len(more))
    boards = {number: _Board(yard, number, breakdown) for number in order}
    opened: list[int] = []
    # A board only fills up: what it had no place for once it never has again.
    refused: dict[int, set[int]] = {item: set() for item in blanks}
    for item in blanks:
        for number in (*opened, *order):
            if number in refused[item]:
                continue
            if boards[number].place(item):
                if number not in opened:
                    opened.append(number)
                break
            refused[item].add(number)
        else:
            return None
    return ByEye(
        sum(yard.price[number] for number in opened),
        sum(number >= offered for number in opened),
    )
