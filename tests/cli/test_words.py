"""`list`, `describe` and mistyped commands: every name is found, the nearest is offered."""

from __future__ import annotations

import pytest

from yieldplan.cli.main import main
from yieldplan.desk.describe import names

Said = pytest.CaptureFixture[str]


@pytest.fixture(autouse=True)
def _columns(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("COLUMNS", "100")


def test_list_shows_every_kind_and_every_name(capsys: Said) -> None:
    assert main(["list"]) == 0
    said = capsys.readouterr().out
    for kind, known in names().items():
        assert f"{kind}\n" in said
        assert all(f"  {name}" in said for name, _ in known)


def test_list_one_kind_shows_only_that(capsys: Said) -> None:
    assert main(["list", "joints"]) == 0
    said = capsys.readouterr().out
    assert said.startswith("joints\n")
    assert "dado" in said
    assert "species" not in said


@pytest.mark.parametrize(
    "typed", [["dado"], ["Half-Blind", "dovetail"], ["mortise_and_tenon"], ["drawer"]]
)
def test_describe_takes_a_name_as_one_types_it(typed: list[str], capsys: Said) -> None:
    assert main(["describe", *typed]) == 0
    assert "Keys" in capsys.readouterr().out


@pytest.mark.parametrize(
    "name", [name for group in names().values() for name, _ in group]
)
def test_everything_listed_can_be_described(name: str, capsys: Said) -> None:
    assert main(["describe", name]) == 0
    assert capsys.readouterr().out.strip()


@pytest.mark.parametrize(
    ("typed", "hint"),
    [
        (["describe", "dadoo"], 'Did you mean "dado"?'),
        (["list", "joint"], 'Did you mean "joints"?'),
        (["describe"], "Missing argument"),
        (["plann"], "No such command"),
        (["start", "--unit", "ft"], "'ft'"),
    ],
)
def test_mistyped_words_are_two_with_a_hint(
    typed: list[str], hint: str, capsys: Said
) -> None:
    assert main(typed) == 2
    said = capsys.readouterr()
    assert hint in said.err
    assert "Traceback" not in said.err


def test_no_command_at_all_shows_the_help(capsys: Said) -> None:
    assert main([]) == 2
    assert "Commands:" in capsys.readouterr().err


def test_help_tells_the_commands_in_the_order_a_shop_meets_them(capsys: Said) -> None:
    assert main(["--help"]) == 0
    said = capsys.readouterr().out
    order = ["start", "parts", "plan", "explain", "check", "list", "describe"]
    places = [said.index(f"\n  {name} ") for name in order]
    assert places == sorted(places)
    assert "130 stopped before any plan" in " ".join(said.split())
