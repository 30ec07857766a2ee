"""`yieldplan plan`: what it prints, writes and answers, with a stand-in for the search."""

from __future__ import annotations

import dataclasses
import json
import os
from fractions import Fraction
from pathlib import Path
from typing import Any

import pytest

from tests.cli.fakes import outcome_of, plans
from tests.measure.hall_case import make_plan, make_wood_plan
from yieldplan.cli import options
from yieldplan.cli.main import main
from yieldplan.desk.plan_job import Outcome, PlanRefused
from yieldplan.faults import Fault, FaultsFound, Where
from yieldplan.model.plan import Bound, Missing

CORES = options.cores
Said = pytest.CaptureFixture[str]


def incomplete(**_: Any) -> Outcome:
    missing = [
        Missing(
            demand=name,
            count=count,
            reason="needs 14 in clear, the widest board has 7-3/4",
            remedy="Add a wider board, or glue it up from strips",
        )
        for name, count in (("top", 1), ("base", 2))
    ]
    return outcome_of(make_plan(woods=(make_wood_plan(missing=tuple(missing)),)))


def with_a_gap(**_: Any) -> Outcome:
    # 36.00 against a floor of 30.00; a foot is 12.00.
    bound = Bound(value=300_000, priced=300_000, family="C", prices={})
    wood = make_wood_plan(bound=bound, ended="stopped by the clock")
    return outcome_of(make_plan(woods=(wood,)))


def test_a_plan_says_what_it_costs_what_to_buy_how_good_it_is_and_what_next(
    job: Path, tally: Path, monkeypatch: pytest.MonkeyPatch, capsys: Said
) -> None:
    plans(monkeypatch)
    assert (
        main(["plan", str(job), "--stock", str(tally), "--out", str(job.parent / "p")])
        == 0
    )
    said = capsys.readouterr()
    assert "It costs 36.00 USD; no plan of this kind costs less." in said.out
    assert "walnut 4/4 FAS" in said.out
    assert "3.00 board feet" in said.out
    assert "Boards to pull: W7." in said.out
    assert "Plane the fronts to their openings." in said.out
    last = said.out.rstrip().split("\n")[-1]
    plan = job.parent / "p" / "plan.json"
    assert last == f"    yieldplan explain {plan} upper/front"
    assert said.err == ""
    assert sorted(file.name for file in (job.parent / "p").iterdir()) == [
        ".yieldplan-files",
        "plan.json",
        "workbook.xlsx",
    ]


def test_left_out_the_folder_is_called_after_the_job(
    job: Path, tally: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    plans(monkeypatch)
    assert main(["plan", str(job), "--stock", str(tally)]) == 0
    assert (job.parent / "hall_case_plan" / "plan.json").is_file()
    # And again: the folder is ours and unchanged.
    assert main(["plan", str(job), "--stock", str(tally)]) == 0


def test_a_gap_is_said_in_words_beside_the_floor(
    job: Path, tally: Path, monkeypatch: pytest.MonkeyPatch, capsys: Said
) -> None:
    plans(monkeypatch, with_a_gap)
    assert main(["plan", str(job), "--stock", str(tally)]) == 0
    said = " ".join(capsys.readouterr().out.split())
    assert (
        "It costs 36.00 USD; no plan of this kind costs less than 30.00 USD. "
        "The difference is less than one board foot."
    ) in said
    assert "walnut, crosscut first: 36.00, floor 30.00" in said
    assert "stopped by the clock" in said


def test_what_is_missing_is_named_with_its_remedy_and_the_answer_is_one(
    job: Path, tally: Path, monkeypatch: pytest.MonkeyPatch, capsys: Said
) -> None:
    plans(monkeypatch, incomplete)
    assert main(["plan", str(job), "--stock", str(tally)]) == 1
    said = " ".join(capsys.readouterr().out.split())
    assert "What can be made costs 36.00 USD" in said
    assert "no plan of this kind for as much costs less" in said
    assert (
        "INCOMPLETE. Missing: walnut, 1 of top, 2 of base: needs 14 in clear, the "
        "widest board has 7-3/4."
    ) in said
    assert "Add a wider board, or glue it up from strips." in said
    assert (job.parent / "hall_case_plan" / "plan.json").is_file()


def test_a_job_nothing_can_be_made_of_claims_no_proof(
    job: Path, tally: Path, monkeypatch: pytest.MonkeyPatch, capsys: Said
) -> None:
    def nothing(**_: Any) -> Outcome:
        missing = Missing(demand="top", count=1, reason="too wide", remedy="Glue it up")
        bound = Bound(value=0, priced=0, family="C", prices={})
        wood = make_wood_plan(
            need={}, missing=(missing,), cuttings=(), cost=0, bound=bound
        )
        return outcome_of(make_plan(woods=(wood,)))

    plans(monkeypatch, nothing)
    assert main(["plan", str(job), "--stock", str(tally)]) == 1
    said = capsys.readouterr().out
    assert "Nothing is cut: no part can be made of the wood offered." in said
    assert "costs less" not in said


def test_json_is_one_object_and_nothing_else(
    job: Path, tally: Path, monkeypatch: pytest.MonkeyPatch, capsys: Said
) -> None:
    plans(monkeypatch, with_a_gap)
    assert main(["plan", str(job), "--stock", str(tally), "--json"]) == 0
    found = json.loads(capsys.readouterr().out)
    assert found["cost"] == "36.00"
    assert found["floor"] == "30.00"
    # 6 of 36 is 16.67, rounded up.
    assert found["gap"] == "16.7"
    assert found["purchase"] == [
        {
            "wood": "walnut",
            "line": "walnut 4/4",
            "grade": "FAS",
            "pieces": [["W7", 1]],
            "board_feet": "3.00",
            "by": "foot",
            "per": "12.00",
            "total": "36.00",
        }
    ]
    assert found["woods"][0]["pieces"] == [["W7", 1]]
    assert found["missing"] == []
    assert [Path(file).name for file in found["files"]] == [
        "plan.json",
        "workbook.xlsx",
    ]


def test_what_is_asked_for_reaches_the_search(
    job: Path, tally: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    asked = plans(monkeypatch)
    more = job.with_name("rack.csv")
    more.touch()
    options = [
        "--stock",
        str(tally),
        "--stock",
        str(more),
        "--gap",
        "2%",
        "--seconds",
        "9",
    ]
    assert main(["plan", str(job), *options]) == 0
    (question,) = asked
    assert question["stock"] == (tally, more)
    assert question["stop"].gap == Fraction(2, 100)
    assert question["stop"].seconds == 9


def test_left_out_the_search_is_counted_not_timed(
    job: Path, tally: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    asked = plans(monkeypatch)
    main(["plan", str(job), "--stock", str(tally)])
    stop = asked[0]["stop"]
    assert (stop.gap, stop.near, stop.seconds) == (None, Fraction(1, 200), None)


@pytest.mark.parametrize(("said", "number"), [("1", None), ("3", 3)])
def test_workers_lend_a_hand_to_the_search_and_one_works_alone(
    job: Path,
    tally: Path,
    monkeypatch: pytest.MonkeyPatch,
    said: str,
    number: int | None,
) -> None:
    asked = plans(monkeypatch)
    assert main(["plan", str(job), "--stock", str(tally), "--workers", said]) == 0
    hands = asked[0]["hands"]
    assert (hands.number if hands is not None else None) == number


def test_left_out_there_is_a_worker_for_each_core_it_may_use(
    job: Path, tally: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    asked = plans(monkeypatch)
    monkeypatch.setattr(options, "cores", lambda: 5)
    main(["plan", str(job), "--stock", str(tally)])
    assert asked[0]["hands"].number == 5
    assert 1 <= CORES() <= (os.cpu_count() or 1)


def test_every_mistake_is_told_and_nothing_is_written(
    job: Path, tally: Path, monkeypatch: pytest.MonkeyPatch, capsys: Said
) -> None:
    def faulty(**_: Any) -> Outcome:
        raise FaultsFound(
            Fault(
                where=Where(file="hall_case.toml", line=line),
                said="17-3/8x",
                wrong="this is not a length",
                remedy="Write it like 17-3/8",
            )
            for line in (3, 9)
        )

    plans(monkeypatch, faulty)
    assert main(["plan", str(job), "--stock", str(tally)]) == 1
    said = capsys.readouterr()
    assert said.out == ""
    assert said.err.count("this is not a length.") == 2
    assert "hall_case.toml, line 9" in said.err
    assert "2 things to put right." in said.err
    assert sorted(file.name for file in job.parent.iterdir()) == [job.name, tally.name]


def test_a_plan_its_own_proof_refuses_is_not_shown(
    job: Path, tally: Path, monkeypatch: pytest.MonkeyPatch, capsys: Said
) -> None:
    def refused(**_: Any) -> Outcome:
        raise PlanRefused("W7: a cut is lost")

    plans(monkeypatch, refused)
    assert main(["plan", str(job), "--stock", str(tally)]) == 1
    said = capsys.readouterr()
    assert said.out == ""
    assert "W7: a cut is lost" in said.err
    assert sorted(file.name for file in job.parent.iterdir()) == [job.name, tally.name]


def test_a_folder_with_other_files_is_refused_before_the_search_begins(
    job: Path, tally: Path, monkeypatch: pytest.MonkeyPatch, capsys: Said
) -> None:
    asked = plans(monkeypatch)
    folder = job.parent / "mine"
    folder.mkdir()
    (folder / "letter.txt").write_text("dear", encoding="utf-8")
    assert main(["plan", str(job), "--stock", str(tally), "--out", str(folder)]) == 3
    assert "letter.txt" in capsys.readouterr().err
    assert asked == []
    assert (folder / "letter.txt").read_text(encoding="utf-8") == "dear"


def test_a_file_that_is_not_there_cannot_be_read(
    job: Path, tally: Path, monkeypatch: pytest.MonkeyPatch, capsys: Said
) -> None:
    plans(monkeypatch)
    assert main(["plan", "nowhere.toml", "--stock", str(tally)]) == 3
    assert "nowhere.toml: No such file or directory." in capsys.readouterr().err
    assert main(["plan", str(job), "--stock", str(job.parent)]) == 3


@pytest.mark.parametrize(
    "options",
    [
        ["--stok", "x"],
        ["--gap", "a lot"],
        ["--gap", "100"],
        ["--gap", "-1"],
        ["--seconds", "0"],
        ["--workers", "0"],
        ["--papers", "poster"],
        ["--papers", ","],
    ],
)
def test_mistyped_options_are_two(
    job: Path,
    tally: Path,
    monkeypatch: pytest.MonkeyPatch,
    capsys: Said,
    options: list[str],
) -> None:
    plans(monkeypatch)
    assert main(["plan", str(job), "--stock", str(tally), *options]) == 2
    assert capsys.readouterr().err


def test_a_bid_does_no_search(job: Path, capsys: Said) -> None:
    assert main(["plan", str(job), "--gap", "1"]) == 2
    assert "need --stock" in capsys.readouterr().err


def test_set_up_pieces_without_room_are_said_and_the_plan_is_complete(
    job: Path, tally: Path, monkeypatch: pytest.MonkeyPatch, capsys: Said
) -> None:
    def without_room(**_: Any) -> Outcome:
        outcome = outcome_of(make_plan())
        wood = make_wood_plan(set_up_left={"test piece": 2})
        plan = dataclasses.replace(outcome.plan, woods=(wood,))
        return dataclasses.replace(outcome, plan=plan)

    plans(monkeypatch, without_room)
    assert main(["plan", str(job), "--stock", str(tally)]) == 0
    assert "set-up pieces: 2 test piece." in capsys.readouterr().out


def test_wishes_are_not_priced_half_way_through(
    job: Path, tally: Path, capsys: Said
) -> None:
    notes, plan = job.parent / "notes.txt", job.parent / "plan.json"
    notes.write_text("W7 cut\n", encoding="utf-8")
    plan.write_text("{}", encoding="utf-8")
    options = ["--stock", str(plan), "--since", str(notes), "--wishes"]
    assert main(["plan", str(job), *options]) == 2
    assert "do not go together" in capsys.readouterr().err
