"""One line of a typed tally: a heading that holds for the boards below it, or a board."""

from __future__ import annotations

import re

from yieldplan.faults import did_you_mean
from yieldplan.model.job import Job
from yieldplan.sources.text_words import (
    Cells,
    WordsError,
    known_grades,
    opens_an_entry,
    read_words,
)
from yieldplan.units import TapeError, parse_length

_MIXED = r"(?:\d+[ -]\d+/\d+|\d+/\d+|\d+\s?[¼½¾⅛⅜⅝⅞]|\d+(?:\.\d+)?|\.\d+)"
_INCH = r"(?:''|\"|”|″|inches\b|inch\b|in\b)"
_SIZE = (
    # After feet a decimal without its inch mark is more likely a price.
    rf"(?:\d+\s*(?:'(?!')|’|′|ft\b\.?|feet\b|foot\b)\s*{_MIXED}\s*{_INCH}"
    r"|\d+\s*(?:'(?!')|’|′|ft\b\.?|feet\b|foot\b)\s*(?:\d+[ -]\d+/\d+|\d+)(?![\d.,/])"
    r"(?!\s*(?:alike|each|bf|board|feet|foot|per|a)\b)"
    rf"|{_MIXED}\s*(?:{_INCH}|'(?!')|’|′|ft\b\.?|feet\b|foot\b|mm\b|cm\b|m\b)?)"
)
_BOARD = re.compile(
    rf"(?P<id>\S+)\s+(?P<width>{_SIZE})(?:\s*[x×]\s*|\s+)(?P<length>{_SIZE})"
    r"(?:[\s,;]+(?P<words>.*)|$)",
    re.IGNORECASE,
)
_BEGINS_A_BOARD = re.compile(r"\S+\s+[.\d]")
_STATE = r"(?:rough|surfaced|s2s|s4s)"
_THICKNESS = re.compile(
    rf"(?:^|(?<=[\s,]))(?:\d{{1,2}}\s*/\s*4(?:\s+{_STATE})?"
    rf"|{_MIXED}\s*(?:\"|in\b|mm\b)?\s+{_STATE})(?=$|[\s,])",
    re.IGNORECASE,
)
_BARE = re.compile(r"\d+(?:[ -]\d+/\d+|/\d+)?(?=\s+[^\W\d])")
_EXAMPLE = "Write number, width, length: W1 9-1/4 10' 2\""


def is_board(line: str, job: Job) -> bool:
    """Whether a line means a board: after its first word comes a size."""
    first = line.split()[0].rstrip(",").lower()
    if first in (wood.lower() for wood in job.woods) or opens_an_entry(line):
        return False
    if _THICKNESS.match(line) is not None:
        return False
    return _BEGINS_A_BOARD.match(line) is not None


def board_cells(line: str, job: Job) -> Cells:
    """The cells of a board's line.

    Raises
    ------
    WordsError
        When it cannot be read.
    """
    match = _BOARD.fullmatch(line)
    if match is None:
        raise WordsError(line[:80], "this is not a board's line", _EXAMPLE)
    words = match["words"] or ""
    cells = read_words(words, job)
    width, length = match["width"].strip(), match["length"].strip()
    if _is_turned(width, length, job):
        wrong = "the board would be wider than it is long"
        raise WordsError(f"{width} {length}", wrong, "The width comes first")
    return {"id": match["id"].rstrip(":.,"), "width": width, "length": length, **cells}


def _is_turned(width: str, length: str, job: Job) -> bool:
    try:
        wide, long = (parse_length(size, job.unit) for size in (width, length))
    except TapeError:
        return False  # told with its column
    # `9-1/4 8`, both bare: the 8 may be feet, and that is told with the length.
    both_bare = width[-1:].isdigit() and length[-1:].isdigit()
    return wide > long and not both_bare


def heading_cells(line: str, job: Job) -> Cells:
    """The cells that a heading gives every board below it.

    Raises
    ------
    WordsError
        When it cannot be read.
    """
    match = _THICKNESS.search(line) or _BARE.match(line)
    cells: Cells = {}
    rest = line
    if match is not None:
        cells["thickness"] = match[0].strip()
        rest = f"{line[: match.start()]} {line[match.end() :]}".strip(" ,;")
    woods = dict.fromkeys(job.woods, "wood")
    found = _wood_first(rest, job)
    if found is not None:
        cells["wood"], rest = found
    read = read_words(rest, job, extra=woods)
    for column in sorted(read):
        if column in cells:
            raise WordsError(read[column], f"this gives a second {column}", "Keep one")
        if column in (
            "marks",
            "clear",
            "crook",
            "bow",
            "twist",
            "quantity",
            "width_far",
        ):
            wrong = "this belongs to one board, and a heading holds for many"
            raise WordsError(line[:80], wrong, _EXAMPLE)
    return {**cells, **read}


def _wood_first(text: str, job: Job) -> tuple[str, str] | None:
    """The wood a text begins with, and the rest; a wood nobody knows is told."""
    for wood in sorted(job.woods, key=len, reverse=True):
        match = re.match(rf"{re.escape(wood)}\b[\s,]*", text, re.IGNORECASE)
        if match is not None:
            return wood, text[match.end() :]
    first = re.split(r"[,;]", text, maxsplit=1)[0].strip()
    near = did_you_mean(first.partition(" ")[0].lower(), job.woods)
    is_word = re.fullmatch(r"[^\W\d]+", first) is not None
    is_grade = first.lower() in {grade.lower() for grade in known_grades(job)}
    if is_word and not is_grade and near.endswith("?"):
        raise WordsError(first, "the job has no such wood", near)
    return None
