"""Share of the mate: what joints that are cut into part of their mate's thickness have in common."""

from __future__ import annotations

from abc import abstractmethod
from dataclasses import dataclass, field
from fractions import Fraction
from typing import ClassVar

from yieldplan.joints.joint import Joint, Role, say
from yieldplan.model.sums import Sum
from yieldplan.units import Inches, UnitName


@dataclass(frozen=True, kw_only=True)
class ShareOfMate(Joint):
    """A joint as deep as a share of its mate, or of a depth that is given.

    The housed part gains the depth; the part it is cut into keeps its full length.

    Parameters
    ----------
    depth_share
        Depth as a share of the housing part's thickness. [-]
    deep
        Depth itself, where it is given. [in]
    """

    most_share: ClassVar[Fraction]
    """The deepest it is wise to cut, as a share of the mate. [-]"""
    leaves: ClassVar[str]
    """What stays of the mate beyond that: `half`."""

    depth_share: Fraction
    deep: Inches | None = field(
        default=None,
        metadata={"key": "depth", "words": "depth itself, instead of a share"},
    )

    def depth(self, *, mate: Inches) -> Sum:
        deep = self.depth_share * mate if self.deep is None else self.deep
        return Sum.of((self.name, deep))

    def allowance(self, *, role: Role, own: Inches, mate: Inches) -> Sum:
        if role is Role.HOUSING:
            return Sum.nothing(f"the {self.name} is cut into this part")
        return self.depth(mate=mate)

    @property
    def needs_mate(self) -> bool:
        return self.deep is None

    def impossible(self, *, mate: Inches, unit: UnitName = "in") -> str:
        deep = self.depth(mate=mate).value
        if deep <= 0:
            return f"a {self.name} without depth holds nothing"
        if deep < mate:
            return ""
        return f"a {self.name} {say(deep, unit)} deep goes through a part {say(mate, unit)} thick"

    def limits(
        self, *, own: Inches, mate: Inches, unit: UnitName = "in"
    ) -> tuple[str, ...]:
        deep = self.depth(mate=mate).value
        if deep > mate * self.most_share:
            return (
                f"a {self.name} {say(deep, unit)} deep leaves less than {self.leaves} of a part {say(mate, unit)} thick",
            )
        return ()

    @property
    @abstractmethod
    def cautions(self) -> tuple[str, ...]:
        """What can hurt someone while cutting it."""
