"""Reads a formula of a recipe, `width - 2 * board`; what could be read two ways is refused.

    formula  = [−] product { (+ | −) product }
    product  = operand { (× | ÷) operand }        nothing more after ÷ without brackets
    operand  = figure | name | ( formula ) | min( formula, formula ... ) | max( ... )

× is also written * and x, ÷ also /, − also -. Between two figures / makes a fraction and
a hyphen makes one number of 17-3/8; so there ÷ divides, and a minus has spaces around it.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Literal

from yieldplan.model.arithmetic.tree import (
    Added,
    Extreme,
    Figure,
    Formula,
    FormulaError,
    Kind,
    Named,
    Negative,
    Node,
    Over,
    Times,
)
from yieldplan.units import (
    UNIT_WORDS,
    TapeError,
    UnitName,
    figure_at,
    parse_length,
    spelled_out,
)

LONGEST_FORMULA = 200
DEEPEST = 12
"""Brackets within brackets."""

KEPT_WORDS = frozenset({"min", "max", "x"}) | UNIT_WORDS
"""Words with a meaning of their own in a formula; no size may be called so."""

_SPACE = re.compile(r"\s*")
_NAME = re.compile(r"[^\W\d]\w*(?:\.\w+)?")
_BARE = re.compile(r"[0-9 ./-]+")
_SIGNS = {
    "+": "+", "-": "−", "−": "−", "–": "−", "*": "×", "×": "×", "·": "×",
    "/": "÷", "÷": "÷", ":": "÷", "(": "(", ")": ")", ",": ",",
}  # fmt: skip

_Sort = Literal["figure", "name", "sign", "end"]


@dataclass(frozen=True)
class _Token:
    """A piece of a formula; `spaced` is whether a space stands before and behind it."""

    sort: _Sort
    text: str
    typed: str
    spaced: tuple[bool, bool] = (False, False)


def read_formula(text: str, unit: UnitName = "in", *, kind: Kind = "length") -> Formula:
    """The formula a text says.

    Parameters
    ----------
    unit
        The unit of a bare figure where a size is meant.
    kind
        What the formula is to give.

    Raises
    ------
    FormulaError
        When the text is no formula, or could mean two.
    """
    typed = " ".join(text.split())
    if not typed:
        raise FormulaError(
            "nothing stands here", 'Write a size, such as "width - 2 * board"'
        )
    if len(typed) > LONGEST_FORMULA:
        raise FormulaError(
            f"it is {len(typed)} characters long; {LONGEST_FORMULA} can be followed",
            "Give a piece of it a name under also, and use the name",
        )
    tokens = list(_tokens(spelled_out(typed)))
    _refuse_two_readings(tokens)
    return Formula(typed=typed, tree=_Reader(tokens, unit).read(), kind=kind)


def _tokens(text: str) -> Iterator[_Token]:
    at = 0
    while at < len(text):
        figure = figure_at(text, at).rstrip()
        name = None if figure else _NAME.match(text, at)
        if figure:
            yield _Token("figure", figure, figure)
            at += len(figure)
        elif name is not None:
            word = name.group()
            is_sign = word == "x"
            yield _Token("sign" if is_sign else "name", "×" if is_sign else word, word)
            at = name.end()
        elif text[at] in _SIGNS:
            behind = at + 1 < len(text) and text[at + 1].isspace()
            before = at > 0 and text[at - 1].isspace()
            yield _Token("sign", _SIGNS[text[at]], text[at], (before, behind))
            at += 1
        else:
            raise FormulaError(
                f"{_shown(text[at])} has no place in a formula",
                "Write names, sizes, + − × ÷, brackets, min( , ) and max( , )",
            )
        space = _SPACE.match(text, at)
        at = space.end() if space else at
    yield _Token("end", "", "")


def _shown(letter: str) -> str:
    return letter if letter.isprintable() else f"the character {ord(letter)}"


def _refuse_two_readings(tokens: list[_Token]) -> None:
    """Refuse a hyphen or slash beside figures that a person could read either way."""
    for left, sign, right in zip(tokens, tokens[1:], tokens[2:], strict=False):
        both = left.sort == right.sort == "figure"
        pair = f"{left.text} {sign.typed} {right.text}"
        if both and sign.typed == "-" and sign.spaced != (True, True):
            raise FormulaError(
                f"{_as_spaced(left, sign, right)} could be one size, or one less the other",
                f"Write {left.text} - {right.text}, a space on both sides, for the difference",
            )
        if both and sign.typed == "/":
            raise FormulaError(
                f"{pair} could be a fraction, or one divided by the other",
                f"Write {left.text} ÷ {right.text} to divide; a fraction has no spaces: 3/4",
            )
        if both and sign.text == "," and not sign.spaced[1]:
            raise FormulaError(
                f"{_as_spaced(left, sign, right)} could be one size, or two",
                f"Write {left.text}.{right.text} with a point, or a space behind the comma",
            )
        if sign.text == "÷" and right.sort == "figure" and "/" in right.text:
            raise FormulaError(
                f"{pair} could be divided by the fraction, or by its upper figure only",
                f"Write ({right.text}) in brackets for the fraction",
            )


def _as_spaced(left: _Token, sign: _Token, right: _Token) -> str:
    before, behind = (" " if space else "" for space in sign.spaced)
    return f"{left.text}{before}{sign.typed}{behind}{right.text}"


class _Reader:
    """Goes through the tokens once, from the left."""

    def __init__(self, tokens: list[_Token], unit: UnitName) -> None:
        self.tokens = tokens
        self.unit = unit
        self.at = 0
        self.depth = 0

    def read(self) -> Node:
        tree = self._formula()
        if self._next.sort == "end":
            return tree
        if self._next.text in (")", ","):
            wrong = f"{_quoted(self._next)} stands here without its bracket before it"
            raise FormulaError(wrong, "Add the bracket or take it out")
        before = self.tokens[self.at - 1]
        raise FormulaError(
            f"nothing stands between {before.typed} and {self._next.typed}",
            "Write + − × or ÷ between them",
        )

    @property
    def _next(self) -> _Token:
        return self.tokens[self.at]

    def _take(self, *signs: str) -> str:
        token = self._next
        if token.sort == "sign" and token.text in signs:
            self.at += 1
            return token.text
        return ""

    def _formula(self) -> Node:
        tree: Node = (
            Negative(of=self._product()) if self._take("−") else self._product()
        )
        while sign := self._take("+", "−"):
            tree = Added(left=tree, right=self._product(), is_less=sign == "−")
        return tree

    def _product(self) -> Node:
        tree = self._operand()
        divided = False
        while sign := self._take("×", "÷"):
            if divided:
                raise FormulaError(
                    f"what {sign} belongs to after ÷ can be read two ways",
                    f"Write brackets: (a ÷ b) {sign} c, or a ÷ (b {sign} c)",
                )
            right = self._operand()
            divided = sign == "÷"
            if divided:
                tree = Over(left=tree, right=right)
            else:
                tree = Times(left=tree, right=right)
        return tree

    def _operand(self) -> Node:
        token = self._next
        if token.sort == "figure":
            self.at += 1
            return self._figure(token.text)
        if token.sort == "name":
            self.at += 1
            if token.text in ("min", "max"):
                return self._extreme(token.text)
            return Named(name=token.text)
        if self._take("("):
            (inside,) = self._in_brackets(at_most=1)
            return inside
        what = "the end" if token.sort == "end" else _quoted(token)
        wrong = f"a name or a size is missing before {what}"
        raise FormulaError(wrong, "Write it, or take out the sign before it")

    def _extreme(self, word: str) -> Node:
        if not self._take("("):
            remedy = f"Write {word}(this, that)"
            raise FormulaError(f"{word} has no bracket behind it", remedy)
        of = self._in_brackets(at_most=LONGEST_FORMULA)
        if len(of) < 2:
            remedy = "Write two or more, a comma between them"
            raise FormulaError(f"{word} needs something to choose from", remedy)
        return Extreme(which="min" if word == "min" else "max", of=tuple(of))

    def _in_brackets(self, *, at_most: int) -> list[Node]:
        self.depth += 1
        if self.depth > DEEPEST:
            raise FormulaError(
                f"over {DEEPEST} brackets stand in one another",
                "Give a piece of it a name under also, and use the name",
            )
        inside = [self._formula()]
        while len(inside) < at_most and self._take(","):
            inside.append(self._formula())
        if not self._take(")"):
            what = "the end" if self._next.sort == "end" else _quoted(self._next)
            raise FormulaError(
                f"a bracket is not closed before {what}",
                "Close it; a size is written with a point, not a comma",
            )
        self.depth -= 1
        return inside

    def _figure(self, typed: str) -> Figure:
        number = inches = None
        has_unit = _BARE.fullmatch(typed) is None
        trouble: TapeError | None = None
        try:
            inches = parse_length(typed, self.unit)
        except TapeError as error:
            trouble = error
        try:
            number = None if has_unit else parse_length(typed, "in")
        except TapeError as error:
            trouble = error
        if number is None and inches is None:
            assert trouble is not None
            raise FormulaError(trouble.wrong, trouble.remedy) from trouble
        return Figure(typed=typed, number=number, inches=inches)


def _quoted(token: _Token) -> str:
    return f'"{token.typed}"'
