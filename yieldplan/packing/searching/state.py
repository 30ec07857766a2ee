"""How far one search has come: the best plan, the floor under it, what is used up; and telling of it."""

from __future__ import annotations

from collections.abc import Callable

from yieldplan.model.plan import Stage
from yieldplan.packing.filling.close_up import closed_up
from yieldplan.packing.filling.packed import Packed
from yieldplan.packing.filling.yard import Yard
from yieldplan.packing.floors.bound import Certificate
from yieldplan.packing.searching.solution import Solution
from yieldplan.packing.stop import NO_LIMIT, Budget, Progress


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
