"""Dives in waves: some side by side, and beside them the best plan of all patterns known when the wave began."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from yieldplan.packing.filling.first_plan import all_copies
from yieldplan.packing.filling.yard import Column
from yieldplan.packing.improving.best_of_known import BestOfKnown
from yieldplan.packing.improving.by_pieces import PiecesTask
from yieldplan.packing.improving.dives import AT_ONCE, Common, DiveTask, wave
from yieldplan.packing.improving.near_prices import NearPrices
from yieldplan.packing.searching.set_floor_task import SetFloorTask
from yieldplan.packing.stop import NO_LIMIT

if TYPE_CHECKING:
    from yieldplan.packing.searching.search import Search

_LEAST, _MOST = 100_000, 1_500_000
"""Work of one task."""
_DOUBLED_BESIDE = 2
"""How often the least work is doubled beside the floor of sets."""
_MOST_ALONE = 500_000
"""Work of plans piece by piece before anything else: where they are of use, that shows soon."""
_PATTERNS = (600, 300, 1200, 2500)
"""How many patterns the programs are over, by turns."""
_SPREADS = (0.05, 0.15, 0.3)
"""How far drawn prices stray from the floor's."""
_RARER = 4
"""Drawn prices get one in so many parts of the work of a dive."""
_PATIENCE = 100
"""Plans in vain by which it shows that building piece by piece finds no better one soon."""


class Waves:
    """The dives of one search."""

    def __init__(self, search: Search) -> None:
        self._search = search
        self.number = 0
        """Of the next wave."""

    @property
    def are_long(self) -> bool:
        """Whether the last wave was as long as any."""
        return _LEAST << max(0, self.number - 1) >= _MOST

    def next(self, beside: SetFloorTask | None = None) -> bool:
        """One wave more; whether it found a better plan.

        Parameters
        ----------
        beside
            A task to be done beside it.
        """
        number, self.number = self.number, self.number + 1
        # The first waves are short, to be through early where it is easy; beside what
        # takes long there is time for more.
        doubled = number if beside is None else max(number, _DOUBLED_BESIDE)
        most = min(_MOST, _LEAST << doubled)
        return self.one(number, self._search.state.plan.cost, most, beside)

    def without(self, task: SetFloorTask) -> None:
        """The task alone, and no dive."""
        self._take([task], self._search.state.plan.cost)

    def one(
        self, number: int, limit: int, most: int, beside: SetFloorTask | None = None
    ) -> bool:
        """One wave; whether it found a better plan.

        Parameters
        ----------
        limit
            What a plan must cost less than. [money/10,000]
        most
            Work of a task, at most.
        """
        work = self._search.budget.work_for(AT_ONCE, _LEAST, most)
        # It takes longest, so it is begun before the dives.
        long = [] if beside is None else [beside]
        turn = number % len(_PATTERNS)
        return self._take(
            [
                *self._programs(_PATTERNS[turn : turn + 1]),
                *long,
                *self._drawn_prices(number, work),
                *self._pieces(number, work),
                *wave(number, work),
            ],
            limit,
        )

    def _drawn_prices(self, number: int, work: int) -> list[NearPrices]:
        """Patterns of prices near the floor's; of sheets alike dives know them all."""
        if self._search.are_alike:
            return []
        prices = tuple(self._search.generation.prices)
        spread = _SPREADS[number % len(_SPREADS)]
        return [NearPrices((19, number), work // _RARER, prices, spread)]

    def near_prices(self) -> None:
        """Patterns of prices near the floor's, then the best plans of them and of all met on the way to it."""
        search = self._search
        work = search.budget.work_for(AT_ONCE, _LEAST, _MOST_ALONE)
        prices = tuple(search.generation.prices)
        drawn = [
            NearPrices((18, place), work, prices, spread)
            for place, spread in enumerate(_SPREADS)
        ]
        self._take(drawn, self._limit)
        self._take(self._programs(_PATTERNS[:2]), self._limit)

    def _programs(self, patterns: Sequence[int]) -> list[BestOfKnown]:
        """The best plans of so many patterns met; they have as much work as they may, for at first they find most."""
        work = self._search.budget.work_for(AT_ONCE, _LEAST, _MOST)
        known = len(self._search.generation.columns)
        return [
            BestOfKnown(work, most)
            for most in dict.fromkeys(min(most, known) for most in patterns)
        ]

    @property
    def _limit(self) -> int:
        """What a plan must cost less than; nothing while there is none that is whole."""
        plan = self._search.state.plan
        return plan.cost if plan.is_whole else NO_LIMIT

    def _pieces(self, number: int, work: int) -> list[PiecesTask]:
        """Plans built piece by piece, by turns at prices of area and at the floor's; none of sheets alike."""
        if self._search.are_alike or self._search.yard.in_sets:
            return []
        prices = self._search.generation.prices if number % 2 else ()
        return [PiecesTask((17, number), work, tuple(prices))]

    def by_pieces(self) -> None:
        """Plans built piece by piece alone, at either prices, while they become cheaper."""
        search = self._search
        work = search.budget.work_for(AT_ONCE, _LEAST, _MOST_ALONE)
        if not search.yard.in_sets:
            prices = tuple(search.generation.prices)
            self._take(
                [
                    PiecesTask((16, 0), work, patience=_PATIENCE),
                    PiecesTask((16, 1), work, prices, patience=_PATIENCE),
                ],
                self._limit,
            )

    def one_dive(self, limit: int) -> None:
        """The first dive alone, for a plan soon."""
        self._take(wave(0, _LEAST)[:1], limit)

    def best_of(self, columns: Sequence[Column]) -> None:
        """The best plan of these patterns, where it costs no more than enough."""
        limit = self._search.state.enough + 1
        self._take([BestOfKnown(_MOST, len(columns))], limit, columns)

    def _take(
        self,
        tasks: Sequence[
            DiveTask | PiecesTask | NearPrices | BestOfKnown | SetFloorTask
        ],
        limit: int,
        columns: Sequence[Column] | None = None,
    ) -> bool:
        search = self._search
        state = search.state
        common = Common(
            tuple(state.need),
            all_copies(search.yard),
            tuple(search.short_price),
            limit,
            state.enough,
            tuple(search.pool() if columns is None else columns),
        )
        return search.taken(
            search.crew.one_by_one(
                common, tasks, search.budget.seconds_left, search.is_enough
            )
        )
