"""What one piece can make in patterns that are worth nearly the most: crosscut first, ripped first, or either."""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Callable, Iterable, Sequence

from yieldplan.checking.asks import asks_of, in_order
from yieldplan.checking.facts import Plan, Rules, Wood
from yieldplan.checking.fillings import Fillings, Good, GoodSet
from yieldplan.checking.grid import Grid, cells_of
from yieldplan.checking.near_best import Arc, Loosened, Route, onward_along, together
from yieldplan.checking.obstacles import Soft, obstacles_ripped, split, within
from yieldplan.checking.sections import Sections, set_may_lie
from yieldplan.checking.steps import sets_of
from yieldplan.checking.wanted import Blank
from yieldplan.checking.wants import Made, Wants
from yieldplan.checking.worths import Harm, Held, StepItem, zones_in_cells


def fillings_for(
    plan: Plan, wood: Wood, blanks: Sequence[Blank], grids: Sequence[Grid], wants: Wants
) -> Fillings:
    """The fillings of pieces that these blanks may come from."""
    single = [each for each in blanks if each.step is None and wants.makes_of([each])]
    faces = tuple(sorted({asks_of(plan, each) for each in single}, key=in_order))
    goods = []
    for blank in single:
        makes = wants.counts.lesser(wants.makes_of([blank]), wants.caps)
        face, zones = (
            faces.index(asks_of(plan, blank)),
            zones_in_cells(plan, wood, blank),
        )
        size = cells_of(blank, wood.rules)
        goods.append(Good(*size, wants.worth(makes), face, zones, makes=makes))
    goods.sort(key=lambda each: (each.long, each.wide, each.face, each.makes))
    sets = []
    for steps in sets_of(plan).values():
        if all(step in blanks for step in steps) and wants.makes_of(steps):
            makes = wants.counts.lesser(wants.makes_of(steps), wants.caps)
            items = (
                StepItem(*cells_of(step, wood.rules), asks_of(plan, step))
                for step in steps
            )
            sets.append(GoodSet(tuple(items), wants.worth(makes), makes))
    held = Held(tuple(goods), faces, tuple(sets), plan.zones)
    longest, widest = max(g.along for g in grids), max(g.across for g in grids)
    return Fillings(held, goods, sets, longest, widest, wants)


class NearPiece:
    """One piece, laid out once for all that is asked of it."""

    def __init__(self, grid: Grid, rules: Rules, fillings: Fillings) -> None:
        self.fillings = fillings
        self.ways: list[NearSections | NearStrips] = []
        if grid.along and grid.across:
            if rules.family in ("R", "E"):
                self.ways.append(NearStrips(grid, fillings))
            if rules.family in ("C", "E"):
                self.ways.append(NearSections(grid, fillings))

    def near(self, least: int) -> Sequence[Made]:
        """What patterns of the family make that are worth so much by every row."""
        wants = self.fillings.wants
        found = {0: 0} if wants.worths.hold(0, least) else {}
        for way in self.ways:
            found |= dict(way.near(least))
        return wants.front(found)


class NearSections(Sections):
    """The sections of one piece, and what they can make."""

    def __init__(self, grid: Grid, fillings: Fillings) -> None:
        super().__init__(grid, fillings)
        self.fillings = fillings
        self._known = Loosened(fillings.wants)

        arcs = [[*self._arcs(start)] for start in range(grid.along + 1)]
        onward = onward_along(fillings.wants, arcs)
        begin, sets_begin = self._starts()
        self._route = Route(
            fillings.wants, arcs.__getitem__, onward, begin | sets_begin
        )

    def near(self, least: int) -> list[Made]:
        """What crosscutting first can make that is worth so much by every row."""
        return self._route.walk(least)

    def _arcs(self, start: int) -> Iterable[Arc]:
        lengths = self.tables.lengths
        for span in self._spans(start):
            worths = self._section(span.met, span.lost, span.height)
            shape = span.met, span.lost, span.height, 0
            for number in range(span.first, span.last):
                end = start + lengths[number]
                yield Arc(end, worths[number], self._section_of(shape, number))
        for each in self.fillings.sets:
            end = start + sum(step.long for step in each.steps)
            if end <= self.grid.along and set_may_lie(
                each, start, self.grid, self.tables.held
            ):
                yield self._set_arc(each, start, end)

    def _set_arc(self, each: GoodSet, start: int, end: int) -> Arc:
        sides = [Arc(0, each.worth, lambda _: (Made(each.makes, each.worth),))]
        at = start
        for step in each.steps:
            number = bisect_right(self.tables.lengths, step.long) - 1
            if number >= 0:
                shape = self._met(at, at + step.long), 0, self.grid.across, step.wide
                best = self._section(*shape)[number]
                sides.append(Arc(0, best, self._section_of(shape, number)))
            at += step.long
        wants = self.fillings.wants
        best = sum(side.best for side in sides)
        return Arc(end, best, lambda least: together(wants, sides, least))

    def _section_of(
        self, shape: tuple[int, int, int, int], number: int
    ) -> Callable[[int], Sequence[Made]]:
        def work(least: int) -> list[Made]:
            return together(self.fillings.wants, self._sides(shape, number), least)

        return lambda least: self._known.near((shape, number), least, work)

    def _sides(self, shape: tuple[int, int, int, int], number: int) -> list[Arc]:
        """The runs of a section between what no blank can live with."""
        met, lost, height, taken = shape
        everyone = self.tables.held.everyone
        blocks = [
            Soft(obstacle.across[0] - lost, obstacle.across[1], obstacle.harm)
            for place, obstacle in enumerate(self.obstacles)
            if met >> place & 1
        ]
        if taken:
            blocks.append(Soft(0, taken, Harm(everyone, everyone)))
        soft, runs = split(blocks, height, everyone)
        return [
            self._run(end - start, within(soft, start, end), number)
            for start, end in runs
        ]

    def _run(self, height: int, soft: tuple[Soft, ...], number: int) -> Arc:
        best = self.fillings.stack(height, soft)[number]
        return Arc(
            0,
            best,
            lambda least: self.fillings.stack_near(height, soft, number, least),
        )


class NearStrips:
    """A piece that is ripped first, and what it can make."""

    def __init__(self, grid: Grid, fillings: Fillings) -> None:
        self.grid = grid
        self.fillings = fillings
        self.obstacles = obstacles_ripped(grid, fillings.held)
        self._known = Loosened(fillings.wants)
        self._sides: dict[tuple[int, int], list[Arc]] = {}
        across, lost = grid.uneven.whole if grid.uneven else (grid.across, 0)
        across = max(across - lost, 0)
        arcs = [
            [
                self.arc(bottom, bottom + wide)
                for wide in fillings.widths
                if bottom + wide <= across
            ]
            for bottom in range(across + 1)
        ]
        starts = {obstacle.across[1] for obstacle in self.obstacles}
        onward = onward_along(fillings.wants, arcs)
        self._route = Route(fillings.wants, arcs.__getitem__, onward, starts)

    def near(self, least: int) -> list[Made]:
        """What ripping first can make that is worth so much by every row."""
        return self._route.walk(least)

    def arc(self, bottom: int, top: int) -> Arc:
        """A strip between two places across."""
        met = sum(
            1 << number
            for number, obstacle in enumerate(self.obstacles)
            if obstacle.across[0] < top and obstacle.across[1] > bottom
        )
        key = top - bottom, met
        if key not in self._sides:
            self._sides[key] = self._runs(*key)
        sides = self._sides[key]
        wants = self.fillings.wants

        def near(least: int) -> Sequence[Made]:
            return self._known.near(key, least, lambda le: together(wants, sides, le))

        return Arc(top, sum(side.best for side in sides), near)

    def _runs(self, wide: int, met: int) -> list[Arc]:
        soft, runs = split(
            [
                Soft(*obstacle.along, obstacle.harm, obstacle.in_zones)
                for number, obstacle in enumerate(self.obstacles)
                if met >> number & 1
            ],
            self.grid.along,
            self.fillings.held.everyone,
        )
        return [
            self.fillings.run_arc(wide, end - start, within(soft, start, end))
            for start, end in runs
        ]
