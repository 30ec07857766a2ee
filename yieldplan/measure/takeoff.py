"""The takeoff: which blanks, how many, when no board is known that could decide it."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction

from yieldplan.measure.order import natural
from yieldplan.model.blanks import Blank
from yieldplan.model.parts import Part


@dataclass(frozen=True, kw_only=True)
class Taken:
    """A blank, how often it is sawn, and the finished face that is needed of it.

    Parameters
    ----------
    face
        Finished face of the parts needed from these blanks; spares do not count. [sq in]
    may_turn
        Whether it may lie across its sheet as well as along it.
    """

    blank: Blank
    count: int
    face: Fraction
    may_turn: bool

    @property
    def rough_face(self) -> Fraction:
        """Face of the blanks as sawn. [sq in]"""
        return _rough(self.blank) * self.count


def takeoff(parts: Sequence[Part], blanks: Sequence[Blank]) -> tuple[Taken, ...]:
    """Blanks that make every part as often as asked, in natural order of their ids.

    Where a part has several routes the one that takes the least rough wood for its
    finished face comes first; a blank that would leave a spare comes last. A bid counts
    on no resawing, no parts milled together and no set in steps where there is another
    way: the boards decide that. Set-up pieces come out of waste and are not bought for.
    """
    need = Counter({part.demand: part.needed for part in parts if not part.set_up})
    usable = [blank for blank in blanks if not blank.set_up]
    thriftiest = sorted(
        usable, key=lambda b: (_hangs_on_boards(b), _rough_per_face(b), natural(b.id))
    )
    counts: Counter[str] = Counter()
    face: dict[str, Fraction] = {}
    for spares in (False, True):
        for blank in thriftiest:
            while (made := _needed_of(blank, need)) and (
                spares or made == Counter(blank.makes)
            ):
                need -= made
                counts[blank.id] += 1
                face[blank.id] = face.get(blank.id, Fraction(0)) + _face(blank, made)
    return tuple(
        Taken(
            blank=blank,
            count=counts[blank.id],
            face=face[blank.id],
            may_turn=any(
                other.turned != blank.turned and other.makes == blank.makes
                for other in usable
            ),
        )
        for blank in sorted(usable, key=lambda b: natural(b.id))
        if counts[blank.id]
    )


def _needed_of(blank: Blank, need: Counter[str]) -> Counter[str]:
    return Counter(
        {d: min(n, need[d]) for d, n in blank.makes.items() if min(n, need[d]) > 0}
    )


def _face(blank: Blank, made: Counter[str]) -> Fraction:
    left = made.copy()
    face = Fraction(0)
    for part in blank.inside:
        if left[part.demand] > 0:
            left[part.demand] -= 1
            face += part.length * part.width
    return face


def _hangs_on_boards(blank: Blank) -> bool:
    return blank.slices > 1 or blank.step is not None or blank.route == "mill together"


def _rough(blank: Blank) -> Fraction:
    return blank.length.value * blank.width.value


def _rough_per_face(blank: Blank) -> Fraction:
    finished = sum((p.length * p.width for p in blank.inside), Fraction(0))
    return _rough(blank) * blank.thickness.value / finished
