"""Fractions, hatching, dashes, the bar: the small things a picture is made of."""

from __future__ import annotations

from decimal import Decimal

import pytest

from yieldplan.drawing.bar_scene import bar_scene
from yieldplan.drawing.dashes import dashes
from yieldplan.drawing.fonts import width, wrap
from yieldplan.drawing.fractions import runs
from yieldplan.drawing.hatching import diagonal, mark
from yieldplan.drawing.panels import share_out
from yieldplan.drawing.scene import Box, Line, Rect, Ring
from yieldplan.model.faces import MARK_KINDS


def test_a_fraction_is_built_from_11_points_up_and_flat_below() -> None:
    built, _ = runs("5 1/4", 12.0, figures=True)
    assert [run.text for run in built] == ["5", "1", "⁄", "4"]
    assert built[1].up > 0 == built[3].up
    assert built[1].size == built[3].size == pytest.approx(12 * 0.68)
    flat, _ = runs("5 1/4", 10.0, figures=True)
    assert [run.text for run in flat] == ["5 1/4"]


def test_a_name_with_a_slash_is_set_as_it_was_typed() -> None:
    said, _ = runs("side 1/2", 12.0)
    assert [run.text for run in said] == ["side 1/2"]


def test_lines_are_no_wider_than_their_room_and_lose_no_letter() -> None:
    text = "left upright of the tall cabinet beside the window"
    lines = wrap(text, 90.0, 10.0)
    assert " ".join(lines) == text
    assert all(width(line, 10.0) <= 90.0 for line in lines)
    long_word = "x" * 60
    assert "".join(wrap(long_word, 90.0, 10.0)) == long_word


@pytest.mark.parametrize("falling", [False, True])
def test_diagonal_lines_end_at_the_frame_at_45_degrees(falling: bool) -> None:
    frame = Rect(13.0, 7.0, 80.0, 31.0)
    lines = list(diagonal(frame, 7.0, 0.5, falling=falling))
    assert lines
    for line in lines:
        assert isinstance(line, Line)
        assert abs(line.x1 - line.x0) == pytest.approx(abs(line.y1 - line.y0))
        for x, y in ((line.x0, line.y0), (line.x1, line.y1)):
            assert frame.x0 - 1e-6 <= x <= frame.x1 + 1e-6
            assert frame.y0 - 1e-6 <= y <= frame.y1 + 1e-6


@pytest.mark.parametrize("kind", MARK_KINDS)
def test_every_kind_of_mark_is_drawn_within_its_frame_and_like_no_other(
    kind: str,
) -> None:
    frame = Rect(10.0, 10.0, 60.0, 30.0)
    drawings = {}
    for other in MARK_KINDS:
        items = [i for i in mark(other, "A", frame) if not isinstance(i, Box)]
        assert items
        drawings[other] = [str(item) for item in items]
    mine = drawings[kind]
    # A split, a check and a shake are one thing to the saw: cracks.
    cracks = {"split", "check", "shake"}
    alike = {k for k, drawn in drawings.items() if drawn == mine}
    assert alike == (cracks if kind in cracks else {kind})
    for item in mark(kind, "A", frame):  # type: ignore[arg-type]
        if isinstance(item, Ring):
            assert frame.x0 <= item.x <= frame.x1
            assert frame.y0 <= item.y <= frame.y1


@pytest.mark.parametrize("kind", [k for k in MARK_KINDS if k not in ("worm", "pith")])
def test_a_mark_on_the_underside_has_a_broken_outline(kind: str) -> None:
    frame = Rect(10.0, 10.0, 60.0, 30.0)
    above = [i for i in mark(kind, "A", frame) if isinstance(i, Box) and i.weight]  # type: ignore[arg-type]
    below = [i for i in mark(kind, "B", frame) if isinstance(i, Box) and i.weight]  # type: ignore[arg-type]
    assert [box.dash for box in above] == [()]
    assert [box.dash for box in below] == [(3.0, 2.0)]


def test_dashes_start_with_a_stroke_and_end_where_the_line_ends() -> None:
    # 3 on, 2 off along 9: strokes 0 to 3, 5 to 8; the next would begin at 10.
    assert list(dashes(9.0, (3.0, 2.0))) == [(0.0, 3 / 9), (5 / 9, 8 / 9)]
    assert list(dashes(9.0, ())) == [(0.0, 1.0)]


def test_a_height_is_shared_by_size_and_nobody_gets_less_than_his_least() -> None:
    # 100 among 10, 10 and 80, at least 20 each: two are held at 20, the third has 60.
    assert share_out(100.0, [10, 10, 80], [20.0, 20.0, 20.0]) == [20.0, 20.0, 60.0]
    assert share_out(100.0, [50, 50], [20.0, 20.0]) == [50.0, 50.0]


def test_the_shares_of_a_wood_are_numbered_along_the_bar_without_touching() -> None:
    shares = {"parts": "71.8", "planing": "0.4", "kerf": "0.3", "trim": "0.2",
              "misfit": "0.1", "defects": "0.1", "offcuts": "27.1"}  # fmt: skip
    percent = {name: Decimal(share) for name, share in shares.items()}
    scene = bar_scene(percent, 534.0, "where it goes")
    assert scene.collisions() == []
    said = [text.text for text in scene.texts()]
    assert "parts 71.8 %" in said
    assert [word for word in said if word in "1234567"] == list("1234567")
