"""Reads the marks of a board as they are called off a tape: `knot A 31-1/2 to 32-1/2 x 2 to 3-1/2`."""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import dataclass
from fractions import Fraction
from typing import cast

from yieldplan.faults import did_you_mean
from yieldplan.model.faces import MARK_KINDS, Mark, MarkFace, MarkKind
from yieldplan.units import Inches, TapeError, UnitName, parse_length, tape

Wrong = Callable[[str, str, str], None]
"""Takes the user's own text, what is wrong, what to do."""

_STRETCH = re.compile(r"(?P<start>.+?)\s+to\s+(?P<end>.+)", re.IGNORECASE)
_MARK = re.compile(
    r"(?P<kind>[^\W\d]+)\b\s*(?:(?P<face>A|B|through)\s+)?(?P<places>.*)",
    re.IGNORECASE | re.DOTALL,
)
_EXAMPLE = 'Write it like "knot A 31-1/2 to 32-1/2 x 2 to 3-1/2", or "split 0 to 7"'
_FACES: dict[str, MarkFace] = {"a": "A", "b": "B", "through": "through", "": "through"}
OUTSIDE_CLEAR: MarkKind = "check"
"""What the wood between clear runs counts as: nothing may lie there, not even a test piece."""


@dataclass(frozen=True, kw_only=True)
class Board:
    """What a mark must lie on, and how its figures are written. [in]"""

    length: Inches
    width: Inches
    unit: UnitName
    decimal_comma: bool


def parse_marks(text: str, board: Board, wrong: Wrong) -> tuple[Mark, ...]:
    """Every mark of a cell, entries parted by `|`.

    No face means through the board, no stretch of width means the full width.
    """
    found = []
    for entry in _entries(text):
        mark = _mark(entry, board, wrong)
        if mark is not None:
            found.append(mark)
    return tuple(found)


def marks_between(text: str, board: Board, wrong: Wrong) -> tuple[Mark, ...]:
    """Clear runs (`6 to 58 | 66 to 94`) as marks over everything between them.

    A yard that calls clear runs says nothing of what lies between, so that counts as
    checks through the board, over its full width.
    """
    runs = []
    for entry in _entries(text):
        said = re.sub(r"^clear\s+", "", entry, flags=re.IGNORECASE)
        run = _stretch(said, board, board.length, "long", wrong, entry)
        if run is not None:
            runs.append(run)
    if not runs:
        return ()
    marks = []
    reached = Fraction(0)
    for start, end in [*sorted(runs), (board.length, board.length)]:
        if start > reached:
            marks.append(
                Mark(
                    kind=OUTSIDE_CLEAR,
                    face="through",
                    x0=reached,
                    x1=start,
                    y0=Fraction(0),
                    y1=board.width,
                )
            )
        reached = max(reached, end)
    return tuple(marks)


def _entries(text: str) -> list[str]:
    return [" ".join(entry.split()) for entry in text.split("|") if entry.strip()]


def _mark(entry: str, board: Board, wrong: Wrong) -> Mark | None:
    match = _MARK.fullmatch(entry)
    if match is None:
        wrong(entry, "this is not a mark", _EXAMPLE)
        return None
    kind = match["kind"].lower()
    if kind not in MARK_KINDS:
        wrong(entry, f'"{kind}" is no kind of mark', _kind_meant(kind))
        return None
    along, *across = re.split(r"\s+[x×]\s+", match["places"], flags=re.IGNORECASE)
    if len(across) > 1:
        wrong(entry, "a mark has one stretch of length and one of width", _EXAMPLE)
        return None
    x = _stretch(along, board, board.length, "long", wrong, entry)
    y = (
        _stretch(across[0], board, board.width, "wide", wrong, entry)
        if across
        else (Fraction(0), board.width)
    )
    if x is None or y is None:
        return None
    return Mark(
        kind=cast("MarkKind", kind),
        face=_FACES[(match["face"] or "").lower()],
        x0=x[0],
        x1=x[1],
        y0=y[0],
        y1=y[1],
    )


def _stretch(
    text: str, board: Board, most: Inches, way: str, wrong: Wrong, entry: str
) -> tuple[Inches, Inches] | None:
    match = _STRETCH.fullmatch(text.strip())
    if match is None:
        wrong(entry, f'"{text.strip()}" is not a stretch', f'Say "to": {_EXAMPLE}')
        return None
    ends = []
    for end in (match["start"], match["end"]):
        try:
            ends.append(
                parse_length(end, board.unit, decimal_comma=board.decimal_comma)
            )
        except TapeError as error:
            wrong(entry, f'"{end}": {error.wrong}', error.remedy)
            return None
    start, end_ = ends
    if start >= end_:
        what = "is reversed" if start > end_ else "has no length"
        wrong(entry, f'the stretch "{text.strip()}" {what}', "Write the lesser first")
        return None
    if end_ > most:
        unit = " in" if board.unit == "in" else " mm"
        shown = tape(most, board.unit, join="-") + unit
        wrong(
            entry,
            f"the mark runs off the board, which is {shown} {way}",
            "Correct the mark or the size of the board",
        )
        return None
    return start, end_


def _kind_meant(kind: str) -> str:
    if kind.lower() == "loose":
        return "A loose knot is written as the hole it will be: hole"
    return did_you_mean(kind, MARK_KINDS)
