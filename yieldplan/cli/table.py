"""Lines up a few columns for the terminal."""

from __future__ import annotations

from collections.abc import Iterator, Sequence


def rows(
    table: Sequence[Sequence[str]], *, align: str, indent: int = 0
) -> Iterator[str]:
    """The table's lines, each column as wide as its longest cell.

    Parameters
    ----------
    align
        A sign a column: `<` for words, `>` for figures.
    """
    widths = [
        max((len(cell) for cell in column), default=0)
        for column in zip(*table, strict=True)
    ]
    for row in table:
        cells = [
            f"{cell:{side}{width}}"
            for cell, side, width in zip(row, align, widths, strict=True)
            if width
        ]
        yield (" " * indent + "  ".join(cells)).rstrip()
