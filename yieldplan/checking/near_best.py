"""Ways that are worth nearly the most: walks over a piece, a section or a strip that lose no more than may be lost."""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterable, Sequence
from typing import NamedTuple

from yieldplan.checking.wants import Made, Wants

Near = Callable[[int], Sequence[Made]]
"""What something can make that is worth so much by every row, and perhaps more than that."""
NOTHING = Made(0, 0)


class Arc(NamedTuple):
    """A step of a walk: where it ends, the most it is worth, and what it can make."""

    to: int
    best: int
    near: Near


class Route:
    """A way from 0 to an end in steps.

    Parameters
    ----------
    arcs
        The steps from a place on the way.
    onward
        The most that is worth having from each place on.
    starts
        Places where a step may begin though none ends there: elsewhere it does as
        well further back.
    """

    def __init__(
        self,
        wants: Wants,
        arcs: Callable[[int], Sequence[Arc]],
        onward: Sequence[int],
        starts: Collection[int],
    ) -> None:
        self.wants = wants
        self.arcs = arcs
        self.onward = onward
        self.starts = starts

    def walk(self, least: int) -> list[Made]:
        """What can be made on the way, worth so much by every row."""
        hold = self.wants.worths.hold
        arrived: dict[int, dict[int, int]] = {0: {0: 0}}
        seen: dict[int, int] = {}
        for at, ahead in enumerate(self.onward):
            fresh = {
                makes: worth
                for makes, worth in arrived.pop(at, {}).items()
                if makes not in seen
            }
            seen |= fresh
            if at in self.starts:
                fresh = {m: w for m, w in seen.items() if hold(w + ahead, least)}
            if fresh:
                self._go_on(self.wants.front(fresh), self.arcs(at), arrived, least)
        return self.wants.front({m: w for m, w in seen.items() if hold(w, least)})

    def _go_on(
        self,
        going: Sequence[Made],
        arcs: Iterable[Arc],
        arrived: dict[int, dict[int, int]],
        least: int,
    ) -> None:
        """All that can be made by one step more, where enough may still come of it."""
        hold, less, greater = (
            self.wants.worths.hold,
            self.wants.worths.less,
            self.wants.worths.greater,
        )
        for arc in arcs:
            onward = self.onward[arc.to]
            able = [m for m in going if hold(m.worth + arc.best + onward, least)]
            if not able:
                continue
            most = able[0].worth
            for made in able:
                most = greater(most, made.worth)
            gains = arc.near(less(least, most + onward))
            reached = arrived.setdefault(arc.to, {})
            before = len(reached)
            for made in able:
                wanted = less(least, made.worth + onward)
                for gain in gains:
                    if hold(gain.worth, wanted):
                        total = self.wants.add(made, gain)
                        if hold(total.worth + onward, least):
                            reached[total.makes] = total.worth
            self.wants.look(len(reached) - before)


def onward_along(wants: Wants, arcs: Sequence[Sequence[Arc]]) -> list[int]:
    """The most that is worth having from each place on, by its steps."""
    onward = [0] * len(arcs)
    for at in range(len(arcs) - 1, -1, -1):
        most = onward[at + 1] if at + 1 < len(arcs) else 0
        for arc in arcs[at]:
            most = wants.worths.greater(most, arc.best + onward[arc.to])
        onward[at] = most
    return onward


def together(wants: Wants, sides: Sequence[Arc], least: int) -> list[Made]:
    """What several things make together, worth so much by every row."""
    hold, less = wants.worths.hold, wants.worths.less
    found = {0: 0}
    ahead = sum(side.best for side in sides)
    spent = 0
    for side in sides:
        gains = side.near(less(least, ahead - side.best))
        spent += side.best
        rest = ahead - spent
        more: dict[int, int] = {}
        for makes, worth in found.items():
            for gain in gains:
                total = wants.add(Made(makes, worth), gain)
                if hold(total.worth + rest, least):
                    more[total.makes] = total.worth
        wants.look(len(more))
        found = more
    return wants.front(found)


class Loosened:
    """What is known to be worth so much, worked out again when less will do."""

    def __init__(self, wants: Wants) -> None:
        self.wants = wants
        self._known: dict[object, tuple[int, Sequence[Made]]] = {}

    def near(
        self, key: object, least: int, work: Callable[[int], Sequence[Made]]
    ) -> Sequence[Made]:
        """What a thing can make that is worth so much; it may be worth less."""
        if key in self._known:
            known, made = self._known[key]
            if self.wants.worths.hold(least, known):
                return made
            least = self.wants.worths.lesser(least, known)
        made = work(least)
        self._known[key] = least, made
        return made
