"""What is reckoned with what: the tree of a formula, and the formula in words."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction
from typing import Literal

from yieldplan.units import Inches

Kind = Literal["length", "count"]


class FormulaError(ValueError):
    """A formula that cannot be read or worked; says what is wrong and what to write."""

    def __init__(self, wrong: str, remedy: str) -> None:
        self.wrong = wrong
        self.remedy = remedy
        super().__init__(f"{wrong}. {remedy}.")


@dataclass(frozen=True, kw_only=True)
class Figure:
    """A figure as it was typed, and what it can be.

    Parameters
    ----------
    number
        What it counts or divides by; None where it carries a unit. [-]
    inches
        What it measures; None where the job's unit has no such figure. [in]
    """

    typed: str
    number: Fraction | None
    inches: Inches | None


@dataclass(frozen=True, kw_only=True)
class Named:
    """A size or count of the recipe, or a part's size (`shelf.length`)."""

    name: str


@dataclass(frozen=True, kw_only=True)
class Negative:
    """The same, taken off."""

    of: Node


@dataclass(frozen=True, kw_only=True)
class Added:
    """One and another, or one less another."""

    left: Node
    right: Node
    is_less: bool = False


@dataclass(frozen=True, kw_only=True)
class Times:
    """So many times so much."""

    left: Node
    right: Node


@dataclass(frozen=True, kw_only=True)
class Over:
    """So much shared out."""

    left: Node
    right: Node


@dataclass(frozen=True, kw_only=True)
class Extreme:
    """The smallest (`min`) or the largest (`max`) of several."""

    which: Literal["min", "max"]
    of: tuple[Node, ...]


Node = Figure | Named | Negative | Added | Times | Over | Extreme


@dataclass(frozen=True, kw_only=True)
class Formula:
    """A formula of a recipe: its tree, how it was typed, and what it is to give."""

    typed: str
    tree: Node
    kind: Kind = "length"


def plain(name: str) -> str:
    """A name as it is said: `top_rail` is top rail."""
    return name.replace("_", " ")


def names_in(node: Node) -> Iterator[str]:
    """Every name of a formula, in its order, as often as it stands there."""
    match node:
        case Named():
            yield node.name
        case Negative():
            yield from names_in(node.of)
        case Added() | Times() | Over():
            yield from names_in(node.left)
            yield from names_in(node.right)
        case Extreme():
            for each in node.of:
                yield from names_in(each)
        case Figure():
            pass


def in_words(node: Node) -> str:
    """The formula as it is said beside a figure: `(width − 2 × board) ÷ 2`."""
    match node:
        case Figure():
            return node.typed
        case Named():
            return plain(node.name)
        case Negative():
            return f"−{_inside(node.of)}"
        case Added():
            right = (
                _inside(node.right)
                if isinstance(node.right, (Added, Negative))
                else in_words(node.right)
            )
            return f"{in_words(node.left)} {'−' if node.is_less else '+'} {right}"
        case Times():
            return f"{_inside(node.left)} × {_inside(node.right)}"
        case Over():
            return f"{_inside(node.left)} ÷ {_inside(node.right)}"
        case Extreme():
            return _extreme_in_words(node)


def as_reason(node: Node) -> str:
    """The formula as the reason for one figure, in brackets where it is reckoned."""
    words = in_words(node)
    return words if isinstance(node, (Figure, Named, Extreme)) else f"({words})"


def _extreme_in_words(node: Extreme) -> str:
    small, two = node.which == "min", len(node.of) == 2
    ending = "er" if two else "est"
    *first, last = [in_words(each) for each in node.of]
    return f"{'small' if small else 'larg'}{ending} of {', '.join(first)} and {last}"


def _inside(node: Node) -> str:
    words = in_words(node)
    return words if isinstance(node, (Figure, Named)) else f"({words})"
