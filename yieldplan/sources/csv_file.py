"""Opens a CSV file as spreadsheets write it: separators, ragged rows."""

from __future__ import annotations

import io
from pathlib import Path

from yieldplan.faults import Faults, Where
from yieldplan.sources.columns import COLUMNS
from yieldplan.sources.table import MOST_COLUMNS, Cells, column_meant
from yieldplan.sources.text_file import read_text

SEPARATORS = (",", ";", "\t")


def read_cells(path: Path, faults: Faults) -> Cells | None:
    """The table of a file; None, and a fault, when it cannot be read.

    The separator is the one that brings most names of columns to light.
    """
    text = read_text(
        path,
        faults,
        save='Save the table from the spreadsheet as "CSV UTF-8"',
        fill="Write a header and a row a board",
    )
    if text is None:
        return None
    stated, body, skipped = _stated_separator(text)
    separator = stated or _likely_separator(body)
    return _rows(path.name, body, separator, skipped, faults)


def _stated_separator(text: str) -> tuple[str | None, str, int]:
    """A first line such as `sep=;`, the rest of the file, and how many lines were taken."""
    first, _, rest = text.partition("\n")
    said = first.strip().strip('"').lower()
    if said.startswith("sep=") and said[4:] in (*SEPARATORS, ""):
        return said[4:] or "\t", rest, 1
    return None, text, 0


def _likely_separator(text: str) -> str:
    header = next(line for line in text.splitlines() if line.strip())
    return max(
        SEPARATORS,
        key=lambda each: (
            sum(
                column_meant(cell.strip('" ')) in COLUMNS for cell in header.split(each)
            ),
            header.count(each),
        ),
    )


def _rows(
    file: str, text: str, separator: str, skipped: int, faults: Faults
) -> Cells | None:
    import pandas as pd  # heavy, and only a tally needs it

    widest = max(line.count(separator) for line in text.splitlines()) + 1
    try:
        # Every cell stays as it was typed: no header, no types, no missing values.
        frame = pd.read_csv(
            io.StringIO(text),
            sep=separator,
            header=None,
            names=range(min(widest, MOST_COLUMNS)),
            index_col=False,
            dtype=str,
            na_filter=False,
            skip_blank_lines=False,
        )
    except pd.errors.ParserError as error:
        wrong, remedy = _in_plain_words(str(error))
        faults.add(Where(file=file), "", wrong, remedy)
        return None
    rows = [
        (number, tuple(cell.replace("\u00a0", " ").strip() for cell in cells))
        for number, cells in enumerate(frame.to_numpy().tolist(), start=1 + skipped)
    ]
    return Cells(
        file=file,
        rows=[(number, cells) for number, cells in rows if any(cells)],
        decimal_comma=separator == ";",
    )


def _in_plain_words(message: str) -> tuple[str, str]:
    if "EOF inside string" in message:
        return (
            "a cell opens with a quote mark that is never closed",
            'Inside a quoted cell an inch mark is written twice: "8\' 2"""',
        )
    return "its rows do not make a table", "Save it from the spreadsheet as CSV again"
