"""What blanks ask of the wood: the marks they cannot live with, and where."""

from __future__ import annotations

from typing import NamedTuple

from yieldplan.checking.facts import Plan, Wood
from yieldplan.checking.grid import Block
from yieldplan.checking.wanted import Blank
from yieldplan.checking.zones import zones_of


class Asks(NamedTuple):
    """What a blank asks of the wood: kinds it may not have on its show face and on its back.

    Parameters
    ----------
    shows
        Whether checks and splits stay at a distance.
    zoned
        Whether it has joint zones.
    """

    shown: frozenset[str]
    back: frozenset[str]
    shows: bool
    zoned: bool

    def barred(self, block: Block) -> tuple[bool, bool]:
        """Whether a block forbids it with face A up, and with face B up; zones aside."""
        if block.for_shown and not self.shows:
            return False, False
        on_a = block.face in ("A", "through")
        on_b = block.face in ("B", "through")
        shown, back = block.kind in self.shown, block.kind in self.back
        return (on_a and shown) or (on_b and back), (on_a and back) or (on_b and shown)


def asks_of(plan: Plan, blank: Blank) -> Asks:
    """What a blank asks of the wood."""
    return Asks(
        plan.faces[blank.show_face],
        plan.faces[blank.back_face],
        blank.shows,
        any(zone > 0 for zone in zones_of(plan, blank)),
    )


def in_order(asks: Asks) -> tuple[list[str], list[str], bool, bool]:
    """By what face classes are sorted."""
    return sorted(asks.shown), sorted(asks.back), asks.shows, asks.zoned


def of_the_wood(plan: Plan, wood: Wood) -> tuple[Asks, ...]:
    """What the blanks of a wood ask, but for set-up pieces."""
    asked = {
        asks_of(plan, blank)
        for blank in plan.blanks
        if blank.wood == wood.name
        and not any(plan.part_of[part].set_up for part in blank.makes)
    }
    return tuple(sorted(asked, key=in_order))
