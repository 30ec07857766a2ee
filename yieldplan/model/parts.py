"""A part: what is left after milling, with the sum behind each of its sizes."""

from __future__ import annotations

from dataclasses import dataclass

from yieldplan.faults import Where
from yieldplan.model.faces import FaceWord
from yieldplan.model.sums import Sum

MOST_PARTS = 50_000
"""As many parts as one job may ask for."""


@dataclass(frozen=True, kw_only=True)
class Part:
    """One kind of part of the job, and how many of it.

    Parameters
    ----------
    id
        Assembly and part, as a person finds them: `upper/front`, or a plain part's name.
    wood
        Key of the wood, or of the sheet when `is_sheet`.
    length, width, thickness
        Finished size with the grain, across it and through it. [in]
    strips
        Number of equal strips the part is glued up from; 1 is one piece.
    flat
        The job says the stock for it is flat: the smallest planing allowance will do.
    leg
        A leg or post: takes the larger length allowance.
    set_up
        A test piece for a joint: made from waste only.
    note
        What the bench should know (planed to its opening, front on top of the box).
    """

    id: str
    quantity: int
    wood: str
    is_sheet: bool = False
    length: Sum
    width: Sum
    thickness: Sum
    show_face: FaceWord = "sound"
    back_face: FaceWord = "sound"
    strips: int = 1
    flat: bool = False
    leg: bool = False
    set_up: bool = False
    note: str = ""
    where: Where

    @property
    def demand(self) -> str:
        """What the saw must deliver for it: the part's id, or its strips'."""
        return self.id if self.strips == 1 else f"{self.id} strip"

    @property
    def needed(self) -> int:
        """How many blanks (or strips) the part asks for in all."""
        return self.quantity * self.strips


@dataclass(frozen=True, kw_only=True)
class Meeting:
    """A joint between two parts, as the bench sets it up.

    Parameters
    ----------
    joint
        The joint's name in words.
    housed, housing
        Ids of the part that enters and of the part that receives it; no id for a mate
        that is not part of the job.
    depth
        How far the one reaches into the other. [in]
    needs_set_up
        Whether it is set up on test pieces.
    """

    joint: str
    housed: str
    housing: str = ""
    depth: Sum
    needs_set_up: bool = True


@dataclass(frozen=True, kw_only=True)
class Built:
    """What an assembly turns into: its parts, how they meet, and what a maker should mind."""

    parts: tuple[Part, ...]
    meetings: tuple[Meeting, ...] = ()
    cautions: tuple[str, ...] = ()
