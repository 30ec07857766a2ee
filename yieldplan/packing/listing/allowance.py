"""How much may be looked at before a search for all fillings gives up."""

from __future__ import annotations

from collections.abc import Callable

PAIRS_TO_A_UNIT = 5
"""Pairs that take as long as a unit of work."""
PAIRS_OF_A_ROW = 10
"""What is kept takes memory: one row of it counts as so many pairs only looked at."""


class TooMany(RuntimeError):  # noqa: N818 - named for what happened
    """There are more fillings than may be looked at."""


class Allowance:
    """How many pairs may still be looked at; shared by the walks of one board.

    Parameters
    ----------
    is_over
        Whether to stop at once, as the clock or a person asks.
    """

    def __init__(self, pairs: int, is_over: Callable[[], bool] = lambda: False) -> None:
        self.left = pairs
        self.used = 0
        self._is_over = is_over

    def take(self, pairs: int) -> None:
        """Count pairs as looked at."""
        self.used += pairs
        self.left -= pairs
        if self.left < 0:
            raise TooMany("there are too many fillings")
        if self._is_over():
            raise TooMany("there was no time for all fillings")
