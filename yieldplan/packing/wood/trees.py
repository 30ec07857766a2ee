"""Turns a pattern in cells into the tree of cuts a saw makes, in ticks."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Literal

from yieldplan.model.plan import Box, Node
from yieldplan.packing.grid.cells import Grid, blocks_met, faces_up, grid_of, size_of
from yieldplan.packing.grid.pattern import Cut, Pattern, Section, Strip
from yieldplan.packing.grid.rooms import Rooms
from yieldplan.packing.problem import Problem
from yieldplan.packing.wood.lay import Stretch, lay


def tree_of(pattern: Pattern, problem: Problem, *, exact: bool) -> Node:
    """The cut tree of one bin; nodes have no names yet.

    Parameters
    ----------
    exact
        Whether a blank is ripped to its width even where the blade alone takes what is
        over (sheets); rough stock may stay that much wider.
    """
    return _Tree(pattern, problem, exact).root()


class _Tree:
    def __init__(self, pattern: Pattern, problem: Problem, exact: bool) -> None:
        self.pattern = pattern
        self.problem = problem
        self.exact = exact
        self.bin = problem.bins[pattern.bin]
        self.grid: Grid = grid_of(self.bin, problem)
        self.rooms = Rooms(self.bin, self.grid, problem)

    def root(self) -> Node:
        box = (0, 0, self.bin.length, self.bin.width)
        if self.pattern.breakdown == "R":
            (section,) = self.pattern.sections
            return self._strips(box, section)
        row = [
            Stretch(
                self._wood_from(section.i),
                self._wood_to(section.j),
                lambda part, section=section: self._strips(part, section),  # type: ignore[misc]
            )
            for section in self.pattern.sections
        ]
        return lay(box, "crosscut", row, self.problem.kerf)

    def _strips(self, box: Box, section: Section) -> Node:
        row = [
            Stretch(
                self._strip_from(strip.u),
                self._strip_to(strip.v),
                lambda part, strip=strip: self._blanks(part, section, strip),  # type: ignore[misc]
            )
            for strip in section.strips
        ]
        return lay(box, "rip", row, self.problem.kerf)

    def _blanks(self, box: Box, section: Section, strip: Strip) -> Node:
        row = [
            Stretch(
                self._wood_from(cut.i),
                self._wood_to(cut.j),
                lambda part, cut=cut: self._blank(part, section, strip, cut),  # type: ignore[misc]
            )
            for cut in strip.cuts
        ]
        return lay(box, "crosscut", row, self.problem.kerf)

    def _blank(self, box: Box, section: Section, strip: Strip, cut: Cut) -> Node:
        item = self.problem.items[cut.item]
        face = self._face_up(section, strip, cut)
        low, high = cut.across or (strip.u, strip.v)

        def leaf(part: Box) -> Node:
            return Node(id="", box=part, blank=item.name, face_up=face)

        if cut.across is not None:
            # Ripped out of its own piece of the strip, from beside a mark.
            own = Stretch(self._strip_from(low), self._strip_to(high), leaf)
            return lay(box, "rip", [own], self.problem.kerf)
        needed = size_of(item, self.problem).across
        over = (strip.v - strip.u - needed) * self.problem.step_across
        if over > self.problem.kerf or (over and self.exact):
            top = self._strip_to(strip.u + needed)
            row = [Stretch(box[1], top, leaf)]
            return lay(box, "rip", row, self.problem.kerf)
        return leaf(box)

    def _face_up(self, section: Section, strip: Strip, cut: Cut) -> Literal["A", "B"]:
        """The face that may show, "A" before "B"; of a set in steps, of all its steps."""
        steps = next((row for row in self.problem.sets if cut.item in row), None)
        alike = [(section, strip, cut)]
        if steps is not None:
            sections = self.pattern.sections
            begin = sections.index(section) - steps.index(cut.item)
            row = sections[begin : begin + len(steps)]
            alike = [
                (each, *_step_in(each, number))
                for each, number in zip(row, steps, strict=True)
            ]
        for face in ("A", "B"):
            if all(face in self._faces(*each) for each in alike):
                return "A" if face == "A" else "B"
        name = self.problem.items[cut.item].name
        raise ValueError(f"{name} lies on a mark it may not bear")

    def _faces(self, section: Section, strip: Strip, cut: Cut) -> str:
        """The faces of the board that may show of a blank here."""
        is_ripped_first = self.pattern.breakdown == "R"
        room = (
            self.rooms.whole()
            if is_ripped_first
            else self.rooms.section(section.i, section.j)
        )
        is_alone = is_ripped_first or cut.across is not None
        i, j = (cut.i, cut.j) if is_alone else (section.i, section.j)
        met = blocks_met(
            self.grid, i, j, *(cut.across or (strip.u, strip.v)), room.down
        )
        return faces_up(self.problem.items[cut.item], met)

    def _wood_from(self, mark: int) -> int:
        """Where the wood right of a mark begins: behind the blade. [ticks]"""
        return self._wood_to(mark) + self.problem.kerf

    def _wood_to(self, mark: int) -> int:
        return self.grid.zero + mark * self.problem.step_along

    def _strip_from(self, cell: int) -> int:
        return self.bin.edges[0] + cell * self.problem.step_across

    def _strip_to(self, cell: int) -> int:
        return self._strip_from(cell) - self.problem.kerf


def _step_in(section: Section, item: int) -> tuple[Strip, Cut]:
    """A step of a set in its section, where other parts may lie beside it."""
    return next(
        (strip, cut)
        for strip in section.strips
        for cut in strip.cuts
        if cut.item == item
    )


def area_left(nodes: Sequence[Node]) -> int:
    """Area of the largest leaf that is no blank. [ticks^2]"""
    return max(
        (
            leaf.length * leaf.width
            for node in nodes
            for leaf in node.leaves()
            if leaf.fate
        ),
        default=0,
    )
