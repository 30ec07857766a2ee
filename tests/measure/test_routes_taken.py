"""Which route made a part and what the next best would have cost, worked by hand."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from yieldplan.measure.routes_taken import Routes
from yieldplan.measure.ways import Line, Offer, Place, mean_prices, without_wood

FOUR = "walnut 4/4"
SIX = "walnut 6/4"
LINES = {
    # 12.00 a board foot of 4/4: 12.00 / 144 sq in; 14.00 of 6/4: 14.00 x 1-1/2 / 144.
    FOUR: Line(words="4/4", per_area=Fraction(120_000, 144)),
    SIX: Line(words="6/4", per_area=Fraction(210_000, 144)),
}


def blank(
    route: str,
    long: Fraction | int,
    wide: Fraction | int,
    *makes: str,
    lines: Sequence[str] = (FOUR, SIX),
    resawn: bool = False,
    is_step: bool = False,
    face: int = 100,
) -> Offer:
    """A blank in square inches instead of ticks: prices are by the same."""
    return Offer(
        route=route,
        area=long * wide,  # type: ignore[arg-type]
        makes={name: makes.count(name) for name in makes},
        inside=tuple(
            Place(demand=name, area=face, slice=number if resawn else 0)
            for number, name in enumerate(makes)
        ),
        lines=tuple(lines),
        is_step=is_step,
    )


# Sides of 1/2 x 5 x 17-1/2: a blank of 18 x 5-1/4, alone, resawn in two, or two in a row.
LONG, WIDE = Fraction(18), Fraction(21, 4)
SIDES = {
    "k1": blank("plane", LONG, WIDE, "side"),
    "k2": blank("resaw", LONG, WIDE, "side", "side", lines=(SIX,), resawn=True),
    "k3": blank("mill together", Fraction(285, 8), WIDE, "side", "side"),
}


def test_a_part_with_one_route_says_just_that() -> None:
    routes = Routes(offers={"k1": SIDES["k1"]}, lines=LINES, sawn=[("k1", FOUR)])
    assert routes.of(["side"]).words == "planed from 4/4"


def test_two_from_six_quarter_and_what_the_next_best_costs() -> None:
    # Resawn: 18 x 5-1/4 = 94-1/2 sq in of 6/4: 94.5 / 144 x 21.00 = 13.78.
    # Planed: 2 x 94-1/2 of 4/4: 189 / 144 x 12.00 = 15.75: 1.97 more, to ten cents 2.00.
    # In a row: 35-5/8 x 5-1/4 = 187.03: 15.59, 1.80 more: the next best.
    routes = Routes(offers=SIDES, lines=LINES, sawn=[("k2", SIX)])
    assert routes.of(["side"]).words == (
        "resawn, two from 6/4; next best: milled together from 4/4, about 1.80 more wood"
    )


def test_a_cheaper_one_that_was_not_taken_is_said_too() -> None:
    # Planed 15.75, resawn 13.78: 1.97 less.
    routes = Routes(offers=SIDES, lines=LINES, sawn=[("k1", FOUR), ("k1", FOUR)])
    assert routes.of(["side"]).next_best == (
        "resawn, two from 6/4, about 2.00 less wood by itself, if the boards suited it"
    )


def test_several_routes_of_one_part_are_counted() -> None:
    routes = Routes(
        offers=SIDES, lines=LINES, sawn=[("k1", FOUR), ("k1", SIX), ("k2", SIX)]
    )
    # 4 made: 94.5 of 4/4 is 7.875, of 6/4 13.78, and 13.78 resawn: 35.44. In a row 4 are
    # 2 x 15.59 = 31.17: 4.27 less, to ten cents 4.30.
    assert routes.of(["side"]).words == (
        "2 planed from 4/4 and 6/4, and 2 resawn, two from 6/4; next best: milled"
        " together from 4/4, about 4.30 less wood by itself, if the boards suited it"
    )


def test_parts_alike_are_told_together() -> None:
    offers = {
        "k1": blank("plane", LONG, WIDE, "upper/side"),
        "k2": blank("plane", LONG, WIDE, "lower/side"),
        "k3": blank("mill together", Fraction(285, 8), WIDE, "upper/side", "lower/side"),
    }  # fmt: skip
    routes = Routes(offers=offers, lines=LINES, sawn=[("k1", FOUR), ("k2", FOUR)])
    # 2 x 7.875 = 15.75; in a row 15.59: 0.16 less.
    assert routes.of(["upper/side", "lower/side"]).words == (
        "planed from 4/4; next best: milled together from 4/4, about 0.20 less wood by"
        " itself, if the boards suited it"
    )


def test_a_set_in_steps_is_told_from_the_rectangle() -> None:
    # Fronts 36 long, 5 and 8 wide. Rectangle 73-1/8 x 8-1/4 = 603.28: 50.27. Steps
    # 37 x 5-1/4 and 37 x 8-1/4 = 499-1/2: 41.63. 8.65 more.
    whole = Offer(
        route="match",
        area=Fraction(585, 8) * Fraction(33, 4),  # type: ignore[arg-type]
        makes={"upper": 1, "lower": 1},
        inside=(
            Place(demand="upper", area=180, slice=0),
            Place(demand="lower", area=288, slice=0),
        ),
        lines=(FOUR,),
    )
    offers = {
        "k1": blank("match", 37, Fraction(21, 4), "upper", lines=(FOUR,), is_step=True),
        "k2": blank("match", 37, Fraction(33, 4), "lower", lines=(FOUR,), is_step=True),
        "k3": whole,
    }
    routes = Routes(offers=offers, lines=LINES, sawn=[("k1", FOUR), ("k2", FOUR)])
    assert routes.of(["upper", "lower"]).words == (
        "matched in steps from 4/4; next best: matched in one blank from 4/4, about 8.60"
        " more wood"
    )


def test_strips_of_a_panel_are_counted() -> None:
    strip = blank("glue up", 31, 5, "top width")
    offers = {"k1": strip, "k2": blank("plane", 31, 12, "top width")}
    routes = Routes(offers=offers, lines=LINES, sawn=[("k1", FOUR)] * 2)
    # One place makes one unit here: two strips 2 x 155 = 25.83; in one piece for both
    # units 2 x 372 = 62.00: 36.17 more.
    assert routes.of(["top width"]).words == (
        "glued up, 2 strips from 4/4; next best: in one piece from 4/4, about 36.20 more"
        " wood"
    )


def test_what_was_not_sawn_has_no_route() -> None:
    routes = Routes(offers=SIDES, lines=LINES, sawn=[])
    assert routes.of(["side"]).words == ""


def test_a_line_costs_what_its_boards_cost_on_the_mean() -> None:
    # 60.00 and 20.00 for 1,000 and 600 square: 80.00 / 1,600 = 0.05.
    lines = mean_prices(
        [(FOUR, "4/4", 600_000, 1000, False), (FOUR, "4/4", 200_000, 600, False)]
    )
    assert lines[FOUR].per_area == 500
    assert without_wood("walnut 13/16 surfaced", "walnut") == "13/16 surfaced"
