"""The floor by trying: no choice of pieces that costs less can make everything, however it is cut."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from yieldplan.checking.by_sets import Richness
from yieldplan.checking.choices import Choice, Choices
from yieldplan.checking.facts import Piece, Plan, Wood
from yieldplan.checking.fillings import Fillings
from yieldplan.checking.further import Tried
from yieldplan.checking.near_pieces import NearPiece, fillings_for
from yieldplan.checking.saying import say_money
from yieldplan.checking.values import Prices, Values
from yieldplan.checking.wants import Made, TooManyError, Wants

MOST_COPIES = 20
PER_LOOK = 30
"""Putting two together takes so much less time than looking at one."""


def nothing_cheaper_makes_everything(
    plan: Plan, wood: Wood, tried: Tried, rows: Sequence[Richness], values: Values
) -> Iterator[str]:
    """Ensures that no choice of pieces that costs less than `least` makes all that is needed."""
    if "+" in wood.rules.family:
        yield (
            f"{wood.name}: a floor is proved by trying for families R, C and E only; its "
            f"family is {wood.rules.family}."
        )
        return
    pieces = [piece for piece in values.pieces if values.blanks[piece.id]]
    copies = sum(piece.copies for piece in pieces)
    if copies > MOST_COPIES:
        yield (
            f"{wood.name}: blanks may come from {copies} pieces; what up to {MOST_COPIES} "
            "make is tried."
        )
        return
    pieces.sort(key=lambda piece: (-piece.price, piece.id))
    trial = Trial(plan, wood, tried, rows, values, pieces)
    try:
        for choice in trial.choices.standing():
            if trial.makes_everything(choice):
                yield _made_for_less(wood, tried, pieces, choice)
                return
    except TooManyError:
        yield (
            f"{wood.name}: to prove by trying that it costs {say_money(tried.least)} or "
            "more takes more patterns than are tried."
        )


def _made_for_less(
    wood: Wood, tried: Tried, pieces: Sequence[Piece], choice: Choice
) -> str:
    taken = [
        piece.id if number == 1 else f"{number} of {piece.id}"
        for piece, number in zip(pieces, choice.copies, strict=True)
        if number
    ]
    cost = sum(n * p.price for n, p in zip(choice.copies, pieces, strict=True))
    return (
        f"{wood.name}: nothing that costs less than {say_money(tried.least)} is said to "
        f"make all that is needed; {', '.join(taken) or 'no piece'} for "
        f"{say_money(cost)} would do."
    )


class Trial:
    """The pieces, rows and patterns of one trial, kept from choice to choice."""

    def __init__(
        self,
        plan: Plan,
        wood: Wood,
        tried: Tried,
        rows: Sequence[Richness],
        values: Values,
        pieces: Sequence[Piece],
    ) -> None:
        self.values = values
        self.pieces = pieces
        self.rules = wood.rules
        self.row_values = [[row.values[p.id] for row in rows] for p in pieces]
        needs = [row.need for row in rows]
        self.choices = Choices(pieces, self.row_values, needs, tried.least)
        # A lesser value is one at other prices: what is worth enough at the row's is
        # worth enough at those too.
        self.others = [
            (number, limited)
            for number, row in enumerate(tried.rows)
            for limited in row.limited
        ]
        self.beyond = [
            values.beyond(tried.rows[number].prices, limited)
            for number, limited in self.others
        ]
        prices: list[Prices] = [row.prices for row in tried.rows]
        prices += [limited.prices for _, limited in self.others]
        self.wants = Wants(values, prices)
        self._of_rows = (1 << len(rows) * self.wants.worths.apart) - 1
        self._fillings: dict[tuple[str, ...], Fillings] = {}
        for piece in pieces:
            names = tuple(blank.id for blank in values.blanks[piece.id])
            if names not in self._fillings:
                grids = [
                    values.grids[other.id]
                    for other in pieces
                    if values.blanks[other.id] == values.blanks[piece.id]
                ]
                self._fillings[names] = fillings_for(
                    plan, wood, values.blanks[piece.id], grids, self.wants
                )
        self._laid_out: dict[int, NearPiece] = {}
        self._near: dict[tuple[int, int], Sequence[Made]] = {}

    def makes_everything(self, choice: Choice) -> bool:
        """Whether a choice can be cut into all that is needed.

        Raises
        ------
        TooManyError
            When that takes more patterns than are tried.
        """
        taken: list[tuple[Sequence[Made], int]] = []
        for number, copies in enumerate(choice.copies):
            if not copies:
                continue
            made = self._ways(number, choice.slack)
            if not made:
                return False
            worth = self.wants.worths.pack(self.row_values[number])
            taken += [(made, worth)] * copies
        taken.sort(key=lambda each: len(each[0]))
        return self._join(taken)

    def _ways(self, number: int, slack: Sequence[int]) -> Sequence[Made]:
        """What a piece can make that is worth as much as this choice asks of it."""
        piece = self.pieces[number]
        asked = [
            max(value - spare, 0)
            for value, spare in zip(self.row_values[number], slack, strict=True)
        ]
        asked += [
            max(asked[row] - beyond, 0) if piece.id in limited.stock else 0
            for (row, limited), beyond in zip(self.others, self.beyond, strict=True)
        ]
        least = self.wants.worths.pack(asked)
        if (number, least) not in self._near:
            if number not in self._laid_out:
                names = tuple(blank.id for blank in self.values.blanks[piece.id])
                self._laid_out[number] = NearPiece(
                    self.values.grids[piece.id], self.rules, self._fillings[names]
                )
            self._near[number, least] = self._laid_out[number].near(least)
        return self._near[number, least]

    def _join(self, taken: Sequence[tuple[Sequence[Made], int]]) -> bool:
        """Whether one way for each piece can be found, all together making the need."""
        wants = self.wants
        less, hold = wants.counts.less, wants.worths.hold
        left = {wants.need}
        ahead = sum(worth for _, worth in taken)
        if not wants.need:
            return True
        for made, worth in taken:
            ahead -= worth
            wants.look(len(left) * len(made) // PER_LOOK)
            after = set()
            for wanted in left:
                for each in made:
                    rest = less(wanted, each.makes)
                    if rest in after:
                        continue
                    if not rest:
                        return True
                    if hold(ahead, wants.worth(rest) & self._of_rows):
                        after.add(rest)
            wants.look(len(after))
            left = after
        return False
