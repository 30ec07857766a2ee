"""All that the packer is asked of one wood: the problem, and which panels must come from one lot."""

from __future__ import annotations

import threading
from collections.abc import Callable, Mapping, Sequence
from concurrent.futures import Executor
from dataclasses import dataclass
from fractions import Fraction

from yieldplan.model.blanks import Blank
from yieldplan.model.job import Job
from yieldplan.model.parts import Part
from yieldplan.model.pieces import Piece
from yieldplan.packing.buying.lots import solve_by_lot
from yieldplan.packing.filling.yard import Yard
from yieldplan.packing.problem import Problem, is_alike
from yieldplan.packing.searching.allowed import work_for
from yieldplan.packing.searching.carried_over import carried_over
from yieldplan.packing.searching.solution import Solution
from yieldplan.packing.stop import Progress, Stop
from yieldplan.packing.wood.pose import parts_asked, pieces_of, pose


@dataclass(frozen=True)
class Limits:
    """A stop without the ear for Ctrl-C, as it can be sent to another process."""

    gap: Fraction | None
    work: int | None
    seconds: float | None
    share: int

    @classmethod
    def of(cls, stop: Stop) -> Limits:
        """Those of a stop."""
        return cls(stop.gap, stop.work, stop.seconds, stop.share)

    def stop(self, asked: threading.Event) -> Stop:
        """A stop within them."""
        return Stop(
            gap=self.gap,
            work=self.work,
            seconds=self.seconds,
            share=self.share,
            asked=asked,
        )


@dataclass(frozen=True, kw_only=True)
class Asked:
    """What the packer is asked of one wood.

    Parameters
    ----------
    lots
        Lot of each bin.
    of_one_lot
        Demands of which all must come from one lot.
    """

    wood: str
    problem: Problem
    lots: tuple[str, ...]
    of_one_lot: tuple[int, ...]

    def solve(
        self,
        stop: Stop,
        hear: Callable[[Progress], None],
        executor: Executor | None = None,
        earlier: tuple[Asked, Solution] | None = None,
    ) -> Solution:
        """The cheapest plan found, and the floor under it.

        Parameters
        ----------
        executor
            Where parts of the search are done side by side; None does all of it here.
        earlier
            Nearly the same question, and its answer to begin with.
        """
        known = None
        if earlier is not None:
            asked, solution = earlier
            known = carried_over(solution, asked.problem, self.problem)
        return solve_by_lot(
            self.problem,
            self.lots,
            self.of_one_lot,
            stop,
            hear,
            self.wood,
            executor,
            known,
        )

    def solve_within(
        self,
        limits: Limits,
        hear: Callable[[Progress], None],
        asked: threading.Event,
    ) -> Solution:
        """The same, asked of another process."""
        return self.solve(limits.stop(asked), hear)

    def solve_again(
        self, work: int, share: int, earlier: tuple[Asked, Solution] | None
    ) -> Solution:
        """The same with so much work, or with this part of what is allowed if that is less.

        Parameters
        ----------
        work
            [units]
        share
            3 is a third.
        """
        stop = Stop(work=max(1, min(work, self.work_allowed() // share)))
        return self.solve(stop, lambda _: None, earlier=earlier)

    def work_allowed(self) -> int:
        """What a search may take where nothing is said about it. [units of work]"""
        return work_for(Yard(self.problem))

    def is_alike(self, other: Asked) -> bool:
        """Whether the same is asked, whatever the blanks are called."""
        mine = (self.lots, self.of_one_lot) if self.of_one_lot else None
        theirs = (other.lots, other.of_one_lot) if other.of_one_lot else None
        return mine == theirs and is_alike(self.problem, other.problem)


def ask_wood(
    wood: str,
    parts: Sequence[Part],
    blanks: Sequence[Blank],
    pieces: Sequence[Piece],
    fits: Mapping[str, tuple[str, ...]],
    job: Job,
) -> Asked:
    """One wood of a job as the packer is asked for it.

    Parameters
    ----------
    fits
        Blank id to the stock lines it may be cut from.
    """
    return Asked(
        wood=wood,
        problem=pose(wood, parts, blanks, pieces, fits, job),
        lots=tuple(piece.lot for piece in pieces_of(wood, pieces)),
        of_one_lot=tuple(
            number
            for number, part in enumerate(parts_asked(wood, parts))
            if part.glue_up is not None and part.glue_up.colour == "one lot"
        ),
    )
