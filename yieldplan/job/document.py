"""Opens a job file: its limits, its TOML, and the line each of its keys stands on."""

from __future__ import annotations

import re
import tomllib
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from yieldplan.faults import Faults, Where
from yieldplan.job.lines import KeyPath, key_lines
from yieldplan.job.words import TypedDecimal, as_typed

MOST_BYTES = 1_000_000
_UNQUOTED = re.compile(r"""([\w-]+)\s*=\s*([^"'\[\]{}#=]*[^"'\[\]{}#=\s])""")


@dataclass(frozen=True, kw_only=True)
class Document:
    """A job file as it was typed."""

    file: str
    data: Mapping[str, Any]
    lines: Mapping[KeyPath, int]

    def where(self, *path: str | int) -> Where:
        """The place of a key, or of the nearest table around it."""
        known = self.known_part(path)
        words = [str(word) for word in path if isinstance(word, str)]
        return Where(file=self.file, line=self.lines.get(known), key=".".join(words))

    def known_part(self, path: KeyPath) -> KeyPath:
        """The longest beginning of a path that stands in the file."""
        while path and path not in self.lines:
            path = path[:-1]
        return path

    def as_meant(self, written: str, meant: str) -> Document:
        """The same file with a misspelt top-level key under the word that was meant.

        So one wrong letter is one mistake, not one for all that now seems missing.
        """
        data = dict(self.data)
        ours, theirs = data.pop(written), data.get(meant)
        if isinstance(ours, dict) and isinstance(theirs, dict):
            data[meant] = {**ours, **theirs}
        elif theirs is None:
            data[meant] = ours
        moved = {
            (meant, *path[1:]): line
            for path, line in self.lines.items()
            if path[0] == written
        }
        lines = {**moved, **self.lines}
        return Document(file=self.file, data=data, lines=lines)


def read_document(path: Path, faults: Faults) -> Document | None:
    """The file's data and lines; None, and a fault, when it is not TOML."""
    whole = Where(file=path.name)
    try:
        with path.open("rb") as opened:
            raw = opened.read(MOST_BYTES + 1)
    except OSError as error:
        reason = error.strerror or "it cannot be opened"
        faults.add(whole, "", f"it cannot be read: {reason}", "Check name and rights")
        return None
    if len(raw) > MOST_BYTES:
        faults.add(whole, "", "a job file is at most 1 MB", "Split the job")
        return None
    try:
        text = raw.decode("utf-8-sig").replace("\r\n", "\n")
    except UnicodeDecodeError as error:
        line = raw[: error.start].count(b"\n") + 1
        faults.add(
            Where(file=path.name, line=line),
            "",
            "a letter here is not written in UTF-8",
            'Save the file again with the encoding "UTF-8"',
        )
        return None
    return _parsed(path.name, text, faults)


def _parsed(file: str, text: str, faults: Faults) -> Document | None:
    try:
        data = tomllib.loads(text, parse_float=TypedDecimal)
        lines = key_lines(text)
    except RecursionError:
        faults.add(
            Where(file=file), "", "brackets are nested too deeply", "Close each bracket"
        )
        return None
    except tomllib.TOMLDecodeError as error:
        wrong, line = _in_plain_words(str(error), text)
        said = text.split("\n")[line - 1].strip()[:60] if line else ""
        faults.add(Where(file=file, line=line), said, wrong, _remedy(said))
        return None
    except ValueError:  # a whole number of thousands of digits
        faults.add(Where(file=file), "", "a number in it is far too long", "Shorten it")
        return None
    return Document(file=file, data=data, lines=lines)


def _remedy(line: str) -> str:
    """What to do about a line that cannot be read."""
    unquoted = _UNQUOTED.fullmatch(line)
    if unquoted:
        key, value = unquoted.groups()
        return f'Put it in quotes: {key} = "{value}"'
    return "Compare the line with a file from `yieldplan start`"


def _in_plain_words(message: str, text: str) -> tuple[str, int | None]:
    """What the reader stumbled over, and the line."""
    wrong, _, place = message.partition(" (at ")
    line = None
    if place.startswith("line "):
        line = int(place.split()[1].rstrip(","))
    elif place:
        line = text.count("\n") + 1
    return f"this is not TOML: {wrong[:1].lower()}{wrong[1:].rstrip('.')}", line


def holds(data: object, word: str | int) -> bool:
    """Whether a table has this key, or a list this position."""
    if isinstance(data, list):
        return isinstance(word, int) and word < len(data)
    return isinstance(data, dict) and word in data


def typed_at(data: Any, path: KeyPath) -> str:
    """What stands at a path as the person typed it; nothing for a table or list."""
    for word in path:
        if not holds(data, word):
            return ""
        data = data[word]
    if isinstance(data, bool):
        return str(data).lower()
    if isinstance(data, (dict, list)):
        return ""
    return (as_typed(data) or str(data))[:80]
