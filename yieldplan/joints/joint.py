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
"""Words of a term that is the mate's whole thickness; an assembly says which part that is."""


class Role(Enum):
    """Which of the two parts of a joint is meant."""

    HOUSED = "the part that enters its mate"
    HOUSING = "the part that receives its mate"


class Edge(Enum):
    """Where on the part the joint is cut."""

    END = "an end"
    LONG_EDGE = "a long edge"


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
    makes_corner: ClassVar[bool] = False
    """Whether it can join the end of one board to the end of another."""
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
            What the mate measures in the direction of the joint: a board's thickness,
            for a tenon in a stile the stile's width. [in]
        """

    @abstractmethod
    def allowance(self, *, role: Role, edge: Edge, own: Inches, mate: Inches) -> Sum:
        """What the joint adds to the part at this edge, counted from its `base`.

        Never negative: a joint that adds nothing says so with `Sum.nothing(why)`.

        Parameters
        ----------
        own, mate
            Thickness of this part, and of its mate in the direction of the joint. [in]
        """

    @property
    def needs_mate(self) -> bool:
        """Whether its figures depend on how thick the mate is."""
        return True

    def impossible(self, *, mate: Inches, unit: UnitName = "in") -> str:
        """Why it cannot be cut into a mate this thick; nothing when it can."""
        return ""

    def limits(
        self, *, own: Inches, mate: Inches, unit: UnitName = "in"
    ) -> tuple[str, ...]:
        """When the joint is unwise between parts this thick: warnings that say why."""
        return ()

    @property
    def needs_set_up(self) -> bool:
        """Whether the joint is set up on test pieces before the work is cut."""
        return True

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
