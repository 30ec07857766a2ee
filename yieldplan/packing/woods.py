"""All woods of a job: the largest is searched here, the others by whoever lends a hand."""

from __future__ import annotations

import threading
from collections.abc import Callable, Sequence

from yieldplan.packing.ask_wood import Asked, Limits
from yieldplan.packing.searching.hands import Hands
from yieldplan.packing.searching.solution import Solution
from yieldplan.packing.stop import Progress, Stop

_WORTH_IT = 3_000_000
"""Woods are handed out where they are allowed so much work together, or more."""


def solve_woods(
    questions: Sequence[Asked],
    stop: Stop,
    hear: Callable[[Progress], None],
    hands: Hands | None = None,
) -> tuple[Solution, ...]:
    """The answers, in order; the same however many hands there are.

    Parameters
    ----------
    stop
        For each wood.
    hear
        Told of every better plan and floor, by one search at a time.
    """
    lock = threading.Lock()

    def hear_one(progress: Progress) -> None:
        with lock:
            hear(progress)

    first, others = _shared_out(questions, stop)
    if hands is None or not others:
        return tuple(question.solve(stop, hear_one, hands) for question in questions)
    lent = {
        number: hands.submit_search(
            questions[number].solve_within, Limits.of(stop), hear_one, stop.asked
        )
        for number in others
    }
    solutions = {first: questions[first].solve(stop, hear_one, hands)}
    for number, future in lent.items():
        # One that nobody has begun yet may as well be searched here.
        if future.cancel():
            solutions[number] = questions[number].solve(stop, hear_one, hands)
    return tuple(
        solutions[number] if number in solutions else lent[number].result()
        for number in range(len(questions))
    )


def _shared_out(questions: Sequence[Asked], stop: Stop) -> tuple[int, list[int]]:
    """The wood to be searched here, and those that are worth handing out, the largest first."""
    if len(questions) < 2:
        return 0, []
    work = [question.work_allowed() for question in questions]
    first, *others = sorted(range(len(questions)), key=lambda n: (-work[n], n))
    in_all = sum(work[number] for number in others)
    if stop.seconds is None and in_all < _WORTH_IT:
        return first, []
    return first, others
