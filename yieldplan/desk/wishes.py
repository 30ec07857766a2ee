"""The story of what wishes cost: the job is planned again without each of them, and the two plans compared."""

from __future__ import annotations

import dataclasses
from collections.abc import Callable, Iterator, Mapping, Sequence

from yieldplan import assemblies, blanks, packing, sources, stock, wishes
from yieldplan.faults import Faults
from yieldplan.model.blanks import Blank
from yieldplan.model.job import Job
from yieldplan.model.parts import Part
from yieldplan.model.pieces import Piece
from yieldplan.model.plan import Plan, WoodPlan
from yieldplan.model.price_of_a_wish import PriceOfAWish
from yieldplan.wishes import Stated

_SHARE_OF_WORK = 3
"""A wood is planned again with this part of the work its plan was made with."""


@dataclasses.dataclass(frozen=True, kw_only=True)
class _Ready:
    """A job worked out as far as the packer needs it."""

    job: Job
    parts: tuple[Part, ...]
    blanks: tuple[Blank, ...]
    pieces: tuple[Piece, ...]
    fits: Mapping[str, tuple[str, ...]]

    def wood(self, name: str) -> packing.Problem:
        """One wood as the packer is asked for it."""
        return packing.pose(
            name, self.parts, self.blanks, self.pieces, self.fits, self.job
        )


def price_wishes(
    plan: Plan, stop: packing.Stop, hear: Callable[[packing.Progress], None]
) -> tuple[PriceOfAWish, ...]:
    """What each wish of the planned job costs, from the same boards."""
    return tuple(_prices(plan, stop, hear))


def _prices(
    plan: Plan, stop: packing.Stop, hear: Callable[[packing.Progress], None]
) -> Iterator[PriceOfAWish]:
    kinds = stock.kinds()
    boards = [piece for piece in plan.pieces if kinds[piece.kind].is_board]
    with_all = _Ready(
        job=plan.job,
        parts=plan.parts,
        blanks=plan.blanks,
        pieces=plan.pieces,
        fits=plan.fits,
    )
    planned = {wood.wood: wood for wood in plan.woods}
    for wish in wishes.stated_in(plan.job):
        if stop.asked.is_set():
            yield PriceOfAWish(words=wish.words, unknown="stopped before it was priced")
            continue
        without = _ready(wish.without, boards)
        if isinstance(without, str):
            yield PriceOfAWish(words=wish.words, unknown=without)
        else:
            yield _price(wish, with_all, without, planned, stop, hear)


def _ready(job: Job, boards: Sequence[Piece]) -> _Ready | str:
    """The job as the packer needs it, or why it cannot be built like this."""
    faults = Faults()
    built = assemblies.parts_of(job, faults)
    routes = blanks.routes(built.parts, job, faults)
    if len(faults):
        return f"without it the job cannot be built: {next(iter(faults)).wrong}"
    pieces = (*boards, *sources.sheets_and_sticks(job, routes, built.parts))
    return _Ready(
        job=job,
        parts=built.parts,
        blanks=routes,
        pieces=pieces,
        fits=stock.fits(routes, pieces),
    )


def _price(
    wish: Stated,
    with_all: _Ready,
    without: _Ready,
    planned: Mapping[str, WoodPlan],
    stop: packing.Stop,
    hear: Callable[[packing.Progress], None],
) -> PriceOfAWish:
    found = least = most = 0
    changed = []
    for name, own in sorted(planned.items()):
        if packing.is_alike(with_all.wood(name), without.wood(name)):
            continue
        other = packing.plan_wood(
            name,
            without.parts,
            without.blanks,
            without.pieces,
            without.fits,
            without.job,
            dataclasses.replace(stop, share=_SHARE_OF_WORK),
            hear,
        )
        if own.missing or other.missing:
            return PriceOfAWish(
                words=wish.words,
                woods=(name,),
                unknown=f"parts of {name} are missing, so the two plans do not compare",
            )
        changed.append(name)
        # The plan with the wish does without it too: nothing found costs more.
        cost = min(other.cost, own.cost)
        found += own.cost - cost
        least += max(0, own.bound.value - cost)
        most += max(0, own.cost - other.bound.value)
    return PriceOfAWish(
        words=wish.words, found=found, least=least, most=most, woods=tuple(changed)
    )
