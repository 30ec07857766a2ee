"""What every joint answers: how deep it goes, what it adds to a part, when it is unwise, what to mind."""

from __future__ import annotations

from abc import ABC, abstractmethod
from dataclasses import dataclass
from enum import Enum
from typing import ClassVar, Literal, Self

from yieldplan.model.shop import Shop
from yieldplan.model.sums import Sum
from yieldplan.registry import name_in_words
from yieldplan.units import Inches, UnitName, tape

MATE = "mate's thickness"
"""Words of a term that is all the mate measures; an assembly says which part that is."""


class Role(Enum):
    """Which of the two parts of a joint is meant."""

    HOUSED = "the part that enters its mate"
    HOUSING = "the part that receives its mate"


Base = Literal["outside", "shoulders"]


@dataclass(frozen=True, kw_only=True)
class Joint(ABC):
    """A way for two parts to meet.

    A subclass's fields are its keys in a job file's joint table
    (`joint = { kind = "half-blind dovetail", lap = "1/4" }`). A field left at None
    takes the shop's setting, which `settled` fills in.
    """

    words: ClassVar[str] = ""
    """Its name as people write it, where the file's name in words will not do."""
    base: ClassVar[Base] = "shoulders"
    """What a joined length is counted from: the outside of the work, or shoulder to shoulder."""
    makes_box_corner: ClassVar[bool] = False
    """Whether it joins the ends of two boards set on edge, as at the corner of a drawer or
    a chest. The corner of a frame, where a rail enters a stile, is not one."""
    makes_frame_corner: ClassVar[bool] = False
    """Whether it joins the end of a rail to the edge of a stile, as in a door."""
    lets_run_past: ClassVar[bool] = False
    """Whether the mate may run on past the part that is joined to it."""
    has_tails: ClassVar[bool] = False
    """Whether it is tails and pins: the part that is pulled (a drawer's side) has the tails."""

    @property
    def name(self) -> str:
        """Its name in words."""
        return name_in_words(type(self))

    def settled(self, shop: Shop, *, on_template: bool = False) -> Self:
        """The joint with every figure that was left out taken from the shop."""
        return self

    @abstractmethod
    def depth(self, *, mate: Inches) -> Sum:
        """How far the housed part reaches into its mate.

        Parameters
        ----------
        mate
            What the mate measures in the direction the housed part enters it: where it
            enters a face, the board's thickness; where a rail enters the edge of a
            stile, the stile's width. [in]
        """

    @abstractmethod
    def allowance(self, *, role: Role, own: Inches, mate: Inches) -> Sum:
        """What the joint adds to an end of the part, counted from its `base`.

        Never negative: a joint that adds nothing says so with `Sum.nothing(why)`. From
        the shoulders only the housed part gains anything, and gains the joint's depth.

        Parameters
        ----------
        role
            Whether the part enters its mate or receives it.
        own
            Thickness of this part. [in]
        mate
            What its mate measures in the direction of the joint, as for `depth`; never
            to be taken for this part's own thickness. [in]
        """

    @property
    def needs_mate(self) -> bool:
        """Whether its figures depend on what the mate measures."""
        return True

    def impossible(self, *, mate: Inches, unit: UnitName = "in") -> str:
        """Why it cannot be cut into a mate that measures so much; nothing when it can."""
        return ""

    def limits(
        self, *, own: Inches, mate: Inches, unit: UnitName = "in"
    ) -> tuple[str, ...]:
        """When the joint is unwise between parts of these sizes: warnings that say why."""
        return ()

    @property
    def needs_set_up(self) -> bool:
        """Whether the joint is set up on test pieces before the work is cut."""
        return True

    def note(self, unit: UnitName) -> str:
        """What the bench should know of it that changes no size; it stands with both parts."""
        return ""

    @property
    def cautions(self) -> tuple[str, ...]:
        """What can hurt someone while cutting it."""
        return ()


def settled_figure(figure: Inches | None, joint: str) -> Inches:
    """A figure of a joint that the shop must have filled in by now."""
    if figure is None:
        raise ValueError(f"this {joint} has not been settled with the shop's figures")
    return figure


def say(inches: Inches, unit: UnitName) -> str:
    """A figure with its unit, for a sentence: `3/32 in`."""
    return f"{tape(inches, unit)} {unit}"
