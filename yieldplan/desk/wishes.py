"""The story of what wishes cost: the job is planned again without each of them, and the two plans compared."""

from __future__ import annotations

import dataclasses
from collections.abc import Callable, Mapping, Sequence

from yieldplan import assemblies, blanks, packing, sources, stock, wishes
from yieldplan.desk.plan_job import Outcome
from yieldplan.faults import Faults
from yieldplan.model.job import Job
from yieldplan.model.pieces import Piece
from yieldplan.model.plan import WoodPlan
from yieldplan.model.price_of_a_wish import PriceOfAWish

_SHARE_OF_WORK = 3
"""A wood is planned again with this part of the work its size allows."""
_WORK = 60_000_000
"""Work for all wishes together: about a minute of one core."""
_STOPPED = "stopped before it was priced"


def price_wishes(
    outcome: Outcome,
    stop: packing.Stop,
    hear: Callable[[packing.Progress], None],
    hands: packing.Hands | None = None,
) -> tuple[PriceOfAWish, ...]:
    """What each wish of the planned job costs, from the same boards.

    The work is counted, also where the plan itself was made by the clock.

    Parameters
    ----------
    hands
        Processes to which the wishes are handed out; None for none.
    """
    plan = outcome.plan
    planned = {wood.wood: wood for wood in plan.woods}
    asked = {
        name: packing.ask_wood(
            name, plan.parts, plan.blanks, plan.pieces, plan.fits, plan.job
        )
        for name in sorted(planned)
    }
    kinds = stock.kinds()
    boards = [piece for piece in plan.pieces if kinds[piece.kind].is_board]
    stated = wishes.stated_in(plan.job)
    hear(_progress("all woods", "wishes", plan.woods, 0))
    changed = [
        _STOPPED if stop.asked.is_set() else _changed(wish.without, boards, asked)
        for wish in stated
    ]
    searches = [
        _Search(place, name, question)
        for place, woods in enumerate(changed)
        if not isinstance(woods, str)
        for name, question in woods.items()
        if not planned[name].missing
    ]
    found = _search(searches, outcome, asked, stop, hear, hands)
    return tuple(
        PriceOfAWish(words=wish.words, unknown=woods)
        if isinstance(woods, str)
        else _price(wish.words, woods, planned, found.get(place, {}))
        for place, (wish, woods) in enumerate(zip(stated, changed, strict=True))
    )


@dataclasses.dataclass(frozen=True)
class _Search:
    """One wood to be planned again without one wish, that of this number."""

    wish: int
    wood: str
    question: packing.Asked


def _changed(
    job: Job, boards: Sequence[Piece], asked: Mapping[str, packing.Asked]
) -> dict[str, packing.Asked] | str:
    """The woods of which something else is asked without a wish, or why it cannot be built."""
    faults = Faults()
    built = assemblies.parts_of(job, faults)
    routes = blanks.routes(built.parts, job, faults)
    if len(faults):
        return f"without it the job cannot be built: {next(iter(faults)).wrong}"
    pieces = (*boards, *sources.sheets_and_sticks(job, routes, built.parts))
    fits = stock.fits(routes, pieces)
    without = {
        name: packing.ask_wood(name, built.parts, routes, pieces, fits, job)
        for name in asked
    }
    return {
        name: question
        for name, question in without.items()
        if not asked[name].is_alike(question)
    }


def _search(
    searches: Sequence[_Search],
    outcome: Outcome,
    asked: Mapping[str, packing.Asked],
    stop: packing.Stop,
    hear: Callable[[packing.Progress], None],
    hands: packing.Hands | None,
) -> dict[int, dict[str, packing.Solution]]:
    """The answers by wish and wood, as far as it was not asked to stop."""
    work = _WORK // max(1, len(searches))
    answers: dict[int, dict[str, packing.Solution]] = {}
    calls = []
    done = 0
    for search in searches:
        known = outcome.solutions.get(search.wood)
        earlier = None if known is None else (asked[search.wood], known)
        calls.append((search.question.solve_again, (work, _SHARE_OF_WORK, earlier)))
    for number, answer in enumerate(packing.side_by_side(calls, hands, stop.asked)):
        search = searches[number]
        answers.setdefault(search.wish, {})[search.wood] = answer
        done += answer.work
        stage = f"wishes, {number + 1} of {len(searches)} searches"
        hear(_progress(search.wood, stage, [answer], done))
    return answers


def _progress(
    wood: str,
    stage: str,
    plans: Sequence[WoodPlan | packing.Solution],
    work: int,
) -> packing.Progress:
    return packing.Progress(
        wood=wood,
        stage=stage,
        cost=sum(plan.cost for plan in plans),
        bound=sum(plan.bound.value for plan in plans),
        work=work,
    )


def _price(
    words: str,
    woods: Mapping[str, packing.Asked],
    planned: Mapping[str, WoodPlan],
    answers: Mapping[str, packing.Solution],
) -> PriceOfAWish:
    found = least = most = 0
    for name in woods:
        own, other = planned[name], answers.get(name)
        if own.missing or (other is not None and any(other.short)):
            why = f"parts of {name} are missing, so the two plans do not compare"
            return PriceOfAWish(words=words, woods=(name,), unknown=why)
        if other is None:
            return PriceOfAWish(words=words, unknown=_STOPPED)
        # The plan with the wish does without it too: nothing found costs more.
        cost = min(other.cost, own.cost)
        found += own.cost - cost
        least += max(0, own.bound.value - cost)
        most += max(0, own.cost - other.bound.value)
    return PriceOfAWish(
        words=words, found=found, least=least, most=most, woods=tuple(woods)
    )
