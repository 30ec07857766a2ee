"""A part: what is left after milling, with the sum behind each of its sizes."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from typing import Literal

from yieldplan.faults import Where
from yieldplan.model.faces import FaceWord
from yieldplan.model.shop import Shop
from yieldplan.model.sums import Sum
from yieldplan.units import Inches

MOST_PARTS = 50_000
"""As many parts as one job may ask for."""


@dataclass(frozen=True, kw_only=True)
class GlueUp:
    """How a panel may be glued up from strips whose widths the plan chooses.

    Every strip brings so many steps of width; the strips of one panel together bring at
    least `units` of them. A part that is glued up like this is asked for once: each
    further copy is a part of its own, so that no strip belongs to two panels.

    Parameters
    ----------
    step
        Width of one step. [in]
    units
        Steps of width the panel takes, the trim after gluing among them.
    least, most
        Finished width of a strip: no less, no more. [in]
    colour
        Which strips may stand side by side: any, of one lot of the yard, of one board.
    one_piece
        Whether a board wide enough for the whole panel will do as well.
    """

    step: Inches
    units: int
    least: Inches
    most: Inches
    colour: Literal["any", "one lot", "one board"] = "any"
    one_piece: bool = True


@dataclass(frozen=True, kw_only=True)
class Part:
    """One kind of part of the job, and how many of it.

    Parameters
    ----------
    id
        Assembly and part, as a person finds them: `upper/front`, or a plain part's name.
    wood
        Key of the wood, of the sheet when `is_sheet`, of the stick when `is_stick`.
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
    joint_depth
        How far its joints reach in from its ends; 0 where its ends are not joined. [in]
    glue_up
        How it may be glued up from strips of free widths; None is not at all.
    may_turn
        Whether a part of a sheet may lie across it; None goes by the sheet's face.
    note
        What the bench should know (planed to its opening, front on top of the box).
    """

    id: str
    quantity: int
    wood: str
    is_sheet: bool = False
    is_stick: bool = False
    length: Sum
    width: Sum
    thickness: Sum
    show_face: FaceWord = "sound"
    back_face: FaceWord = "sound"
    strips: int = 1
    flat: bool = False
    leg: bool = False
    set_up: bool = False
    joint_depth: Inches = Fraction(0)
    glue_up: GlueUp | None = None
    may_turn: bool | None = None
    note: str = ""
    where: Where

    @property
    def is_sawn_to_size(self) -> bool:
        """Whether the saw leaves it finished: nothing is jointed or planed off it."""
        return self.is_sheet or self.is_stick

    @property
    def demand(self) -> str:
        """What the saw must deliver for it: the part's id, its strips', or its width's."""
        if self.glue_up is not None:
            return f"{self.id} width"
        return self.id if self.strips == 1 else f"{self.id} strip"

    @property
    def needed(self) -> int:
        """How many blanks (or strips, or steps of width) the part asks for in all."""
        if self.glue_up is not None:
            return self.quantity * self.glue_up.units
        return self.quantity * self.strips


def joint_zone(part: Part, shop: Shop) -> Inches:
    """How much of each end of the part must be clear for its joint; 0 for none. [in]"""
    if not shop.joint_zones or part.joint_depth <= 0:
        return Fraction(0)
    return part.joint_depth + shop.joint_margin


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
    note
        What both parts' bench should know of it.
    """

    joint: str
    housed: str
    housing: str = ""
    depth: Sum
    needs_set_up: bool = True
    note: str = ""


@dataclass(frozen=True, kw_only=True)
class Built:
    """What an assembly turns into: its parts, how they meet, and what a maker should mind."""

    parts: tuple[Part, ...]
    meetings: tuple[Meeting, ...] = ()
    cautions: tuple[str, ...] = ()
