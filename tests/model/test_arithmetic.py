"""A recipe's formulas: read as they are written, worked exactly, refused where they could mean two things."""

from __future__ import annotations

import contextlib
from dataclasses import dataclass
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.builders import inches
from yieldplan.model.arithmetic.kinds import kinds_of, needs
from yieldplan.model.arithmetic.reading import DEEPEST, LONGEST_FORMULA, read_formula
from yieldplan.model.arithmetic.tree import FormulaError, names_in
from yieldplan.model.arithmetic.working import Known, count_of, length_of
from yieldplan.model.sums import Sum
from yieldplan.units import UnitName

SIZES = {"width": "24", "board": "3/4", "top_rail": "2-1/2", "höhe": "30"}
COUNTS = {"shelves": 3, "doors": 2}
KNOWN = Known(
    lengths={
        name: Sum.of((name.replace("_", " "), inches(size)))
        for name, size in SIZES.items()
    },
    counts={name: Fraction(count) for name, count in COUNTS.items()},
)


def length(text: str, unit: UnitName = "in") -> Sum:
    formula = read_formula(text, unit)
    needs(formula.tree, "length", KNOWN.kinds)
    return length_of(formula.tree, KNOWN)


def count(text: str) -> Fraction:
    formula = read_formula(text)
    needs(formula.tree, "count", KNOWN.kinds)
    return count_of(formula.tree, KNOWN)


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("width", "24 width"),
        ("width - 2 * board", "24 width − 2 × 3/4 board = 22-1/2"),
        ("width − 2 × board", "24 width − 2 × 3/4 board = 22-1/2"),
        ("width-2x board", "24 width − 2 × 3/4 board = 22-1/2"),
        ("width - (shelves + 1) * board", "24 width − 4 × 3/4 board = 21"),
        ("width - 2 * (board + 1/4)", "24 width − 2 × 3/4 board − 2 × 1/4 as drawn = 22"),
        ("board + width - board", "24 width"),
        ("17-3/8 + board", "17-3/8 as drawn + 3/4 board = 18-1/8"),
        ("17 - 3/8", "17 as drawn − 3/8 as drawn = 16-5/8"),
        ("1' 5-3/8\" - board", "17-3/8 as drawn − 3/4 board = 16-5/8"),
        ("width - 25.4 mm", "24 width − 1 as drawn = 23"),
        ("top_rail + ½", "2-1/2 top rail + 1/2 as drawn = 3"),
        ("höhe", "30 höhe"),
        ("(width - board) / 2", "11-5/8 ((width − board) ÷ 2)"),
        ("width ÷ 4 + board", "6 (width ÷ 4) + 3/4 board = 6-3/4"),
        ("1/3 * board", "1/4 (1/3 × board)"),
        ("min(width ÷ 2, 10)", "10 smaller of width ÷ 2 and 10"),
        ("max(board, 1/2, top_rail)", "2-1/2 largest of board, 1/2 and top rail"),
        ("-board + width", "− 3/4 board + 24 width = 23-1/4"),
    ],
)  # fmt: skip
def test_a_length_is_a_sum_that_keeps_the_names(text: str, said: str) -> None:
    assert str(length(text)) == said


def test_a_bare_figure_is_in_the_unit_of_the_job() -> None:
    # 3 x 20 mm; in inches the same text is 3 x 20 in.
    assert length("3 * 20", "mm").value == Fraction(600, 254)
    assert length("3 * 20").value == 60
    # A fraction of a millimetre is no size, yet a share in any unit.
    assert length("1/3 * 600", "mm").value == Fraction(2000, 254)
    with pytest.raises(FormulaError, match="not on any tape"):
        length("1/4", "mm")


def test_counts_are_reckoned_like_lengths() -> None:
    assert count("shelves + 1") == 4
    assert count("2 * (shelves - doors)") == 2
    assert count("shelves ÷ 2") == Fraction(3, 2)
    assert count("max(shelves, doors, 5)") == 5


@pytest.mark.parametrize(
    ("text", "wrong", "remedy"),
    [
        ("17 -3/8", "17 -3/8 could be one size", "17 - 3/8, a space on both"),
        ("10-4", "10-4 could be one size", "10 - 4"),
        ("6 / 2", "could be a fraction", "6 ÷ 2"),
        ("3/4/2", "could be a fraction", "3/4 ÷ 2"),
        ("width / 1/2", "by its upper figure only", "(1/2)"),
        ("width / 2 * 3", "two ways", "(a ÷ b) × c"),
        ("width / shelves / 2", "two ways", "(a ÷ b) ÷ c"),
        ("2 board", "nothing stands between 2 and board", "×"),
        ("board width", "nothing stands between board and width", "×"),
        ("5/4", "name of a thickness", "1-1/4"),
        ("1/0", "0 below its line", "Correct"),
        ("", "nothing stands here", "width - 2 * board"),
        ("width -", "missing before the end", "sign before"),
        ("* width", 'missing before "*"', "sign before"),
        ("2 * -board", 'missing before "-"', "sign before"),
        ("(width", "not closed before the end", "Close it"),
        ("(width, board)", "not closed before \",\"", "a point, not a comma"),
        ("width)", '")" stands here without', "Add the bracket"),
        ("min(width)", "something to choose from", "two or more"),
        ("max width", "no bracket behind it", "max(this, that)"),
        ("width ** 2", 'missing before "*"', "sign before"),
        ("width % 2", "% has no place", "min( , )"),
        ("width\x00", "the character 0 has no place", "brackets"),
        ("__import__('os').remove", "' has no place", "brackets"),
        ("max(12,5, width)", "12,5 could be one size, or two", "12.5"),
        ("board + " * 25 + "width", "characters long", "under also"),
        ("(" * 13 + "width" + ")" * 13, "over 12 brackets", "under also"),
    ],
)  # fmt: skip
def test_what_cannot_be_read_is_refused_with_a_remedy(
    text: str, wrong: str, remedy: str
) -> None:
    with pytest.raises(FormulaError) as refused:
        read_formula(text)
    assert wrong in refused.value.wrong
    assert remedy in refused.value.remedy


@pytest.mark.parametrize(
    ("text", "wrong"),
    [
        ("width * board", "multiplies two lengths"),
        ("1/4 in * board", "multiplies two lengths"),
        ("width / board", "divides by a length"),
        ("2 ÷ board", "divides by a length"),
        ("width + shelves", "width is a length and shelves a count: they cannot be added"),
        ("min(width, shelves)", "cannot be compared"),
        ("shelves + 1", "is a count, and a length is needed"),
    ],
)  # fmt: skip
def test_lengths_and_counts_are_not_mixed(text: str, wrong: str) -> None:
    with pytest.raises(FormulaError) as refused:
        length(text)
    assert wrong in refused.value.wrong
    assert refused.value.remedy


def test_a_length_is_no_count() -> None:
    with pytest.raises(FormulaError, match="a count is needed"):
        count("width - board")


def test_nothing_is_divided_by_0_or_grows_without_end() -> None:
    with pytest.raises(FormulaError, match="divides by 0"):
        length("width / (shelves - 3)")
    with pytest.raises(FormulaError, match="beyond anything"):
        length("9999 * 9999 * width")
    with pytest.raises(FormulaError, match="beyond anything"):
        count("1 ÷ (9999999 * 9999999)")


# What the tests draw: a formula as text, and its value worked out beside it.


@dataclass(frozen=True)
class Drawn:
    """A formula; `tight` is how strongly it holds together: 0 sum, 1 quotient, 2 product, 3 operand."""

    text: str
    value: Fraction
    tight: int


def bracketed(drawn: Drawn, least: int) -> str:
    return drawn.text if drawn.tight >= least else f"({drawn.text})"


signs = st.sampled_from
figures = st.integers(1, 64 * 40).map(lambda n: Fraction(n, 64))


def written(size: Fraction) -> str:
    whole_part, rest = divmod(size, 1)
    if not rest:
        return str(whole_part)
    return f"{whole_part}-{rest}" if whole_part else str(rest)


numbers = st.one_of(
    st.integers(1, 12).map(lambda n: Drawn(str(n), Fraction(n), 3)),
    st.sampled_from(sorted(COUNTS)).map(
        lambda name: Drawn(name, Fraction(COUNTS[name]), 3)
    ),
)
lengths_alone = st.one_of(
    figures.map(lambda size: Drawn(written(size) + '"', size, 3)),
    st.sampled_from(sorted(SIZES)).map(
        lambda name: Drawn(name, inches(SIZES[name]), 3)
    ),
)


@st.composite
def reckoned(draw: st.DrawFn, depth: int = 3) -> Drawn:
    """A random formula of a length, a value of its own beside it."""
    if depth == 0 or (depth < 3 and draw(st.booleans())):
        return draw(lengths_alone)
    left = draw(reckoned(depth=depth - 1))
    sort = draw(st.sampled_from(["+", "-", "×", "÷", "min", "max"]))
    if sort in ("min", "max"):
        right = draw(reckoned(depth=depth - 1))
        value = (min if sort == "min" else max)(left.value, right.value)
        return Drawn(f"{sort}({left.text}, {right.text})", value, 3)
    if sort in ("×", "÷"):
        number = draw(numbers)
        if sort == "÷":
            sign = draw(signs([" ÷ ", " : "]))
            text = f"{bracketed(left, 2)}{sign}{number.text}"
            return Drawn(text, left.value / number.value, 1)
        sign = draw(signs([" * ", " × ", " x ", " · "]))
        pair = [number.text, bracketed(left, 2)]
        text = sign.join(pair if draw(st.booleans()) else pair[::-1])
        return Drawn(text, left.value * number.value, 2)
    right = draw(reckoned(depth=depth - 1))
    sign = f" {sort if sort == '+' else draw(signs(['-', '−', '–']))} "
    value = left.value + right.value if sort == "+" else left.value - right.value
    return Drawn(f"{left.text}{sign}{bracketed(right, 1)}", value, 0)


@given(reckoned())
def test_whatever_is_written_is_worked_out_exactly(drawn: Drawn) -> None:
    if len(drawn.text) > LONGEST_FORMULA:
        with pytest.raises(FormulaError):
            read_formula(drawn.text)
        return
    total = length(drawn.text)
    assert total.value == drawn.value
    assert total.value == sum(term.inches * term.times for term in total)
    assert all(term.words for term in total)


@given(
    st.lists(
        st.sampled_from(
            [*"+-−×÷*/x:(),.'\"½ ", "1", "3/4", "2 1/2", "17-3/8", "mm", "in", "min(",
             "max(", "width", "board", "shelves", "nobody", "side.length", "__class__"]
        ),
        max_size=14,
    ).map("".join)
    | st.text(max_size=LONGEST_FORMULA + 5),
    st.sampled_from(["in", "mm"]),
)  # fmt: skip
def test_nonsense_is_read_or_refused_in_words(text: str, unit: UnitName) -> None:
    # Nothing but a FormulaError may come out of any of the steps.
    with contextlib.suppress(FormulaError):
        tree = read_formula(text, unit).tree
        if all(name in KNOWN.kinds for name in names_in(tree)):
            kinds = kinds_of(tree, KNOWN.kinds)
            if "count" in kinds:
                count_of(tree, KNOWN)
            if "length" in kinds:
                length_of(tree, KNOWN)


def test_brackets_may_be_nested_as_deep_as_said() -> None:
    assert length("(" * DEEPEST + "board" + ")" * DEEPEST).value == Fraction(3, 4)
