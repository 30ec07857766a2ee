"""How a wood is sawn, for whoever draws its boards or tells their cuts in words."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from yieldplan.model.blanks import Blank
from yieldplan.model.plan import Rules
from yieldplan.units import UnitName


@dataclass(frozen=True, kw_only=True)
class Saw:
    """What has to be known beside the tree to draw it.

    Parameters
    ----------
    blanks
        By id.
    """

    blanks: Mapping[str, Blank]
    unit: UnitName
    rules: Rules
