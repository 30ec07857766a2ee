"""The rows of prices with which a proof by trying is repeated: few, and close to what the boards can make.

Whoever checks the proof does not know what each board can make; it finds it again, as far
as the rows do not rule it out. So rows are sought that rule out as many choices of boards
as can be, and for those that must be tried, rows that leave little to lose.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from yieldplan.packing.bound import Certificate
from yieldplan.packing.choices import Choices
from yieldplan.packing.limited import off_of
from yieldplan.packing.proofs import TriedProof
from yieldplan.packing.set_rows import Row, row_against, row_of
from yieldplan.packing.stop import Budget
from yieldplan.packing.yard import Column, Yard

MOST_ROWS = 24


class Rows:
    """The rows found so far, and the largest choices they do not rule out."""

    def __init__(
        self,
        yard: Yard,
        need: Sequence[int],
        certificate: Certificate,
        columns: Sequence[Column],
        choices: Choices,
        least: int,
    ) -> None:
        self.yard, self.need, self.columns = yard, need, columns
        self.choices = choices
        self.least = least
        self.rows: list[Row] = []
        self.standing = choices.largest(least)
        self._asked: set[int] = set()
        self._certificate = certificate

    def find(self, budget: Budget) -> None:
        """Rule out what can be."""
        first = row_of(
            self.yard, self.need, self._certificate.prices, off_of(self._certificate), budget
        )
        if first is not None:
            self._add(first)
        while len(self.rows) < MOST_ROWS and not budget.is_over():
            left = [choice for choice in self.standing if choice not in self._asked]
            if not left:
                break
            choice = max(left, key=lambda one: (self._richness(one), -one))
            self._asked.add(choice)
            row = row_against(
                self.yard, self.need, self._copies(choice), self.columns, budget
            )
            if row is not None:
                self._add(row)

    def proof(self) -> TriedProof:
        """What is found, as a proof."""
        return TriedProof(self.least, tuple(row.row for row in self.rows))

    def _copies(self, choice: int) -> Mapping[int, int]:
        bins = [self.choices.bins[place] for place in self.choices.places(choice)]
        return {number: bins.count(number) for number in bins}

    def _worth(self, row: Row, choice: int) -> int:
        bins = (self.choices.bins[place] for place in self.choices.places(choice))
        return sum(int(row.values[number]) for number in bins)

    def _richness(self, choice: int) -> float:
        return min(
            (self._worth(row, choice) / row.need for row in self.rows), default=1.0
        )

    def _add(self, row: Row) -> None:
        self.rows.append(row)
        self.standing = [
            choice
            for choice in self.standing
            if self._worth(row, choice) >= row.need
        ]
