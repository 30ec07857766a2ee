"""What every joint answers: what it adds to a part, when it is unwise, how it is set up, what to mind."""

from __future__ import annotations

from abc import ABC, abstractmethod
from dataclasses import dataclass
from enum import Enum
from typing import ClassVar, Literal

from yieldplan.model.sums import Sum
from yieldplan.units import Inches


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
    takes the shop's setting.
    """

    words: ClassVar[str] = ""
    """Its name as people write it, where the file's name in words will not do."""
    base: ClassVar[Base] = "shoulders"
    """What a joined length is counted from: the outside of the work, or shoulder to shoulder."""

    @abstractmethod
    def allowance(self, *, role: Role, edge: Edge, own: Inches, mate: Inches) -> Sum:
        """What the joint adds to the part at this edge, counted from its `base`.

        Never negative: a joint that adds nothing says so with `Sum.nothing(why)`.

        Parameters
        ----------
        own, mate
            Thickness of this part and of its mate. [in]
        """

    def limits(self, *, own: Inches, mate: Inches) -> tuple[str, ...]:
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
