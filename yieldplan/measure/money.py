"""Money as it is paid and as it is said: integers of 1/10,000, rounded to the cent once."""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction
from math import floor

from yieldplan.model.pieces import MONEY_PER_UNIT

CENT = MONEY_PER_UNIT // 100
"""[money/10,000]"""


def to_the_cent(amount: int | Fraction) -> int:
    """The amount rounded half up to the cent. [money/10,000]"""
    return floor(Fraction(amount) / CENT + Fraction(1, 2)) * CENT


def down_to_the_cent(amount: int) -> int:
    """The amount rounded down to the cent: what a floor may claim. [money/10,000]"""
    return amount // CENT * CENT


def from_units(amount: Decimal) -> int:
    """An amount of the currency in 1/10,000, exactly.

    Raises
    ------
    ValueError
        When it is finer than that.
    """
    money = Fraction(amount) * MONEY_PER_UNIT
    if money.denominator != 1:
        raise ValueError(f"{amount} is finer than 1/{MONEY_PER_UNIT} of the currency")
    return money.numerator


def say_money(money: int) -> str:
    """The amount to the cent, without its currency: `1310.50`."""
    cents = to_the_cent(money) // CENT
    sign = "-" if cents < 0 else ""
    return f"{sign}{abs(cents) // 100}.{abs(cents) % 100:02d}"


def say_feet(board_feet: Fraction) -> str:
    """Board feet to 1/100, rounded half up: `7.25`."""
    hundredths = floor(board_feet * 100 + Fraction(1, 2))
    return f"{hundredths // 100}.{hundredths % 100:02d}"
