"""Reads an amount of money as people write it, exactly, to the cent."""

from __future__ import annotations

import re
from decimal import Decimal

MOST = Decimal(1_000_000)
"""No board and no foot of wood costs more than this; a slipped decimal point might."""

_AMOUNT = re.compile(
    r"(?P<sign>[$€£])?\s*(?P<amount>\d+(?:\.\d+)?)\s*(?(sign)|[$€£]?)", re.ASCII
)
_COMMA = re.compile(r"(?<=[0-9]),(?=[0-9]+(?:\s*[$€£])?$)")


class AmountError(ValueError):
    """An amount that cannot be read; says what is wrong and what to write instead."""

    def __init__(self, wrong: str, remedy: str) -> None:
        self.wrong = wrong
        self.remedy = remedy
        super().__init__(f"{wrong}. {remedy}.")


def parse_amount(text: str, *, decimal_comma: bool = False) -> Decimal:
    """Read `14.50`, `$14.50` or, where the file says so, `14,50`.

    Raises
    ------
    AmountError
        When it is no amount, finer than a cent, or beyond reason.
    """
    clean = text.strip()
    if decimal_comma:
        clean = _COMMA.sub(".", clean)
    match = _AMOUNT.fullmatch(clean)
    if match is None:
        wrong = (
            "a comma cannot stand in an amount here"
            if "," in clean
            else "this is not an amount of money"
        )
        raise AmountError(wrong, 'Write it like "14.50", without thousands marks')
    amount = Decimal(match["amount"])
    if amount != round(amount, 2):
        raise AmountError("this is finer than a cent", "Round it to the cent")
    if amount > MOST:
        raise AmountError(f"this is more than {MOST:,}", "Look for the decimal point")
    return amount
