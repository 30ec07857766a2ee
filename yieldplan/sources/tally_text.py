"""A tally typed on a phone at the yard: a heading line, and one short line a board."""

from __future__ import annotations

import dataclasses
import re
from pathlib import Path
from typing import ClassVar

from yieldplan.faults import Faults, Where
from yieldplan.model.job import Job
from yieldplan.model.pieces import Piece
from yieldplan.sources.board_rows import MOST_BOARDS
from yieldplan.sources.boards import boards
from yieldplan.sources.columns import Row
from yieldplan.sources.source import Source
from yieldplan.sources.table import is_list_whole
from yieldplan.sources.text_file import read_text
from yieldplan.sources.text_lines import board_cells, heading_cells, is_board
from yieldplan.sources.text_words import WordsError

_COMMENT = re.compile(r"(?:^|\s)#(?:\s.*|$)|^#.*")


class TallyText(Source):
    """A tally as plain text: headings, and one short line a board.

    A heading says what holds for the boards below it, until the next:
    `4/4 walnut, lot 12, 11.50 a foot`. A board is its number, width and length, then
    what else there is to say: `W1 9-1/4 10' 2" FAS crook 3/8 knot 31 to 37`. A heading
    that names a thickness begins afresh; one that does not changes what it says and
    leaves the rest. Everything after `# ` is for you.
    """

    words: ClassVar[str] = "tally (text)"
    suffixes: ClassVar[tuple[str, ...]] = (".txt",)
    is_echoed: ClassVar[bool] = True

    def pieces(self, file: Path, job: Job, faults: Faults) -> tuple[Piece, ...]:
        """The boards of the file; every mistake is told with its line."""
        text = read_text(file, faults, fill="Write a line a board")
        if text is None:
            return ()
        found = Faults()
        rows = _rows(text, file.name, job, found)
        pieces = boards(rows, job, is_list_whole=is_list_whole(faults)) if rows else ()
        for fault in found.told_once():
            # A text file is read by its lines; a table's words for them are rows.
            wrong = re.sub(r"\(row(s? \d)", r"(line\1", fault.wrong)
            faults.add(_by_line(fault.where), fault.said, wrong, fault.remedy)
        return tuple(
            dataclasses.replace(piece, where=_by_line(piece.where))
            for piece in pieces
            if piece.where is not None
        )


def _by_line(where: Where) -> Where:
    return dataclasses.replace(where, row=None, line=where.row)


def _rows(text: str, file: str, job: Job, faults: Faults) -> list[Row]:
    rows: list[Row] = []
    heading: dict[str, str] = {}
    places: dict[str, int] = {}
    before = len(faults)
    is_heading_known = True
    for number, line in enumerate(text.splitlines(), start=1):
        said = " ".join(_COMMENT.sub("", line).replace("\u00a0", " ").split())
        if not said:
            continue
        try:
            if is_board(said, job):
                cells = board_cells(said, job)
                if not is_heading_known:
                    continue
                given = {
                    k: v for k, v in heading.items() if not _is_other_price(k, cells)
                }
                rows.append(
                    Row(
                        file=file,
                        number=number,
                        cells={**given, **cells},
                        unit=job.unit,
                        decimal_comma=False,
                        faults=faults,
                        places={k: places[k] for k in given if k not in cells},
                    )
                )
                continue
            cells = heading_cells(said, job)
        except WordsError as error:
            where = Where(file=file, row=number)
            faults.add(where, error.said[:80], error.wrong, error.remedy)
            # What stands below a heading nobody can read would be told a second time.
            is_heading_known = is_heading_known and is_board(said, job)
            continue
        is_heading_known = is_heading_known or "thickness" in cells
        if "thickness" in cells:
            heading, places = {}, {}
        heading = {k: v for k, v in heading.items() if not _is_other_price(k, cells)}
        heading |= cells
        places |= dict.fromkeys(cells, number)
    if not rows and len(faults) == before:
        faults.add(Where(file=file), "", "it lists no board", "Write a line a board")
    if len(rows) > MOST_BOARDS:
        where = Where(file=file)
        faults.add(where, "", f"over {MOST_BOARDS:,} boards", "Offer fewer")
        return []
    return rows


def _is_other_price(column: str, cells: dict[str, str]) -> bool:
    """Whether a column gives a price, and these cells give another."""
    prices = ("price_per_foot", "price_for_piece")
    if column == "price_for_pack":
        # It is the price of the pack that was named with it.
        return "pack" in cells
    return column in prices and any(price in cells for price in prices)
