"""Reads the thickness a board is sold by: 4/4, 13/16 surfaced, 27 mm rough."""

from __future__ import annotations

import re
from dataclasses import dataclass
from fractions import Fraction

from yieldplan.reference.tables import quarters
from yieldplan.units import Inches, TapeError, UnitName, parse_length

_QUARTER = re.compile(r"(\d{1,2})\s*/\s*4", re.ASCII)
_STATE = re.compile(r"\b(rough|surfaced|s2s|s4s)\b", re.IGNORECASE | re.ASCII)


@dataclass(frozen=True, kw_only=True)
class Thickness:
    """A thickness as a yard names it.

    Parameters
    ----------
    name
        One way of writing it: `4/4`, `13/16 surfaced`, `27 mm`.
    is_surfaced
        Whether it says that the board was planed; rough else.
    thick
        What the board can give: nominal when rough, actual when surfaced. [in]
    measured
        What board feet count: nominal, and what a surfaced board was before. [in]
    """

    name: str
    is_surfaced: bool
    thick: Inches
    measured: Inches


def parse_thickness(
    text: str, unit: UnitName, *, decimal_comma: bool = False
) -> Thickness:
    """Read a thickness name.

    Quarters from 4/4 up are rough. Anything else must say `rough` or `surfaced`: a board
    sold as 3/4 may be rough three-quarter stock or 4/4 that was planed.

    Raises
    ------
    TapeError
        When it is no thickness, or could mean two.
    """
    states = _STATE.findall(text)
    size = " ".join(_STATE.sub(" ", text).split()).removesuffix('"').strip()
    if len(states) > 1:
        raise TapeError("it says twice how the board is", "Say rough or surfaced, once")
    is_surfaced = bool(states) and states[0].lower() != "rough"
    quarter = _QUARTER.fullmatch(size)
    if quarter is not None and int(quarter[1]) >= 4:
        return _of_quarter(int(quarter[1]), is_surfaced)
    typed = " ".join(_STATE.sub(" ", text).split())
    thick = parse_length(typed, unit, decimal_comma=decimal_comma)
    if thick <= 0:
        raise TapeError("a board has some thickness", "Write it, such as 4/4")
    written = _written(size, unit, decimal_comma=decimal_comma)
    if not states:
        raise TapeError(
            "this could be rough stock or surfaced",
            f'Write "{written} surfaced" or "{written} rough", or the quarter, such as 4/4',
        )
    if is_surfaced:
        return Thickness(
            name=f"{written} surfaced",
            is_surfaced=True,
            thick=thick,
            measured=_before_surfacing(thick),
        )
    return Thickness(
        name=f"{written} rough", is_surfaced=False, thick=thick, measured=thick
    )


def _of_quarter(count: int, is_surfaced: bool) -> Thickness:
    name = f"{count}/4"
    nominal = Fraction(count, 4)
    if not is_surfaced:
        return Thickness(name=name, is_surfaced=False, thick=nominal, measured=nominal)
    if name not in quarters():
        raise TapeError(
            f"what {name} measures when surfaced is not in the table",
            "Write what the boards measure, such as 1-1/16 surfaced",
        )
    return Thickness(
        name=f"{name} surfaced",
        is_surfaced=True,
        thick=quarters()[name].surfaced,
        measured=nominal,
    )


def _before_surfacing(thick: Inches) -> Inches:
    # Surfaced lumber is measured on the rough thickness it was planed from: the next
    # quarter above what it measures now.
    thicker = [q.rough for q in quarters().values() if q.rough > thick]
    return thicker[0] if thicker else thick


def _written(size: str, unit: UnitName, *, decimal_comma: bool) -> str:
    plain = re.sub(r"(?<=\d) (?=\d+/)", "-", size)
    if decimal_comma:
        plain = plain.replace(",", ".")
    if unit == "mm" and re.fullmatch(r"[\d.]+", plain):
        return f"{plain} mm"
    return plain
