"""A route as a maker would say it, and what its wood costs: the facts that ways to one part are compared by."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from fractions import Fraction

_COUNT = {2: "two", 3: "three", 4: "four"}


@dataclass(frozen=True, kw_only=True)
class Place:
    """A finished part (or strip) in a blank.

    Parameters
    ----------
    area
        [ticks^2]
    """

    demand: str
    area: int
    slice: int


@dataclass(frozen=True, kw_only=True)
class Offer:
    """A blank, as far as its wood and its route go.

    Parameters
    ----------
    area
        Rough length times width. [ticks^2]
    lines
        Stock lines it may be cut from.
    """

    route: str
    area: int
    makes: Mapping[str, int]
    inside: tuple[Place, ...]
    lines: tuple[str, ...]
    is_step: bool = False

    @property
    def slices(self) -> int:
        """Into how many it is resawn."""
        return max((place.slice for place in self.inside), default=0) + 1

    def share(self, demand: str) -> Fraction:
        """What part of its wood goes into one demand, by finished face. [-]"""
        whole = sum(place.area for place in self.inside)
        own = sum(place.area for place in self.inside if place.demand == demand)
        return Fraction(own, whole)


@dataclass(frozen=True, kw_only=True)
class Line:
    """A stock line, all its pieces together.

    Parameters
    ----------
    words
        Without the wood: `6/4`.
    per_area
        What they cost on the mean. [money/10,000 per ticks^2]
    """

    words: str
    per_area: Fraction
    is_planed: bool = False


def name(offer: Offer, line: Line) -> str:
    """The route as a maker would say it, without its stock."""
    route, slices = offer.route, offer.slices
    if route == "plane":
        is_panel = any(demand.endswith(" width") for demand in offer.makes)
        if is_panel:
            return "in one piece"
        return "cut" if line.is_planed else "planed"
    if route == "match" and slices > 1:
        return "resawn as a pair"
    if route == "match":
        return "matched in steps" if offer.is_step else "matched in one blank"
    if route == "resaw":
        return f"resawn, {_COUNT.get(slices, slices)}"
    known = {
        "saw": "sawn to size",
        "mill together": "milled together",
        "gang": "ganged",
        "rip apart": "ripped apart out of one blank",
        "glue up": "glued up",
    }
    return known.get(route, route)


def mean_prices(
    pieces: Iterable[tuple[str, str, int, int, bool]],
) -> dict[str, Line]:
    """Lines by name from their pieces.

    Parameters
    ----------
    pieces
        Line, its words without the wood, price of the piece(s), their face, whether
        planed. [money/10,000], [ticks^2]
    """
    price: Counter[str] = Counter()
    area: Counter[str] = Counter()
    words: dict[str, tuple[str, bool]] = {}
    for line, said, cost, face, is_planed in pieces:
        price[line] += cost
        area[line] += face
        words[line] = (said, is_planed)
    return {
        line: Line(
            words=said, is_planed=is_planed, per_area=Fraction(price[line], area[line])
        )
        for line, (said, is_planed) in words.items()
    }


def without_wood(line: str, wood: str) -> str:
    """A stock line's name without its wood: `6/4` of `walnut 6/4`."""
    return line.removeprefix(f"{wood} ") if line != wood else line
