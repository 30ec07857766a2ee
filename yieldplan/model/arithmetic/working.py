"""Works a formula out: a length as a sum whose terms keep their names, a count as a number."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from fractions import Fraction

from yieldplan.model.arithmetic.kinds import COUNT, LENGTH, Kinds, kinds_of
from yieldplan.model.arithmetic.tree import (
    Added,
    Extreme,
    Figure,
    FormulaError,
    Named,
    Negative,
    Node,
    Over,
    Times,
    as_reason,
    in_words,
)
from yieldplan.model.sums import Sum

MOST = 10**6
"""No figure on the way, length in inches or count, is over a million."""

FINEST = 10**12
"""Nor is any finer than a millionth of a millionth: squares of squares end here."""

AS_DRAWN = "as drawn"
"""The reason for a figure that has no name."""


@dataclass(frozen=True, kw_only=True)
class Known:
    """What the names of a formula stand for.

    Parameters
    ----------
    lengths
        Sizes, each the sum it is worked out from. [in]
    counts
        Counts. [-]
    """

    lengths: Mapping[str, Sum] = field(default_factory=dict)
    counts: Mapping[str, Fraction] = field(default_factory=dict)

    @property
    def kinds(self) -> Mapping[str, Kinds]:
        """What each name is."""
        return {
            **dict.fromkeys(self.lengths, LENGTH),
            **dict.fromkeys(self.counts, COUNT),
        }


def length_of(node: Node, known: Known) -> Sum:
    """The length a formula says, its terms named: `30 width − 2 × 3/4 board`.

    What is added, taken off or taken a whole number of times stays apart in terms; a
    share, the smaller or the larger is one term, its formula the reason.

    Raises
    ------
    FormulaError
        When something is divided by 0 or grows beyond all sense.
    """
    total = _length(node, known).folded()
    _within_reason(total.value, node)
    return total


def _length(node: Node, known: Known) -> Sum:
    match node:
        case Figure():
            return Sum.of((AS_DRAWN, node.inches or Fraction(0)))
        case Named():
            return known.lengths[node.name]
        case Negative():
            return length_of(node.of, known).times(-1)
        case Added():
            right = length_of(node.right, known)
            sign = -1 if node.is_less else 1
            return length_of(node.left, known) + right.times(sign)
        case Times():
            kinds = known.kinds
            left_counts = "count" in kinds_of(node.left, kinds)
            if left_counts and "length" in kinds_of(node.right, kinds):
                count, of = node.left, node.right
            else:
                count, of = node.right, node.left
            return _scaled(node, length_of(of, known), count_of(count, known))
        case Over():
            return _scaled(node, length_of(node.left, known), _share(node, known))
        case Extreme():
            values = [length_of(each, known).value for each in node.of]
            value = min(values) if node.which == "min" else max(values)
            return Sum.of((as_reason(node), value))


def count_of(node: Node, known: Known) -> Fraction:
    """The count a formula says; not always whole.

    Raises
    ------
    FormulaError
        When something is divided by 0 or grows beyond all sense.
    """
    value = _count(node, known)
    _within_reason(value, node)
    return value


def _count(node: Node, known: Known) -> Fraction:
    match node:
        case Figure():
            return node.number or Fraction(0)
        case Named():
            return known.counts[node.name]
        case Negative():
            return -count_of(node.of, known)
        case Added():
            right = count_of(node.right, known)
            return count_of(node.left, known) + (-right if node.is_less else right)
        case Times():
            return count_of(node.left, known) * count_of(node.right, known)
        case Over():
            return count_of(node.left, known) * _share(node, known)
        case Extreme():
            values = [count_of(each, known) for each in node.of]
            return min(values) if node.which == "min" else max(values)


def _share(node: Over, known: Known) -> Fraction:
    by = count_of(node.right, known)
    if by == 0:
        raise FormulaError(
            f"{in_words(node)} divides by 0", "Write max(1, ...) around what can be 0"
        )
    return 1 / by


def _scaled(node: Node, of: Sum, by: Fraction) -> Sum:
    if by.denominator == 1:
        return of.times(int(by))
    return Sum.of((as_reason(node), of.value * by))


def _within_reason(value: Fraction, node: Node) -> None:
    if abs(value) > MOST or value.denominator > FINEST:
        raise FormulaError(
            f"{in_words(node)[:60]} grows beyond anything a shop makes",
            "Look for a slip in what it is worked out from",
        )
