"""How far one search has come: the best plan, the floor under it, what is used up; and telling of it."""

from __future__ import annotations

from collections.abc import Callable

from yieldplan.model.plan import Stage
from yieldplan.packing.filling.close_up import closed_up
from yieldplan.packing.filling.first_plan import all_copies
from yieldplan.packing.filling.packed import Packed
from yieldplan.packing.filling.yard import Yard
from yieldplan.packing.floors.bound import Certificate
from yieldplan.packing.improving.board_sets import MOST_BOARDS
from yieldplan.packing.searching.solution import Solution
from yieldplan.packing.stop import NO_LIMIT, Budget, Progress

_WORK_LEAST = 8_000_000
_WORK_PER_BIN = 300_000
_WORK_MOST = 200_000_000
_ROUNDS_LEAST, _ROUNDS_MOST = 10, 60
"""Rounds of prices that the work allowed must hold beside the search."""
_FEW_KINDS = 6
"""Of so few kinds of sheet or stick many are cut alike."""
_ROUNDS_PER_CUT, _ROUNDS_PER_KIND = 80, 5
"""More rounds then: for every board to be cut alike; for every kind of part, where few boards must hold them all."""


def work_for(yard: Yard) -> int:
    """Units of work allowed where the stop does not say."""
    num_bins, to_cut = len(yard.pricing.bins), _boards_to_cut(yard)
    rounds = min(_ROUNDS_MOST, _ROUNDS_LEAST + num_bins)
    if are_alike(yard):
        rounds += _ROUNDS_PER_CUT * to_cut
    if num_bins <= MOST_BOARDS:
        rounds += _ROUNDS_PER_KIND * len(yard.problem.demands)
    # Of one kind of sheet or stick many are cut, and each is a choice.
    search = _WORK_LEAST + _WORK_PER_BIN * max(num_bins, to_cut)
    return min(_WORK_MOST, search + rounds * yard.pricing.round_work)


def are_alike(yard: Yard) -> bool:
    """Whether many boards are cut, of few kinds of sheet or stick."""
    is_small = sum(all_copies(yard).values()) <= MOST_BOARDS
    return not is_small and len(yard.pricing.bins) <= _FEW_KINDS


def _boards_to_cut(yard: Yard) -> int:
    """About how many boards it takes, as if they were all alike."""
    bins = [yard.problem.bins[number] for number in yard.pricing.bins]
    area = sum(piece.length * piece.width * piece.copies for piece in bins)
    copies = sum(piece.copies for piece in bins)
    needed = sum(demand.area * demand.need for demand in yard.problem.demands)
    return min(copies, -(-needed * copies // max(1, area)))


class State:
    """What all stages of a search work on.

    Parameters
    ----------
    hear
        Told of every better plan and floor.
    """

    def __init__(
        self,
        yard: Yard,
        budget: Budget,
        hear: Callable[[Progress], None],
        wood: str,
    ) -> None:
        self.yard = yard
        self.budget = budget
        self.asked = [demand.need for demand in yard.problem.demands]
        self.need = [
            count if yard.can_make(number) else 0
            for number, count in enumerate(self.asked)
        ]
        none = (0,) * len(self.need)
        self.plan = Packed((), 0, tuple(self.need), (NO_LIMIT, 0), 0)
        self.floor = Certificate(none, 0, 0)
        self.stages: list[Stage] = []
        self.stage = "first plan"
        self._hear = hear
        self._wood = wood

    def take(self, plan: Packed) -> bool:
        """Keep a plan if it is better; whether it was."""
        if plan.key >= self.plan.key:
            return False
        self.plan = plan
        self.tell()
        return True

    def raise_floor(self, floor: Certificate) -> None:
        """Keep a floor if it is higher."""
        if floor.value > self.floor.value:
            self.floor = floor
            self.tell()

    def tell(self) -> None:
        """Say how far it is."""
        self._hear(
            Progress(
                wood=self._wood,
                stage=self.stage,
                cost=self.plan.cost,
                bound=self.floor.value,
                work=self.budget.done,
            )
        )

    def begin_stage(self, name: str) -> None:
        """Go on to what is called so."""
        self.stage = name

    def end_stage(self) -> None:
        """Remember what it came to; of a stage gone through by turns, the last time."""
        self.stages = [stage for stage in self.stages if stage.name != self.stage]
        self.stages.append(
            Stage(name=self.stage, cost=self.plan.cost, bound=self.floor.value)
        )
        self.tell()

    @property
    def enough(self) -> int:
        """What a plan may cost and be near enough to the floor."""
        return int(self.floor.value / (1 - self.budget.gap))

    def is_done(self) -> bool:
        """Whether nothing more is to be looked for."""
        if self.plan.is_whole and self.plan.cost <= self.floor.value:
            self.budget.ended = "proved"
        elif self.plan.is_whole and self.budget.is_close(
            self.plan.cost, self.floor.value
        ):
            self.budget.ended = "gap"
        return self.budget.ended is not None or self.budget.is_over()

    def solution(self) -> Solution:
        """What the search answers."""
        yard = self.yard
        patterns = tuple(closed_up(p, yard) for p in self.plan.patterns)
        return Solution(
            need=tuple(self.need),
            short=tuple(
                asked - count
                for asked, count in zip(self.asked, self.need, strict=True)
            ),
            patterns=patterns,
            # Closed up, a board may keep a longer offcut than the search counted.
            cost=sum(map(yard.cost, patterns)),
            worths=tuple(map(yard.worth, patterns)),
            bound=self.floor,
            stages=tuple(self.stages),
            ended=self.budget.ended or "searched",
            work=self.budget.done,
        )
