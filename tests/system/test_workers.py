"""However many hands there are, the plan and what wishes cost are the same, byte for byte."""

from __future__ import annotations

import importlib
import time
from collections.abc import Iterator

import pytest

from tests.system.runs import BRIEF, EXAMPLES, plan_bytes
from yieldplan import packing, plan_file
from yieldplan.desk import wishes
from yieldplan.desk.plan_job import Outcome, plan_job
from yieldplan.desk.wishes import price_wishes


@pytest.fixture(scope="module")
def two() -> Iterator[packing.Hands]:
    """Two processes that wait for work."""
    with packing.Hands(2) as both:
        both.begin()
        while not both.are_ready():
            time.sleep(0.05)
        yield both


def planned(name: str, hands: packing.Hands | None) -> Outcome:
    folder = EXAMPLES / name
    job, tally = folder / "job.toml", folder / "tally.csv"
    return plan_job(job, [tally], stop=BRIEF, hear=lambda _: None, hands=hands)


@pytest.mark.parametrize("name", ["wall_shelves", "cupboard_doors"])
def test_two_hands_make_the_same_plan_file_as_one(
    name: str, two: packing.Hands
) -> None:
    folder = EXAMPLES / name
    alone = plan_bytes(folder / "job.toml", folder / "tally.csv")
    assert plan_file.dump(planned(name, two).document) == alone


def test_whole_woods_handed_out_make_the_same_plan_file(
    two: packing.Hands, monkeypatch: pytest.MonkeyPatch
) -> None:
    alone = planned("bookcase_with_drawers", None)
    woods = importlib.import_module("yieldplan.packing.woods")
    monkeypatch.setattr(woods, "_WORTH_IT", 0)
    heard = set()
    folder = EXAMPLES / "bookcase_with_drawers"
    together = plan_job(
        folder / "job.toml",
        [folder / "tally.csv"],
        stop=BRIEF,
        hear=lambda progress: heard.add(progress.wood),
        hands=two,
    )
    assert plan_file.dump(together.document) == plan_file.dump(alone.document)
    assert heard == {"cherry", "panel", "poplar"}


def test_two_hands_price_wishes_as_one_does(
    two: packing.Hands, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(wishes, "_WORK", 2_000_000)
    outcome = planned("cupboard_doors", None)
    alone = price_wishes(outcome, packing.Stop(), lambda _: None)
    heard: list[str] = []
    together = price_wishes(
        outcome, packing.Stop(), lambda progress: heard.append(progress.stage), two
    )
    assert together == alone
    assert len(alone) == 9
    assert heard[0] == "wishes"
    assert all(
        stage.startswith(f"wishes, {n} of ") for n, stage in enumerate(heard) if n
    )
