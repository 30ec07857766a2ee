"""Narrow parts beside marks: what a piece is worth by R+, C+ and E+, against trying everything."""

from __future__ import annotations

import json
from dataclasses import replace
from pathlib import Path
from random import Random

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.checking import brute, brute_beside
from tests.checking.test_bound_by_trying_everything import tiny_woods
from tests.checking.test_worth_of_marked_pieces import MODES, marked_wood
from tests.checking.tiny import TinyBlank, TinyPiece, TinyWood, document
from yieldplan.checking import check, marked_sections
from yieldplan.checking.__main__ import main
from yieldplan.checking.bound import greatest_worths, price_out
from yieldplan.checking.reading import read

FAMILIES = ("R+", "C+", "E+")


@settings(max_examples=60, deadline=None)
@given(st.data(), tiny_woods((8, 5)), st.sampled_from(FAMILIES))
def test_priced_floor_is_what_the_page_says(
    data: st.DataObject, wood: TinyWood, family: str
) -> None:
    wood = replace(wood, family=family)
    prices = {part: data.draw(st.integers(0, 900)) for part in wood.need}
    plan, objections = read(document(wood, [], prices=prices))
    assert plan is not None, objections
    assert price_out(plan, plan.woods[0]) == brute_beside.priced(wood, prices)


@pytest.mark.parametrize("family", FAMILIES)
@pytest.mark.parametrize("mode", ["", *MODES])
def test_worth_of_a_marked_piece_is_what_the_page_says(family: str, mode: str) -> None:
    random = Random(f"{family} {mode}")
    for _ in range(8):
        wood, prices = marked_wood(family, random, mode)
        (piece,) = wood.pieces
        is_ = _worth(wood, prices)
        assert is_ == brute_beside.greatest(wood, piece, prices)
        true = brute_beside.greatest_true(wood, piece, prices)
        plain = brute.greatest(replace(wood, family=family[0]), piece, prices)
        assert is_ >= true >= plain


@pytest.mark.parametrize("family", FAMILIES)
def test_long_fine_grid_is_worked_out_in_parts(
    family: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    for seed in range(12):
        wood, prices = marked_wood(family, Random(seed), "zones")
        at_once = _worth(wood, prices)
        with monkeypatch.context() as patch:
            # Two starts at a time, of a dozen at the most.
            patch.setattr(marked_sections, "MOST_PAIRS", 30)
            assert _worth(wood, prices) == at_once


KNOT = ("knot", "through", (4, 0, 6, 2))
"""In a board of 10 by 4, no kerf, cells of one tick."""
FAR_KNOT = ("knot", "through", (20, 0, 21, 1))
"""Beyond the board."""


def board(family: str, *blanks: TinyBlank, mark: object = KNOT) -> TinyWood:
    """The board with its knot."""
    piece = replace(TinyPiece("P", (10, 4), price=0), marks=(mark,))
    return TinyWood(family, 0, (1, 1), blanks, (piece,), {})


@pytest.mark.parametrize(("family", "worth"), [("R", 32), ("R+", 35), ("C+", 35)])
def test_short_narrow_part_lies_beside_a_knot(family: str, worth: int) -> None:
    # Ripped to the whole width: two wide parts of 4 by 4 beside the knot, 2 x 16. The
    # piece with the knot gives 2 by 2 above it too, 3 more. (In narrow strips: 9 x 3.)
    wide = TinyBlank("wide", (4, 4), {"w": 1})
    narrow = TinyBlank("narrow", (2, 2), {"n": 1})
    assert _worth(board(family, wide, narrow), {"w": 16, "n": 3}) == worth


@pytest.mark.parametrize(("family", "worth"), [("C", 32), ("C+", 36), ("E+", 36)])
def test_strip_with_a_knot_lies_beside_a_long_rail(family: str, worth: int) -> None:
    # A rail of 10 by 2 above the knot, 20; below it a strip with a short part of 4 by 2
    # at either side of the knot, 2 x 8. Crosscut first the strip must be clear over the
    # whole section: the rail alone, or two sections of 4 with two short parts each, 32.
    rail = TinyBlank("rail", (10, 2), {"r": 1})
    short = TinyBlank("short", (4, 2), {"s": 1})
    assert _worth(board(family, rail, short), {"r": 20, "s": 8}) == worth


@pytest.mark.parametrize(("family", "worth"), [("C+", 25), ("R+", 30), ("E+", 30)])
def test_either_keeps_the_offcut_that_ripping_leaves(family: str, worth: int) -> None:
    # One part of 10 by 3, 20. Ripped from a board of 10 by 5 that cost 50 it leaves 10 by
    # 2, 2/5 of the board, which counts for half of that: 10. Crosscut first nothing is
    # left beyond it, and the whole board, kept, counts for 25.
    wood = board(family, TinyBlank("k", (10, 3), {"part": 1}), mark=FAR_KNOT)
    piece = replace(wood.pieces[0], size=(10, 5), price=50)
    wood = replace(wood, pieces=(piece,), percent=50, sizes=((10, 2),))
    assert _worth(wood, {"part": 20}) == worth


@pytest.mark.parametrize("family", FAMILIES)
def test_parts_that_show_do_not_fill_one_that_does_not(family: str) -> None:
    # A split ends the board and is kept 3 off what shows: of 10 it leaves 7 by 4 for
    # parts of 5 by 4 that show, one of them, 10. A part of 10 by 4 that forbids the same
    # marks and does not show is worth 15, less than two of those, and reaches the split.
    split = ("split", "through", (10, 0, 11, 4))
    shows = TinyBlank("k0", (5, 4), {"s": 1})
    hidden = TinyBlank("k1", (10, 4), {"h": 1})
    wood = replace(board(family, shows, hidden, mark=split), short_of_checks=3)
    said = document(wood, [], prices={"s": 10, "h": 15})
    said["faces"] = {**said["faces"], "hidden": said["faces"]["clear"]}
    said["blanks"][1]["show_face"] = "hidden"
    plan, objections = read(said)
    assert plan is not None, objections
    assert greatest_worths(plan, plan.woods[0])["P"] == 15


@pytest.mark.parametrize(("family", "words"), [("R+", "rip"), ("C+", "crosscut")])
def test_verdict_says_that_parts_lie_beside_marks(
    family: str, words: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    wood = replace(board(family, TinyBlank("k", (4, 4), {"part": 1})), need={"part": 0})
    path = tmp_path / "plan.json"
    path.write_text(json.dumps(document(wood, [])), encoding="utf-8")
    assert main([str(path)]) == 0
    assert f"; {words} first, narrow parts beside marks, " in capsys.readouterr().out


def test_trying_proves_nothing_of_a_wider_family() -> None:
    wood = replace(board("E+", TinyBlank("k", (4, 4), {"part": 1})), need={"part": 0})
    said = document(wood, [])
    said["woods"][0]["bound"]["tried"] = {"least": 0, "rows": []}
    told = check(said)["objections"]
    assert any("that can be tried for R, C and E only" in each for each in told)


def _worth(wood: TinyWood, prices: dict[str, int]) -> int:
    plan, objections = read(document(wood, [], prices=prices))
    assert plan is not None, objections
    return greatest_worths(plan, plan.woods[0])["P"]


def test_nothing_of_a_wider_family_is_counted_as_asked() -> None:
    wood = replace(board("E+", TinyBlank("k", (4, 4), {"part": 1})), need={"part": 0})
    said = document(wood, [])
    said["woods"][0]["bound"]["as_asked"] = True
    told = check(said)["objections"]
    assert any("that is done for R, C and E only" in each for each in told)
