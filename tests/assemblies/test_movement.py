"""How much a board grows: worked by hand and against a printed example."""

from __future__ import annotations

from fractions import Fraction

from tests.builders import inches
from yieldplan.assemblies.movement import growth


def test_a_printed_example() -> None:
    # READ: flooringartists.com, dimensional change: mesquite 5 in wide, coefficient
    # 0.00129, from 6 to 9 per cent, is printed as 0.019 in.
    gain = growth(
        Fraction(5),
        coefficient=Fraction("0.00129"),
        points=Fraction(3),
        step=Fraction(0),
    )
    assert round(gain, 3) == Fraction("0.019")


def test_the_gain_goes_up_to_the_next_step() -> None:
    # 12 x 0.00274 x 4 = 0.13152: above 4/32 = 0.125, so 5/32.
    settings = {"coefficient": Fraction("0.00274"), "points": Fraction(4)}
    assert growth(Fraction(12), step=inches("1/32"), **settings) == inches("5/32")
    # 12 x 0.00274 x 0 = 0: wood made in the wettest season gains nothing.
    dry = settings | {"points": Fraction(0)}
    assert growth(Fraction(12), step=inches("1/32"), **dry) == 0
