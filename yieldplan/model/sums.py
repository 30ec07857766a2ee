"""A size as the sum a maker would write beside it: `20 opening depth − 3/8 lap = 19-5/8`."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from yieldplan.units import Inches, UnitName, tape


@dataclass(frozen=True)
class Term:
    """One term of a sum: so many times so much, for a reason.

    Parameters
    ----------
    words
        The reason, in the shop's words.
    inches
        The figure, with its sign. [in]
    times
        How often it is taken (two sides, two tenons).
    """

    words: str
    inches: Inches
    times: int = 1

    @property
    def value(self) -> Inches:
        """What the term adds. [in]"""
        return self.inches * self.times


@dataclass(frozen=True)
class Sum:
    """A finished length, width, clearance or allowance, with every term that makes it."""

    terms: tuple[Term, ...]

    @staticmethod
    def of(*terms: tuple[str, Inches] | tuple[str, Inches, int]) -> Sum:
        """A sum of `(words, inches)` or `(words, inches, times)`."""
        return Sum(tuple(Term(*term) for term in terms))

    @staticmethod
    def nothing(why: str) -> Sum:
        """A sum that adds 0 and says why (a joint that adds nothing still speaks)."""
        return Sum((Term(why, Fraction(0)),))

    @property
    def value(self) -> Inches:
        """The figure. [in]"""
        return sum((term.value for term in self.terms), Fraction(0))

    def __add__(self, other: Sum) -> Sum:
        return Sum(self.terms + other.terms)

    def __iter__(self) -> Iterator[Term]:
        return iter(self.terms)

    def times(self, count: int) -> Sum:
        """Every term `count` times over."""
        return Sum(tuple(Term(t.words, t.inches, t.times * count) for t in self.terms))

    def folded(self) -> Sum:
        """The sum with terms that cancel left out and equal terms taken together.

        `20 opening depth − 3/4 front + 3/4 front − 3/8 lap` is `20 opening depth − 3/8 lap`.
        """
        counts: dict[tuple[str, Inches], int] = {}
        for term in self.terms:
            key = (term.words, abs(term.inches))
            sign = -1 if term.inches < 0 else 1
            counts[key] = counts.get(key, 0) + sign * term.times
        kept = []
        for (words, inches), times in counts.items():
            if inches == 0:
                kept.append(Term(words, inches))
            elif times:
                kept.append(Term(words, inches if times > 0 else -inches, abs(times)))
        return Sum(tuple(kept))

    def say(self, unit: UnitName = "in", *, join: str = " ", grid: int = 64) -> str:
        """The sum as it is written: terms with their signs, then what they make.

        Terms that add nothing are written `+ 0, words`. A sum of one term is written
        with its words only.
        """
        written: list[str] = []
        for number, term in enumerate(self.terms):
            figure = tape(abs(term.inches), unit, join=join, grid=grid)
            if abs(term.times) != 1:
                figure = f"{abs(term.times)} × {figure}"
            sign = "− " if term.value < 0 else "+ " if number else ""
            comma = "," if term.value == 0 and number else ""
            written.append(f"{sign}{figure}{comma} {term.words}".rstrip())
        left = " ".join(written)
        if len(self.terms) == 1:
            return left
        return f"{left} = {tape(self.value, unit, join=join, grid=grid)}"

    def __str__(self) -> str:
        return self.say(join="-")
