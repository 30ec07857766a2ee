"""Prints for people: wrapped at the width of the terminal, in letters it can show."""

from __future__ import annotations

import codecs
import io
import os
import re
import shutil
import sys
import textwrap
from collections.abc import Iterable
from typing import TextIO

_PLAIN = {
    "−": "-", "–": "-", "—": "-", "×": "x", "…": "...", "’": "'", "‘": "'",
    "“": '"', "”": '"', "″": '"', "′": "'", "·": "-", "≥": ">=", "≤": "<=",
    "¼": "1/4", "½": "1/2", "¾": "3/4", "⅛": "1/8", "⅜": "3/8", "⅝": "5/8", "⅞": "7/8",
}  # fmt: skip
"""What a terminal that knows few letters shows instead; anything else becomes a ?."""
_BETWEEN_COLUMNS = re.compile(r"(?<=\S) {2,}(?=\S)")
_TIED = "\N{NO-BREAK SPACE}%"
_LEAST = 20
"""Narrower than this no line is folded. [columns]"""


def prepare() -> None:
    """Make the streams show what they can, and fail at nothing."""
    codecs.register_error("yieldplan-plain", _in_plain_letters)
    for stream in (sys.stdout, sys.stderr):
        if isinstance(stream, io.TextIOWrapper):
            stream.reconfigure(errors="yieldplan-plain")


def say(
    lines: str | Iterable[str], *, to_errors: bool = False, fold_lines: bool = True
) -> None:
    """Print lines, each folded at the terminal's width under its own indent."""
    stream = sys.stderr if to_errors else sys.stdout
    columns = width()
    for text in [lines] if isinstance(lines, str) else lines:
        for line in text.split("\n"):
            stream.write((fold(line, columns) if fold_lines else line) + "\n")


def width() -> int:
    """Columns of the terminal; 80 where nobody knows. [columns]"""
    return max(_LEAST, shutil.get_terminal_size((80, 24)).columns)


def fold(line: str, columns: int) -> str:
    """The line, folded at blanks; what goes over stands under the line's last column.

    An item without columns goes on two deeper, a paragraph at the margin. Sizes such as
    17-3/8, names and per cent are never broken. A command to copy stays in one line: the
    terminal itself breaks it without putting a line end into it.
    """
    line = line.rstrip()
    if len(line) <= columns or line.lstrip().startswith("yieldplan "):
        return line
    indent = len(line) - len(line.lstrip())
    hang = indent + 2 if indent else 0
    for gap in _BETWEEN_COLUMNS.finditer(line):
        if gap.end() <= columns // 2:
            hang = gap.end()
    folded = textwrap.fill(
        line[indent:].replace(" %", _TIED),
        width=columns,
        initial_indent=" " * indent,
        subsequent_indent=" " * hang,
        break_long_words=False,
        break_on_hyphens=False,
    )
    return folded.replace(_TIED, " %")


def close_quietly() -> None:
    """Let nothing more be written where nobody reads."""
    silent = os.open(os.devnull, os.O_WRONLY)
    os.dup2(silent, sys.stdout.fileno())
    os.close(silent)


def is_watched(stream: TextIO) -> bool:
    """Whether a person sits before the stream."""
    return stream.isatty()


def _in_plain_letters(error: UnicodeError) -> tuple[str, int]:
    if not isinstance(error, UnicodeEncodeError):
        raise error
    lost = error.object[error.start : error.end]
    return "".join(_PLAIN.get(letter, "?") for letter in lost), error.end
