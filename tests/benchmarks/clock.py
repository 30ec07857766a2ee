"""Notes what a search says while it runs, and when: the first plan, and how soon it is how near its floor."""

from __future__ import annotations

import time
from dataclasses import dataclass, field

from yieldplan.packing import Progress, Solution

GAPS = (5, 3, 2, 1)
"""Percent of the cost: how long it takes to come so near the floor."""
INCOMPLETE = "too little wood"
"""The stage in which a search looks for its first plan that leaves nothing out."""


@dataclass
class Clock:
    """Wall time of every better plan and floor."""

    began: float = field(default_factory=time.monotonic)
    heard: list[tuple[float, Progress]] = field(default_factory=list)
    is_short: bool = False
    """Whether the plan handed back leaves something out."""

    def hear(self, progress: Progress) -> None:
        """Note when it was said."""
        self.heard.append((self.seconds(), progress))

    def seconds(self) -> float:
        """Since the search began."""
        return time.monotonic() - self.began

    def end(self, seconds: float, solution: Solution) -> None:
        """The last word: what is handed back, whether it was said before or not."""
        self.is_short = any(solution.short)
        last = Progress(
            wood="",
            stage="end",
            cost=solution.cost,
            bound=solution.bound.value,
            work=solution.work,
        )
        self.heard.append((seconds, last))

    def whole(self) -> list[tuple[float, Progress]]:
        """What was said of plans that make all that the last one makes.

        Where the search says that wood is short, what it had before left parts out; the
        last word of that stage makes everything, or else asks for less from then on.
        """
        short = [
            place
            for place, (_, said) in enumerate(self.heard)
            if said.stage == INCOMPLETE
        ]
        if not short:
            return self.heard
        return self.heard[short[-1] + self.is_short :]

    def gap_at(self, percent: int) -> float | None:
        """Seconds until the floor was that near the cost."""
        return next(
            (
                round(seconds, 3)
                for seconds, said in self.whole()
                if said.bound and 100 * (said.cost - said.bound) <= percent * said.cost
            ),
            None,
        )
