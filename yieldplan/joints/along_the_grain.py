"""Along the grain: what joints that sit in a groove along their mate have in common."""

from __future__ import annotations

import dataclasses
from abc import abstractmethod
from dataclasses import dataclass, field
from fractions import Fraction
from typing import Self

from yieldplan.joints.joint import Joint, Role, say, settled_figure
from yieldplan.model.shop import Shop
from yieldplan.model.sums import Sum
from yieldplan.units import Inches, UnitName


@dataclass(frozen=True, kw_only=True)
class AlongTheGrain(Joint):
    """A joint as deep as the groove it sits in, whatever its mate measures.

    Parameters
    ----------
    deep
        Depth of the groove; left out: the shop's. [in]
    """

    deep: Inches | None = field(
        default=None,
        metadata={
            "key": "depth",
            "words": "depth of the groove; its tongue or tenon is as long",
        },
    )

    def settled(self, shop: Shop, *, on_template: bool = False) -> Self:
        if self.deep is not None:
            return self
        return dataclasses.replace(self, deep=self._shops_depth(shop))

    def depth(self, *, mate: Inches) -> Sum:
        return Sum.of((self.name, self._deep))

    def allowance(self, *, role: Role, own: Inches, mate: Inches) -> Sum:
        if role is Role.HOUSING:
            return Sum.nothing("the groove is cut into this part")
        return self.depth(mate=mate)

    @property
    def needs_mate(self) -> bool:
        return False

    def impossible(self, *, mate: Inches, unit: UnitName = "in") -> str:
        deep = self.depth(mate=mate).value
        if self._deep <= 0:
            return f"a {self.name} without depth holds nothing"
        if deep < mate:
            return ""
        return f"a {self.name} {say(deep, unit)} deep comes through a mate of {say(mate, unit)}"

    def limits(
        self, *, own: Inches, mate: Inches, unit: UnitName = "in"
    ) -> tuple[str, ...]:
        # Common practice, no source: half of the mate at the most.
        if self._deep > mate * Fraction(1, 2):
            return (
                f"a {self.name} {say(self._deep, unit)} deep leaves less than half of a mate of {say(mate, unit)}",
            )
        return ()

    @abstractmethod
    def _shops_depth(self, shop: Shop) -> Inches:
        """How deep this shop makes it. [in]"""

    @property
    def _deep(self) -> Inches:
        return settled_figure(self.deep, self.name)
