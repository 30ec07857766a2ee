"""`yieldplan check` and `yieldplan explain` on a plan file."""

from __future__ import annotations

import copy
from pathlib import Path

import pytest

from tests.measure.hall_case import LOWER, UPPER, make_part, make_plan, make_wood_plan
from yieldplan import plan_file
from yieldplan.cli.main import main
from yieldplan.model.plan import Bound, Missing

Said = pytest.CaptureFixture[str]
DOCUMENT = plan_file.write(make_plan())


@pytest.fixture
def plan(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.setenv("COLUMNS", "100")
    file = tmp_path / "plan.json"
    file.write_bytes(plan_file.dump(DOCUMENT))
    return file


def test_a_plan_that_holds_says_its_cost_and_what_was_checked(
    plan: Path, capsys: Said
) -> None:
    assert main(["check", str(plan)]) == 0
    said = capsys.readouterr().out
    assert "Hall case" in said
    assert "walnut, crosscut first: 36.00 USD; no plan of this kind costs less." in said
    assert "1 blank sawn" in said


def test_the_folder_of_a_plan_will_do(plan: Path, capsys: Said) -> None:
    assert main(["check", str(plan.parent)]) == 0
    assert main(["explain", str(plan.parent), "upper/front"]) == 0
    assert "from mark 2 to mark 47-1/2" in capsys.readouterr().out


def test_a_floor_is_rounded_down_to_the_cent(plan: Path, capsys: Said) -> None:
    # The prices give 35.9999 here; printing 36.00 would claim more than is proved.
    wood = make_wood_plan(
        bound=Bound(
            value=360_000,
            priced=359_999,
            family="C",
            prices={"upper/front": 180_000, "lower/front": 179_999},
        )
    )
    plan.write_bytes(plan_file.dump(plan_file.write(make_plan(woods=(wood,)))))
    assert main(["check", str(plan)]) == 0
    # Whole boards cost 36.00, so the floor is lifted to that: a proof.
    assert "no plan of this kind costs less." in capsys.readouterr().out


def test_a_damaged_plan_is_refused_and_not_explained(plan: Path, capsys: Said) -> None:
    damaged = copy.deepcopy(DOCUMENT)
    damaged["woods"][0]["cost"] -= 1
    plan.write_bytes(plan_file.dump(damaged))
    assert main(["check", str(plan)]) == 1
    assert "REFUSED" in capsys.readouterr().out
    assert main(["explain", str(plan), "upper/front"]) == 1
    said = capsys.readouterr()
    assert said.out == ""
    assert "REFUSED" in said.err


def test_what_is_not_in_the_plan_is_said(plan: Path, capsys: Said) -> None:
    top = make_part("top", "30", "20")
    missing = Missing(demand="top", count=1, reason="too wide", remedy="Glue it up")
    wood = make_wood_plan(missing=(missing,))
    incomplete = make_plan(parts=(UPPER, LOWER, top), woods=(wood,))
    plan.write_bytes(plan_file.dump(plan_file.write(incomplete)))
    assert main(["check", str(plan)]) == 0
    assert "INCOMPLETE. Not in this plan: 1 of top." in capsys.readouterr().out


@pytest.mark.parametrize("content", [b"", b"{}", b"\x00", b"PK\x03\x04"])
def test_what_is_no_plan_cannot_be_read(
    plan: Path, capsys: Said, content: bytes
) -> None:
    plan.write_bytes(content)
    assert main(["check", str(plan)]) == 3
    assert "plan.json" in capsys.readouterr().err
    assert main(["explain", str(plan), "x"]) == 3


def test_a_plan_that_is_not_there_cannot_be_read(tmp_path: Path, capsys: Said) -> None:
    assert main(["check", str(tmp_path / "no.json")]) == 3
    assert "No such file" in " ".join(capsys.readouterr().err.split())


def test_an_unknown_part_is_mistyped_and_gets_a_hint(plan: Path, capsys: Said) -> None:
    assert main(["explain", str(plan), "uper/front"]) == 2
    assert 'Did you mean "upper/front"?' in capsys.readouterr().err


def test_a_part_whose_name_has_blanks_needs_no_quotes(plan: Path, capsys: Said) -> None:
    assert main(["explain", str(plan), "test", "piece"]) == 2
    assert '"test piece"' in capsys.readouterr().err
