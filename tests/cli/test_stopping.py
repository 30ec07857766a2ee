"""Ctrl-C keeps the best plan; before there is one, or at the second, the program ends."""

from __future__ import annotations

import os
import signal
import subprocess
import sys
import threading
import time
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

import pytest

from yieldplan.cli import stoppable, terminal
from yieldplan.packing import Progress

pytestmark = pytest.mark.skipif(os.name != "posix", reason="signals as POSIX has them")


@contextmanager
def searching(kind: str, job: Path, tally: Path) -> Iterator[subprocess.Popen[str]]:
    """The program in the middle of a search."""
    command = [sys.executable, "-m", "tests.cli.slow_search", kind]
    command += ["plan", str(job), "--stock", str(tally)]
    with subprocess.Popen(
        command, stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True
    ) as running:
        assert running.stdout is not None
        assert running.stdout.readline() == "searching\n"
        try:
            yield running
        finally:
            running.kill()


def test_the_first_ctrl_c_keeps_the_best_plan(job: Path, tally: Path) -> None:
    with searching("some", job, tally) as running:
        running.send_signal(signal.SIGINT)
        out, err = running.communicate(timeout=30)
    assert running.returncode == 0
    assert "It costs 36.00 USD" in out
    assert err == "Stopping with the best plan so far.\n"
    assert (job.parent / "hall_case_plan" / "plan.json").is_file()


def test_before_any_plan_ctrl_c_ends_the_program(job: Path, tally: Path) -> None:
    with searching("none", job, tally) as running:
        running.send_signal(signal.SIGINT)
        out, err = running.communicate(timeout=30)
    assert running.returncode == 130
    assert out == ""
    assert err == "Stopped before there was a plan; nothing is written.\n"
    assert sorted(file.name for file in job.parent.iterdir()) == [job.name, tally.name]


def test_a_second_ctrl_c_does_not_wait_for_the_search(job: Path, tally: Path) -> None:
    with searching("deaf", job, tally) as running:
        running.send_signal(signal.SIGINT)
        time.sleep(0.5)
        assert running.poll() is None
        running.send_signal(signal.SIGINT)
        _, err = running.communicate(timeout=30)
    assert running.returncode == 130
    assert "Traceback" not in err
    assert sorted(file.name for file in job.parent.iterdir()) == [job.name, tally.name]


def slow(hear: stoppable.Hear) -> str:
    for cost in (500_000, 400_000):
        hear(Progress(wood="walnut", stage="dive", cost=cost, bound=360_000, work=cost))
        time.sleep(0.4)
    return "done"


def test_a_watched_search_shows_cost_floor_and_gap_on_one_line(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.setattr(terminal, "is_watched", lambda _: True)
    monkeypatch.setattr(stoppable, "_QUIET", 0.1)
    monkeypatch.setenv("COLUMNS", "120")
    assert stoppable.run(slow, threading.Event()) == "done"
    said = capsys.readouterr()
    # 50.00 against 36.00 is 28 %, 40.00 is 10 %.
    assert "walnut: dive; cost 50.00, floor 36.00, gap 28.0 %" in said.err
    assert "cost 40.00, floor 36.00, gap 10.0 %" in said.err
    assert "\n" not in said.err
    assert said.err.endswith("\r")
    assert said.out == ""


@pytest.mark.parametrize(("watched", "quiet"), [(True, 60.0), (False, 0.0)])
def test_a_short_search_and_an_unwatched_one_show_nothing(
    monkeypatch: pytest.MonkeyPatch,
    capsys: pytest.CaptureFixture[str],
    watched: bool,
    quiet: float,
) -> None:
    monkeypatch.setattr(terminal, "is_watched", lambda _: watched)
    monkeypatch.setattr(stoppable, "_QUIET", quiet)
    stoppable.run(slow, threading.Event())
    assert capsys.readouterr().err == ""


def test_what_the_search_raises_comes_out_in_the_open() -> None:
    def fails(_: stoppable.Hear) -> None:
        raise ValueError("a programmer's mistake")

    with pytest.raises(ValueError, match="programmer"):
        stoppable.run(fails, threading.Event())


def test_ctrl_c_means_again_what_it_meant_before() -> None:
    before = signal.getsignal(signal.SIGINT)
    stoppable.run(lambda _: None, threading.Event())
    assert signal.getsignal(signal.SIGINT) is before
