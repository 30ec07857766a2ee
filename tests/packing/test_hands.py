"""Other processes that lend a hand: same answers, stopped when asked, gone when no longer needed."""

from __future__ import annotations

import os
import threading
import time
from collections.abc import Callable, Iterator

import pytest

from yieldplan.packing.searching.crew import hands
from yieldplan.packing.searching.hands import Hands, side_by_side


@pytest.fixture
def two() -> Iterator[Hands]:
    """Two processes, begun."""
    with Hands(2) as both:
        both.begin()
        yield both


def squared(number: int) -> int:
    return number * number


def who(seconds: float) -> int:
    time.sleep(seconds)
    return os.getpid()


def die_elsewhere(here: int) -> str:
    if os.getpid() != here:
        os._exit(7)
    return "done here"


_here = threading.Lock()


def die_elsewhere_and_be_alone_here(here: int) -> bool:
    if os.getpid() != here:
        os._exit(7)
    is_alone = _here.acquire(blocking=False)
    time.sleep(0.1)
    if is_alone:
        _here.release()
    return is_alone


def fails(_: int) -> int:
    raise ValueError("a programmer's mistake")


def counts(
    upto: int, hear: Callable[[int], None], asked: threading.Event
) -> tuple[int, int]:
    """Says each number; ends when asked, or a good while later."""
    for number in range(upto):
        hear(number)
        if asked.wait(0.05):
            return number, os.getpid()
    return upto, os.getpid()


def test_one_hand_needs_no_other_process() -> None:
    assert hands(1) is None


def test_answers_come_in_order_whether_or_not_there_are_hands(two: Hands) -> None:
    calls = [(squared, (number,)) for number in range(9)]
    expected = [number * number for number in range(9)]
    never = threading.Event()
    assert list(side_by_side(calls, None, never)) == expected
    while not two.are_ready():
        time.sleep(0.05)
    assert list(side_by_side(calls, two, never)) == expected


def test_work_is_done_in_two_other_processes(two: Hands) -> None:
    tasks = [two.submit(who, 0.3) for _ in range(4)]
    ids = {task.result(timeout=60) for task in tasks}
    assert len(ids) == 2
    assert os.getpid() not in ids


def test_no_process_begins_for_a_short_piece_of_work() -> None:
    with Hands(2) as both:
        assert not both.are_ready()
        calls = [(who, (0.0,))] * 5
        found = list(side_by_side(calls, both, threading.Event()))
    assert set(found) == {os.getpid()}


def test_what_a_lost_process_did_is_done_here(two: Hands) -> None:
    assert two.submit(die_elsewhere, os.getpid()).result(timeout=60) == "done here"


@pytest.mark.filterwarnings("ignore")
def test_a_mistake_comes_out_in_the_open(two: Hands) -> None:
    with pytest.raises(ValueError, match="programmer"):
        two.submit(fails, 1).result(timeout=60)


def test_a_search_elsewhere_is_heard_and_ends_when_asked(two: Hands) -> None:
    heard: list[int] = []
    asked = threading.Event()

    def hear(number: int) -> None:
        heard.append(number)
        if number == 3:
            asked.set()

    number, where = two.submit_search(counts, 2000, hear, asked).result(timeout=60)
    assert heard == list(range(number + 1))
    assert 3 <= number < 1999
    assert where != os.getpid()


def test_the_next_search_is_not_asked_to_stop_for_the_last_one(two: Hands) -> None:
    asked = threading.Event()
    asked.set()
    for _ in range(4):
        two.submit_search(counts, 2000, lambda _: None, asked).result(timeout=60)
    task = two.submit_search(counts, 4, lambda _: None, threading.Event())
    assert task.result(timeout=60)[0] == 4


def test_the_end_of_the_block_waits_for_nobody() -> None:
    began = time.monotonic()
    with Hands(2) as both:
        task = both.submit(who, 60.0)
        deadline = time.monotonic() + 30
        while not both.are_ready() and time.monotonic() < deadline:
            time.sleep(0.05)
    assert time.monotonic() - began < 50
    assert task.done()


def test_what_processes_failed_to_do_is_done_here_one_at_a_time(two: Hands) -> None:
    """It shares a yard, which prices one board at a time."""
    asked = [two.submit(die_elsewhere_and_be_alone_here, os.getpid()) for _ in range(4)]
    assert all(each.result() for each in asked)
