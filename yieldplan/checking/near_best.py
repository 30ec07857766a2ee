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


def walk(
    wants: Wants,
    end: int,
    arcs: Callable[[int], Iterable[Arc]],
    onward: Sequence[int],
    starts: Collection[int],
    least: int,
) -> list[Made]:
    """What can be made on the way from 0 to the end, worth so much by every row.

    Parameters
    ----------
    arcs
        The steps from a place.
    onward
        The most that is worth having from each place on.
    starts
        Places where a step may begin though none ends there: elsewhere it does as
        well further back.
    """
    hold, less = wants.worths.hold, wants.worths.less
    arrived: dict[int, dict[int, int]] = {0: {0: 0}}
    seen: dict[int, int] = {}
    for at in range(end + 1):
        fresh = {
            makes: worth
            for makes, worth in arrived.pop(at, {}).items()
            if makes not in seen
        }
        seen |= fresh
        if at in starts:
            fresh = {m: w for m, w in seen.items() if hold(w + onward[at], least)}
        if not fresh:
            continue
        going = wants.front(fresh)
        for arc in arcs(at):
            ahead = arc.best + onward[arc.to]
            able = [made for made in going if hold(made.worth + ahead, least)]
            if not able:
                continue
            most = able[0].worth
            for made in able:
                most = wants.worths.greater(most, made.worth)
            gains = arc.near(less(least, most + onward[arc.to]))
            reached = arrived.setdefault(arc.to, {})
            before = len(reached)
            for made in able:
                wanted = less(least, made.worth + onward[arc.to])
                for gain in gains:
                    if hold(gain.worth, wanted):
                        total = wants.add(made, gain)
                        if hold(total.worth + onward[arc.to], least):
                            reached[total.makes] = total.worth
            wants.look(len(reached) - before)
    return wants.front({m: w for m, w in seen.items() if hold(w, least)})


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
