"""A recipe builds plain parts in its own names, and notices when they do not go together."""

from __future__ import annotations

import dataclasses
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.builders import HERE, inches, make_job
from yieldplan import assemblies
from yieldplan.assemblies.assembly import Assembly
from yieldplan.assemblies.part import Between, PlainPart
from yieldplan.assemblies.recipe import assembly_of
from yieldplan.assemblies.recipe.keys import Draft, Recipe, RecipeCheck, RecipePart
from yieldplan.faults import Faults
from yieldplan.joints.dado import Dado
from yieldplan.model.arithmetic.reading import read_formula
from yieldplan.model.arithmetic.tree import Formula
from yieldplan.model.sums import Sum
from yieldplan.registry import find


def formulas(**texts: str) -> dict[str, object]:
    """Lengths as formulas."""
    return {key: read_formula(text) for key, text in texts.items()}


def count(text: str) -> Formula:
    return read_formula(text, kind="count")


def part(name: str, quantity: str, **given: object) -> RecipePart:
    """A part of the material "outside"."""
    draft = Draft(makes=PlainPart, given={"wood": "outside", **given})
    return RecipePart(name=name, quantity=count(quantity), draft=draft, where=HERE)


# A frame of shelves: the shelf spans the inside and is let a third of the board into it.
SHELVES = Recipe(
    name="rack",
    sizes={"width": None, "height": inches("30"), "board": inches("3/4")},
    counts={"shelves": 2},
    materials={"outside": "walnut"},
    also={
        "inside": read_formula("width - 2 * board"),
        "gap": read_formula("(height - shelves * board) ÷ (shelves + 1)"),
    },
    parts=(
        part("side", "2", **formulas(length="height", width="8", thickness="board")),
        part(
            "shelf",
            "shelves",
            **formulas(width="8", thickness="board"),
            between=Draft(
                makes=Between,
                given={
                    **formulas(clear="inside", mate="board"),
                    "joint": Draft(makes=Dado, given=formulas(deep="board / 3")),
                },
            ),
        ),
        part("block", "shelves + 1", **formulas(length="gap", width="1", thickness="1/2")),
    ),
    checks=(
        RecipeCheck(
            words="width over all",
            measured=read_formula("side.thickness * 2 + shelf.length - 2 * (board ÷ 3)"),
            should_be=read_formula("width"),
            where=HERE,
        ),
        RecipeCheck(
            words="height over all",
            measured=read_formula(
                "block.length * (shelves + 1) + shelf.thickness * shelves"
            ),
            should_be=read_formula("side.length"),
            where=HERE,
        ),
    ),
)  # fmt: skip
RACK = assembly_of(SHELVES)


def rack(**said: object) -> Assembly:
    """A rack 24 wide."""
    settings = {"of_width": inches("24"), **said}
    return RACK(name="den", where=HERE, **settings)


def test_its_sizes_are_the_keys_of_its_table() -> None:
    keys = {
        field.metadata["key"]: field.default is dataclasses.MISSING
        for field in dataclasses.fields(RACK)
        if field.name not in ("name", "where")
    }
    # Only the width must be said.
    assert [key for key, needed in keys.items() if needed] == ["width"]
    assert list(keys) == ["width", "height", "board", "shelves", "outside"]


def test_a_recipe_is_no_assembly_of_its_own() -> None:
    assert "recipe" not in find(assemblies, Assembly)  # type: ignore[type-abstract]


widths = st.integers(6 * 16, 90 * 16).map(lambda n: Fraction(n, 16))
boards = st.integers(8, 24).map(lambda n: Fraction(n, 16))


@given(widths, widths, boards, st.integers(1, 6))
def test_put_together_it_is_as_wide_and_high_as_asked(
    width: Fraction, height: Fraction, board: Fraction, shelves: int
) -> None:
    piece = rack(of_width=width, of_height=height, of_board=board, of_shelves=shelves)
    job, faults = make_job(piece), Faults()
    parts = {each.id: each for each in assemblies.parts_of(job, faults).parts}
    if height <= shelves * board:
        # Nothing is left between the shelves, so a block of that height is refused.
        assert "block: its length is not a size" in next(iter(faults)).wrong
        return
    assert not len(faults)
    # Worked here once more, from the sizes alone.
    inside = width - 2 * board
    assert parts["den/shelf"].length.value == inside + 2 * (board / 3)
    gap = (height - shelves * board) / (shelves + 1)
    assert parts["den/block"].length.value == gap
    assert parts["den/block"].quantity == shelves + 1
    fits = piece.put_together(parts, job)
    assert [(fit.words, fit.got) for fit in fits] == [
        ("width over all", width),
        ("height over all", height),
    ]
    assert all(fit.got == fit.asked for fit in fits)


@pytest.mark.parametrize(
    ("wrong", "size"),
    [("shelf", "length"), ("side", "thickness"), ("side", "length"), ("block", "length")],
)  # fmt: skip
def test_a_part_of_a_wrong_size_shows_when_it_is_put_together(
    wrong: str, size: str
) -> None:
    piece = rack()
    job = make_job(piece)
    parts = {each.id: each for each in assemblies.parts_of(job, Faults()).parts}
    right = parts[f"den/{wrong}"]
    off = getattr(right, size) + Sum.of(("off by", Fraction(1, 64)))
    parts[right.id] = dataclasses.replace(right, **{size: off})
    assert any(fit.got != fit.asked for fit in piece.put_together(parts, job))


def test_what_is_wrong_with_a_joint_goes_by_its_key() -> None:
    deep = Draft(makes=Dado, given=formulas(deep="board - 1"))
    between = Draft(
        makes=Between, given={**formulas(clear="width", mate="board"), "joint": deep}
    )
    shelf = part(
        "shelf", "1", **formulas(width="8", thickness="board"), between=between
    )
    kind = assembly_of(dataclasses.replace(SHELVES, parts=(shelf,), checks=()))
    piece = kind(name="den", where=HERE, of_width=inches("24"))  # type: ignore[call-arg]
    faults = Faults()
    piece.build(make_job(piece), faults)
    (fault,) = faults
    assert fault.wrong == (
        "shelf: its depth is not a size: 3/4 board − 1 as drawn = −1/4"
    )


def test_every_figure_of_a_sum_has_a_reason() -> None:
    job = make_job(rack())
    for each in assemblies.parts_of(job, Faults()).parts:
        for size in (each.length, each.width, each.thickness):
            assert all(term.words for term in size)
