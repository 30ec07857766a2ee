"""A blank: what the saw must deliver so that one or several parts can be milled from it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from yieldplan.model.faces import FaceWord
from yieldplan.model.sums import Sum
from yieldplan.units import Inches


@dataclass(frozen=True, kw_only=True)
class Inside:
    """Where a finished part lies in its blank, from the blank's own corner.

    Parameters
    ----------
    demand
        The part's id, or its strips' (`Part.demand`).
    x, y, length, width
        [in]
    slice
        Which slice of a blank that is resawn, from its show face on; 0 when it is not.
    """

    demand: str
    x: Inches
    y: Inches
    length: Inches
    width: Inches
    slice: int = 0


@dataclass(frozen=True, kw_only=True)
class Step:
    """A blank's place in a set that is cut in steps: consecutive sections of one board.

    Parameters
    ----------
    set
        Name of the set.
    number, of
        Its place, from 1 at the zero end, and how many there are.
    """

    set: str
    number: int
    of: int


@dataclass(frozen=True, kw_only=True)
class Blank:
    """One way to get one or several parts out of stock.

    Parameters
    ----------
    id
        Short and stable, for the plan file.
    route
        The route's name in words (plane, gang, match).
    length, width
        Least rough size, each with its sum: finished size and one allowance a reason. [in]
    thickness
        Least thickness of rough stock: finished plus planing. A sheet's own thickness. [in]
    finished_thickness
        What the part ends at; surfaced stock need only be this thick. [in]
    makes
        How many of which demand one blank gives.
    words
        What to call it at the saw: `upper/front`, or `fronts (2 matched)`.
    turned
        The parts in it lie across: their length runs along its width (sheets only).
    step
        Its place in a set cut in steps; such a blank is cut with its set or not at all.
    may_spare
        Whether cutting it may bring more of something than is asked for.
    """

    id: str
    route: str
    wood: str
    is_sheet: bool = False
    is_stick: bool = False
    length: Sum
    width: Sum
    thickness: Sum
    finished_thickness: Inches
    makes: Mapping[str, int]
    inside: tuple[Inside, ...]
    show_face: FaceWord
    back_face: FaceWord
    set_up: bool = False
    words: str
    cautions: tuple[str, ...] = ()
    turned: bool = False
    step: Step | None = None
    may_spare: bool = False

    @property
    def is_sawn_to_size(self) -> bool:
        """Whether the saw leaves it finished, as what comes from sheets and sticks."""
        return self.is_sheet or self.is_stick

    @property
    def laid_out(self) -> tuple[Inside, ...]:
        """The places that can be seen from above: those of its first slice."""
        return tuple(inside for inside in self.inside if inside.slice == 0)

    @property
    def slices(self) -> int:
        """Into how many it is resawn."""
        return max((inside.slice for inside in self.inside), default=0) + 1
