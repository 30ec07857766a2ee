"""What a wish of the job costs: between what is proved and what was found."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, kw_only=True)
class PriceOfAWish:
    """A wish, and what the job would cost less without it. [money/10,000]

    The best plans with and without the wish differ by something from `least` to `most`.

    Parameters
    ----------
    words
        The wish, as one would say it.
    found
        What the plan costs more than the best one found without the wish.
    least, most
        What is proved: floor with the wish less cost without it, never below 0; cost
        with the wish less floor without it.
    woods
        Woods whose plans it changes; none: the wish costs nothing.
    unknown
        Why there is no price, in words; nothing when there is one.
    """

    words: str
    found: int = 0
    least: int = 0
    most: int = 0
    woods: tuple[str, ...] = ()
    unknown: str = ""
