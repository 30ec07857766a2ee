"""How strips and stacks of strips can be filled, and what the best of them are worth by every row at once."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass

from yieldplan.checking.near_best import Arc, Loosened, Route, onward_along
from yieldplan.checking.obstacles import Soft
from yieldplan.checking.tables import Tables
from yieldplan.checking.wants import Made, Wants
from yieldplan.checking.worths import Held, Item, Set


@dataclass(frozen=True)
class Good(Item):
    """A blank with what it makes; `worth` is that of every row, side by side."""

    makes: int = 0

    @property
    def made(self) -> Made:
        """What it makes and is worth."""
        return Made(self.makes, self.worth)


@dataclass(frozen=True)
class GoodSet(Set):
    """A set in steps with what it makes; `worth` is that of every row, side by side."""

    makes: int = 0


class Fillings(Tables):
    """Strips and stacks; all worths are those of every row, side by side.

    Parameters
    ----------
    longest, widest
        The largest piece they are for. [cells]
    """

    def __init__(
        self,
        held: Held,
        goods: Sequence[Good],
        sets: Sequence[GoodSet],
        longest: int,
        widest: int,
        wants: Wants,
    ) -> None:
        super().__init__(held, longest, widest)
        self.goods = goods
        self.sets = sets
        self.wants = wants
        self._faces_at = {
            wide: {good.face for good in goods if good.wide == wide}
            for wide in self.widths
        }
        self._greater = wants.worths.greater
        self._fillings = Loosened(wants)
        self._stackings = Loosened(wants)
        self._routes: dict[tuple[int, tuple[Soft, ...], int], Route] = {}
        self._run_arcs: dict[tuple[int, int, tuple[Soft, ...]], Arc] = {}
        self._soft_stacks: dict[tuple[int, tuple[Soft, ...]], list[list[int]]] = {}

    def strip(self, classes: int, wide: int) -> list[int]:
        """The most a strip so wide is worth, by its length, of goods of these classes."""
        key = classes, wide
        if key not in self._strips:
            goods = self._in(classes, wide)
            best = [0] * (self.longest + 1)
            for length in range(1, self.longest + 1):
                most = best[length - 1]
                for good in goods:
                    if good.long > length:
                        break
                    most = self._greater(most, best[length - good.long] + good.worth)
                best[length] = most
            self._strips[key] = best
        return self._strips[key]

    def strip_near(
        self, classes: int, wide: int, length: int, least: int
    ) -> Sequence[Made]:
        """What a strip can make that is worth so much."""

        def work(least: int) -> list[Made]:
            return self._filled(classes, wide, length, least)

        return self._fillings.near((classes, wide, length), least, work)

    def _filled(self, classes: int, wide: int, length: int, least: int) -> list[Made]:
        best, goods = self.strip(classes, wide), self._in(classes, wide)
        wants, hold = self.wants, self.wants.worths.hold
        found: dict[int, int] = {}
        # What is in the strip so far, what is left of it, and which goods may still come.
        waiting = [(Made(0, 0), length, 0)]
        while waiting:
            made, left, first = waiting.pop()
            wants.look(1)
            found[made.makes] = made.worth
            for number in range(first, len(goods)):
                good = goods[number]
                rest = left - good.long
                if rest < 0:
                    break
                more = wants.add(made, good.made)
                # What is not needed any more is not put in.
                if more.makes != made.makes and hold(more.worth + best[rest], least):
                    waiting.append((more, rest, number))
        return wants.front({m: w for m, w in found.items() if hold(w, least)})

    def run_arc(self, wide: int, length: int, soft: tuple[Soft, ...]) -> Arc:
        """A run of a strip, with what some of the goods cannot live with in it."""
        if not soft:
            classes = self.held.everyone
            best = self.strip(classes, wide)[length]
            return Arc(0, best, self._strip_of(classes, wide, length))
        key = wide, length, soft
        if key not in self._run_arcs:
            self._run_arcs[key] = self._run(*key)
        return self._run_arcs[key]

    def _run(self, wide: int, length: int, soft: tuple[Soft, ...]) -> Arc:
        arcs = [
            [
                Arc(start + good.long, good.worth, _just(good.made))
                for good in self.goods
                if good.wide <= wide
                and start + good.long <= length
                and self._may_lie(good, start, soft)
            ]
            for start in range(length + 1)
        ]
        # A far zone slides off a mark too, when its blank begins further to the left.
        starts = {block.end for block in soft} | {
            block.end - good.long + good.zones[1]
            for block in soft
            if block.in_zones
            for good in self.goods
            if good.zones[1]
        }
        onward = onward_along(self.wants, arcs)
        route = Route(self.wants, arcs.__getitem__, onward, starts)

        def near(least: int) -> Sequence[Made]:
            return self._fillings.near((wide, length, soft), least, route.walk)

        return Arc(0, onward[0], near)

    def _may_lie(self, good: Good, start: int, soft: tuple[Soft, ...]) -> bool:
        """Whether a blank may begin at a place of a strip: where it lies itself counts."""
        end = start + good.long
        near, far = good.zones
        harm = 0, 0
        for block in soft:
            if block.start >= end or block.end <= start:
                continue
            bit = 1 << good.face
            harm = harm[0] | block.harm.face_a & bit, harm[1] | block.harm.face_b & bit
            if block.in_zones and (
                (near and block.start < start + near) or (far and block.end > end - far)
            ):
                return False
        return not (harm[0] and harm[1])

    def _across(self, height: int, soft: tuple[Soft, ...]) -> list[list[int]]:
        """The most that stacks of every height up to this one are worth, at each length."""
        key = height, soft
        if key not in self._soft_stacks:
            greater = self._greater
            best = [[0] * len(self.lengths)]
            for top in range(1, height + 1):
                most = best[top - 1]
                for wide in self.widths:
                    bottom = top - wide
                    if bottom < 0:
                        break
                    strip = self._at(self._allowed(bottom, top, soft), wide)
                    below = best[bottom]
                    most = [
                        greater(m, b + s)
                        for m, b, s in zip(most, below, strip, strict=True)
                    ]
                best.append(most)
            self._soft_stacks[key] = best
        return self._soft_stacks[key]

    def stack_near(
        self, height: int, soft: tuple[Soft, ...], number: int, least: int
    ) -> Sequence[Made]:
        """What strips side by side can make that is worth so much, at one of `lengths`."""

        key = height, soft, number

        def work(least: int) -> list[Made]:
            if key not in self._routes:
                self._routes[key] = self._stacked(*key)
            return self._routes[key].walk(least)

        return self._stackings.near(key, least, work)

    def _stacked(self, height: int, soft: tuple[Soft, ...], number: int) -> Route:
        """The strips of a stack, from the far edge on: the tables say what is best below."""
        length = self.lengths[number]
        below = self._across(height if soft else self.widest, soft)
        known: dict[int, list[Arc]] = {}

        def arcs(at: int) -> list[Arc]:
            if at not in known:
                known[at] = [*self._strips_below(height - at, soft, length, at)]
            return known[at]

        onward = [below[height - at][number] for at in range(height + 1)]
        return Route(self.wants, arcs, onward, {height - each.start for each in soft})

    def _strips_below(
        self, top: int, soft: tuple[Soft, ...], length: int, at: int
    ) -> Iterator[Arc]:
        for wide in self.widths:
            if wide > top:
                return
            classes = self._allowed(top - wide, top, soft)
            # Without a good of just this width a narrower strip does as well.
            if any(classes >> face & 1 for face in self._faces_at[wide]):
                best = self.strip(classes, wide)[length]
                yield Arc(at + wide, best, self._strip_of(classes, wide, length))

    def _strip_of(
        self, classes: int, wide: int, length: int
    ) -> Callable[[int], Sequence[Made]]:
        return lambda least: self.strip_near(classes, wide, length, least)

    def _in(self, classes: int, wide: int) -> list[Good]:
        return [
            good
            for good in self.goods
            if good.wide <= wide and classes >> good.face & 1
        ]


def _just(made: Made) -> Callable[[int], Sequence[Made]]:
    return lambda _: (made,)
