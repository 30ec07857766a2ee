"""Rows of prices for a proof by trying: they rule choices of boards out, and patterns of those left.

A choice that is worth no more than its slack beyond the need, at some row, can lose no
more than that: of each of its boards only patterns that lose so little can matter. What
is found out about a board lowers what it is worth, and with it the slack of every choice.

Whoever checks the proof knows nothing of that; he has the rows, and what each board is
worth at them. So the proof keeps rows that do as much as can be by themselves.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence

import numpy as np

from yieldplan.packing.filling.yard import Column, Yard
from yieldplan.packing.floors.bound import Certificate
from yieldplan.packing.floors.limited import off_of
from yieldplan.packing.floors.proofs import PriceRow, TriedProof
from yieldplan.packing.floors.set_rows import Row, row_against, row_of
from yieldplan.packing.grid.crossings import Bools, Ints
from yieldplan.packing.stop import Budget
from yieldplan.packing.trying.choices import Choices, sums

_WALKED = 3
"""Rows that a board is walked with: each more takes time and rules less out."""


class TriedRows:
    """The rows found so far, and what they say of some choices.

    Parameters
    ----------
    columns
        Patterns known already.
    """

    def __init__(
        self,
        yard: Yard,
        need: Sequence[int],
        choices: Choices,
        columns: Sequence[Column],
    ) -> None:
        self.yard, self.need = yard, tuple(need)
        self.choices, self.columns = choices, columns
        self.rows: list[Row] = []
        self._worth: list[dict[int, int]] = []
        self._asked: set[int] = set()

    def begin(self, certificate: Certificate, budget: Budget) -> None:
        """Take the rows a certificate has already."""
        first = row_of(
            self.yard, self.need, certificate.prices, off_of(certificate), budget
        )
        if first is not None:
            self.add(first)
        if certificate.sets is not None:
            for row in certificate.sets.rows:
                budget.spend(self.yard.pricing.round_work)
                self.add(_worked_out(row, self.yard, self.need))

    def add(self, row: Row) -> None:
        """Rule out what the row proves too poor."""
        self.rows.append(row)
        self._worth.append(
            {number: int(row.values[number]) for number in set(self.choices.bins)}
        )
        self._rule_out(len(self.rows) - 1)

    def _rule_out(self, number: int) -> None:
        worth = self._worth[number]
        self.choices.rule_out(
            [worth[bin_] for bin_ in self.choices.bins], self.rows[number].need
        )

    def seek(self, most: int, budget: Budget) -> None:
        """Ask for the prices at which the richest open choices are too poor, so many times."""
        for _ in range(most):
            if budget.is_over():
                return
            choice = self._richest(self.choices.open)
            if choice is None or choice in self._asked:
                return
            self._asked.add(choice)
            row = self._against(choice, budget)
            if row is None:
                return
            self.add(row)

    def _against(self, choice: int, budget: Budget) -> Row | None:
        copies = self.choices.copies(choice)
        return row_against(self.yard, self.need, copies, self.columns, budget)

    def _richest(self, among: Bools) -> int | None:
        """Of some choices the one that the rows allow most."""
        places = np.flatnonzero(among)
        if not len(places):
            return None
        best = np.full(len(places), 1 << 60, np.int64)
        for row, worth in zip(self.rows, self._worth, strict=True):
            total = sums([worth[number] for number in self.choices.bins])[places]
            np.minimum(best, total * 1_000_000 // row.need, out=best)
        return int(places[np.argmax(best)])

    # -- what a board's patterns must be worth ---------------------------------

    def least_of(self, number: int) -> tuple[Ints, Ints] | None:
        """Prices, and what a pattern of a bin must be worth at each to matter.

        Returns
        -------
        tuple
            Rows of prices and the least worth at each; None where no open choice has
            the bin.
        """
        bits = sum(
            1 << place for place, bin_ in enumerate(self.choices.bins) if bin_ == number
        )
        places = np.flatnonzero(self.choices.open)
        places = places[(places & bits) != 0]
        if not len(places):
            return None
        found: list[tuple[float, PriceRow, int]] = []
        for row, worth in zip(self.rows, self._worth, strict=True):
            total = sums([worth[bin_] for bin_ in self.choices.bins])[places]
            slack = int(total.max()) - row.need
            found.append((slack / row.need, row.row, worth[number] - slack))
        found.sort(key=lambda each: each[0])
        prices: list[tuple[int, ...]] = []
        least: list[int] = []
        for _, row_, needed in found[:_WALKED]:
            prices.append(row_.prices)
            least.append(needed)
            for limited in row_.limited:
                # What is worth enough at the row is worth enough at lower prices too.
                if number in limited.bins and any(limited.prices):
                    prices.append(limited.prices)
                    least.append(needed - self._beyond(row_.prices, limited.prices))
        return np.array(prices, np.int64), np.array(least, np.int64)

    def _beyond(self, prices: Sequence[int], lower: Sequence[int]) -> int:
        return sum(
            (price - less) * count
            for price, less, count in zip(prices, lower, self.need, strict=True)
        )

    def know(self, number: int, made: Ints) -> None:
        """Hear what a bin can make: it may be worth less than was thought."""
        for place, row in enumerate(self.rows):
            most = int((made @ np.array(row.row.prices, np.int64)).max(initial=0))
            if most < self._worth[place][number]:
                self._worth[place][number] = most
                self._rule_out(place)

    # -- the proof -------------------------------------------------------------

    def proof(self, least: int, most: int, budget: Budget) -> TriedProof:
        """Rows that rule out choices that cost less, by what every pattern is worth.

        Parameters
        ----------
        most
            Rows that may be sought for it.
        """
        choices = self.choices
        standing = choices.largest(least)
        rows: list[Row] = []
        for row in self.rows:
            left = [one for one in standing if self._is_rich(row, one)]
            if len(left) < len(standing) or not rows:
                rows.append(row)
                standing = left
        asked: set[int] = set()
        for _ in range(most):
            left = [choice for choice in standing if choice not in asked]
            if not left or budget.is_over():
                break
            choice = max(left, key=lambda one: (self._ratio(rows, one), -one))
            asked.add(choice)
            row_ = self._against(choice, budget)
            if row_ is not None:
                rows.append(row_)
                standing = [one for one in standing if self._is_rich(row_, one)]
        return TriedProof(least, tuple(row.row for row in rows))

    def _total(self, row: Row, choice: int) -> int:
        copies: Mapping[int, int] = self.choices.copies(choice)
        return sum(int(row.values[number]) * n for number, n in copies.items())

    def _is_rich(self, row: Row, choice: int) -> bool:
        return self._total(row, choice) >= row.need

    def _ratio(self, rows: Iterable[Row], choice: int) -> int:
        return min(self._total(row, choice) * 10**6 // row.need for row in rows)


def _worked_out(row: PriceRow, yard: Yard, need: Sequence[int]) -> Row:
    """The row with what each bin is worth at it."""
    values = yard.pricing.price(row.prices).copy()
    for limited in row.limited:
        lower = yard.pricing.price(limited.prices, limited.bins)
        beyond = sum(
            (price - less) * count
            for price, less, count in zip(row.prices, limited.prices, need, strict=True)
        )
        for number in limited.bins:
            values[number] = min(int(values[number]), int(lower[number]) + beyond)
    needed = sum(p * n for p, n in zip(row.prices, need, strict=True))
    return Row(row, values, needed)
