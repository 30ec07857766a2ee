"""What the independent checker found, as the papers may print it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass


@dataclass(frozen=True, kw_only=True)
class Report:
    """The verdict on one plan file.

    Parameters
    ----------
    objections
        What is wrong with it, in words; empty when it passed.
    floors
        Wood to the floor worked out again from its prices. [money/10,000]
    checked
        What was looked at, in words.
    """

    objections: tuple[str, ...]
    floors: Mapping[str, int]
    checked: tuple[str, ...]

    @property
    def passed(self) -> bool:
        """Whether the plan may be shown."""
        return not self.objections
