"""What blanks are worth at the prices of the proof, and which marks each of them can live with."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from typing import NamedTuple

from yieldplan.checking.asks import Asks, asks_of, in_order, of_the_wood
from yieldplan.checking.facts import Plan, Wood
from yieldplan.checking.grid import Block, cells_of, up
from yieldplan.checking.steps import sets_of
from yieldplan.checking.wanted import Blank
from yieldplan.checking.zones import zones_of


@dataclass(frozen=True)
class Item:
    """A blank worth having. [cells; money/10,000]

    Parameters
    ----------
    face
        Which of the face classes it belongs to.
    zones
        How far it is a joint zone from its zero end and from its far end.
    at_most
        How often it is asked for. [-]
    """

    long: int
    wide: int
    worth: int
    face: int
    zones: tuple[int, int] = (0, 0)
    at_most: int = 0


class StepItem(NamedTuple):
    """A step of a set. [cells]"""

    long: int
    wide: int
    asks: Asks


@dataclass(frozen=True)
class Set:
    """A set in steps worth having, in order. [money/10,000]"""

    steps: tuple[StepItem, ...]
    worth: int


@dataclass(frozen=True)
class Harm:
    """What a block does: the face classes it forbids with face A up and with face B up.

    Classes are bits of a number. A class is out of a place for good when the blocks
    there forbid it both ways, be it one block or several.
    """

    face_a: int = 0
    face_b: int = 0

    @property
    def out(self) -> int:
        """The classes that may lie here neither way up."""
        return self.face_a & self.face_b

    def __or__(self, other: Harm) -> Harm:
        return Harm(self.face_a | other.face_a, self.face_b | other.face_b)


@dataclass(frozen=True)
class Held:
    """Every blank that may come from a piece, the face classes they fall into, and sets in steps.

    Parameters
    ----------
    faces
        What the blanks ask, class by class.
    in_zones
        Kinds of mark that no joint zone may hold.
    goods
        Where none is counted oftener than it is asked for, every blank worth having;
        `items` are without those that another beats however often it is needed.
    of_the_wood
        What all blanks of the wood ask.
    """

    items: tuple[Item, ...]
    faces: tuple[Asks, ...]
    sets: tuple[Set, ...]
    in_zones: frozenset[str]
    goods: tuple[Item, ...] = ()
    of_the_wood: tuple[Asks, ...] = ()

    @property
    def everyone(self) -> int:
        """All face classes."""
        return (1 << len(self.faces)) - 1

    def is_mixed(self, block: Block, *, with_zones: bool) -> bool:
        """Whether some blanks of the wood can bear a block, and others not.

        Parameters
        ----------
        with_zones
            Whether blanks with joint zones are one zone: their place is not known.
        """
        if not self.goods:
            return False
        in_zones = self.is_in_zones(block)
        barred = [asks.barred(block) for asks in self.of_the_wood]
        zoned = [in_zones and asks.zoned for asks in self.of_the_wood]
        shunned = (
            all(ways) or (with_zones and zone)
            for ways, zone in zip(barred, zoned, strict=True)
        )
        return not all(shunned) and (any(map(any, barred)) or any(zoned))

    def is_in_zones(self, block: Block) -> bool:
        """Whether a block may not lie in a joint zone."""
        return block.kind in self.in_zones and not block.for_shown

    def harm(self, block: Block, *, with_zones: bool) -> Harm:
        """Which classes a block forbids, and which way up.

        Parameters
        ----------
        with_zones
            Whether blanks with joint zones are one zone: their place is not known.
        """
        face_a = face_b = 0
        zoned = with_zones and self.is_in_zones(block)
        for number, asks in enumerate(self.faces):
            with_a_up, with_b_up = asks.barred(block)
            zone = zoned and asks.zoned
            face_a |= (with_a_up or zone) << number
            face_b |= (with_b_up or zone) << number
        return Harm(face_a, face_b)


def worth_having(
    blanks: Sequence[Blank], prices: Mapping[str, int]
) -> tuple[Blank, ...]:
    """The blanks that count in the bound; of a set in steps all, when one of them does."""
    sets = {
        blank.step.set
        for blank in blanks
        if blank.step is not None and worth_of(blank, prices) > 0
    }
    return tuple(
        blank
        for blank in blanks
        if (
            worth_of(blank, prices) > 0
            if blank.step is None
            else blank.step.set in sets
        )
    )


def held(
    plan: Plan, wood: Wood, blanks: Sequence[Blank], prices: Mapping[str, int]
) -> Held:
    """What blanks are in cells, by what they ask of the wood."""
    single = [blank for blank in blanks if blank.step is None]
    faces = tuple(sorted({asks_of(plan, each) for each in single}, key=in_order))
    items = tuple(
        Item(
            *cells_of(blank, wood.rules),
            worth_of(blank, prices),
            faces.index(asks_of(plan, blank)),
            zones_in_cells(plan, wood, blank),
            at_most_of(wood, blank),
        )
        for blank in single
    )
    sets = [
        Set(
            tuple(
                StepItem(*cells_of(blank, wood.rules), asks_of(plan, blank))
                for blank in steps
            ),
            sum(worth_of(blank, prices) for blank in steps),
        )
        for steps in sets_of(plan).values()
        if all(blank in blanks for blank in steps)
    ]
    return Held(
        _best(items),
        faces,
        tuple(sets),
        plan.zones,
        items if wood.bound.as_asked else (),
        of_the_wood(plan, wood) if wood.bound.as_asked else (),
    )


def at_most_of(wood: Wood, blank: Blank) -> int:
    """How many of a blank make all that the job asks of each part in it."""
    return max(
        (
            -(-(wood.need.get(part, 0) + wood.missing.get(part, 0)) // n)
            for part, n in blank.makes.items()
        ),
        default=0,
    )


def worth_of(blank: Blank, prices: Mapping[str, int]) -> int:
    """What the parts of a blank are worth. [money/10,000]"""
    return sum(prices.get(part, 0) * n for part, n in blank.makes.items())


def zones_in_cells(plan: Plan, wood: Wood, blank: Blank) -> tuple[int, int]:
    """The joint zones of a blank, at most all of it. [cells]"""
    rules = wood.rules
    at_zero, at_far_end = zones_of(plan, blank)
    long, _ = cells_of(blank, rules)
    cells_at_zero = cells_at_far_end = 0
    if at_zero > 0:
        cells_at_zero = up(at_zero + rules.kerf, rules.along)
    if at_far_end > 0:
        longer = long * rules.along - blank.length
        cells_at_far_end = up(at_far_end + longer, rules.along)
    return min(cells_at_zero, long), min(cells_at_far_end, long)


def _best(items: Iterable[Item]) -> tuple[Item, ...]:
    """The items without those that another of their class beats in every way."""
    best: list[Item] = []
    for item in sorted(items, key=lambda each: (each.long, each.wide, -each.worth)):
        if not any(_beats(other, item) for other in best):
            best.append(item)
    return tuple(best)


def _beats(other: Item, item: Item) -> bool:
    """Whether a blank that is no longer can always take the place of another."""
    # The far zone of a shorter blank lies where the longer one has none.
    zones = other.zones == (0, 0) or (
        other.long == item.long
        and other.zones[0] <= item.zones[0]
        and other.zones[1] <= item.zones[1]
    )
    return (
        zones
        and other.face == item.face
        and other.wide <= item.wide
        and other.worth >= item.worth
    )
