"""Which route made each part, and about what the next best would have cost in wood."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction
from math import prod

from yieldplan.measure.money import CENT, say_money
from yieldplan.measure.order import natural
from yieldplan.measure.ways import Line, Offer, Place, mean_prices, name, without_wood
from yieldplan.model.plan import Plan
from yieldplan.model.rounding import blank_in_ticks, piece_in_ticks


@dataclass(frozen=True, kw_only=True)
class RouteTaken:
    """How parts were made.

    Parameters
    ----------
    taken
        `resawn, two from 6/4`; empty where nothing was sawn.
    next_best
        The next best route with what it would have cost; empty where there is none.
    """

    taken: str
    next_best: str = ""

    @property
    def words(self) -> str:
        """Both in one line."""
        return (
            f"{self.taken}; next best: {self.next_best}"
            if self.next_best
            else self.taken
        )


@dataclass(frozen=True, kw_only=True)
class Routes:
    """Every blank and line of a plan, and which blank was cut from which line how often.

    What a route costs is an estimate: rough face of its blank times what its line costs
    on the mean. What is left beside the blank, and whether it would have fitted, only
    another plan could say.

    Parameters
    ----------
    offers
        By blank id; set-up pieces left out.
    sawn
        (blank id, line), once for every blank cut.
    """

    offers: Mapping[str, Offer]
    lines: Mapping[str, Line]
    sawn: Sequence[tuple[str, str]]

    def of(self, demands: Iterable[str]) -> RouteTaken:
        """How these demands, alike in all but name, were made together."""
        asked = set(demands)
        used: Counter[tuple[str, str]] = Counter()
        made: Counter[str] = Counter()
        for blank, line in self.sawn:
            mine = (
                asked & set(self.offers[blank].makes) if blank in self.offers else set()
            )
            if mine:
                used[blank, line] += 1
                for demand in mine:
                    made[demand] += self.offers[blank].makes[demand]
        if not used:
            return RouteTaken(taken="")
        cost = sum(
            (
                count * self._cost(blank, line, demand)
                for (blank, line), count in used.items()
                for demand in sorted(asked & set(self.offers[blank].makes))
            ),
            Fraction(0),
        )
        ways = {self._way(blank, line) for blank, line in used}
        return RouteTaken(
            taken=self._taken(used, asked), next_best=self._next_best(ways, made, cost)
        )

    def _cost(self, blank: str, line: str, demand: str) -> Fraction:
        offer = self.offers[blank]
        return offer.area * self.lines[line].per_area * offer.share(demand)

    def _way(self, blank: str, line: str) -> str:
        return name(self.offers[blank], self.lines[line])

    def _taken(self, used: Mapping[tuple[str, str], int], asked: set[str]) -> str:
        by_way: dict[str, list[tuple[str, str]]] = {}
        for blank, line in used:
            by_way.setdefault(self._way(blank, line), []).append((blank, line))
        said = []
        for way, pairs in sorted(by_way.items()):
            lines = sorted({self.lines[line].words for _, line in pairs}, key=natural)
            made = sum(
                used[pair] * n
                for pair in pairs
                for demand, n in self.offers[pair[0]].makes.items()
                if demand in asked
            )
            pieces = sum(
                used[pair] * len(self.offers[pair[0]].inside) for pair in pairs
            )
            if self.offers[pairs[0][0]].route == "glue up":
                way = f"{way}, {pieces} {'strip' if pieces == 1 else 'strips'}"
            elif len(by_way) > 1:
                way = f"{made} {way}"
            said.append(f"{way} from {' and '.join(lines)}")
        return ", and ".join(said)

    def _next_best(self, ways: set[str], made: Counter[str], cost: Fraction) -> str:
        """The cheapest way not taken that can make all of them."""
        found: dict[str, dict[str, tuple[Fraction, str]]] = {}
        for blank, offer in self.offers.items():
            for line in offer.lines:
                way = self._way(blank, line)
                if way in ways:
                    continue
                for demand in sorted(set(made) & set(offer.makes)):
                    each = self._cost(blank, line, demand) / offer.makes[demand]
                    best = found.setdefault(way, {}).get(demand)
                    if best is None or (each, line) < best:
                        found[way][demand] = (each, line)
        totals = []
        for way, costs in found.items():
            if set(costs) == set(made):
                total = sum((costs[d][0] * n for d, n in made.items()), Fraction(0))
                lines = {self.lines[line].words for _, line in costs.values()}
                totals.append(
                    (total, f"{way} from {' and '.join(sorted(lines, key=natural))}")
                )
        if not totals:
            return ""
        total, words = min(totals)
        return f"{words}, {_difference(total - cost)}"


def _difference(money: Fraction) -> str:
    about = round(money / (10 * CENT)) * 10 * CENT
    if about == 0:
        return "about as much wood"
    if about > 0:
        return f"about {say_money(about)} more wood"
    return f"about {say_money(-about)} less wood by itself, if the boards suited it"


def routes_of(plan: Plan) -> Routes:
    """The routes of a plan."""
    kerf = plan.job.shop.kerf
    offers = {}
    for blank in plan.blanks:
        if blank.set_up:
            continue
        ticks = blank_in_ticks(blank, kerf)
        offers[blank.id] = Offer(
            route=blank.route,
            area=ticks.length * ticks.width,
            makes=blank.makes,
            inside=tuple(
                Place(
                    demand=place.demand,
                    area=(box[2] - box[0]) * (box[3] - box[1]),
                    slice=place.slice,
                )
                for place, box in zip(blank.inside, ticks.inside, strict=True)
            ),
            lines=plan.fits.get(blank.id, ()),
            is_step=blank.step is not None,
        )
    return Routes(
        offers=offers,
        lines=mean_prices(
            (
                piece.line,
                without_wood(piece.line, piece.wood),
                piece.price,
                prod(piece_in_ticks(piece)),
                piece.is_planed,
            )
            for piece in plan.pieces
        ),
        sawn=[
            (leaf.blank, cutting.piece.line)
            for wood in plan.woods
            for cutting in wood.cuttings
            for leaf in cutting.tree.leaves()
            if leaf.blank is not None
        ],
    )
