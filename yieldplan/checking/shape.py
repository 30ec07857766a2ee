"""The form of a plan file: whether each entry is there, of its kind, and of a size that can be."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Collection, Iterator

LARGEST = 10**15
"""No figure of a plan file is larger. [ticks, money/10,000 or pieces]"""
LONGEST = 10**8
"""No length of a plan file is longer, a thousand feet. [ticks]"""
LONGEST_TEXT = 1_000
MOST_ROWS = 100_000
DEEPEST = 40
"""A piece that is cut in more stages than this is damage, not work."""

_ABSENT = object()
_DIRECTIONS = frozenset(
    "\u200e\u200f\u202a\u202b\u202c\u202d\u202e\u2066\u2067\u2068\u2069"
)
_FEET = re.compile(r"(0|[1-9][0-9]{0,8})\.([0-9]{2})", re.ASCII)


class Record:
    """One object of the file; what is wrong with its entries goes to `objections`.

    A reading that is refused gives a harmless value, so that one look finds everything.
    """

    def __init__(self, value: object, where: str, objections: list[str]) -> None:
        self.where = where
        self.objections = objections
        self._entries: dict[object, object] = {}
        if isinstance(value, dict):
            self._entries = value
        else:
            objections.append(f"{where} should be an object and is {shown(value)}.")

    def has(self, key: str) -> bool:
        """Whether the entry is there at all."""
        return key in self._entries

    def whole(self, key: str, *, least: int = 0, most: int = LARGEST) -> int:
        """A whole number."""
        return self._whole(self._get(key), key, least, most)

    def whole_or_none(self, key: str) -> int | None:
        """A whole number, not below zero, or null."""
        value = self._get(key)
        return None if value is None else self._whole(value, key, 0, LARGEST)

    def wholes(
        self, key: str, count: int, *, least: int = 0, most: int = LONGEST
    ) -> tuple[int, ...]:
        """A list of so many whole numbers."""
        return self._row(self._get(key), key, count, least, most)

    def rows_of(
        self, key: str, count: int, *, least: int = 1, most: int = LONGEST
    ) -> Iterator[tuple[int, ...]]:
        """A list of lists of so many whole numbers each."""
        for row in self._rows(key):
            yield self._row(row, key, count, least, most)

    def box(self, key: str) -> tuple[int, int, int, int]:
        """x0, y0, x1, y1 with x0 < x1 and y0 < y1."""
        x0, y0, x1, y1 = self.wholes(key, 4, least=-LONGEST)
        if x0 >= x1 or y0 >= y1:
            self._refuse(key, "should be a box that is not empty", self._get(key))
        return x0, y0, x1, y1

    def text(self, key: str, *, empty: bool = False) -> str:
        """A text without control characters."""
        return self._text(self._get(key), key, empty)

    def word(self, key: str, words: Collection[str]) -> str:
        """One of a few words."""
        value = self._get(key)
        if isinstance(value, str) and value in words:
            return value
        listed = ", ".join(repr(word) for word in words)
        self._refuse(key, f"should be one of {listed}", value)
        return ""

    def flag(self, key: str) -> bool:
        """True or false."""
        value = self._get(key)
        if not isinstance(value, bool):
            self._refuse(key, "should be true or false", value)
        return value is True

    def feet_or_none(self, key: str) -> int | None:
        """Board feet, a text with two decimals, or null. [board feet/100]"""
        value = self._get(key)
        if value is None:
            return None
        match = _FEET.fullmatch(value) if isinstance(value, str) else None
        if match is None:
            self._refuse(key, "should be board feet with two decimals, or null", value)
            return 0
        return int(match[1]) * 100 + int(match[2])

    def texts(self, key: str) -> tuple[str, ...]:
        """A list of texts."""
        return tuple(self._text(each, key, False) for each in self._rows(key))

    def counts(self, key: str, *, least: int = 0) -> dict[str, int]:
        """An object of names and whole numbers."""
        entries = self.record(key)._entries
        return {
            self._text(name, key, False): self._whole(count, key, least, LARGEST)
            for name, count in entries.items()
        }

    def words_of(self, key: str) -> dict[str, frozenset[str]]:
        """An object of names and lists of texts."""
        record = self.record(key)
        return {
            name: frozenset(record.texts(name))
            for name in record._entries
            if self._text(name, key, False) and isinstance(name, str)
        }

    def pairs(self, key: str, *, empty: bool = False) -> Iterator[tuple[str, int]]:
        """A list of [text, whole number]."""
        for row in self._rows(key):
            if isinstance(row, list) and len(row) == 2:
                yield (
                    self._text(row[0], key, empty),
                    self._whole(row[1], key, -LARGEST, LARGEST),
                )
            else:
                self._refuse(key, "should be pairs of a text and a number", row)

    def record(self, key: str) -> Record:
        """An object within this one."""
        value = self._get(key)
        if value is _ABSENT:
            self._refuse(key, "should be an object", value)
            value = {}
        return Record(value, f"{self.where}, {key}", self.objections)

    def record_or_none(self, key: str) -> Record | None:
        """An object within this one, or null."""
        return None if self._get(key) is None else self.record(key)

    def records(self, key: str, *, most: int = MOST_ROWS) -> Iterator[Record]:
        """A list of objects."""
        for number, row in enumerate(self._rows(key, most), 1):
            yield Record(row, f"{self.where}, {key} {number}", self.objections)

    def _rows(self, key: str, most: int = MOST_ROWS) -> list[object]:
        value = self._get(key)
        if isinstance(value, list) and len(value) <= most:
            return value
        self._refuse(key, f"should be a list of at most {most} entries", value)
        return []

    def _get(self, key: str) -> object:
        return self._entries.get(key, _ABSENT)

    def _row(
        self, value: object, key: str, count: int, least: int, most: int
    ) -> tuple[int, ...]:
        if not isinstance(value, list) or len(value) != count:
            self._refuse(key, f"should be {count} whole numbers", value)
            return (least,) * count
        return tuple(self._whole(each, key, least, most) for each in value)

    def _whole(self, value: object, key: str, least: int, most: int) -> int:
        # JSON's true is an int to Python, and 1.0 is a float: neither is a whole number.
        if isinstance(value, int) and not isinstance(value, bool):
            if least <= value <= most:
                return value
            wanted = (
                f"lie between {least} and {most}" if least < most else f"be {least}"
            )
            self._refuse(key, f"should {wanted}", value)
        else:
            self._refuse(key, "should be a whole number", value)
        return max(least, 1)

    def _text(self, value: object, key: str, empty: bool) -> str:
        if not isinstance(value, str):
            self._refuse(key, "should be a text", value)
        elif len(value) > LONGEST_TEXT or not (value or empty):
            self._refuse(key, f"should have 1 to {LONGEST_TEXT} characters", value)
        elif any(_is_hidden(character) for character in value):
            self._refuse(key, "holds a control or direction character", value)
        else:
            return value
        return ""

    def _refuse(self, key: str, wanted: str, value: object) -> None:
        self.objections.append(f"{self.where}: {key} {wanted}, and is {shown(value)}.")


def shown(value: object) -> str:
    """What stands there, short enough to print and never a second failure."""
    if value is _ABSENT:
        return "not there"
    if value is None or isinstance(value, bool):
        return {None: "null", True: "true", False: "false"}[value]
    if isinstance(value, int):
        # Python refuses to print numbers of more than some thousand digits.
        return str(value) if abs(value) <= LARGEST**2 else "a number beyond all use"
    if isinstance(value, str):
        return ascii(value if len(value) <= 60 else value[:57] + "...")
    if isinstance(value, (list, tuple)):
        numbers = [each for each in value if type(each) is int and abs(each) <= LARGEST]
        if len(numbers) == len(value) <= 6:
            return str(numbers)
        return f"a list of {len(value)}"
    if isinstance(value, dict):
        return "an object"
    return f"a {type(value).__name__}"


def _is_hidden(character: str) -> bool:
    return unicodedata.category(character) in {"Cc", "Cs"} or character in _DIRECTIONS
