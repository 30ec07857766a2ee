"""A yard's tally as a CSV file: one row a board."""

from __future__ import annotations

from pathlib import Path
from typing import ClassVar

from yieldplan.faults import Faults
from yieldplan.model.job import Job
from yieldplan.model.pieces import Piece
from yieldplan.sources.csv_file import read_cells
from yieldplan.sources.source import Source
from yieldplan.sources.table import boards_of


class TallyCsv(Source):
    """A tally saved from a spreadsheet as CSV, or typed; one board a row."""

    words: ClassVar[str] = "tally (CSV)"
    suffixes: ClassVar[tuple[str, ...]] = (".csv", ".tsv")

    def pieces(self, file: Path, job: Job, faults: Faults) -> tuple[Piece, ...]:
        """The boards of the file; only length and width are compulsory."""
        cells = read_cells(file, faults)
        return () if cells is None else boards_of(cells, job, faults)
