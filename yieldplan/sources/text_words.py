"""The words of a typed tally line: grade, price, crook and marks, in any order, parted by commas or not."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping

from yieldplan.faults import did_you_mean
from yieldplan.model.faces import MARK_KINDS
from yieldplan.model.job import Job
from yieldplan.reference.tables import grades

Cells = dict[str, str]
"""Column of a tally to what is written for it."""

_COLUMN_OF: Mapping[str, str] = {
    "crook": "crook", "bow": "bow", "twist": "twist", "lot": "lot", "pack": "pack", "bundle": "pack", "far": "width_far",
    "clear": "clear", "grade": "grade", "note": "note", "tallied": "tally_width",
    **dict.fromkeys(MARK_KINDS, "marks"),
}  # fmt: skip
_AMOUNT = r"(?P<amount>[$€£]?\s?\d[\d.]*\s?[$€£]?)"
_PRICED: Mapping[str, re.Pattern[str]] = {
    "price_per_foot": re.compile(
        rf"{_AMOUNT}\s*(?:(?:a|per)\s+(?:board\s+)?foot|/\s?(?:bf|ft)|a\s+bf)\b", re.I
    ),
    "price_for_piece": re.compile(rf"{_AMOUNT}\s*(?:each|(?:a|per)\s+(?:board|piece))\b", re.I),
    "board_feet": re.compile(r"(?P<amount>\d[\d.]*)\s*(?:bf|board\s+feet|feet)\b", re.I),
    "quantity": re.compile(r"(?P<amount>\d+)\s+alike\b", re.I),
}  # fmt: skip
_KEYWORD = re.compile(rf"\b(?:{'|'.join(_COLUMN_OF)})\b(?!\s*=)", re.IGNORECASE)
_PACK = re.compile(rf"(?P<name>\S.*?)\s+(?:for|at)\s+{_AMOUNT}", re.I)
"""A pack and its price: `pack 7 for 212.40`."""
_SIZES = frozenset({"crook", "bow", "twist", "width_far", "tally_width"})
_SIZE_FIRST = re.compile(
    r"""(?P<size>yes|no|\d\S*(?:\s+\d+/\d+"?)?(?:\s*(?:in|mm|cm)\b)?)\s+(?P<rest>\S.*)""",
    re.IGNORECASE,
)
"""A size, and whatever else stands on the line after it: `far 6-1/2 FAS`."""
_APART = re.compile(r"\s*[,;](?:\s+|$)|\s*\|\s*")


class WordsError(ValueError):
    """Words that cannot be taken; says which, what is wrong and what to write."""

    def __init__(self, said: str, wrong: str, remedy: str) -> None:
        self.said = said
        self.wrong = wrong
        self.remedy = remedy
        super().__init__(f"{said}: {wrong}. {remedy}.")


def read_words(text: str, job: Job, *, extra: Mapping[str, str] = {}) -> Cells:
    """The cells that a line's words give.

    Parameters
    ----------
    extra
        Words that may stand here too, and the column each gives: the woods of a job.

    Raises
    ------
    WordsError
        At the first word that means nothing here.
    """
    cells: Cells = {}
    for said in _entries(text):
        for column, content in _meant(said, job, extra):
            if column in ("marks", "clear") and column in cells:
                cells[column] += f" | {content}"
            elif column in cells:
                wrong = f"this gives a second {column.replace('_', ' ')}"
                raise WordsError(said, wrong, "Keep one")
            else:
                cells[column] = content
    return cells


def opens_an_entry(text: str) -> bool:
    """Whether a text begins with a word that says what follows: lot, crook, knot."""
    return _KEYWORD.match(text) is not None


def _entries(text: str) -> Iterator[str]:
    """The text parted at commas, bars, and before every word that opens an entry."""
    for part in _APART.split(text):
        at = 0
        is_note = False
        for match in _KEYWORD.finditer(part):
            # "far" and "clear" inside a note are the note's.
            if is_note:
                break
            if part[at : match.start()].strip():
                yield part[at : match.start()].strip()
            at = match.start()
            is_note = match[0].lower() == "note"
        if part[at:].strip():
            yield part[at:].strip()


def _meant(said: str, job: Job, extra: Mapping[str, str]) -> Iterator[tuple[str, str]]:
    first, _, rest = said.partition(" ")
    column = _COLUMN_OF.get(first.lower())
    if column in ("marks", "clear"):
        yield column, said
        return
    if column is not None:
        content = re.sub(r"^(width|end)\s+", "", rest.strip(), flags=re.IGNORECASE)
        if not content and column == "twist":
            content = "yes"
        if not content:
            raise WordsError(said, "nothing follows this word", f"Write {said} 3/8")
        pack = _PACK.fullmatch(content) if column == "pack" else None
        if pack is not None:
            yield "price_for_pack", pack["amount"]
            content = pack["name"]
        size = _SIZE_FIRST.match(content) if column in _SIZES else None
        yield column, size["size"] if size else content
        if size:
            yield from _meant(size["rest"], job, extra)
        return
    left = said
    for column, pattern in _PRICED.items():
        match = pattern.search(left)
        if match is not None:
            yield column, match["amount"]
            left = f"{left[: match.start()]} {left[match.end() :]}"
    left = " ".join(left.split())
    if left:
        yield _plain_word(left, job, extra)


def _plain_word(said: str, job: Job, extra: Mapping[str, str]) -> tuple[str, str]:
    known = {word.lower(): column for word, column in extra.items()}
    if said.lower() in known:
        return known[said.lower()], said
    if said.lower() in {grade.lower() for grade in known_grades(job)}:
        return "grade", said
    words = [*extra, *known_grades(job), *_COLUMN_OF, "a foot", "each", "alike"]
    letters = re.search(r"[^\W\d]+", said)
    near = did_you_mean(letters[0] if letters else said, words)
    remedy = (
        near
        if near.endswith("?")
        else "Write a grade, a mark, crook, bow, twist, far (the width at the far end), lot or a price; a yard's own grade as: grade Rustic"
    )
    raise WordsError(said, "nobody can say what this means", remedy)


def known_grades(job: Job) -> list[str]:
    """Every way to write a grade that is known, and the grades of the job's price list."""
    spelled = [s for grade in grades().values() for s in (grade.name, *grade.spellings)]
    return sorted({*spelled, *(price.grade for price in job.prices if price.grade)})
