"""Tells lengths from counts, so that an area or a count added to a length is refused before anything is worked out."""

from __future__ import annotations

from collections.abc import Mapping

from yieldplan.model.arithmetic.tree import (
    Added,
    Extreme,
    Figure,
    FormulaError,
    Kind,
    Named,
    Negative,
    Node,
    Over,
    Times,
    in_words,
)

Kinds = frozenset[Kind]

LENGTH: Kinds = frozenset({"length"})
COUNT: Kinds = frozenset({"count"})
EITHER = LENGTH | COUNT
"""A bare figure is what its neighbours need: in `2 * 3` one is a count, one a size."""


def kinds_of(node: Node, known: Mapping[str, Kinds]) -> Kinds:
    """What a formula can be.

    Parameters
    ----------
    known
        What each name can be; every name of the formula is there.

    Raises
    ------
    FormulaError
        When it can be neither.
    """
    match node:
        case Figure():
            return (LENGTH if node.inches is not None else frozenset()) | (
                COUNT if node.number is not None else frozenset()
            )
        case Named():
            return known[node.name]
        case Negative():
            return kinds_of(node.of, known)
        case Added():
            return _alike((node.left, node.right), "added", known)
        case Extreme():
            return _alike(node.of, "compared", known)
        case Times():
            left, right = kinds_of(node.left, known), kinds_of(node.right, known)
            can_be = _product(left, right)
            if not can_be:
                raise FormulaError(
                    f"{in_words(node)} multiplies two lengths, which is an area",
                    "Multiply a length by a count; a share is divided: board ÷ 3",
                )
            return can_be
        case Over():
            left, right = kinds_of(node.left, known), kinds_of(node.right, known)
            if "count" not in right:
                raise FormulaError(
                    f"{in_words(node)} divides by a length",
                    "Divide by a count; how many fit is a count of its own under counts",
                )
            return left


def needs(node: Node, kind: Kind, known: Mapping[str, Kinds]) -> None:
    """Refuse a formula that is not of the kind needed.

    Raises
    ------
    FormulaError
        When it is a count where a length is needed, or the other way, or neither.
    """
    if kind in kinds_of(node, known):
        return
    if isinstance(node, Figure) and kind == "length":
        raise FormulaError(
            "a fraction of mm is not on any tape", "Write it as a decimal"
        )
    if kind == "length":
        wrong = f"{in_words(node)} is a count, and a length is needed here"
        raise FormulaError(wrong, "Multiply it by a length, or name a size")
    wrong = f"{in_words(node)} is a length, and a count is needed here"
    raise FormulaError(wrong, "Write a whole number, or a name from counts")


def _product(left: Kinds, right: Kinds) -> Kinds:
    if left == right == LENGTH:
        return frozenset()
    both_counts = "count" in left and "count" in right
    one_length = ("length" in left and "count" in right) or (
        "count" in left and "length" in right
    )
    return (COUNT if both_counts else frozenset()) | (
        LENGTH if one_length else frozenset()
    )


def _alike(nodes: tuple[Node, ...], done: str, known: Mapping[str, Kinds]) -> Kinds:
    each = [kinds_of(node, known) for node in nodes]
    common = EITHER
    for kinds in each:
        common &= kinds
    if common:
        return common
    lengths = [n for n, kinds in zip(nodes, each, strict=True) if kinds == LENGTH]
    counts = [n for n, kinds in zip(nodes, each, strict=True) if kinds == COUNT]
    raise FormulaError(
        f"{in_words(lengths[0])} is a length and {in_words(counts[0])} a count: they cannot be {done}",
        "Multiply the count by a length, or write a size",
    )
