"""The most a piece can be worth, on free wood with many marks that some blanks can live with."""

from __future__ import annotations

from random import Random

import pytest

from tests.checking import brute
from tests.checking.tiny import TinyBlank, TinyPiece, TinyWood, document
from yieldplan.checking.bound import price_out
from yieldplan.checking.reading import read

# Few marks fall between clear and sound, so that most of them block some blanks only.
FACES = [("clear", "clear"), ("clear", "sound"), ("sound", "any"), ("any", "any")]


def marked_wood(family: str, random: Random) -> tuple[TinyWood, dict[str, int]]:
    """A piece that costs nothing, so that the least change of its worth is seen."""
    along, across = random.randint(5, 10), random.randint(3, 8)
    kerf, step = random.choice([(0, (1, 1)), (1, (1, 1)), (2, (3, 2)), (5, (2, 3))])
    size = (along * step[0] + random.randint(0, 2), across * step[1])
    marks = []
    for _ in range(random.randint(1, 5)):
        x0, y0 = random.randint(-1, size[0] - 1), random.randint(-1, size[1] - 1)
        box = (x0, y0, x0 + random.randint(1, 3), y0 + random.randint(1, 3))
        kind = random.choice(["knot", "knot", "sap", "split"])
        marks.append((kind, random.choice(["A", "B", "through"]), box))
    blanks, prices = [], {}
    for number in range(random.randint(2, 5)):
        long, wide = random.randint(1, 5), random.randint(1, 4)
        blanks.append(
            TinyBlank(
                id=f"k{number}",
                size=(
                    max(1, long * step[0] - kerf),
                    max(1, wide * step[1] - kerf),
                ),
                makes={f"part {number}": 1},
                faces=random.choice(FACES),
            )
        )
        # Worth about its area, so that none is the best everywhere.
        prices[f"part {number}"] = long * wide * 10 + random.randint(-6, 9)
    piece = TinyPiece(id="P", size=size, price=0, marks=tuple(marks))
    need = dict.fromkeys(prices, 1)
    return TinyWood(family, kerf, step, tuple(blanks), (piece,), need), prices


@pytest.mark.parametrize(("family", "number"), [("R", 200), ("C", 150), ("E", 40)])
def test_worth_is_what_trying_everything_gives(family: str, number: int) -> None:
    for seed in range(number):
        wood, prices = marked_wood(family, Random(seed))
        plan, _ = read(document(wood, [], prices=prices))
        assert plan is not None
        assert price_out(plan, plan.woods[0]) == brute.priced(wood, prices), seed


def test_short_mark_within_a_long_one_frees_nothing() -> None:
    # No kerf, cells of one tick. A split from 2 to 8 of 10 leaves 2 at either end, too
    # short for a blank of 3; a shorter split within it, from 4 to 5, changes nothing.
    long, short = ("split", "through", (2, 0, 8, 1)), ("split", "through", (4, 0, 5, 1))
    blank = TinyBlank("k", (3, 1), {"part": 1})
    piece = TinyPiece("P", (10, 1), price=0, marks=(long, short))
    assert _worth(TinyWood("R", 0, (1, 1), (blank,), (piece,), {"part": 0})) == 0
    # The same across: strips of 3 in 10 beside a split from 2 to 8.
    long, short = ("split", "through", (0, 2, 1, 8)), ("split", "through", (0, 4, 1, 5))
    blank = TinyBlank("k", (1, 3), {"part": 1})
    piece = TinyPiece("P", (1, 10), price=0, marks=(long, short))
    assert _worth(TinyWood("C", 0, (1, 1), (blank,), (piece,), {"part": 0})) == 0
    # From 3 on there is room for one below.
    long = ("split", "through", (0, 3, 1, 8))
    piece = TinyPiece("P", (1, 10), price=0, marks=(long, short))
    assert _worth(TinyWood("C", 0, (1, 1), (blank,), (piece,), {"part": 0})) == 10


def _worth(wood: TinyWood) -> int:
    """The worth of the one free piece of a wood, when its part is worth 10."""
    plan, _ = read(document(wood, [], prices={"part": 10}))
    assert plan is not None
    return -price_out(plan, plan.woods[0])
