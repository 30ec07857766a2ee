"""What a recipe says: named sizes and counts, what is worked out from them, parts in terms of both."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass, field
from fractions import Fraction
from typing import Any

from yieldplan.faults import Where
from yieldplan.joints.joint import Joint
from yieldplan.model.arithmetic.tree import Formula, FormulaError
from yieldplan.model.arithmetic.working import Known, count_of, length_of
from yieldplan.model.sums import Sum
from yieldplan.units import Inches, UnitName

MOST_OF_ONE = 10_000
LONGEST = Fraction(1200)
"""No size of a job is over 100 ft. [in]"""

SIZES_OF_A_PART = ("length", "width", "thickness")


@dataclass(frozen=True, kw_only=True)
class Draft:
    """An object of the model whose lengths and counts are still formulas.

    Parameters
    ----------
    makes
        What it turns into once they are worked out.
    given
        Its fields; a table inside it is a draft of its own.
    """

    makes: type[Any]
    given: Mapping[str, object]

    def worked(self, known: Known, unit: UnitName, **more: object) -> Any:
        """The object, every formula worked out.

        Raises
        ------
        FormulaError
            When a formula cannot be worked, or gives what no part can have.
        """
        fields = {}
        for key, given in self.given.items():
            if isinstance(given, Draft):
                fields[key] = given.worked(known, unit)
            elif isinstance(given, Formula) and given.kind == "count":
                fields[key] = whole(key, given, known, least=1)
            elif isinstance(given, Formula):
                fields[key] = self._size(key, given, known, unit)
            else:
                fields[key] = given
        return self.makes(**fields | more)

    def sum_of(self, key: str, known: Known) -> Sum | None:
        """The sum behind one of its lengths; None where it is not given."""
        given = self.given.get(key)
        return length_of(given.tree, known) if isinstance(given, Formula) else None

    def _size(self, key: str, formula: Formula, known: Known, unit: UnitName) -> Inches:
        total = length_of(formula.tree, known)
        # A joint may be let in by nothing; a part of no length is no part.
        is_too_small = total.value < 0 or (
            total.value == 0 and not issubclass(self.makes, Joint)
        )
        if is_too_small or total.value > LONGEST:
            said = total.say(unit) if total.terms else "0"
            word = self.makes.__dataclass_fields__[key].metadata.get("key", key)
            size = "over 100 ft" if total.value > LONGEST else "not a size"
            raise FormulaError(
                f"its {word} is {size}: {said}",
                "Correct the sizes that are asked for, or the recipe",
            )
        return total.value


def whole(key: str, formula: Formula, known: Known, *, least: int) -> int:
    """A count that a part can have.

    Raises
    ------
    FormulaError
        When it is not whole, or there would be too few or too many.
    """
    count = count_of(formula.tree, known)
    if count.denominator != 1:
        raise FormulaError(
            f"its {key} ({formula.typed}) comes to {float(count):g}",
            "Correct the formula so that it is always a whole number",
        )
    if not least <= count <= MOST_OF_ONE:
        raise FormulaError(
            f"its {key} ({formula.typed}) comes to {count}",
            f"It must be from {least} to {MOST_OF_ONE:,}: correct what is asked for, or the recipe",
        )
    return int(count)


@dataclass(frozen=True, kw_only=True)
class RecipePart:
    """A part of a recipe: its name, how many, and the draft of a plain part."""

    name: str
    quantity: Formula | None
    draft: Draft
    where: Where


@dataclass(frozen=True, kw_only=True)
class RecipeCheck:
    """What must add up once the parts are made, the way the shop would measure it.

    Parameters
    ----------
    measured, should_be
        Formulas of lengths; `shelf.length` is the finished length of the part "shelf".
    """

    words: str
    measured: Formula
    should_be: Formula
    where: Where


@dataclass(frozen=True, kw_only=True)
class Recipe:
    """A shop's own piece, as its job file says it.

    Parameters
    ----------
    words
        What it is, in one line.
    sizes
        Named sizes, and what they are where a job says nothing; None must be said. [in]
    counts
        Named counts, and what they are where a job says nothing. [-]
    materials
        Names for what it is made of, and the wood, sheet or stick they usually mean.
    also
        What is worked out from sizes and counts, each after those it needs.
    """

    name: str
    words: str = ""
    sizes: Mapping[str, Inches | None] = field(default_factory=dict)
    counts: Mapping[str, int] = field(default_factory=dict)
    materials: Mapping[str, str] = field(default_factory=dict)
    also: Mapping[str, Formula] = field(default_factory=dict)
    parts: tuple[RecipePart, ...] = ()
    checks: tuple[RecipeCheck, ...] = ()


def as_in_a_formula(part_name: str) -> str:
    """What a check calls a part: "top rail" is `top_rail`."""
    return re.sub(r"\W", "_", part_name)
