"""Finds the line of every key of a job file, so that a mistake can be pointed at."""

from __future__ import annotations

import re
import tomllib
from bisect import bisect_right
from collections.abc import Iterator, Mapping

KeyPath = tuple[str | int, ...]
"""Keys and positions that lead to a value: `("drawer", 0, "front", "wood")`."""

_BARE = re.compile(r"[A-Za-z0-9_-]+")
_SPACE = re.compile(r"(?:[ \t\r\n]|#[^\n]*)*")
_QUOTED = re.compile(r"\"(?:\\.|[^\"\\\n])*\"|'[^'\n]*'")
# Up to two quote marks may stand before the closing three, as part of the text.
_LONG = re.compile(r"\"{3}(?:\\.|[^\\])*?\"{3,5}|'{3}.*?'{3,5}", re.DOTALL)
_PLAIN = re.compile(r"[^,\]}#\n]*")


def key_lines(text: str) -> Mapping[KeyPath, int]:
    """The line each key and table of a TOML text stands on, counted from 1.

    Parameters
    ----------
    text
        A text that `tomllib` has read without complaint; nothing is checked again.
    """
    return _Finder(text).find()


class _Finder:
    def __init__(self, text: str) -> None:
        self.text = text
        self.at = 0
        self.breaks = [match.start() for match in re.finditer("\n", text)]
        self.lines: dict[KeyPath, int] = {}
        self.last_of: dict[KeyPath, int] = {}

    def find(self) -> dict[KeyPath, int]:
        table: KeyPath = ()
        self._skip(_SPACE)
        while self.at < len(self.text):
            if self._take("[["):
                table = self._header(is_one_of_many=True)
            elif self._take("["):
                table = self._header(is_one_of_many=False)
            else:
                self._pair(table)
            self._skip(_SPACE)
        return self.lines

    def _header(self, *, is_one_of_many: bool) -> KeyPath:
        line = self._line()
        *outer, last = self._key()
        path: KeyPath = ()
        for word in outer:
            path = self._note((*path, word), line)
            if path in self.last_of:
                path = (*path, self.last_of[path])
        path = self._note((*path, last), line)
        if is_one_of_many:
            self.last_of[path] = self.last_of.get(path, -1) + 1
            path = self._note((*path, self.last_of[path]), line)
        self.at = self.text.index("]", self.at) + (2 if is_one_of_many else 1)
        return path

    def _pair(self, table: KeyPath) -> None:
        line = self._line()
        path = table
        for word in self._key():
            path = self._note((*path, word), line)
        self.at = self.text.index("=", self.at) + 1
        self._value(path)

    def _value(self, path: KeyPath) -> None:
        self._skip(_SPACE)
        if self._take("["):
            for number in self._members("]"):
                self._value(self._note((*path, number), self._line()))
        elif self._take("{"):
            for _ in self._members("}"):
                self._pair(path)
        elif self.text.startswith(('"""', "'''"), self.at):
            self._skip(_LONG)
        elif self.text.startswith(('"', "'"), self.at):
            self._skip(_QUOTED)
        else:
            self._skip(_PLAIN)

    def _members(self, close: str) -> Iterator[int]:
        number = 0
        self._skip(_SPACE)
        while not self._take(close):
            yield number
            number += 1
            self._skip(_SPACE)
            self._take(",")
            self._skip(_SPACE)

    def _key(self) -> list[str]:
        words = []
        while True:
            self._skip(_SPACE)
            quoted = _QUOTED.match(self.text, self.at)
            bare = quoted or _BARE.match(self.text, self.at)
            if bare is None:  # pragma: no cover - tomllib has read the text
                raise ValueError(f"no key at line {self._line()}")
            self.at = bare.end()
            word = bare.group()
            words.append(tomllib.loads(f"key = {word}")["key"] if quoted else word)
            self._skip(_SPACE)
            if not self._take("."):
                return words

    def _note(self, path: KeyPath, line: int) -> KeyPath:
        self.lines.setdefault(path, line)
        return path

    def _line(self) -> int:
        return bisect_right(self.breaks, self.at - 1) + 1

    def _take(self, mark: str) -> bool:
        if self.text.startswith(mark, self.at):
            self.at += len(mark)
            return True
        return False

    def _skip(self, what: re.Pattern[str]) -> None:
        match = what.match(self.text, self.at)
        if match is not None:
            self.at = match.end()
