"""Choices of whole pieces that cost less than is said, and that no row of prices proves too poor."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import NamedTuple

from yieldplan.checking.facts import Piece
from yieldplan.checking.packed import Fields
from yieldplan.checking.wants import TooManyError

MOST_CHOICES = 2_000_000
"""Beginnings of choices that are looked at, at most."""


class Choice(NamedTuple):
    """How many copies of each piece are taken, and how much richer they are than need be.

    Parameters
    ----------
    slack
        By every row. [money/10,000]
    """

    copies: tuple[int, ...]
    slack: tuple[int, ...]


class Choices:
    """Choices of some pieces.

    Parameters
    ----------
    values
        The most each piece is worth, row by row. [money/10,000]
    needs
        What must be made is worth, row by row. [money/10,000]
    """

    def __init__(
        self,
        pieces: Sequence[Piece],
        values: Sequence[Sequence[int]],
        needs: Sequence[int],
        least: int,
    ) -> None:
        self.pieces = pieces
        self.values = values
        self.needs = needs
        self.least = least
        copies = max((piece.copies for piece in pieces), default=1)
        most = max((v for each in values for v in each), default=0)
        self.fields = Fields(
            len(needs), max(most * copies * (len(pieces) + 1), *needs, 1)
        )
        self.needed = self.fields.pack(needs)
        self.worths = [self.fields.pack(each) for each in values]
        self.rest = [0]
        for piece, worth in zip(reversed(pieces), reversed(self.worths), strict=True):
            self.rest.insert(0, self.rest[0] + piece.copies * worth)

    def standing(self) -> Iterator[Choice]:
        """Every choice that costs less, to which nothing can be added, and that may be rich enough.

        Raises
        ------
        TooManyError
            When there are too many to go through.
        """
        looked_at = 0
        waiting: list[tuple[tuple[int, ...], int, int]] = []
        if self.least > 0:
            waiting.append(((), 0, 0))
        while waiting:
            taken, cost, worth = waiting.pop()
            looked_at += 1
            if looked_at > MOST_CHOICES:
                raise TooManyError
            at = len(taken)
            if not self.fields.hold(worth + self.rest[at], self.needed):
                continue
            if at == len(self.pieces):
                if not self._can_take_more(taken, cost):
                    slack = (
                        sum(n * v[row] for n, v in zip(taken, self.values, strict=True))
                        - need
                        for row, need in enumerate(self.needs)
                    )
                    yield Choice(taken, tuple(slack))
                continue
            piece = self.pieces[at]
            waiting.extend(
                ((*taken, n), cost + n * piece.price, worth + n * self.worths[at])
                for n in range(piece.copies + 1)
                if cost + n * piece.price < self.least
            )

    def _can_take_more(self, taken: Sequence[int], cost: int) -> bool:
        return any(
            number < piece.copies and cost + piece.price < self.least
            for number, piece in zip(taken, self.pieces, strict=True)
        )
