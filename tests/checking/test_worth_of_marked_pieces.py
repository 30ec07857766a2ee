"""The most a piece can be worth, on free wood with many marks that some blanks can live with."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from random import Random
from typing import Any

import pytest

from tests.checking import brute
from tests.checking.tiny import TinyBlank, TinyPiece, TinyWood, document
from yieldplan.checking.bound import greatest_worths, price_out
from yieldplan.checking.reading import read

# Few marks fall between clear and sound, so that most of them block some blanks only.
NUMBER = {"R": 40, "C": 30, "E": 12}
FACES = [("clear", "clear"), ("clear", "sound"), ("sound", "any"), ("any", "any")]


def marked_wood(
    family: str, random: Random, mode: str = ""
) -> tuple[TinyWood, dict[str, int]]:
    """A piece with many marks, and one rule more that it is cut by."""
    along, across = random.randint(5, 10), random.randint(3, 8)
    kerf, step = random.choice([(0, (1, 1)), (1, (1, 1)), (2, (3, 2)), (5, (2, 3))])
    size = (along * step[0] + random.randint(0, 2), across * step[1])
    marks = []
    for _ in range(random.randint(1, 5)):
        x0, y0 = random.randint(-1, size[0] - 1), random.randint(-1, size[1] - 1)
        box = (x0, y0, x0 + random.randint(1, 3), y0 + random.randint(1, 3))
        kind = random.choice(["knot", "knot", "sap", "split"])
        marks.append((kind, random.choice(["A", "B", "through"]), box))
    marks = marks[: random.randint(0, len(marks))] if mode else marks
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
    wood = TinyWood(family, kerf, step, tuple(blanks), (piece,), need)
    for each in mode.split():
        wood = MODES[each](wood, random)
    return wood, prices


def _piece(wood: TinyWood, **said: Any) -> TinyWood:
    return replace(wood, pieces=(replace(wood.pieces[0], **said),))


def _trims(wood: TinyWood, random: Random) -> TinyWood:
    return _piece(
        replace(wood, marks_from=random.choice(["zero end", "trimmed end"])),
        trims=(random.randint(0, 2), random.randint(0, 2)),
        edges=(random.randint(0, 2), random.randint(0, 2)),
    )


def _crook(wood: TinyWood, random: Random) -> TinyWood:
    at_most = random.choice([None, None, 0, 1, 2, 3, 5])
    wood = replace(wood, crook_at_most=at_most)
    return _piece(wood, crook=random.randint(1, wood.pieces[0].size[1]))


def _taper(wood: TinyWood, random: Random) -> TinyWood:
    wide = wood.pieces[0].size[1]
    widths = [wide, random.randint(1, wide)]
    random.shuffle(widths)
    return _piece(wood, widths=(widths[0], widths[1]))


def _twist(wood: TinyWood, random: Random) -> TinyWood:
    longest = random.randint(1, wood.pieces[0].size[0])
    return _piece(replace(wood, twisted_at_most=longest), twist=1)


def _bow(wood: TinyWood, random: Random) -> TinyWood:
    return _piece(wood, bow=random.randint(1, 30))


def _margins(wood: TinyWood, random: Random) -> TinyWood:
    return replace(
        wood, around_knots=random.randint(0, 3), short_of_checks=random.randint(0, 4)
    )


def _zones(wood: TinyWood, random: Random) -> TinyWood:
    zones = {part: random.choice([0, 1, 2, 4]) for part in wood.need}
    blanks = []
    for blank in wood.blanks:
        (part,) = blank.makes
        many = random.random() < 0.2 and blank.size[0] > 1 + wood.kerf
        at = random.randint(0, 2)
        # Most of them mind a knot in their zones only.
        faces = random.choice([blank.faces, ("any", "any"), ("any", "any")])
        blank = replace(blank, makes={part: 2 if many else 1}, at=at, faces=faces)
        blanks.append(blank)
    return replace(wood, zones=zones, blanks=tuple(blanks))


def _steps(wood: TinyWood, random: Random) -> TinyWood:
    """Two or three of the blanks are a set, in an order of its own."""
    blanks = list(wood.blanks)
    random.shuffle(blanks)
    number = min(random.randint(1, 3), len(blanks))
    faces = random.choice(FACES)
    for n in range(number):
        blanks[n] = replace(blanks[n], step=("set", n + 1, number), faces=faces)
    return replace(wood, blanks=tuple(blanks))


def _offcuts(wood: TinyWood, random: Random) -> TinyWood:
    long, wide = wood.pieces[0].size
    sizes = [
        (random.randint(1, long), random.randint(1, wide))
        for _ in range(random.randint(1, 2))
    ]
    wood = replace(wood, percent=random.randint(1, 50), sizes=tuple(sizes))
    return _piece(wood, price=random.randint(0, 20 * long * wide))


MODES: dict[str, Callable[[TinyWood, Random], TinyWood]] = {
    "trims": _trims,
    "crook": _crook,
    "taper": _taper,
    "twist": _twist,
    "bow": _bow,
    "margins": _margins,
    "zones": _zones,
    "steps": _steps,
    "offcuts": _offcuts,
}


@pytest.mark.parametrize("family", "RCE")
@pytest.mark.parametrize(
    "mode",
    [
        *MODES,
        "trims crook taper",
        "trims crook margins zones",
        "trims taper twist bow",
        "trims zones margins",
        "trims zones margins steps",
        "trims steps offcuts",
        "trims margins offcuts",
        " ".join(MODES),
    ],
)
def test_worth_with_a_rule_more_is_what_trying_everything_gives(
    family: str, mode: str
) -> None:
    for seed in range(NUMBER[family]):
        wood, prices = marked_wood(family, Random(f"{mode} {seed}"), mode)
        plan, objections = read(document(wood, [], prices=prices))
        assert plan is not None, objections
        worth = greatest_worths(plan, plan.woods[0])["P"]
        assert worth == brute.greatest(wood, wood.pieces[0], prices), seed


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


@pytest.mark.parametrize(
    ("knot", "worth"), [((3, 5), 0), ((7, 9), 10), ((11, 13), 0)], ids=str
)
def test_zones_take_the_cells_the_page_says(knot: tuple[int, int], worth: int) -> None:
    # Kerf 2, cells of 4 from -2 on: 18 ticks are 5 cells, and so is the blank of 18.
    # Its zones of 3 take ceil((3 + 2) / 4) = 2 cells and ceil((3 + 20 - 18) / 4) = 2; the
    # knots lie in cells 1, 2 and 3 of 0 to 4: only the second is in none.
    blank = TinyBlank("k", (18, 2), {"part": 1}, ("any", "any"))
    mark = ("knot", "A", (knot[0], 0, knot[1], 2))
    piece = TinyPiece("P", (18, 2), price=0, marks=(mark,))
    wood = TinyWood("R", 2, (4, 4), (blank,), (piece,), {"part": 0}, "trimmed end")
    assert _worth(replace(wood, zones={"part": 3})) == worth


def test_shorter_blank_with_longer_zones_replaces_no_other() -> None:
    # No kerf, cells of one tick, a knot in cell 1 of 0 to 3. The blank of 3 is worth more
    # and is 2 of zone at each end, so that the knot always lies in one; the blank of 4
    # has zones of 1, in cells 0 and 3.
    short = TinyBlank("short", (3, 1), {"a": 1}, ("any", "any"))
    long = TinyBlank("long", (4, 1), {"b": 1}, ("any", "any"))
    piece = TinyPiece("P", (4, 1), price=0, marks=(("knot", "A", (1, 0, 2, 1)),))
    need = {"a": 0, "b": 0}
    wood = TinyWood("R", 0, (1, 1), (short, long), (piece,), need)
    wood = replace(wood, zones={"a": 2, "b": 1})
    plan, _ = read(document(wood, [], prices={"a": 10, "b": 9}))
    assert plan is not None
    assert greatest_worths(plan, plan.woods[0]) == {"P": 9}


def _worth_of_set(
    size: tuple[int, int],
    marks: tuple[tuple[str, str, tuple[int, int, int, int]], ...],
    steps: tuple[tuple[int, int], ...],
) -> int:
    """The worth of a free piece to a set of two, no kerf, cells of one tick: 10, or 0."""
    blanks = tuple(
        TinyBlank(f"k{n}", step, {f"p{n}": 1}, ("clear", "any"), step=("set", n, 2))
        for n, step in enumerate(steps, 1)
    )
    piece = TinyPiece("P", size, price=0, marks=marks)
    wood = TinyWood("C", 0, (1, 1), blanks, (piece,), {"p1": 0, "p2": 0})
    plan, _ = read(document(wood, [], prices={"p1": 6, "p2": 4}))
    assert plan is not None
    return greatest_worths(plan, plan.woods[0])["P"]


def test_set_in_steps_turns_one_face_down_for_all_its_steps() -> None:
    # Two steps of 2 fill 4; what is on face A alone lies down, and then face B shows.
    steps = ((2, 1), (2, 1))
    on_a, on_b = ("knot", "A", (0, 0, 1, 1)), ("knot", "B", (2, 0, 3, 1))
    assert _worth_of_set((4, 1), (), steps) == 10
    assert _worth_of_set((4, 1), (on_a,), steps) == 10
    assert _worth_of_set((4, 1), (on_b,), steps) == 10
    assert _worth_of_set((4, 1), (on_a, on_b), steps) == 0
    assert _worth_of_set((4, 1), (on_b, on_a), steps) == 0


def test_set_in_steps_begins_where_a_later_step_is_past_a_mark() -> None:
    # A board of 7 by 2 with a knot from 1 to 3 in its upper half. The narrow step of 2
    # lies beside it from 1 to 3, the wide one of 3 begins at 3.
    knot = ("knot", "through", (1, 1, 3, 2))
    assert _worth_of_set((7, 2), (knot,), ((2, 1), (3, 2))) == 10
    # Of a board of 5 it would reach out.
    assert _worth_of_set((5, 2), (knot,), ((2, 1), (3, 2))) == 0


def test_far_zone_slides_off_a_knot_when_the_blank_begins_further_on() -> None:
    # No kerf, cells of one tick, a knot in cell 3 of 0 to 5. The blank of 4 with a zone of
    # 1 at each end: from 0 its far zone is cell 3; from 1 its zones are 1 and 4.
    blank = TinyBlank("k", (4, 1), {"part": 1}, ("any", "any"))
    piece = TinyPiece("P", (5, 1), price=0, marks=(("knot", "A", (3, 0, 4, 1)),))
    wood = TinyWood("R", 0, (1, 1), (blank,), (piece,), {"part": 0}, zones={"part": 1})
    assert _worth(wood) == 10


@pytest.mark.parametrize("family", "RC")
def test_offcut_counts_by_the_marks_as_they_are(family: str) -> None:
    # Crosscut: a blank of 4 by 10 out of a board of 7 by 10 leaves 3 by 10, 3/7 of it;
    # half of that share of 100 is 21 3/7. Ripped it is the same the other way about.
    def turned(box: tuple[int, int, int, int]) -> tuple[int, int, int, int]:
        x0, y0, x1, y1 = box
        return box if family == "C" else (y0, x0, y1, x1)

    def worth(*boxes: tuple[int, int, int, int]) -> int:
        marks = tuple(("knot", "A", turned(box)) for box in boxes)
        (_, _, *size), (_, _, *board) = turned((0, 0, 4, 10)), turned((0, 0, 7, 10))
        blank = TinyBlank("k", (size[0], size[1]), {"part": 1}, ("any", "any"))
        piece = TinyPiece("P", (board[0], board[1]), price=100, marks=marks)
        wood = TinyWood(family, 0, (1, 1), (blank,), (piece,), {"part": 0})
        wood = replace(wood, around_knots=2, percent=50, sizes=((3, 3),))
        plan, _ = read(document(wood, [], prices={"part": 200}))
        assert plan is not None
        return greatest_worths(plan, plan.woods[0])["P"]

    assert worth() == 221
    # A knot in the blank, whose reach goes over into the rest; one beyond the board.
    assert worth((2, 2, 4, 4)) == 221
    assert worth((8, 2, 9, 3)) == 221
    # One in the rest, too near its end for a smaller offcut.
    assert worth((5, 2, 6, 3)) == 200
