"""What blanks are worth at the prices of the proof, and which marks each of them can live with."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from yieldplan.checking.facts import Blank, Plan, Wood
from yieldplan.checking.grid import Block, cells_of


@dataclass(frozen=True)
class Item:
    """A blank worth having. [cells; money/10,000]

    Parameters
    ----------
    face
        Which of the face classes it belongs to.
    """

    long: int
    wide: int
    worth: int
    face: int


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
    """Every blank that may come from a line of stock, and the face classes they fall into.

    Parameters
    ----------
    faces
        Kinds of mark forbidden on the show face and on the back, class by class.
    """

    items: tuple[Item, ...]
    faces: tuple[tuple[frozenset[str], frozenset[str]], ...]

    @property
    def everyone(self) -> int:
        """All face classes."""
        return (1 << len(self.faces)) - 1

    def harm(self, block: Block) -> Harm:
        """Which classes a block forbids, and which way up."""
        on_a = block.face in ("A", "through")
        on_b = block.face in ("B", "through")
        face_a = face_b = 0
        for number, (shown, back) in enumerate(self.faces):
            if (on_a and block.kind in shown) or (on_b and block.kind in back):
                face_a |= 1 << number
            if (on_a and block.kind in back) or (on_b and block.kind in shown):
                face_b |= 1 << number
        return Harm(face_a, face_b)


def held_by(plan: Plan, wood: Wood, line: str) -> Held:
    """The blanks of a wood that list a line of stock and are worth more than nothing."""
    listed = [
        (blank, worth)
        for blank in plan.blanks
        if blank.wood == wood.name
        and line in blank.lines
        and (worth := worth_of(blank, wood)) > 0
    ]
    words = {
        (plan.faces[blank.show_face], plan.faces[blank.back_face])
        for blank, _ in listed
    }
    faces = tuple(sorted(words, key=lambda pair: [sorted(face) for face in pair]))
    items = (
        Item(
            *cells_of(blank, wood.rules),
            worth,
            faces.index((plan.faces[blank.show_face], plan.faces[blank.back_face])),
        )
        for blank, worth in listed
    )
    return Held(_best(items), faces)


def worth_of(blank: Blank, wood: Wood) -> int:
    """What the parts of a blank are worth. [money/10,000]"""
    return sum(wood.bound.prices.get(part, 0) * n for part, n in blank.makes.items())


def _best(items: Iterable[Item]) -> tuple[Item, ...]:
    """The items without those that another of their class beats in every way."""
    best: list[Item] = []
    for item in sorted(items, key=lambda each: (each.long, each.wide, -each.worth)):
        if not any(
            other.face == item.face
            and other.wide <= item.wide
            and other.worth >= item.worth
            for other in best
        ):
            best.append(item)
    return tuple(best)
