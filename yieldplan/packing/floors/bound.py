"""The floor: what no plan of the family can cost less than, proved by prices in whole numbers."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from math import gcd

from yieldplan.packing.floors.proofs import Limited, PacksProof, SetsProof, TriedProof
from yieldplan.packing.grid.crossings import Ints
from yieldplan.packing.patterns.pricing import Pricing
from yieldplan.packing.problem import Problem


@dataclass(frozen=True)
class Certificate:
    """Prices of the demands and the floor they prove. [money/10,000]

    Parameters
    ----------
    priced
        What the prices give, with lower ones for the bins of `limited`.
    value
        The greatest of that, lifted to what whole pieces can cost, and of what the
        further proofs say.
    """

    prices: tuple[int, ...]
    priced: int
    value: int
    limited: tuple[Limited, ...] = ()
    sets: SetsProof | None = None
    tried: TriedProof | None = None
    packs: PacksProof | None = None

    def with_packs(self, packs: PacksProof) -> Certificate:
        """With this proof where it says more than those there are, else as it is."""
        if packs.least <= self.value:
            return self
        return replace(self, packs=packs, value=packs.least)

    def with_sets(self, sets: SetsProof) -> Certificate:
        """With this proof where it says more than those there are, else as it is."""
        if sets.least <= self.value:
            return self
        return replace(self, sets=sets, value=sets.least)

    def with_tried(self, tried: TriedProof) -> Certificate:
        """With this proof where it says more than those there are, else as it is."""
        if tried.least <= self.value:
            return self
        return replace(self, tried=tried, value=tried.least)


def certify(
    prices: Sequence[int], need: Sequence[int], pricing: Pricing
) -> Certificate:
    """The floor that these prices prove, worked out in integers."""
    return certificate_of(prices, need, pricing.price(prices), pricing.problem)


def certificate_of(
    prices: Sequence[int], need: Sequence[int], values: Ints, problem: Problem
) -> Certificate:
    """The same, where the bins' values at these prices are known."""
    # What a copy costs more than it can be worth; of a pack all copies together.
    more = [
        piece.copies * (piece.price - int(value))
        for piece, value in zip(problem.bins, values, strict=True)
    ]
    priced = sum(
        price * count for price, count in zip(prices, need, strict=True)
    ) + sum(
        min(0, sum(more[number] for number in together))
        for together in problem.sold_together()
    )
    return Certificate(tuple(prices), priced, lifted(priced, problem))


def lifted(priced: int, problem: Problem) -> int:
    """The least cost of whole pieces that is not below the floor."""
    if problem.offcut_percent:
        # Offcuts can count for any sum: whole pieces say nothing.
        return max(0, priced)
    step = gcd(
        *(
            sum(
                problem.bins[number].price * problem.bins[number].copies
                for number in pack
            )
            for pack in problem.packs
        ),
        *(problem.bins[number].price for number in problem.sold_alone()),
    )
    if step == 0:
        return 0
    return max(0, -(-priced // step) * step)


def best_scale(
    prices: Sequence[int], need: Sequence[float], values: Ints, problem: Problem
) -> Fraction:
    """By what to multiply all prices so that the floor is highest.

    The floor of scaled prices is concave in the scale and bends where a bin's price is
    its scaled value, so one of those scales is best (up to the rounding of prices).
    """
    if problem.offcut_percent:
        # What offcuts count for does not grow with the prices of parts.
        return Fraction(1)
    asked = sum(price * count for price, count in zip(prices, need, strict=True))
    bends = sorted(
        (Fraction(piece.price, int(value)), piece.copies * int(value))
        for piece, value in zip(problem.bins, values, strict=True)
        if value > 0
    )
    slope = asked
    for scale, fall in bends:
        slope -= fall
        if slope <= 0:
            return scale
    return Fraction(1)


def estimate(
    prices: Sequence[int], need: Sequence[float], values: Ints, problem: Problem
) -> float:
    """The floor at the best scale, before prices are whole numbers again; a guide only."""
    scale = float(best_scale(prices, need, values, problem))
    asked = sum(price * count for price, count in zip(prices, need, strict=True))
    return scale * asked + sum(
        piece.copies * min(0.0, piece.price - scale * float(value))
        for piece, value in zip(problem.bins, values, strict=True)
    )


def scaled_up(
    prices: Sequence[int], need: Sequence[int], values: Ints, pricing: Pricing
) -> Certificate:
    """The floor of the prices at their best scale."""
    problem = pricing.problem
    scale = best_scale(prices, need, values, problem)
    scaled = [price * scale.numerator // scale.denominator for price in prices]
    return certify(scaled, need, pricing)
